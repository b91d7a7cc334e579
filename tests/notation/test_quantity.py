"""Every written form of a quantity that is read, against values worked out by hand.

Sources of the factors: the inch is 25.4 mm and the pound 0.45359237 kg by the international yard
and pound agreement of 1959, standard gravity 9.80665 m/s^2 (CGPM 1901), 0 degC is 273.15 K
(SI Brochure, 9th edition): all exact. Values are written as exact fractions and rounded once.
"""

import pickle
from fractions import Fraction
from math import isclose, pi

import pytest

from reviewer.notation.dimension import (
    ANGLE,
    DENSITY,
    FORCE,
    FREQUENCY,
    LENGTH,
    MASS,
    MOMENT,
    NUMBER,
    PRESSURE,
    STIFFNESS,
    TEMPERATURE,
    TIME,
    VOLUME,
)
from reviewer.notation.quantity import read_quantity
from reviewer.notation.units import UNITS, parse_unit

MM, INCH = Fraction(1, 1000), Fraction(254, 10000)
POUND, GRAVITY = Fraction(45359237, 10**8), Fraction(980665, 10**5)

FORMS = [
    # text, exact SI value, dimension, unit as written
    ("18 mm", 18 * MM, LENGTH, "mm"),
    ("18mm", 18 * MM, LENGTH, "mm"),
    ("  18 mm  ", 18 * MM, LENGTH, "mm"),
    ("18\u00a0mm", 18 * MM, LENGTH, "mm"),
    ("+18 mm", 18 * MM, LENGTH, "mm"),
    ("-3 mm", -3 * MM, LENGTH, "mm"),
    ("\u22123 mm", -3 * MM, LENGTH, "mm"),
    (".5 mm", MM / 2, LENGTH, "mm"),
    ("5. mm", 5 * MM, LENGTH, "mm"),
    ("0.1 mm", MM / 10, LENGTH, "mm"),
    ("007 mm", 7 * MM, LENGTH, "mm"),
    ("3/4 in", Fraction(3, 4) * INCH, LENGTH, "in"),
    ('3/4"', Fraction(3, 4) * INCH, LENGTH, "in"),
    ("3/4\u2033", Fraction(3, 4) * INCH, LENGTH, "in"),
    ("3/4\u201d", Fraction(3, 4) * INCH, LENGTH, "in"),
    ("3\u20444 in", Fraction(3, 4) * INCH, LENGTH, "in"),
    ("7/4 in", Fraction(7, 4) * INCH, LENGTH, "in"),
    ("1 1/2 in", Fraction(3, 2) * INCH, LENGTH, "in"),
    ("1-1/2 in", Fraction(3, 2) * INCH, LENGTH, "in"),
    ("1 1/2in", Fraction(3, 2) * INCH, LENGTH, "in"),
    ('1 1/2"', Fraction(3, 2) * INCH, LENGTH, "in"),
    ("-1 1/2 in", Fraction(-3, 2) * INCH, LENGTH, "in"),
    ("-1-1/2 in", Fraction(-3, 2) * INCH, LENGTH, "in"),
    ("1 1/3 ft", 16 * INCH, LENGTH, "ft"),
    ("5 ft 6 in", 66 * INCH, LENGTH, "ft"),
    ("5ft6in", 66 * INCH, LENGTH, "ft"),
    ("5ft3in", 63 * INCH, LENGTH, "ft"),
    ('5ft3"', 63 * INCH, LENGTH, "ft"),
    ("5 ft3", 5 * (12 * INCH) ** 3, VOLUME, "ft^3"),
    ("5 ft 6 1/2 in", Fraction(133, 2) * INCH, LENGTH, "ft"),
    ("5'-6 1/2\"", Fraction(133, 2) * INCH, LENGTH, "ft"),
    ("5'-6-1/2\"", Fraction(133, 2) * INCH, LENGTH, "ft"),
    ("5\u2032-6 1/2\u2033", Fraction(133, 2) * INCH, LENGTH, "ft"),
    ("5\u2019-6 1/2\u201d", Fraction(133, 2) * INCH, LENGTH, "ft"),
    ("5' 6\"", 66 * INCH, LENGTH, "ft"),
    ("5'6\"", 66 * INCH, LENGTH, "ft"),
    ("5' - 6\"", 66 * INCH, LENGTH, "ft"),
    ("-5'-6\"", -66 * INCH, LENGTH, "ft"),
    ('5 ft 6"', 66 * INCH, LENGTH, "ft"),
    ("5' 6 in", 66 * INCH, LENGTH, "ft"),
    ("5'-0\"", 60 * INCH, LENGTH, "ft"),
    ("0'-6.25\"", Fraction(25, 4) * INCH, LENGTH, "ft"),
    ("5'", 60 * INCH, LENGTH, "ft"),
    ("20 kg", Fraction(20), MASS, "kg"),
    ("2 lb 8 oz", Fraction(5, 2) * POUND, MASS, "lb"),
    ("90 lbf", 90 * POUND * GRAVITY, FORCE, "lbf"),
    ("400 N", Fraction(400), FORCE, "N"),
    ("1e3 N", Fraction(1000), FORCE, "N"),
    ("1.5E-3 kN", Fraction(3, 2), FORCE, "kN"),
    ("1e+3 N", Fraction(1000), FORCE, "N"),
    ("12 %", Fraction(12, 100), NUMBER, "%"),
    ("12%", Fraction(12, 100), NUMBER, "%"),
    ("23 degC", Fraction(29615, 100), TEMPERATURE, "degC"),
    ("-40 degC", Fraction(23315, 100), TEMPERATURE, "degC"),
    ("-40 degF", Fraction(23315, 100), TEMPERATURE, "degF"),
    ("32 degF", Fraction(27315, 100), TEMPERATURE, "degF"),
    ("300 K", Fraction(300), TEMPERATURE, "K"),
    ("9 GPa", Fraction(9 * 10**9), PRESSURE, "GPa"),
    ("1 psi", POUND * GRAVITY / INCH**2, PRESSURE, "psi"),
    ("680 kg/m3", Fraction(680), DENSITY, "kg/m^3"),
    ("680 kg/m^3", Fraction(680), DENSITY, "kg/m^3"),
    ("680 kg/m\u00b3", Fraction(680), DENSITY, "kg/m^3"),
    ("2 kN/mm", Fraction(2 * 10**6), STIFFNESS, "kN/mm"),
    ("12 N m", Fraction(12), MOMENT, "N m"),
    ("12 N\u00b7m", Fraction(12), MOMENT, "N m"),
    ("12 N*m", Fraction(12), MOMENT, "N m"),
    ("10 lbf in", 10 * POUND * GRAVITY * INCH, MOMENT, "lbf in"),
    ("1 1/2 h", Fraction(5400), TIME, "h"),
    ("1 h 30 min", Fraction(5400), TIME, "h"),
    ("3 1/s", Fraction(3), FREQUENCY, "1/s"),
    ("3 1/2 1/s", Fraction(7, 2), FREQUENCY, "1/s"),
    ("3/s", Fraction(3), FREQUENCY, "1/s"),
]


@pytest.mark.parametrize(("text", "exact", "dimension", "symbol"), FORMS)
def test_written_forms(text, exact, dimension, symbol):
    quantity = read_quantity(text)
    assert quantity.value == float(exact)
    assert (quantity.low, quantity.high) == (quantity.value, quantity.value)
    assert quantity.dimension == dimension
    assert quantity.unit == parse_unit(symbol)
    assert quantity.spread == "normal"
    assert quantity.text == text
    assert read_quantity(text, expected=dimension) == quantity


def test_angles_are_in_radians():
    assert isclose(read_quantity("60 deg").value, pi / 3, rel_tol=1e-15)
    assert isclose(read_quantity("180 deg").value, pi, rel_tol=1e-15)
    assert read_quantity("60 deg", expected=ANGLE).dimension == ANGLE
    assert isclose(read_quantity("60 rpm").value, 2 * pi, rel_tol=1e-15)


BANDS = [
    # text, exact SI low, value, high, spread
    ("18 mm ± 0.3 mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "normal"),
    ("18 mm±0.3 mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "normal"),
    ("18 mm +/- 0.3 mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "normal"),
    ("18 mm +/-0.3mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "normal"),
    ("(18 ± 0.3) mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "normal"),
    ("(18 +/- 0.3) mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "normal"),
    ("( 18 ± 0.3 ) mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "normal"),
    ("18 mm +0.2/-0.5 mm", Fraction("17.5") * MM, 18 * MM, Fraction("18.2") * MM, "normal"),
    ("18 mm +0.2 mm/-0.5 mm", Fraction("17.5") * MM, 18 * MM, Fraction("18.2") * MM, "normal"),
    ("18 mm + 0.2 / - 0.5 mm", Fraction("17.5") * MM, 18 * MM, Fraction("18.2") * MM, "normal"),
    ("18 mm +0/\u22120.5 mm", Fraction("17.5") * MM, 18 * MM, 18 * MM, "normal"),
    ("(18 +0.2/-0.5) mm", Fraction("17.5") * MM, 18 * MM, Fraction("18.2") * MM, "normal"),
    ("18 mm ± 0 mm", 18 * MM, 18 * MM, 18 * MM, "normal"),
    ("-3 mm ± 1 mm", -4 * MM, -3 * MM, -2 * MM, "normal"),
    ("18 mm ± 0.3 mm uniform", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "uniform"),
    ("(18 ± 0.3) mm uniform", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM, "uniform"),
    (
        *("18 mm +0.2/-0.5 mm uniform ", Fraction("17.5") * MM, 18 * MM, Fraction("18.2") * MM),
        "uniform",
    ),
    ("3/4 in ± 1/64 in", 47 * INCH / 64, 48 * INCH / 64, 49 * INCH / 64, "normal"),
    ("(1 1/2 ± 1/16) in", 23 * INCH / 16, 24 * INCH / 16, 25 * INCH / 16, "normal"),
    ('1 in +1/16/-1/8"', Fraction(7, 8) * INCH, INCH, Fraction(17, 16) * INCH, "normal"),
    ('5\' 6" ± 1/2"', Fraction(131, 2) * INCH, 66 * INCH, Fraction(133, 2) * INCH, "normal"),
    ("18 mm ± 1/16 in", 18 * MM - INCH / 16, 18 * MM, 18 * MM + INCH / 16, "normal"),
    ("(12 ± 2) %", Fraction(1, 10), Fraction(12, 100), Fraction(14, 100), "normal"),
    ("12 % ± 2 %", Fraction(1, 10), Fraction(12, 100), Fraction(14, 100), "normal"),
    # the tolerance of a temperature is a difference: 2 degC is 2 K, 9 degF is 5 K
    ("23 degC ± 2 degC", Fraction("294.15"), Fraction("296.15"), Fraction("298.15"), "normal"),
    ("23 degC ± 2 K", Fraction("294.15"), Fraction("296.15"), Fraction("298.15"), "normal"),
    ("(23 ± 2) degC", Fraction("294.15"), Fraction("296.15"), Fraction("298.15"), "normal"),
    ("23 degC ± 9 degF", Fraction("291.15"), Fraction("296.15"), Fraction("301.15"), "normal"),
]


@pytest.mark.parametrize(("text", "low", "value", "high", "spread"), BANDS)
def test_tolerances(text, low, value, high, spread):
    quantity = read_quantity(text)
    assert (quantity.low, quantity.value, quantity.high) == (float(low), float(value), float(high))
    assert quantity.spread == spread


BARE = [
    # text, declared unit, exact SI low, value, high
    ("18", "mm", 18 * MM, 18 * MM, 18 * MM),
    ("-3", "mm", -3 * MM, -3 * MM, -3 * MM),
    ("18 ± 0.3", "mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM),
    ("(18 ± 0.3)", "mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM),
    ("18 +0.2/-0.5", "mm", Fraction("17.5") * MM, 18 * MM, Fraction("18.2") * MM),
    ("18 ± 0.3 uniform", "mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM),
    ("18 ± 0.3 mm", "mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM),
    ("18 mm ± 0.3", "mm", Fraction("17.7") * MM, 18 * MM, Fraction("18.3") * MM),
    ("3/4", "in", Fraction(3, 4) * INCH, Fraction(3, 4) * INCH, Fraction(3, 4) * INCH),
    ("1 1/2", "in", Fraction(3, 2) * INCH, Fraction(3, 2) * INCH, Fraction(3, 2) * INCH),
    ("18 mm", "in", 18 * MM, 18 * MM, 18 * MM),
]


@pytest.mark.parametrize("expected", [None, LENGTH])
@pytest.mark.parametrize(("text", "symbol", "low", "value", "high"), BARE)
def test_bare_numbers_where_the_file_declares_lengths(text, symbol, low, value, high, expected):
    quantity = read_quantity(text, expected=expected, lengths=UNITS[symbol])
    assert (quantity.low, quantity.value, quantity.high) == (float(low), float(value), float(high))
    assert quantity.dimension == LENGTH


@pytest.mark.parametrize("lengths", [None, UNITS["mm"]])
@pytest.mark.parametrize(
    ("text", "value"), [("0.3", 0.3), ("30 %", 0.3), ("3/4", 0.75), ("-2", -2.0), ("1e3", 1000.0)]
)
def test_plain_numbers_are_bare_or_a_percentage(text, value, lengths):
    quantity = read_quantity(text, expected=NUMBER, lengths=lengths)
    assert (quantity.value, quantity.dimension) == (value, NUMBER)


def test_a_plain_number_may_have_a_tolerance():
    quantity = read_quantity("0.3 ± 0.05", expected=NUMBER)
    assert (quantity.low, quantity.high, quantity.unit.symbol) == (0.25, 0.35, "1")


def test_quantities_can_be_sent_between_processes_and_kept_in_sets():
    quantity = read_quantity("18 mm ± 0.3 mm")
    assert pickle.loads(pickle.dumps(quantity)) == quantity
    assert len({quantity, read_quantity("18 mm ± 0.3 mm")}) == 1
