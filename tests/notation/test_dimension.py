"""Dimensions multiply as physics has it, and an angle is kept apart from a plain number."""

from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.notation.dimension import (
    ACCELERATION,
    ANGLE,
    AREA,
    BED_MODULUS,
    COMPLIANCE,
    DENSITY,
    ENERGY,
    EXPANSION,
    FLEXURAL_RIGIDITY,
    FORCE,
    FREQUENCY,
    LENGTH,
    MASS,
    MOMENT,
    NUMBER,
    POWER,
    PRESSURE,
    SECOND_MOMENT,
    SPEED,
    STIFFNESS,
    TEMPERATURE,
    TIME,
    VOLUME,
    Dimension,
    si_symbol,
    words,
)

FIXED = settings(derandomize=True, deadline=None)
POWERS = st.fractions(min_value=-4, max_value=4, max_denominator=4)
DIMENSIONS = st.builds(Dimension, POWERS, POWERS, POWERS, POWERS)

# SI Brochure, 9th edition (BIPM 2019), table 4: derived units in terms of base units m, kg, s, K.
SI_BROCHURE = [
    ("newton", FORCE, (1, 1, -2, 0)),
    ("pascal", PRESSURE, (-1, 1, -2, 0)),
    ("joule", ENERGY, (2, 1, -2, 0)),
    ("watt", POWER, (2, 1, -3, 0)),
    ("hertz", FREQUENCY, (0, 0, -1, 0)),
]


@pytest.mark.parametrize(("unit", "dimension", "exponents"), SI_BROCHURE)
def test_named_units_have_the_exponents_of_the_si_brochure(unit, dimension, exponents):
    assert dimension.exponents == exponents


def test_products_quotients_and_rational_powers():
    assert FORCE / AREA == PRESSURE
    assert FORCE * LENGTH == MOMENT
    assert MASS * ACCELERATION == FORCE
    assert LENGTH / TIME == SPEED
    assert VOLUME ** Fraction(1, 3) == LENGTH
    assert (FORCE * FORCE) ** Fraction(1, 2) == FORCE
    assert hash(AREA ** Fraction(1, 2)) == hash(LENGTH)
    assert LENGTH**0 == NUMBER
    assert TEMPERATURE * EXPANSION == NUMBER


@pytest.mark.parametrize(
    ("result", "dimension"),
    [
        (ANGLE * NUMBER, ANGLE),
        (NUMBER * ANGLE, ANGLE),
        (ANGLE / NUMBER, ANGLE),
        (ANGLE / ANGLE, NUMBER),
        (NUMBER / ANGLE, NUMBER),
        (ANGLE * ANGLE, NUMBER),
        (LENGTH * ANGLE, LENGTH),
        (ANGLE * LENGTH, LENGTH),
        (MOMENT / ANGLE, MOMENT),
        (ANGLE / TIME, FREQUENCY),
        (ANGLE**1, ANGLE),
        (ANGLE**2, NUMBER),
        (ANGLE**0, NUMBER),
    ],
)
def test_an_angle_lasts_only_beside_plain_numbers(result, dimension):
    assert result == dimension


def test_an_angle_is_no_plain_number():
    assert ANGLE != NUMBER
    assert len({ANGLE, NUMBER}) == 2
    with pytest.raises(ValueError, match="an angle has no length, mass, time or temperature"):
        Dimension(length=1, angle=True)


@FIXED
@given(DIMENSIONS, DIMENSIONS, DIMENSIONS)
def test_dimensions_are_a_commutative_group(one, two, three):
    assert one * two == two * one
    assert (one * two) * three == one * (two * three)
    assert one * NUMBER == one
    assert one / one == NUMBER
    assert one / two * two == one


@FIXED
@given(DIMENSIONS, st.integers(min_value=1, max_value=5))
def test_a_root_undoes_a_power(one, power):
    assert (one**power) ** Fraction(1, power) == one


@pytest.mark.parametrize(
    ("dimension", "name"),
    [
        (LENGTH, "a length"),
        (FORCE, "a force"),
        (PRESSURE, "a pressure or stress"),
        (ANGLE, "an angle"),
        (NUMBER, "a plain number"),
        (MOMENT, "a moment or energy"),
        (STIFFNESS, "a stiffness or line load"),
        (FLEXURAL_RIGIDITY, "a quantity in N m^2"),
        (COMPLIANCE, "a quantity in m/N"),
        (NUMBER / LENGTH, "a quantity in 1/m"),
        (LENGTH ** Fraction(3, 2), "a quantity in m^(3/2)"),
        (MASS * LENGTH / TIME, "a quantity in kg m/s"),
    ],
)
def test_words(dimension, name):
    assert words(dimension) == name


def test_every_dimension_has_words_of_its_own():
    made = [Dimension(*exponents) for exponents in product((-2, -1, 0, 1, 2, 3, 4), repeat=2)] + [
        DENSITY,
        BED_MODULUS,
        SECOND_MOMENT,
        POWER,
        ANGLE,
        TEMPERATURE,
    ]
    assert len({words(each) for each in made}) == len(set(made))


def test_si_symbols():
    assert [si_symbol(each) for each in (FORCE, PRESSURE, DENSITY, FREQUENCY, ANGLE, NUMBER)] == [
        *("N", "N/m^2", "kg/m^3", "1/s", "rad", "1")
    ]
