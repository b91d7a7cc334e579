"""The closed table of units: symbol, exact factor, dimension.

No unit is taken from anywhere else: a text from a file can only name what stands here. `mil` is
left out on purpose, since it is a thousandth of an inch to one reader and a millimetre to another.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import pi
from types import MappingProxyType

from reviewer.notation.dimension import (
    ANGLE,
    ENERGY,
    FORCE,
    FREQUENCY,
    LENGTH,
    MASS,
    NUMBER,
    POWER,
    PRESSURE,
    TEMPERATURE,
    TIME,
    VOLUME,
    Dimension,
)


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: SI value = number * factor + offset (the offset is for degC and degF alone)."""

    symbol: str
    factor: float
    offset: float
    dimension: Dimension


# Exact by definition: inch and pound of 1959, standard gravity of 1901 (NIST SP 811, appendix B.8).
_INCH = Fraction("0.0254")
_POUND = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_PI = Fraction(pi)  # the double nearest to it
_ICE = Fraction("273.15")

EXACT: Mapping[str, tuple[Fraction, Dimension]] = {
    "1": (Fraction(1), NUMBER),
    "%": (Fraction(1, 100), NUMBER),
    "um": (Fraction(1, 10**6), LENGTH),
    "mm": (Fraction(1, 1000), LENGTH),
    "cm": (Fraction(1, 100), LENGTH),
    "m": (Fraction(1), LENGTH),
    "km": (Fraction(1000), LENGTH),
    "in": (_INCH, LENGTH),
    "ft": (12 * _INCH, LENGTH),
    "yd": (36 * _INCH, LENGTH),
    "ml": (Fraction(1, 10**6), VOLUME),
    "l": (Fraction(1, 1000), VOLUME),
    "mg": (Fraction(1, 10**6), MASS),
    "g": (Fraction(1, 1000), MASS),
    "kg": (Fraction(1), MASS),
    "t": (Fraction(1000), MASS),
    "oz": (_POUND / 16, MASS),
    "lb": (_POUND, MASS),
    "N": (Fraction(1), FORCE),
    "daN": (Fraction(10), FORCE),
    "kN": (Fraction(1000), FORCE),
    "kgf": (_GRAVITY, FORCE),
    "ozf": (_POUND / 16 * _GRAVITY, FORCE),
    "lbf": (_POUND * _GRAVITY, FORCE),
    "kip": (1000 * _POUND * _GRAVITY, FORCE),
    "Pa": (Fraction(1), PRESSURE),
    "kPa": (Fraction(1000), PRESSURE),
    "MPa": (Fraction(10**6), PRESSURE),
    "GPa": (Fraction(10**9), PRESSURE),
    "bar": (Fraction(10**5), PRESSURE),
    "psi": (_POUND * _GRAVITY / (_INCH * _INCH), PRESSURE),
    "ksi": (1000 * _POUND * _GRAVITY / (_INCH * _INCH), PRESSURE),
    "rad": (Fraction(1), ANGLE),
    "mrad": (Fraction(1, 1000), ANGLE),
    "deg": (_PI / 180, ANGLE),
    "arcmin": (_PI / 10800, ANGLE),
    "ms": (Fraction(1, 1000), TIME),
    "s": (Fraction(1), TIME),
    "min": (Fraction(60), TIME),
    "h": (Fraction(3600), TIME),
    "day": (Fraction(86400), TIME),
    "Hz": (Fraction(1), FREQUENCY),
    "rpm": (_PI / 30, FREQUENCY),
    "K": (Fraction(1), TEMPERATURE),
    "degC": (Fraction(1), TEMPERATURE),
    "degF": (Fraction(5, 9), TEMPERATURE),
    "J": (Fraction(1), ENERGY),
    "kJ": (Fraction(1000), ENERGY),
    "W": (Fraction(1), POWER),
    "kW": (Fraction(1000), POWER),
}
OFFSETS: Mapping[str, Fraction] = {"degC": _ICE, "degF": _ICE - 32 * Fraction(5, 9)}

UNITS: Mapping[str, Unit] = MappingProxyType(
    {
        symbol: Unit(symbol, float(factor), float(OFFSETS.get(symbol, 0)), dimension)
        for symbol, (factor, dimension) in EXACT.items()
    }
)
