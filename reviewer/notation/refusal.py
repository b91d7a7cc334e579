"""The error of a text that is no quantity, and the words that its messages share."""

import re
from collections.abc import Mapping
from unicodedata import category, decomposition, digit, normalize

from reviewer.notation.dimension import (
    ANGLE,
    AREA,
    DENSITY,
    ENERGY,
    FORCE,
    LENGTH,
    MASS,
    NUMBER,
    PRESSURE,
    STIFFNESS,
    TEMPERATURE,
    TIME,
    Dimension,
    words,
)
from reviewer.notation.plain import plain
from reviewer.notation.show import unit_for
from reviewer.notation.spellings import TRAPS
from reviewer.notation.units import UNITS, Unit, UnknownUnit, nearest_unit
from reviewer.notation.written import Amount, Written

_WEIGHTS = {"kg": "kgf", "lb": "lbf", "oz": "ozf"}
_LAST_NUMBER = re.compile(r"(?<![\d./])\d+(?:\.\d+)?$", re.ASCII)

# What a tolerance that cannot be read looks like: the first shape that fits says what is wrong.
_UNREAD_TOLERANCES = [
    (r"(?:±|\+/-)\s*-\s*(.*)", "the tolerance is negative", "write ± {0}"),
    (r"(?:±|\+/-)\s*\+\s*(.*)", "a sign follows ±", "write ± {0}"),
    (
        r"-\s*([\d.]+)\s*/\s*\+\s*([\d.]+)(.*)",
        *("the lower limit stands before the upper", "write +{1}/-{0}{2}"),
    ),
    (r"-\s*(.*)", "the upper limit of the tolerance is missing", "write +0/-{0}"),
    (r"\+\s*([\d.]+)\s*-\s*(.*)", "no / stands between the limits", "write +{0}/-{1}"),
    (r"\+\s*[+-].*", "two signs stand together", "write ± or +/- for both ways"),
    (r"\+[^/]*/\s*\+.*", "both limits lie above the value", "write a value between its limits"),
    (r"\+.*", "the lower limit of the tolerance is missing", "write /-0 after the upper limit"),
]

EXAMPLES: Mapping[Dimension, str] = {
    NUMBER: "0.3 or 30 %",
    LENGTH: "18 mm",
    AREA: "600 mm^2",
    MASS: "20 kg",
    TIME: "10 s",
    FORCE: "400 N",
    ENERGY: "12 N m",
    PRESSURE: "9 GPa",
    STIFFNESS: "2 kN/mm",
    DENSITY: "680 kg/m^3",
    ANGLE: "60 deg",
    TEMPERATURE: "23 degC",
}


class QuantityError(ValueError):
    """A text that is no quantity, or not the one that is due.

    `what` is one sentence, `found` the text at fault, `expected` what would be right, `mend` what
    to do, `span` the run of code points in the whole text that `found` stands in.
    """

    def __init__(
        self, what: str, found: str, expected: str, mend: str | None, span: tuple[int, int]
    ) -> None:
        super().__init__(what, found, expected, mend, span)
        self.what = what
        self.found = found
        self.expected = expected
        self.mend = mend
        self.span = span

    def __str__(self) -> str:
        mend = f"; {self.mend}" if self.mend else ""
        return f"{self.what}: found {self.found}, expected {self.expected}{mend}"


def due(expected: Dimension | None) -> str:
    """Say what should stand there, with an example.

    >>> due(LENGTH), due(None)
    ('a length, such as 18 mm', 'a number with its unit, such as 18 mm')
    """
    if expected is None:
        return f"a number with its unit, such as {EXAMPLES[LENGTH]}"
    example = EXAMPLES.get(expected) or f"1 {unit_for(expected, {}).symbol}"
    return f"{words(expected)}, such as {example}"


def unknown_unit(
    error: UnknownUnit, text: str, span: tuple[int, int], expected: Dimension | None
) -> QuantityError:
    """Turn a unit's error into a quantity's; the unit stands at `span` in `text`."""
    start, end = (span[0] + each for each in error.span)
    found = plain(text[start:end])
    before = text[:start].rstrip()
    if error.symbol.casefold() in TRAPS:
        number = _LAST_NUMBER.search(before)
        return _thousandth(error, number[0] if number else "3", (start, end))
    near = error.nearest if text[start - 1] in "/*·⋅" or start == span[0] else None
    if (start, end) == span and expected is not None:
        near = nearest_unit(error.symbol, expected)
    gap = " " if before[-1:].isdigit() else text[len(before) : start]
    mend = f"write {plain(before + gap + near + text[end:]).strip()}" if near else None
    due_here = f"a unit such as {', '.join(_like(expected))}"
    return QuantityError(error.why, found, due_here, mend, (start, end))


def _like(expected: Dimension | None) -> list[str]:
    """List the units in which a dimension may be written; the usual one first."""
    if expected is None:
        return ["mm", "in", "kg", "N", "lbf", "MPa", "deg"]
    usual = unit_for(expected, {}).symbol
    known = [symbol for symbol, unit in UNITS.items() if unit.dimension == expected]
    return list(dict.fromkeys([usual, *known]))


def _thousandth(error: UnknownUnit, number: str, span: tuple[int, int]) -> QuantityError:
    """Refuse `mil`, which has two meanings, and `thou`, which has one and is not in the table."""
    mend = f"write {float(number) / 1000:.10g} in"
    if error.symbol.casefold() != "thou":
        mend += f" or {number} mm"
    return QuantityError(error.why, plain(error.symbol), "in or mm", mend, span)


def without_unit(text: str, amount: Amount, expected: Dimension | None) -> QuantityError:
    """Refuse a bare number where nothing says what it is."""
    span = (amount.start, amount.end)
    found = plain(text[slice(*span)])
    mend = f"write {found} {unit_for(expected or LENGTH, {}).symbol}, if that is its unit"
    if expected in (None, LENGTH):
        mend += ", or declare lengths: mm at the top of the file"
    return QuantityError("the number has no unit", found, due(expected), mend, span)


def half_bare(text: str, written: Written) -> QuantityError:
    """Refuse 18 ± 0.3 mm, in which the unit of the 18 is a guess."""
    nominal, last = written.nominal, (written.band or [written.nominal])[-1]
    span = (nominal.start, last.end)
    found = plain(text[slice(*span)])
    if nominal.unit is None:
        unit = text[last.number_end : last.end].strip()
        mended = f"({text[nominal.start : last.number_end]}) {unit}"
    else:
        mended = f"{found} {nominal.unit.symbol}"
    what = "the value and its tolerance do not both have a unit"
    expected = "a unit after each, or one after brackets around both"
    return QuantityError(what, found, expected, f"write {plain(mended)}", span)


def wrong_dimension(text: str, amount: Amount, unit: Unit, expected: Dimension) -> QuantityError:
    """Refuse a quantity of another dimension; a mass for a force and a force for a mass are kin."""
    span = (amount.start, amount.end)
    found = plain(text[slice(*span)])
    kin = {(MASS, FORCE): _WEIGHTS, (FORCE, MASS): {to: of for of, to in _WEIGHTS.items()}}
    other = kin.get((unit.dimension, expected), {}).get(unit.symbol)
    number = text[amount.start : amount.number_end]
    mend = f"write {plain(number)} {other}" if other else f"write {words(expected)} with its unit"
    if expected == NUMBER:
        mend = "write the number without a unit, or with %"
    what = f"{words(unit.dimension)} stands where {words(expected)} is due"
    return QuantityError(what, found, due(expected), mend, span)


def wrong_tolerance(text: str, amount: Amount, unit: Unit, value_unit: Unit) -> QuantityError:
    """Refuse a tolerance that cannot be added to the value."""
    span = (amount.start, amount.end)
    found = plain(text[slice(*span)])
    value_words = words(value_unit.dimension)
    what = f"the value is {value_words}, its tolerance {words(unit.dimension)}"
    mend = f"write the tolerance in {value_unit.symbol}"
    return QuantityError(what, found, f"{value_words}, as the value is", mend, span)


def no_tolerance(text: str, start: int) -> QuantityError:
    """Refuse what begins as a tolerance does, and say how it would be written."""
    span = (start, len(text))
    found = text[start:].rstrip()
    fits = ((re.fullmatch(shape, found), what, mend) for shape, what, mend in _UNREAD_TOLERANCES)
    match, what, pattern = next(each for each in fits if each[0])
    mend = plain(pattern.format(*match.groups())) if match else None
    expected = "a tolerance such as ± 0.3 mm or +0.2/-0.5 mm"
    return QuantityError(what, plain(found), expected, mend, span)


def no_second_unit(text: str, span: tuple[int, int], smaller: str | None) -> QuantityError:
    """Refuse 5 ft 6."""
    found = plain(text[slice(*span)])
    what, expected = "the second number has no unit", "a unit after each number"
    mend = f"write {found} {smaller}" if smaller else "write one number with one unit"
    return QuantityError(what, found, expected, mend, span)


def not_one_quantity(text: str, span: tuple[int, int], unit: Unit, other: Unit) -> QuantityError:
    """Refuse 5 ft 6 kg, and other pairs of units that the trade does not write."""
    what = f"{unit.symbol} and {other.symbol} do not make one quantity"
    expected = "one number and unit, or feet and inches"
    mend = "write one number with one unit"
    return QuantityError(what, plain(text[slice(*span)]), expected, mend, span)


def unlike_parts(text: str, span: tuple[int, int], unit: Unit, total: str) -> QuantityError:
    """Refuse 5.5 ft 6 in and 5 ft 14 in, which are slips more often than not."""
    what = f"the two parts do not fit each other; together they are {total}"
    expected = f"whole {unit.symbol}, then less than one {unit.symbol}"
    return QuantityError(what, plain(text[slice(*span)]), expected, f"write {total}", span)


def foreign_digit(text: str, at: int) -> QuantityError:
    """Refuse digits of other scripts and ½; write them with 0 to 9, unless that changes them."""
    pieces = []
    for before, each in zip(" " + text, text, strict=False):
        if category(each) == "Nd":
            pieces.append(str(digit(each)))
        elif decomposition(each).startswith("<fraction>"):
            gap = " " if before.isdigit() else ""
            pieces.append(gap + normalize("NFKC", each).replace("\u2044", "/"))
        else:
            pieces.append(each)
    mended = "".join(pieces)
    mend = f"write {plain(mended)}" if mended.isascii() else None
    what, span = "a digit is not one of 0 to 9", (at, at + 1)
    return QuantityError(what, plain(text[at]), "the digits 0 to 9", mend, span)
