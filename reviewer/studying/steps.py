"""Sensible sizes: the steps in which a maker sets a length or any other number out."""

import math

from reviewer.notation.dimension import LENGTH
from reviewer.notation.units import Unit, exact_factor

LARGEST_STEP = 5e-3  # m
LARGEST_INCH_STEP = 1 / 8  # in
LEAST_INCH_STEP = 1 / 64  # in
PART = 20  # a step is at most this part of the value
NEARLY = 1e-6  # of a step: a size this near to one stands on it


def step_of(value: float, unit: Unit) -> float:
    """The step for sizes about an SI value, as a number of the unit; never 0.

    Lengths go in steps of 5 mm, or of 1/8 in; where that would be much of the value, in 1, 2 or 5
    of a smaller decimal, or in smaller fractions of an inch. Anything else goes in 1, 2 or 5 of a
    decimal that is about a twentieth of the value.

    >>> from reviewer.notation.units import parse_unit
    >>> step_of(0.64, parse_unit("mm")), step_of(0.0127, parse_unit("in"))
    (5.0, 0.015625)
    """
    number = abs(value / unit.factor)
    if number == 0.0 or not math.isfinite(number):
        number = 1.0
    if unit.symbol == "in" and number >= LEAST_INCH_STEP:
        fraction = 2.0 ** math.floor(math.log2(number / PART))
        return min(max(fraction, LEAST_INCH_STEP), LARGEST_INCH_STEP)
    step = _round_below(number / PART)
    if unit.dimension == LENGTH:
        step = min(step, LARGEST_STEP / unit.factor)
    return step


def _round_below(number: float) -> float:
    """The largest of 1, 2 and 5 times a power of ten that is not above a number."""
    power = 10.0 ** math.floor(math.log10(number))
    return max(each * power for each in (1.0, 2.0, 5.0) if each * power <= number * (1 + 1e-9))


def on_step(value: float, unit: Unit, *, up: bool, further: int = 0) -> float:
    """The SI value of the next step at or past a value, away from zero if `up`; or steps further.

    >>> from reviewer.notation.units import parse_unit
    >>> round(on_step(0.6874, parse_unit("mm"), up=True), 6)
    0.69
    """
    sign = -1.0 if value < 0 else 1.0
    step = step_of(value, unit)
    number = abs(value) / unit.factor / step
    whole = math.ceil(number - NEARLY) + further if up else math.floor(number + NEARLY) - further
    return sign * float(round(whole * step, 12) * exact_factor(unit))
