"""Sheets and boards: what a thickness is called and what it measures."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache, lru_cache
from typing import ClassVar, NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.notation.dimension import LENGTH
from reviewer.notation.plain import plain
from reviewer.notation.quantity import QuantityError, read_quantity
from reviewer.notation.units import exact_factor, parse_unit
from reviewer.stock.materials import Material, materials
from reviewer.stock.reader import in_si, read_records
from reviewer.stock.table import UNKNOWN, StockError, StockRow, Table

_WRITTEN = re.compile(
    r"(?P<number>\d[\d./]*(?:(?:\s+|-)\d+/\d+)?)"
    r"(?:[\s-]*(?P<unit>millimet(?:er|re)s?|mm|inch(?:es)?|in|[\"″”]))?[\s-]+(?P<material>\S.*)",
    re.IGNORECASE | re.ASCII,
)
# Two thicknesses closer than this are one: 3/4 in is 19.05 mm.
_SAME = 1e-6

_THICKNESS = (1e-4, 0.2)

Number = float | NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Sheet(StockRow):
    """A sheet or board of one material and thickness, all lengths [m]. Unknown numbers are NaN.

    nominal is what it is called, as `label` writes it; actual is the mean of what it measures, low
    and high the band. sizes are pairs of length along the grain and width. material is the name
    of a material, or in a row of the table that holds for a whole family, the family's.
    """

    name: str
    material: str
    label: str
    nominal: float
    actual: float
    source: str
    aliases: tuple[str, ...] = ()
    low: float = UNKNOWN
    high: float = UNKNOWN
    sizes: tuple[tuple[float, float], ...] = ()

    plausible: ClassVar[Mapping[str, tuple[float, float]]] = dict.fromkeys(
        ("nominal", "actual", "low", "high"), _THICKNESS
    )

    @property
    def is_inch(self) -> bool:
        """Whether it is called by a thickness in inches."""
        return self.label.endswith(" in")


@cache
def sheets() -> Table[Sheet]:
    """The sheets that come with the project.

    >>> round(sheets().find("18 mm birch plywood").actual * 1e3, 3)
    17.6
    """
    return Table("sheet", (_sheet(record) for record in read_records("sheets.tsv")))


def sheets_of(material: Material, table: Table[Sheet] | None = None) -> tuple[Sheet, ...]:
    """What a material is sold as, thinnest first; empty where the table has nothing.

    A material without rows of its own has those of its family.
    """
    return _sheets_of(material.name, material.family, table)


@lru_cache(maxsize=256)
def _sheets_of(name: str, family: str, table: Table[Sheet] | None) -> tuple[Sheet, ...]:
    """Kept, since every part of every design asks."""
    rows = tuple(table or sheets())
    own = [row for row in rows if row.material == name]
    if not own:
        own = [
            replace(row, name=f"{row.label} {name}", material=name)
            for row in rows
            if row.material == family
        ]
    return tuple(sorted(own, key=lambda row: (row.nominal, row.label)))


def thicknesses(
    material: Material, *, inches: bool | None = None, table: Table[Sheet] | None = None
) -> tuple[float, ...]:
    """The nominal thicknesses in which a material is sold [m], rising.

    Only those called in inches, or only those called in millimetres, if `inches` says so.

    >>> thicknesses(materials().find("birch plywood"), inches=False)[:5]
    (0.003, 0.004, 0.006, 0.0065, 0.009)
    """
    rows = sheets_of(material, table)
    wanted = (row.nominal for row in rows if inches is None or row.is_inch == inches)
    return tuple(dict.fromkeys(wanted))


def measured_like(sheet: Sheet, rows: Iterable[Sheet]) -> tuple[float, ...]:
    """What sheets measure that are called as this one is, in inches or in millimetres [m], rising.

    >>> birch = materials().find("birch plywood")
    >>> [round(each * 1e3, 1) for each in measured_like(read_sheet("3/4 birch ply"),
    ...     sheets_of(birch))][-2:]
    [17.6, 23.2]
    """
    return tuple(sorted({row.actual for row in rows if row.is_inch == sheet.is_inch}))


def called_sheet(sheet: Sheet, actual: float) -> str:
    """How a sheet of this material is called that measures so [m]; nothing where none does.

    >>> called_sheet(read_sheet("3/4 birch ply"), 0.0232)
    '1 in birch plywood'
    """
    rows = sheets_of(materials().find(sheet.material)) if sheet.material in materials() else ()
    for row in rows:
        if row.is_inch == sheet.is_inch and abs(row.actual - actual) < _SAME:
            return row.name
    return ""


class Measured(NamedTuple):
    """What a sheet is called, what it measures in the mean, at least and at most [m]."""

    nominal: Number
    actual: Number
    low: Number
    high: Number


def measured(material: Material, thickness: Number, *, inches: bool = False) -> Measured:
    """What sheets of a material measure that are called so, or measure so in the mean [m].

    Unknown (NaN) where none is sold so. What they measure comes first: of birch plywood 12 mm is
    the sheet that is called 12 mm and measures that. Of two that measure alike, the one that is
    called in millimetres, or in inches if `inches` says so.

    >>> found = measured(materials().find("birch plywood"), 0.01905)
    >>> [round(float(each) * 1e3, 2) for each in found]
    [19.05, 17.6, 17.1, 18.3]
    """
    found = Measured(*(np.full(np.shape(thickness), UNKNOWN) for _ in Measured._fields))
    for field in ("nominal", "actual"):
        for row in sorted(sheets_of(material), key=lambda row: row.is_inch == inches):
            same = np.abs(thickness - getattr(row, field)) < _SAME
            sizes = (row.nominal, row.actual, row.low, row.high)
            found = Measured(*(np.where(same, *each) for each in zip(sizes, found, strict=True)))
    return found


def read_sheet(
    text: str,
    table: Table[Sheet] | None = None,
    known: Table[Material] | None = None,
) -> Sheet:
    """The sheet meant by `18 mm birch plywood`, `3/4 birch ply` or `1/2" MDF`.

    A fraction without a unit is inches, as the trade says it; a whole number without a unit is
    refused. Raises StockError for what is not written so and for a thickness that the material is
    not sold in; UnknownStock for a material that `known` does not have.

    >>> sheet = read_sheet("3/4 birch ply")
    >>> sheet.label, sheet.material, round(sheet.nominal * 1e3, 2), round(sheet.high * 1e3, 2)
    ('3/4 in', 'birch plywood', 19.05, 18.3)
    """
    match = _WRITTEN.fullmatch(text.strip())
    if not match:
        raise StockError(
            f'sheet "{plain(text, 60)}"; expected a thickness and a material, as in '
            "18 mm birch plywood or 3/4 birch ply"
        )
    nominal = _thickness(text, match["number"], match["unit"] or "", match["material"])
    material = (known or materials()).find(match["material"])
    rows = sheets_of(material, table)
    for row in rows:
        if abs(row.nominal - nominal) < _SAME:
            return row
    sold = ", ".join(row.label for row in rows) or "no thickness that the table knows"
    raise StockError(
        f'sheet "{plain(text, 60)}"; {material.name} is sold as {sold}; add a row for this one '
        "to the shop's stock, with its source"
    )


def _thickness(text: str, number: str, unit: str, material: str) -> float:
    """The thickness [m]; a bare fraction is inches."""
    symbol = "mm" if unit[:1].casefold() == "m" else "in" if unit or "/" in number else ""
    if not symbol:
        raise StockError(
            f'sheet "{plain(text, 60)}"; expected a unit after {number}, as in '
            f'"{number} mm {plain(material, 40)}"'
        )
    try:
        return read_quantity(f"{number} {symbol}", expected=LENGTH).value
    except QuantityError as problem:
        raise StockError(f'sheet "{plain(text, 60)}"; {problem}') from None


def _sheet(record: dict[str, str]) -> Sheet:
    label = record.pop("nominal")
    nominal = _nominal(label)
    sizes = tuple(_size(pair) for pair in record.pop("sizes").split(";") if pair)
    name = f"{label} {record['material']}"
    return Sheet(name=name, label=label, nominal=nominal, sizes=sizes, **record)  # type: ignore[arg-type]


def _nominal(label: str) -> float:
    """A label of the table's own, `18 mm` or `1-1/2 in`, for which the full parser is too slow."""
    number, _, unit = label.rpartition(" ")
    if "/" not in number:
        return in_si(number, unit)
    whole, _, part = number.rpartition("-")
    return float((int(whole or 0) + Fraction(part)) * exact_factor(parse_unit(unit)))


def _size(pair: str) -> tuple[float, float]:
    length, _, width = pair.partition("x")
    return float(length) / 1e3, float(width) / 1e3
