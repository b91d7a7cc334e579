"""A quantity as people write it, read into an SI number with a dimension and a band."""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from reviewer.notation.dimension import LENGTH, NUMBER, Dimension
from reviewer.notation.plain import plain
from reviewer.notation.refusal import (
    QuantityError,
    due,
    foreign_digit,
    half_bare,
    without_unit,
    wrong_dimension,
    wrong_tolerance,
)
from reviewer.notation.scan import Scanner
from reviewer.notation.units import UNITS, Unit, exact_factor, exact_offset, plain_superscripts
from reviewer.notation.written import Amount, Spread, Written

__all__ = ["Quantity", "QuantityError", "read_quantity"]

LONGEST = 200
_NONE = Fraction(0)

# One character for one, so that places in the tidied text are places in the text as given.
_TIDY = str.maketrans(
    "\u2212\u2032\u2019\u2033\u201d\u2044\u00a0\u202f\u2009\t\r\n", "-''\"\"/      "
)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with a dimension, and the limits between which it lies.

    value, low, high : SI (absolute temperatures in kelvin); equal where there is no band
    unit : as it was written, the first of several
    spread : how samples of a band lie between its limits
    text : as it was written
    """

    value: float
    dimension: Dimension
    unit: Unit
    low: float
    high: float
    spread: Spread
    text: str


def read_quantity(
    text: str, *, expected: Dimension | None = None, lengths: Unit | None = None
) -> Quantity:
    """Read a quantity with its unit and, if written, its tolerance.

    expected : the dimension that is due, if that is known
    lengths : the unit that the file declares for bare numbers where a length is due

    Raises QuantityError for everything that is not wholly understood. Computed with exact
    fractions and rounded once, so that 3/4 in is the float nearest to 0.01905 m.

    >>> read_quantity("3/4 in").value, read_quantity("(18 ± 0.3) mm").high
    (0.01905, 0.0183)
    """
    if len(text) > LONGEST:
        what, most = "the text is too long for a quantity", f"at most {LONGEST} characters"
        mend, span = "put what is no quantity in note:", (0, len(text))
        raise QuantityError(what, plain(text, 40), most, mend, span)
    return _read(text, expected, lengths)


@lru_cache(maxsize=4096)
def _read(text: str, expected: Dimension | None, lengths: Unit | None) -> Quantity:
    """Read a text of reasonable length; kept, since files of a family repeat their quantities."""
    tidy = _tidied(text, expected)
    written = Scanner(tidy, expected).quantity()
    (nominal, unit), *band = _with_units(tidy, written, expected, lengths)
    if expected is not None and unit.dimension != expected:
        raise wrong_dimension(tidy, nominal, unit, expected)
    more, less = (_difference(tidy, each, unit) for each in band) if band else (_NONE, _NONE)
    value = nominal.value * exact_factor(unit) + exact_offset(unit)
    exact = (value - less, value, value + more)
    span = (nominal.start, nominal.end)
    if unit.offset and exact[0] < 0:
        what = "the temperature is below absolute zero"
        mend = "write a higher temperature, or a narrower tolerance"
        raise QuantityError(what, plain(tidy[slice(*span)]), "at least 0 K", mend, span)
    low, middle, high = (_as_float(tidy, span, each) for each in exact)
    return Quantity(middle, unit.dimension, unit, low, high, written.spread, text)


def _tidied(text: str, expected: Dimension | None) -> str:
    """Read typographic marks as plain ones; refuse what no quantity contains."""
    if not text.strip():
        mend = "write the quantity, or leave the key out"
        raise QuantityError("the quantity is empty", "nothing", due(expected), mend, (0, len(text)))
    if text.isascii() and text.isprintable():
        return text
    tidy = plain_superscripts(text.translate(_TIDY))
    for at, character in enumerate(tidy):
        if character.isnumeric() and not character.isascii():
            raise foreign_digit(tidy, at)
        if not character.isprintable():
            what, expected_here = "a character does not print", "letters, digits and marks"
            raise QuantityError(what, plain(character), expected_here, "take it out", (at, at + 1))
    return tidy


def _with_units(
    text: str, written: Written, expected: Dimension | None, lengths: Unit | None
) -> list[tuple[Amount, Unit]]:
    """Give bare numbers the unit that is declared for them, or refuse them.

    Where only the value or only the tolerance has a unit, the other takes the declared one if it
    is the same: else nobody knows which was meant.
    """
    bare = UNITS["1"] if expected == NUMBER else lengths if expected in (None, LENGTH) else None
    amounts = [written.nominal, *(written.band or ())]
    named = {each.unit for each in amounts if each.unit is not None}
    if any(each.unit is None for each in amounts) and named and named != {bare}:
        raise half_bare(text, written)
    with_units: list[tuple[Amount, Unit]] = []
    for each in amounts:
        unit = each.unit or bare
        if unit is None:
            raise without_unit(text, each, expected)
        with_units.append((each, unit))
    return with_units


def _difference(text: str, limit: tuple[Amount, Unit], value_unit: Unit) -> Fraction:
    """Return a limit of a tolerance in SI; of temperatures the difference, without the offset."""
    amount, unit = limit
    if unit.dimension != value_unit.dimension:
        raise wrong_tolerance(text, amount, unit, value_unit)
    return amount.value * exact_factor(unit)


def _as_float(text: str, span: tuple[int, int], exact: Fraction) -> float:
    """Round once; refuse what no float holds."""
    try:
        value = float(exact)
    except OverflowError:
        value = float("inf")
    if value in (float("inf"), float("-inf")) or (value == 0.0 and exact):
        what = "the number is too large or too small"
        raise QuantityError(
            what, plain(text[slice(*span)]), "a number that a computer holds", None, span
        )
    return value
