"""New values in the file's own notation: the unit, the tolerance and the quotes stay."""

import re
from collections.abc import Iterable, Sequence
from typing import Any

from reviewer.judging.remedies import Change
from reviewer.notation.quantity import Quantity, read_quantity
from reviewer.notation.show import show
from reviewer.notation.units import UNITS, Unit, parse_unit
from reviewer.stock.fasteners import Fastener
from reviewer.stock.sheets import called_sheet
from reviewer.studying.given import Given

BARE = re.compile(r"[\s\d./±+\-()]*(uniform)?\s*", re.ASCII)
DIGITS = 10
FOOT = "ft"


def measure_text(quantity: Quantity, text: str, value: float) -> str:
    """A quantity's text with another value: the same unit or none, and the same tolerance.

    >>> measure_text(read_quantity("18 mm ± 0.3 mm"), "18 mm ± 0.3 mm", 0.021)
    '21 mm ± 0.3 mm'
    """
    unit = unit_of(quantity)
    bare = BARE.fullmatch(text.replace("'", "x")) is not None
    ending = "" if bare or unit.symbol == "1" else f" {unit.symbol}"
    written = f"{number_text(value, unit)}{ending}"
    if quantity.low == quantity.high:
        return written
    step = Unit(unit.symbol, unit.factor, 0.0, unit.dimension)
    less, more = (
        number_text(each, step)
        for each in (quantity.value - quantity.low, quantity.high - quantity.value)
    )
    band = f"± {more}{ending}" if less == more else f"+{more}/-{less}{ending}"
    return f"{written} {band}" + (" uniform" if quantity.spread == "uniform" else "")


def unit_of(quantity: Quantity) -> Unit:
    """The unit in which to say other sizes of a quantity: of feet and inches, inches."""
    return parse_unit("in") if quantity.unit.symbol == FOOT else quantity.unit


def number_text(value: float, unit: Unit) -> str:
    """An SI value as a plain number of a unit: of inches a fraction where one of 64ths is exact."""
    if unit.symbol == "in":
        text = show(value, unit).removesuffix(" in")
        if "/" in text or "." not in text:
            return text
    return f"{round((value - unit.offset) / unit.factor, DIGITS):.{DIGITS}g}"


def value_of(text: str, given: Given, lengths: str | None) -> float:
    """The SI value that a file with this text would give. Raises QuantityError."""
    declared = UNITS[lengths] if lengths else None
    return read_quantity(text, expected=given.row.dimension, lengths=declared).value


def text_of(given: Given, value: Any) -> str:
    """How the file would give a value, a number or a choice."""
    quantity = given.value.quantity
    if given.value.sheet is not None and isinstance(value, float):
        called = called_sheet(given.value.sheet, value)
        return called or measure_text(read_quantity("1 mm"), "1 mm", value)
    if quantity is not None:
        return measure_text(quantity, given.value.text, value)
    if isinstance(value, Fastener) and value.property_class:
        return f"{value.name} {value.property_class}"
    return str(getattr(value, "name", value))


def change(given: Given, text: str, lines: Sequence[str]) -> Change:
    """The edit that writes a text in a value's place, in quotes where it was in quotes."""
    place = given.value.place
    line = lines[place.line - 1]
    old = line[place.column - 1 : place.end_column - 1]
    quote = old[:1] if old[:1] in ("'", '"') else ""
    return Change(given.field[0], given.field[1], given.value.text, text, place, quote)


def rewritten(source: str, changes: Iterable[Change]) -> str:
    """The text of a file with changes made in it."""
    lines = source.split("\n")
    for each in sorted(changes, key=lambda one: one.place, reverse=True):
        place = each.place
        line = lines[place.line - 1]
        before, after = line[: place.column - 1], line[place.end_column - 1 :]
        lines[place.line - 1] = f"{before}{each.quote}{each.new}{each.quote}{after}"
    return "\n".join(lines)
