"""Numbers with units as they are printed, so that `read_quantity` reads them back."""

from collections.abc import Mapping
from math import isfinite, isinf, isnan

from reviewer.notation.dimension import (
    ANGLE,
    AREA,
    BED_MODULUS,
    COMPLIANCE,
    DENSITY,
    ENERGY,
    FORCE,
    LENGTH,
    MASS,
    PRESSURE,
    SECOND_MOMENT,
    STIFFNESS,
    TEMPERATURE,
    VOLUME,
    Dimension,
)
from reviewer.notation.units import Unit, parse_unit, si_unit

SIXTY_FOURTHS = 64
NEARLY = 1e-9
LEAST_PLAIN, MOST_PLAIN = 1e-4, 1e7

# The units of the trade where a file has none for like values; else the coherent SI unit.
DEFAULTS: Mapping[Dimension, Unit] = {
    LENGTH: parse_unit("mm"),
    AREA: parse_unit("mm^2"),
    VOLUME: parse_unit("cm^3"),
    SECOND_MOMENT: parse_unit("mm^4"),
    MASS: parse_unit("kg"),
    DENSITY: parse_unit("kg/m^3"),
    FORCE: parse_unit("N"),
    ENERGY: parse_unit("N m"),
    PRESSURE: parse_unit("MPa"),
    STIFFNESS: parse_unit("N/mm"),
    COMPLIANCE: parse_unit("mm/N"),
    BED_MODULUS: parse_unit("N/mm^3"),
    ANGLE: parse_unit("deg"),
    TEMPERATURE: parse_unit("degC"),
}


def unit_for(dimension: Dimension, preferred: Mapping[Dimension, Unit]) -> Unit:
    """Return the unit to print a dimension in: the file's for like values, else the trade's."""
    return preferred.get(dimension) or DEFAULTS.get(dimension) or si_unit(dimension)


def show_like(value: float, dimension: Dimension, preferred: Mapping[Dimension, Unit]) -> str:
    """Print an SI value in the unit that the file uses for like values."""
    return show(value, unit_for(dimension, preferred))


def show(value: float, unit: Unit, digits: int = 3) -> str:
    """Print an SI value in a unit, to `digits` significant digits.

    Digits before the point are never rounded away: 1234 mm is not 1230 mm. Inches come as a
    fraction where one of 64ths is exact. An unknown value (NaN) is "unknown".

    >>> show(0.01234, parse_unit("mm")), show(12400.0, parse_unit("kN m")), show(1250.0,
    ...     parse_unit("N")), show(0.0381, parse_unit("in")), show(0.3, parse_unit("1"))
    ('12.3 mm', '12.4 kN m', '1250 N', '1 1/2 in', '0.3')
    """
    if isnan(value):
        return "unknown"
    if isinf(value):
        return "infinite" if value > 0 else "minus infinite"
    number = (value - unit.offset) / unit.factor
    text = _inches(number) if unit.symbol == "in" else None
    text = text or _decimal(number, digits)
    return text if unit.symbol == "1" else f"{text} {unit.symbol}"


def _inches(number: float) -> str | None:
    """Write inches with a fraction of 64ths, where they are exact."""
    if not isfinite(number) or abs(number) > MOST_PLAIN:
        return None
    parts = round(number * SIXTY_FOURTHS)
    if abs(number - parts / SIXTY_FOURTHS) > NEARLY:
        return None
    sign = "-" if parts < 0 else ""
    whole, part = divmod(abs(parts), SIXTY_FOURTHS)
    below = SIXTY_FOURTHS
    while part and part % 2 == 0:
        part, below = part // 2, below // 2
    fraction = f"{part}/{below}" if part else ""
    return sign + " ".join(filter(None, [str(whole) if whole or not part else "", fraction]))


def _decimal(number: float, digits: int) -> str:
    """Write a number to some significant digits, with an exponent only where it is far from 1."""
    mantissa, _, exponent = f"{number:.{digits - 1}e}".partition("e")
    size = int(exponent)
    too_small = abs(float(f"{mantissa}e{size}")) < LEAST_PLAIN
    if number and (too_small or abs(number) >= MOST_PLAIN):
        return f"{_trimmed(mantissa)}e{size}"
    text = _trimmed(f"{number:.{max(digits - 1 - size, 0)}f}")
    return "0" if text == "-0" else text


def _trimmed(text: str) -> str:
    """Drop the zeros that end a decimal, and the point if nothing follows it."""
    return text.rstrip("0").rstrip(".") if "." in text else text
