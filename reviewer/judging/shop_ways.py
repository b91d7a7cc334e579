"""A design that knows the shop in which it is made: cutters, allowances and sheets."""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import fields, replace
from typing import Any

from reviewer.parts.kind import Kind
from reviewer.parts.row import Row
from reviewer.parts.shop_facts import ALLOWANCES, SHOP, Cutter, Cutters, Stocked
from reviewer.reading.design import Design
from reviewer.reading.shop import Entry, Shop
from reviewer.reading.shop_stock import Tables

MOST = 64  # kinds that are kept
# By the identity of a kind and a shop, which are kept with it so that no other takes it over.
_KEPT: "OrderedDict[tuple[int, int], tuple[Kind, Shop, Kind]]" = OrderedDict()
NUMBERS = tuple(each.name for each in fields(Cutter) if each.name not in ("name", "shape"))


def with_shop(design: Design, shop: Shop | None, tables: Tables) -> Design:
    """A design whose `shop.` rows have what the shop's file says; as it is without a shop."""
    if shop is None:
        return design
    kind = _kept_kind(design.facts.kind, shop, tables)
    return replace(design, facts=replace(design.facts, kind=kind))


def _kept_kind(kind: Kind, shop: Shop, tables: Tables) -> Kind:
    """The facts of a shop's designs: kept, so that designs of one structure share their plan."""
    key = id(kind), id(shop)
    found = _KEPT.pop(key, None)
    if found is None or found[0] is not kind or found[1] is not shop:
        found = kind, shop, _with_rows(kind, shop, tables)
    _KEPT[key] = found
    if len(_KEPT) > MOST:
        _KEPT.popitem(last=False)
    return found[2]


def _with_rows(kind: Kind, shop: Shop, tables: Tables) -> Kind:
    known: dict[str, Any] = {
        "sheets": Stocked(shop.name, tables.sheets),
        "cutters": Cutters(shop.name, tuple(_cutter(each) for each in shop.cutters)),
        **{name: shop.allowances[name].value for name in ALLOWANCES if name in shop.allowances},
    }
    return replace(kind, rows=tuple(_filled(row, known, shop.path) for row in kind.rows))


def _cutter(entry: Entry) -> Cutter:
    given = {name: entry.given[name].value for name in NUMBERS if name in entry.given}
    return Cutter(name=entry.name, shape=entry.text("shape") or "straight", **given)


def _filled(row: Row, known: dict[str, Any], path: str) -> Row:
    name = row.path.removeprefix(f"{SHOP}.")
    if name == row.path or name not in known:
        return row
    return replace(row, formula=_constant(known[name], path))


def _constant(value: Any, path: str) -> Callable[[], Any]:
    """A formula that gives the value; its words are those that a trace shows of it."""

    def from_shop() -> Any:
        return value

    from_shop.__doc__ = f"As the shop says it.\n\n{path}"
    return from_shop
