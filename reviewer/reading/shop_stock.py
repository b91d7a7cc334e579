"""A shop's own stock beside that of the tables: its rows are checked as those are."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from typing import Any

from reviewer.notation.problem import Problem
from reviewer.reading.context import Context, Find, listed, write
from reviewer.reading.read_design import told
from reviewer.reading.shop import Entry, Shop
from reviewer.reading.shop_kinds import STOCK
from reviewer.stock.bearings import Bearing, bearings, read_bearing
from reviewer.stock.fasteners import Thread, read_fastener, threads
from reviewer.stock.materials import Material, materials
from reviewer.stock.sheets import Sheet, read_sheet, sheets
from reviewer.stock.table import StockError, Table, UnknownStock

REQUIRED = {
    "materials": ("source",),
    "bearings": ("source", "bore", "outer", "width"),
    "fasteners": ("source", "diameter", "pitch"),
    "sheets": ("source", "material", "nominal", "actual"),
}


@dataclass(frozen=True, slots=True)
class Tables:
    """All stock that a review knows: that of the project, of plug-ins and of the shop."""

    materials: Table[Material] = field(default_factory=materials)
    bearings: Table[Bearing] = field(default_factory=bearings)
    fasteners: Table[Thread] = field(default_factory=threads)
    sheets: Table[Sheet] = field(default_factory=sheets)

    @property
    def finds(self) -> Mapping[str, Find]:
        """How a design's reading finds a row by its name."""
        return {
            "materials": self.materials.find,
            "bearings": partial(read_bearing, table=self.bearings),
            "fasteners": partial(read_fastener, table=self.fasteners),
            "sheets": partial(read_sheet, table=self.sheets, known=self.materials),
        }


def with_stock(tables: Tables, shop: Shop) -> tuple[Tables, tuple[Problem, ...]]:
    """The tables with a shop's rows, and what is wrong with those that are left out."""
    context = Context(shop.path, shop.lines)
    for name, make in _MAKERS.items():
        for entry in shop.stock.get(name, ()):
            if context.is_full:
                return tables, told(context)
            if _is_whole(name, entry, context):
                tables = _added(tables, name, entry, make, context)
    return tables, told(context)


def _is_whole(table: str, entry: Entry, context: Context) -> bool:
    missing = [each for each in REQUIRED[table] if each not in entry.given]
    if missing:
        what = f"a {STOCK[table].name} of the shop says {listed(REQUIRED[table])}"
        context.refuse(entry.place, what, f"no {listed(missing, 'or')}", "all of them")
    return not missing


def _added(
    tables: Tables, name: str, entry: Entry, make: Callable[..., Any], context: Context
) -> Tables:
    """The tables with one row more, or as they are where the row cannot stand in its table."""
    try:
        table = getattr(tables, name).with_rows([make(entry, tables)])
        return replace(tables, **{name: table})
    except UnknownStock as error:
        near = " or ".join(error.nearest)
        what = f"the {error.subject} is not in the tables"
        context.refuse(entry.place, what, error.name, "a name of the tables", write(near))
    except StockError as error:
        told, _, expected = str(error).rpartition("; ")
        expected = expected.removeprefix("expected ")
        context.refuse(entry.place, "this row cannot stand in the tables", told, expected)
    return tables


def _numbers(entry: Entry, but: Iterable[str] = ()) -> dict[str, Any]:
    """The values of an entry by field, without those that are not fields of the row."""
    return {path: each.value for path, each in entry.given.items() if path not in but}


def _material(entry: Entry, tables: Tables) -> Material:
    given = _numbers(entry, ("like",))
    if "like" in entry.given:
        like = tables.materials.find(entry.text("like"))
        ranges = tuple(each for each in like.published_range if each[0] not in given)
        return replace(like, name=entry.name, aliases=(), published_range=ranges, **given)
    if "family" not in given:
        raise StockError(f'material "{entry.name}" has no family; expected family, or like')
    return Material(name=entry.name, **given)


def _bearing(entry: Entry, tables: Tables) -> Bearing:
    return Bearing(name=entry.name, **_numbers(entry))


def _thread(entry: Entry, tables: Tables) -> Thread:
    return Thread(name=entry.name, **{"series": "ISO metric coarse", **_numbers(entry)})


def _sheet(entry: Entry, tables: Tables) -> Sheet:
    material = tables.materials.find(entry.text("material"))
    given = _numbers(entry, ("length", "width", "material"))
    size = tuple(entry.given[each].value for each in ("length", "width") if each in entry.given)
    sizes = (size,) if len(size) == 2 else ()
    nominal = entry.given["nominal"]
    unit = nominal.quantity.unit.symbol if nominal.quantity else "m"
    label = nominal.text if nominal.text.endswith(unit) else f"{nominal.text} {unit}"
    return Sheet(name=entry.name, material=material.name, label=label, sizes=sizes, **given)


_MAKERS: Mapping[str, Callable[[Entry, Tables], Any]] = {
    "materials": _material,
    "bearings": _bearing,
    "fasteners": _thread,
    "sheets": _sheet,
}
