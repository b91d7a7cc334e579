"""The piece of sheet from which a flat part is cut: its size, and what that sheet measures.

A part may be `made` of several layers of one sheet. What a sheet is called and what it measures are
two numbers; the fields of a part say what is drawn.
"""

from functools import lru_cache
from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.cutting import share_of_sheet
from reviewer.mechanics.formula import Number
from reviewer.parts.row import Choice, Count, Measure, Row
from reviewer.parts.shop_facts import Stocked
from reviewer.stock.materials import Material
from reviewer.stock.sheets import sheets_of

SAME = 1e-6  # m; 3/4 in is 19.05 mm
UNKNOWN = np.nan


class Measured(NamedTuple):
    """What a sheet measures: the mean and the band of its thickness [m], and what it is called."""

    actual: Number
    low: Number
    high: Number
    nominal: Number


class Columns(NamedTuple):
    """What a material is sold as, by columns: thicknesses [m], and sizes with their thickness."""

    nominal: Any
    actual: Any
    low: Any
    high: Any
    size_of: Any
    length: Any
    width: Any


@lru_cache(maxsize=64)
def columns_of(material: Material, stocked: Stocked) -> Columns | None:
    """The stock rows of a material as arrays; nothing where it is not sold as sheet."""
    rows = sheets_of(material, stocked.sheets)
    if not rows:
        return None
    actual = np.array([row.actual for row in rows])
    low, high = (np.array([getattr(row, name) for row in rows]) for name in ("low", "high"))
    sizes = [(row.nominal, *size) for row in rows for size in row.sizes]
    size_of, length, width = np.array(sizes).reshape(-1, 3).T
    return Columns(
        np.array([row.nominal for row in rows]),
        actual,
        np.where(np.isnan(low), actual, low),
        np.where(np.isnan(high), actual, high),
        size_of,
        length,
        width,
    )


def measured(thickness: Number, material: Material, stocked: Stocked) -> Measured:
    """The sheet that is meant by a thickness: the one of that name, else one that measures so.

    The stock row's own source.
    """
    columns = columns_of(material, stocked)
    if columns is None:
        lost = UNKNOWN * thickness
        return Measured(lost, lost, lost, lost)
    which = _which(columns, thickness)
    found = (
        np.where(which < 0, UNKNOWN, each[which])
        for each in (columns.actual, columns.low, columns.high, columns.nominal)
    )
    return Measured(*found)


def _which(columns: Columns, thickness: Number) -> Any:
    """The place of each thickness's sheet among the rows; -1 where none is meant."""
    asked = np.asarray(thickness)[..., None]
    named = np.abs(asked - columns.nominal) < SAME
    within = (asked > columns.low - SAME) & (asked < columns.high + SAME)
    away = np.where(within, np.abs(asked - columns.actual), np.inf)
    best = np.where(np.any(named, -1), np.argmax(named, -1), np.argmin(away, -1))
    return np.where(np.any(named | within, -1), best, -1)


def share_taken(
    length: Number, width: Number, nominal: Number, material: Material, stocked: Stocked, trim: Any
) -> Number:
    """Share of the sheet that it fills in one direction, on the sheet that suits it best.

    Geometry; sheet sizes are the stock row's. Nothing is trimmed where the shop does not say so.
    """
    columns = columns_of(material, stocked)
    if columns is None or not columns.length.size:
        return UNKNOWN * (length + nominal)
    margin = np.where(np.isnan(trim), 0.0, trim)[..., None]
    sides = [np.asarray(each)[..., None] for each in (length, width)]
    share = share_of_sheet(sides[0], sides[1], columns.length, columns.width, margin)
    meant = np.abs(np.asarray(nominal)[..., None] - columns.size_of) < SAME
    least = np.min(np.where(meant, share, np.inf), -1)
    return np.where(np.isinf(least), UNKNOWN, least)


def stacked(each: Number, layers: int) -> Number:
    """Thickness of a stack.

    Arithmetic; glue lines of a tenth of a millimetre and less are left out.
    """
    return each * layers


def off_by(drawn: Number, mean: Number) -> Number:
    """How far what is drawn is from what is there in the mean.

    Arithmetic.
    """
    return np.abs(drawn - mean)


_MADE = (
    Row("made.layers", "", "of how many layers of sheet it is glued up", Count(default=1)),
    Row(
        "made.each",
        "m",
        "what the sheet of each layer is called",
        Measure(above=0.0, example="18 mm"),
    ),
    Row(
        "made.cut",
        "",
        "whether its layers are cut to size once they are glued up, or before",
        Choice(("after gluing", "before gluing"), default="after gluing"),
    ),
)
_SHEET = {"solution": "blank.sheet"}
BLANK_ROWS = (
    *_MADE,
    Row("blank.length", "m", "length of the rectangle that it is cut from", built=True),
    Row("blank.width", "m", "width of the rectangle that it is cut from", built=True),
    Row("blank.thickness", "m", "thickness of the sheet as it is drawn", built=True),
    Row("blank.sheet", "", "what that sheet measures", built=True),
    Row("blank.nominal", "m", "what that sheet is called", needs=_SHEET, take="nominal"),
    Row("blank.actual", "m", "what that sheet measures, mean", needs=_SHEET, take="actual"),
    Row("blank.low", "m", "what that sheet measures at least", needs=_SHEET, take="low"),
    Row("blank.high", "m", "what that sheet measures at most", needs=_SHEET, take="high"),
    Row("blank.share", "1", "share of a sheet's length or width that it takes", built=True),
    Row("made.mean", "m", "thickness of the layers together, mean", built=True),
    Row("made.low", "m", "least thickness of the layers together", built=True),
    Row("made.high", "m", "greatest thickness of the layers together", built=True),
    Row("made.off", "m", "how far the layers are in the mean from what is drawn", built=True),
)


def blank(
    length: Any,
    width: Any,
    needs: dict[str, str],
    *,
    thickness: str = "thickness",
    material: str = "material",
) -> tuple[Row, ...]:
    """The rows of a part that is cut from a sheet; `length` and `width` are formulas of `needs`."""
    filled = {
        "blank.length": (length, needs),
        "blank.width": (width, needs),
        "blank.thickness": (
            of_one_layer,
            {"each": "made.each?", "whole": thickness, "layers": "made.layers"},
        ),
        "blank.sheet": (
            measured,
            {"thickness": "blank.thickness", "material": material, "stocked": "shop.sheets"},
        ),
        "blank.share": (
            share_taken,
            {
                "length": "blank.length",
                "width": "blank.width",
                "nominal": "blank.nominal",
                "material": material,
                "stocked": "shop.sheets",
                "trim": "shop.trim",
            },
        ),
        "made.mean": (stacked, {"each": "blank.actual", "layers": "made.layers"}),
        "made.low": (stacked, {"each": "blank.low", "layers": "made.layers"}),
        "made.high": (stacked, {"each": "blank.high", "layers": "made.layers"}),
        "made.off": (off_by, {"drawn": thickness, "mean": "made.mean"}),
    }
    return tuple(_filled(row, filled) for row in BLANK_ROWS)


def _filled(row: Row, filled: dict[str, tuple[Any, dict[str, str]]]) -> Row:
    if row.path not in filled:
        return row
    formula, needs = filled[row.path]
    return Row(row.path, row.unit, row.says, formula=formula, needs=needs)


def of_one_layer(each: Number | None, whole: Number, layers: int) -> Number:
    """Thickness of a layer as it is drawn: what is given, else its share of the whole.

    Arithmetic.
    """
    return whole / layers if each is None else each


def across(diameter: Number | None, other: Number | None) -> Number:
    """A side of the rectangle around a disc or a rectangle."""
    if diameter is not None:
        return diameter
    return UNKNOWN if other is None else other
