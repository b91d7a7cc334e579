"""Numbers with a dimension, and counts: what a field's text says, within the field's bounds."""

import re
from collections.abc import Iterable
from functools import lru_cache
from math import inf

from reviewer.notation.dimension import FORCE, LENGTH, MASS
from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place
from reviewer.notation.quantity import Quantity, QuantityError, read_quantity
from reviewer.notation.units import UNITS, Unit, parse_unit
from reviewer.parts.row import Count, Measure, Row
from reviewer.reading.context import Context, write
from reviewer.reading.design import GivenValue
from reviewer.reading.due import UNKNOWN, bounds, due_in, is_within, words_of
from reviewer.reading.scalars import resolve
from reviewer.reading.sheets import read_sheet_size
from reviewer.reading.tree import Scalar
from reviewer.reading.words import shown

# Larger than any furniture or shop machine: whoever writes this has meant another unit.
MOST = {
    LENGTH: (10.0, "a length of at most 10 m"),
    MASS: (20e3, "a mass of at most 20 t"),
    FORCE: (1e6, "a force of at most 1000 kN"),
}
TOLERANCE_MARKS = ("±", "+/-")
# A whole number and what follows it: zeros after a point, or what is no part of a number.
WHOLE = re.compile(r"0*([1-9][0-9]{0,5})(\.0*|[^0-9.,/eE].*)?", re.DOTALL)


@lru_cache(maxsize=4096)
def quantity_of(text: str, unit: str, lengths: str | None) -> Quantity:
    """Read a quantity of a unit's dimension, and remember it: designs repeat their measures.

    `lengths` is the symbol of the declared unit. Symbols, because they are quickly looked up.
    """
    declared = UNITS[lengths] if lengths else None
    return read_quantity(text, expected=parse_unit(unit).dimension, lengths=declared)


def read_measure(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read a number with a dimension, or a word that stands for one."""
    entry = row.given
    assert isinstance(entry, Measure)
    text = scalar.text
    word = text.strip()
    if word == UNKNOWN:
        return _published(row, entry, scalar, context)
    for known, meaning in entry.words:
        if word == known:
            quantity = quantity_of(meaning, row.unit, None)
            return GivenValue(quantity.value, text, scalar.place, quantity)
    try:
        declared = context.lengths_at(scalar.place)
        lengths = declared.symbol if declared else None
        quantity = quantity_of(text, row.unit, lengths)
    except QuantityError as error:
        sheet = read_sheet_size(row, scalar, context) if entry.sheet else None
        if isinstance(sheet, GivenValue):
            return sheet
        if sheet is not None:
            context.refuse(scalar.place, "no sheet is sold so thick", shown(text), sheet)
            return None
        _refuse_quantity(row, entry, scalar, error, context)
        return None
    context.quantities.append((scalar.place, quantity))
    if not _is_allowed(row, entry, scalar, quantity, context):
        return None
    return GivenValue(quantity.value, text, scalar.place, quantity)


def _published(row: Row, entry: Measure, scalar: Scalar, context: Context) -> GivenValue | None:
    """The middle of the published range, with the range as its band."""
    if entry.unknown is None:
        what = f"no range is published for {row.path}"
        mend = f"leave {row.path} out: what needs it then stays open, and says so"
        context.refuse(scalar.place, what, UNKNOWN, due_in(row), mend)
        return None
    least, most = (quantity_of(each, row.unit, None) for each in entry.unknown)
    middle = (least.value + most.value) / 2
    band = (least.value, most.value)
    quantity = Quantity(middle, row.dimension, least.unit, *band, "uniform", scalar.text)
    return GivenValue(middle, scalar.text, scalar.place, quantity)


def _refuse_quantity(
    row: Row, entry: Measure, scalar: Scalar, error: QuantityError, context: Context
) -> None:
    """Put an error of the notation at its place; a word may be a slip of one that is allowed."""
    expected, mend, place = error.expected, error.mend, context.part_of(scalar, error.span)
    allowed = words_of(entry)
    if allowed and not any(character.isdigit() for character in scalar.text):
        expected, place = due_in(row), scalar.place
        mend = write(nearest(scalar.text.strip(), allowed)) or mend
    context.refuse(place, error.what, error.found, expected, mend)


def _is_allowed(
    row: Row, entry: Measure, scalar: Scalar, quantity: Quantity, context: Context
) -> bool:
    """Hold a quantity and both ends of its band against the bounds."""
    if not _is_of_this_world(row, quantity, scalar, context):
        return False
    if is_within(entry, quantity.value):
        if is_within(entry, quantity.low) and is_within(entry, quantity.high):
            return True
        what = f"the tolerance takes {row.path} out of its bounds"
    else:
        what = f"{row.path} is out of its bounds"
    context.refuse(scalar.place, what, shown(scalar.text), bounds(entry, quantity.unit))
    return False


def _is_of_this_world(row: Row, quantity: Quantity, scalar: Scalar, context: Context) -> bool:
    """Refuse sizes that no furniture and no shop machine has: the unit is wrong then."""
    most, words = MOST.get(quantity.dimension, (inf, ""))
    if abs(quantity.value) <= most:
        return True
    what = f"{row.path} is larger than anything that is reviewed here"
    context.refuse(
        scalar.place, what, shown(scalar.text), words, "look at the unit, and at lengths:"
    )
    return False


def read_count(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read a whole number."""
    entry = row.given
    assert isinstance(entry, Count)
    value = resolve(scalar)
    if isinstance(value, int) and not isinstance(value, bool):
        if entry.at_least <= value <= entry.at_most:
            return GivenValue(value, scalar.text, scalar.place)
        what, mend = f"{row.path} is out of its bounds", None
    elif any(mark in scalar.text for mark in TOLERANCE_MARKS):
        what, mend = f"{row.path} is counted, and has no tolerance", _whole(scalar)
    else:
        what, mend = f"{row.path} is a whole number, without a unit", _whole(scalar)
    context.refuse(scalar.place, what, _as_written(scalar), due_in(row), mend)
    return None


def _whole(scalar: Scalar) -> str | None:
    """The mend that leaves only the whole number that a text begins with, if it does."""
    match = WHOLE.fullmatch(scalar.text.strip())
    if match is None:
        return None
    return f"write {match[1]}" + (" without quotes" if scalar.quoted and not match[2] else "")


def _as_written(scalar: Scalar) -> str:
    """Show a scalar with its quotes, where they are what is wrong."""
    return f'"{shown(scalar.text)}"' if scalar.quoted else shown(scalar.text)


def units_in_order(found: Iterable[tuple[Place, Quantity]], first: Unit | None) -> tuple[Unit, ...]:
    """The units that a file uses, in the order of their first use; the declared one leads."""
    ordered = sorted(found, key=lambda each: each[0])
    units = [quantity.unit for _, quantity in ordered]
    return tuple(dict.fromkeys([first, *units] if first else units))
