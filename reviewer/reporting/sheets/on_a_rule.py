"""Lengths as they are set on a rule: to 0.1 mm, or to the nearest 64th of an inch."""

from math import isnan

from reviewer.notation.show import show
from reviewer.notation.units import Unit

SIXTY_FOURTH = 0.0254 / 64
TENTH = 1e-4  # m


def on_a_rule(value: float, unit: Unit) -> str:
    """A length without its unit, as near as a rule in that unit shows it; nothing if unknown.

    >>> from reviewer.notation.units import parse_unit
    >>> on_a_rule(0.11316, parse_unit("mm")), on_a_rule(0.11316, parse_unit("in"))
    ('113.2', '4 29/64')
    >>> on_a_rule(0.29, parse_unit("mm")), on_a_rule(-0.00001, parse_unit("cm"))
    ('290.0', '0.00')
    """
    if isnan(value):
        return ""
    if unit.symbol == "in":
        return show(round(value / SIXTY_FOURTH) * SIXTY_FOURTH, unit).removesuffix(" in")
    digits = round_digits(unit)
    text = f"{value / unit.factor + 0.0:.{digits}f}"
    return text.removeprefix("-") if not text.strip("-0.") else text


def round_digits(unit: Unit) -> int:
    """Digits behind the point that show a tenth of a millimetre.

    >>> from reviewer.notation.units import parse_unit
    >>> [round_digits(parse_unit(symbol)) for symbol in ("mm", "cm", "m")]
    [1, 2, 4]
    """
    digits, step = 0, unit.factor
    while step > TENTH * 1.01 and digits < 6:
        step, digits = step / 10, digits + 1
    return digits
