"""Numbers and quantities as an expression writes them: `18 mm`, `1.5 kN/m`, `3/4 in`, `12 %`.

A number and the unit behind it are one literal, so `a / 2 mm` divides by two millimetres. A
fraction with a unit is read as the trade writes it, `3/4 in` and `1 1/2 in` being lengths; where it
could be taken for a quotient (`a * 3/4 in`, `3 / 4 in`) it is refused.
"""

import re
from functools import lru_cache
from math import isfinite
from typing import NamedTuple

from reviewer.judging.expression import Quantity, Span
from reviewer.judging.language_error import LanguageError
from reviewer.notation.dimension import NUMBER as PLAIN
from reviewer.notation.dimension import Dimension
from reviewer.notation.units import UNITS, UnknownUnit, exact_factor, parse_unit

LARGEST_EXACT = 2**53  # above it a float no longer holds every whole number

_DIGITS = r"[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?"
_SYMBOL = "|".join(sorted((re.escape(each) for each in UNITS if each != "1"), key=len)[::-1])
_FACTOR = rf"(?:{_SYMBOL})(?:\^-?[0-9]{{1,2}}|[0-9]|[²³⁴])?(?![A-Za-z0-9_.]|\s*[(\[])"
UNIT = rf"{_FACTOR}(?:(?:[/·⋅]|[ \t\r\n]+){_FACTOR})*"

NUMBER = rf"{_DIGITS}(?:[ \t\r\n]*{UNIT})?"
_RATIO = r"[0-9]{1,9}[ \t\r\n]*/[ \t\r\n]*[0-9]{1,9}"
FRACTION = rf"(?:[0-9]{{1,9}}[ \t\r\n]+)?{_RATIO}[ \t\r\n]*{UNIT}"
WHOLE_MINUS_FRACTION = rf"[0-9]{{1,9}}-{_RATIO}[ \t\r\n]*{UNIT}"

_NUMBER = re.compile(rf"({_DIGITS})[ \t\r\n]*(.*)", re.DOTALL)
_FRACTION = re.compile(r"(?:([0-9]+)\s+)?([0-9]+)(\s*)/(\s*)([0-9]+)\s*(.*)", re.DOTALL | re.ASCII)


class _Value(NamedTuple):
    """The fields of a Quantity that do not depend on where it stands."""

    number: float
    unit: str
    value: float
    dimension: Dimension
    from_zero: bool


class _Ratio(NamedTuple):
    """A unit whose factor is one float over another, exact where the unit's own is."""

    symbol: str
    above: float
    below: float
    offset: float
    dimension: Dimension


def read_number(text: str, span: Span) -> Quantity:
    """Read a number and the unit behind it, if it has one. Raises LanguageError."""
    try:
        return Quantity(*_read(text), span)
    except LanguageError as error:
        raise error.moved(span[0]) from None


@lru_cache(maxsize=1024)
def _read(text: str) -> _Value:
    match = _NUMBER.fullmatch(text)
    assert match is not None
    number = float(match[1])
    if not isfinite(number) or (number == 0 and re.search("[1-9]", re.split("[eE]", match[1])[0])):
        raise _out_of_range(text)
    return _with_unit(number, match[2], text)


def read_fraction(text: str, span: Span, before: str) -> Quantity:
    """Read a fraction or a mixed number with its unit, after a token of the kind `before`.

    Raises LanguageError where a blank or an operator makes it look like a quotient.
    """
    match = _FRACTION.fullmatch(text)
    assert match is not None
    whole, above, blank, gap, below, unit = match.groups()
    if before in {"*", "/", "^"} or blank or gap:
        value = f"({whole + ' ' if whole else ''}{above}/{below} {unit})"
        raise LanguageError(
            span,
            "the text could be a fraction or a quotient",
            text,
            "one or the other",
            f"write {value} for the fraction, or {above}/({below} {unit}) for the quotient",
        )
    if int(below) == 0:
        raise LanguageError(
            span, "the fraction divides by zero", text, "a number that is not zero below the line"
        )
    number = int(whole or 0) + int(above) / int(below)
    try:
        return Quantity(*_with_unit(number, unit, text), span)
    except LanguageError as error:
        raise error.moved(span[0]) from None


def negated(reading: Quantity, span: Span) -> Quantity:
    """Return the reading of minus the number, so that `-5 degC` is five degrees below its zero."""
    value = 2 * _unit(reading.unit).offset - reading.value
    return Quantity(-reading.number, reading.unit, value, reading.dimension, False, span)


def _with_unit(number: float, unit_text: str, text: str) -> _Value:
    """Return a number of a unit; an error's span is that in `text`."""
    if not unit_text:
        return _Value(number, "", number, PLAIN, True)
    try:
        unit = _unit(unit_text)
    except UnknownUnit as unknown:
        start = len(text) - len(unit_text)
        fault = (start + unknown.span[0], start + unknown.span[1])
        mend = f"write {unknown.nearest}" if unknown.nearest else None
        raise LanguageError(fault, unknown.why, unit_text, "a unit", mend) from None
    value = number * unit.above / unit.below + unit.offset
    if not isfinite(value):
        raise _out_of_range(text)
    return _Value(number, unit.symbol, value, unit.dimension, unit.offset == 0)


@lru_cache(maxsize=512)
def _unit(text: str) -> _Ratio:
    """Read a unit. 18 / 1000 is the float nearest to 0.018; 18 * 0.001 is not."""
    unit = parse_unit(text)
    above, below = exact_factor(unit).as_integer_ratio()
    exact = max(above, below) <= LARGEST_EXACT
    ratio = (float(above), float(below)) if exact else (unit.factor, 1.0)
    return _Ratio(unit.symbol, *ratio, unit.offset, unit.dimension)


def _out_of_range(text: str) -> LanguageError:
    expected = "a number between 1e-300 and 1e300"
    return LanguageError((0, len(text)), "the number is too large or too small", text, expected)
