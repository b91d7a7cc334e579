"""A design that knows the shop in which it is made: cutters, allowances and sheets."""

from collections.abc import Callable
from dataclasses import fields, replace
from typing import Any

from reviewer.parts.row import Row
from reviewer.parts.shop_facts import ALLOWANCES, SHOP, Cutter, Cutters, Stocked
from reviewer.reading.design import Design
from reviewer.reading.shop import Entry, Shop
from reviewer.reading.shop_stock import Tables

NUMBERS = tuple(each.name for each in fields(Cutter) if each.name not in ("name", "shape"))


def with_shop(design: Design, shop: Shop | None, tables: Tables) -> Design:
    """A design whose `shop.` rows have what the shop's file says; as it is without a shop."""
    if shop is None:
        return design
    known: dict[str, Any] = {
        "sheets": Stocked(shop.name, tables.sheets),
        "cutters": Cutters(shop.name, tuple(_cutter(each) for each in shop.cutters)),
        **{name: shop.allowances[name].value for name in ALLOWANCES if name in shop.allowances},
    }
    rows = tuple(_filled(row, known, shop.path) for row in design.facts.kind.rows)
    kind = replace(design.facts.kind, rows=rows)
    return replace(design, facts=replace(design.facts, kind=kind))


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
