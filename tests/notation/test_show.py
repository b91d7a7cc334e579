"""Numbers as they are printed, and that they can be read back."""

from fractions import Fraction
from math import inf, isclose, nan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.notation.dimension import (
    ANGLE,
    AREA,
    DENSITY,
    FLEXURAL_RIGIDITY,
    FORCE,
    LENGTH,
    MASS,
    MOMENT,
    NUMBER,
    POWER,
    PRESSURE,
    SECOND_MOMENT,
    STIFFNESS,
    TEMPERATURE,
)
from reviewer.notation.quantity import read_quantity
from reviewer.notation.show import show, show_like, unit_for
from reviewer.notation.units import UNITS, parse_unit

FIXED = settings(derandomize=True, deadline=None, max_examples=300)


@pytest.mark.parametrize(
    ("value", "unit", "printed"),
    [
        (0.018, "mm", "18 mm"),
        (0.00015, "mm", "0.15 mm"),
        (1250.0, "N", "1250 N"),
        (12400.0, "kN m", "12.4 kN m"),
        (1.2344, "mm", "1234 mm"),  # whole millimetres are not rounded away
        (0.0123456, "mm", "12.3 mm"),
        (0.0099996, "mm", "10 mm"),
        (0.1, "m", "0.1 m"),
        (-0.003, "mm", "-3 mm"),
        (0.0, "mm", "0 mm"),
        (-0.0, "mm", "0 mm"),
        (1e-7, "mm", "0.0001 mm"),
        (1.23e-8, "mm", "1.23e-5 mm"),
        (9.9999e-8, "mm", "0.0001 mm"),
        (9999999.0, "N", "9999999 N"),
        (1e7, "N", "1e7 N"),
        (2.34e11, "Pa", "2.34e11 Pa"),
        (0.3, "1", "0.3"),
        (0.12, "%", "12 %"),
        (296.15, "degC", "23 degC"),
        (296.15, "degF", "73.4 degF"),
        (1.0471975511965976, "deg", "60 deg"),
        (680.0, "kg/m^3", "680 kg/m^3"),
        (nan, "mm", "unknown"),
        (inf, "N", "infinite"),
        (-inf, "N", "minus infinite"),
    ],
)
def test_show(value, unit, printed):
    assert show(value, parse_unit(unit)) == printed


@pytest.mark.parametrize(
    ("inches", "printed"),
    [
        (Fraction(3, 2), "1 1/2 in"),
        (Fraction(3, 4), "3/4 in"),
        (Fraction(-3, 4), "-3/4 in"),
        (Fraction(-3, 2), "-1 1/2 in"),
        (Fraction(2), "2 in"),
        (Fraction(0), "0 in"),
        (Fraction(1, 64), "1/64 in"),
        (Fraction(63, 32), "1 31/32 in"),
        (Fraction(1, 128), "0.00781 in"),
        (Fraction(1, 10), "0.1 in"),
        (Fraction("0.72"), "0.72 in"),
        (Fraction("12.345"), "12.3 in"),
    ],
)
def test_inches_are_fractions_where_they_are_exact(inches, printed):
    assert show(float(inches * Fraction(254, 10000)), UNITS["in"]) == printed


def test_more_digits_may_be_asked_for():
    assert show(0.0123456, UNITS["mm"], 5) == "12.346 mm"
    assert show(0.0123456, UNITS["mm"], 1) == "12 mm"


@pytest.mark.parametrize(
    ("dimension", "symbol"),
    [
        (LENGTH, "mm"),
        (FORCE, "N"),
        (MASS, "kg"),
        (PRESSURE, "MPa"),
        (ANGLE, "deg"),
        (MOMENT, "N m"),
        (STIFFNESS, "N/mm"),
        (DENSITY, "kg/m^3"),
        (TEMPERATURE, "degC"),
        (AREA, "mm^2"),
        (SECOND_MOMENT, "mm^4"),
        (NUMBER, "1"),
        (FLEXURAL_RIGIDITY, "N m^2"),
        (POWER / AREA, "kg/s^3"),
    ],
)
def test_units_of_the_trade_where_a_file_has_none(dimension, symbol):
    assert unit_for(dimension, {}).symbol == symbol


def test_the_files_unit_for_like_values():
    preferred = {LENGTH: UNITS["in"], FORCE: UNITS["lbf"]}
    assert unit_for(LENGTH, preferred) == UNITS["in"]
    assert show_like(0.0381, LENGTH, preferred) == "1 1/2 in"
    assert show_like(4.4482216152605 * 90, FORCE, preferred) == "90 lbf"
    assert show_like(9e6, PRESSURE, preferred) == "9 MPa"


NUMBERS = st.floats(min_value=1e-9, max_value=1e12) | st.floats(min_value=-1e12, max_value=-1e-9)


@FIXED
@given(NUMBERS, st.sampled_from(sorted(UNITS)), st.integers(min_value=1, max_value=9))
def test_what_is_shown_reads_back_within_the_digits_shown(number, symbol, digits):
    unit = UNITS[symbol]
    value = number * unit.factor + unit.offset
    if symbol in ("degC", "degF") and value < 0:
        value, number = 300.0, (300.0 - unit.offset) / unit.factor
    back = read_quantity(show(value, unit, digits), expected=unit.dimension)
    read = (back.value - unit.offset) / unit.factor
    rounding = 0.5000001 * 10.0 ** (1 - digits) * abs(number)
    assert abs(read - number) <= rounding + 1e-9 + 1e-12 * abs(unit.offset)
    assert symbol == "1" or back.unit == unit


@FIXED
@given(st.integers(min_value=-64_000, max_value=64_000))
def test_sixty_fourths_read_back_exactly(parts):
    value = float(Fraction(parts, 64) * Fraction(254, 10000))
    printed = show(value, UNITS["in"])
    assert "." not in printed
    assert read_quantity(printed).value == value


@FIXED
@given(st.floats(min_value=1e-4, max_value=9.99e6), st.integers(min_value=3, max_value=6))
def test_no_exponent_and_no_idle_zeros_in_the_usual_range(value, digits):
    printed = show(value, UNITS["1"], digits)
    assert "e" not in printed
    assert not ("." in printed and printed.endswith(("0", ".")))
    assert isclose(float(printed), value, rel_tol=0.51 * 10.0 ** (1 - digits))
