"""The closed table of units against pint, and the reading of compound units."""

import pickle
import subprocess
import sys
from math import isclose, pi

import pint
import pytest

from reviewer.notation.dimension import (
    AREA,
    DENSITY,
    FORCE,
    FREQUENCY,
    LENGTH,
    MOMENT,
    NUMBER,
    PRESSURE,
    SECOND_MOMENT,
    STIFFNESS,
    si_symbol,
)
from reviewer.notation.units import UNITS, UnknownUnit, nearest_unit, parse_unit, si_unit

ORACLE = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
PINT_NAMES = {"1": "dimensionless", "%": "percent"}

COMPOUNDS = [
    # as we write it, as pint does, as it is printed
    ("N/mm", "N/mm", "N/mm"),
    ("kN/mm", "kN/mm", "kN/mm"),
    ("kg/m^3", "kg/m**3", "kg/m^3"),
    ("kg/m3", "kg/m**3", "kg/m^3"),
    ("kg/m³", "kg/m**3", "kg/m^3"),
    ("g/cm3", "g/cm**3", "g/cm^3"),
    ("N m", "N*m", "N m"),
    ("N*m", "N*m", "N m"),
    ("N·m", "N*m", "N m"),
    ("N⋅m", "N*m", "N m"),
    ("kN m", "kN*m", "kN m"),
    ("m^4", "m**4", "m^4"),
    ("mm**4", "mm**4", "mm^4"),
    ("mm⁴", "mm**4", "mm^4"),
    ("kN/m^2", "kN/m**2", "kN/m^2"),
    ("lbf in", "lbf*in", "lbf in"),
    ("lbf ft", "lbf*ft", "lbf ft"),
    ("lbf/in", "lbf/in", "lbf/in"),
    ("lb/ft^3", "lb/ft**3", "lb/ft^3"),
    ("lbf/ft2", "lbf/ft**2", "lbf/ft^2"),
    ("N/mm/mm", "N/mm/mm", "N/mm/mm"),
    ("N mm^-1", "N/mm", "N/mm"),
    ("N m/deg", "N*m/deg", "N m/deg"),
    ("1/s", "1/s", "1/s"),
    ("/s", "1/s", "1/s"),
    ("s^-1", "1/s", "1/s"),
    ("1/K", "1/K", "1/K"),
    ("m/s^2", "m/s**2", "m/s^2"),
    ("kg m^2", "kg*m**2", "kg m^2"),
    ("N^2", "N**2", "N^2"),
    (" N  /  mm ", "N/mm", "N/mm"),
]


def base(text):
    """Return pint's factor, exponents and whether radians are all that is left."""
    quantity = ORACLE.Quantity(1, text).to_base_units()
    powers = quantity.dimensionality
    exponents = tuple(
        powers.get(name, 0) for name in ("[length]", "[mass]", "[time]", "[temperature]")
    )
    return quantity.magnitude, exponents, quantity.dimensionless and "radian" in str(quantity.units)


@pytest.mark.parametrize("symbol", UNITS)
def test_every_unit_agrees_with_pint(symbol):
    unit, name = UNITS[symbol], PINT_NAMES.get(symbol, symbol)
    one, exponents, is_angle = base(name)
    zero = ORACLE.Quantity(0, name).to_base_units().magnitude
    assert isclose(unit.offset, zero, rel_tol=1e-14, abs_tol=1e-12)
    assert isclose(unit.factor + unit.offset, one, rel_tol=1e-14)
    assert unit.dimension.exponents == exponents
    assert unit.dimension.angle == is_angle
    assert unit.symbol == symbol
    assert parse_unit(symbol) == unit


@pytest.mark.parametrize(("text", "name", "symbol"), COMPOUNDS)
def test_compound_units_agree_with_pint(text, name, symbol):
    unit = parse_unit(text)
    factor, exponents, _ = base(name)
    assert isclose(unit.factor, factor, rel_tol=1e-14)
    assert unit.dimension.exponents == exponents
    assert unit.symbol == symbol
    assert parse_unit(unit.symbol) == unit


# NIST Special Publication 811 (2008), appendix B.8; an asterisk there marks an exact factor.
NIST = [
    ("in", 2.54e-2, 0),
    ("ft", 3.048e-1, 0),
    ("yd", 9.144e-1, 0),
    ("lb", 4.535924e-1, 5e-8),
    ("oz", 2.834952e-2, 5e-9),
    ("lbf", 4.448222, 5e-7),
    ("kgf", 9.80665, 0),
    ("kip", 4.448222e3, 5e-4),
    ("psi", 6.894757e3, 5e-4),
    ("ksi", 6.894757e6, 5e-1),
    ("bar", 1e5, 0),
    ("deg", 1.745329e-2, 5e-9),
    ("rpm", 1.047198e-1, 5e-8),
    ("lbf in", 1.129848e-1, 5e-8),
    ("lbf ft", 1.355818, 5e-7),
    ("lbf/in", 1.751268e2, 5e-5),
    ("lb/ft^3", 1.601846e1, 5e-6),
    ("lbf/ft^2", 4.788026e1, 5e-6),
]


@pytest.mark.parametrize(("text", "factor", "half_a_digit"), NIST)
def test_factors_of_nist_sp_811(text, factor, half_a_digit):
    assert abs(parse_unit(text).factor - factor) <= half_a_digit


def test_dimensions_of_compound_units():
    assert parse_unit("N/mm").dimension == STIFFNESS
    assert parse_unit("kg/m3").dimension == DENSITY
    assert parse_unit("N m").dimension == MOMENT
    assert parse_unit("N/mm^2").dimension == PRESSURE
    assert parse_unit("mm^4").dimension == SECOND_MOMENT
    assert parse_unit("deg/s").dimension == FREQUENCY
    assert parse_unit("mm/mm").dimension == NUMBER
    assert isclose(parse_unit("N m/deg").factor, 180 / pi)


@pytest.mark.parametrize("text", ["", "1", " ", " 1 "])
def test_no_unit_is_the_plain_number(text):
    assert parse_unit(text) == UNITS["1"]
    assert UNITS["1"].dimension == NUMBER


REFUSED = [
    # text, symbol at fault, span, nearest, message
    (
        *("mil", "mil", (0, 3), None),
        "'mil': mil may be a thousandth of an inch or a millimetre",
    ),
    ("Mpa", "Mpa", (0, 3), "MPa", "'Mpa': the unit is not known; write MPa"),
    ("N/Mm", "Mm", (2, 4), "mm", "'Mm': the unit is not known; write mm"),
    ("kNm", "kNm", (0, 3), "kN m", "'kNm': the unit is not known; write kN m"),
    ("inches", "inches", (0, 6), "in", "'inches': the unit is not known; write in"),
    ("furlong", "furlong", (0, 7), None, "'furlong': the unit is not known"),
    ("5", "5", (0, 1), None, "'5': a unit is missing here"),
    ("N/", "", (2, 2), None, "'': a unit is missing here"),
    ("N//m", "/m", (2, 4), None, "'/m': a unit is missing here"),
    ("N^", "^", (1, 2), None, "'^': the unit goes on with what is no unit"),
    ("m٣", "٣", (1, 2), None, "'٣': the unit goes on with what is no unit"),
    ("m^9", "m^9", (0, 3), None, "'m^9': a power must be from 1 to 6, or from -1 to -6"),
    ("m^0", "m^0", (0, 3), None, "'m^0': a power must be from 1 to 6, or from -1 to -6"),
    (
        *("m^99999999", "m^99999999", (0, 10), None),
        "'m^99999999': a power must be from 1 to 6, or from -1 to -6",
    ),
    (
        *("N/mm m", "N/mm m", (0, 6), None),
        "'N/mm m': a product after / can be read in two ways; write / before each unit divided by",
    ),
    (
        *("W/m/degC", "degC", (4, 8), "K"),
        "'degC': the unit has a zero of its own and cannot be multiplied or divided; write K",
    ),
    (
        *("degC^2", "degC", (0, 4), "K"),
        "'degC': the unit has a zero of its own and cannot be multiplied or divided; write K",
    ),
    ("N N N N N", "N N N N N", (0, 9), None, "'N N N N N': a unit has at most 4 factors"),
    ("m" * 61, "m" * 60, (0, 61), None, f"'{'m' * 60}': the unit is too long"),
]


@pytest.mark.parametrize(("text", "symbol", "span", "near", "message"), REFUSED)
def test_error_of_a_unit(text, symbol, span, near, message):
    with pytest.raises(UnknownUnit) as caught:
        parse_unit(text)
    error = caught.value
    assert (error.symbol, error.span, error.nearest, str(error)) == (symbol, span, near, message)
    assert str(pickle.loads(pickle.dumps(error))) == message


def test_mil_is_not_in_the_table():
    assert "mil" not in UNITS
    assert nearest_unit("mil") is None


def test_the_table_cannot_be_changed():
    with pytest.raises(TypeError):
        UNITS["mil"] = UNITS["in"]


def test_the_nearest_unit_may_be_asked_of_one_dimension():
    assert nearest_unit("lbs") == "lb"
    assert nearest_unit("lbs", FORCE) == "lbf"
    assert nearest_unit("Mpa", LENGTH) is None
    assert nearest_unit("NM", MOMENT) == "N m"


@pytest.mark.parametrize("dimension", [STIFFNESS, DENSITY, AREA, FREQUENCY, SECOND_MOMENT])
def test_the_si_unit_of_a_dimension_is_coherent(dimension):
    unit = si_unit(dimension)
    assert parse_unit(si_symbol(dimension)) == unit
    assert unit.factor == 1.0


def test_notation_imports_neither_pint_nor_numpy():
    modules = ["quantity", "show", "problem", "nearest", "plain", "dimension", "units"]
    program = "import sys; " + "; ".join(f"import reviewer.notation.{each}" for each in modules)
    program += "; print(sorted({'pint', 'numpy', 'scipy', 'yaml'} & set(sys.modules)))"
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
