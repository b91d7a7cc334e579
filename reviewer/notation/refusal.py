"""The error of a text that is no quantity, and the words that its messages share."""

import re
from collections.abc import Mapping

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
from reviewer.notation.units import UNITS, Unit, UnknownUnit, nearest_unit
from reviewer.notation.written import Amount, Written

_WEIGHTS = {"kg": "kgf", "lb": "lbf", "oz": "ozf"}
_THOUSANDTHS = ("mil", "mils", "thou")
_LAST_NUMBER = re.compile(r"(?<![\d./])\d+(?:\.\d+)?$", re.ASCII)

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
    number = _LAST_NUMBER.search(before)
    if error.symbol.casefold() in _THOUSANDTHS:
        return _thousandth(found, number[0] if number else "3", (start, end))
    alone = (start, end) == span
    near = (nearest_unit(error.symbol, expected) if alone and expected else None) or error.nearest
    gap = " " if before[-1:].isdigit() else ""
    mended = f"{before}{gap or text[len(before) : start]}{near}{text[end:]}".strip()
    known = [symbol for symbol, unit in UNITS.items() if unit.dimension == expected]
    listed = ", ".join(known) if known else "mm, in, kg, N, lbf, MPa, deg"
    mend = f"write {plain(mended)}" if near else None
    return QuantityError(error.why, found, f"a unit such as {listed}", mend, (start, end))


def _thousandth(found: str, number: str, span: tuple[int, int]) -> QuantityError:
    """Refuse `mil`, which has two meanings, and `thou`, which has one and is not in the table."""
    inches = f"{float(number) / 1000:.10g} in"
    if found.casefold() == "thou":
        what, expected = "the unit is not known", "thousandths of an inch written in inches"
        return QuantityError(what, found, expected, f"write {inches}", span)
    what = "mil may be a thousandth of an inch or a millimetre"
    return QuantityError(what, found, "in or mm", f"write {inches} or {number} mm", span)


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
    mend = f"write {plain(number)} {other}" if other else None
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
