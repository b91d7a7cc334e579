"""Units to show results in: those that a file uses for like values."""

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from reviewer.notation.dimension import (
    DENSITY,
    ENERGY,
    FORCE,
    LENGTH,
    MASS,
    PRESSURE,
    STIFFNESS,
    Dimension,
)
from reviewer.notation.units import Unit, parse_unit

# Moduli are written in these, but a stress shown in them would be all zeros.
FOR_MODULI = frozenset({"GPa"})
INCH_TRADE = MappingProxyType(
    {
        FORCE: parse_unit("lbf"),
        MASS: parse_unit("lb"),
        PRESSURE: parse_unit("psi"),
        ENERGY: parse_unit("lbf in"),
        STIFFNESS: parse_unit("lbf/in"),
        DENSITY: parse_unit("lb/ft^3"),
    }
)


def preferred_units(used: Iterable[Unit]) -> Mapping[Dimension, Unit]:
    """The unit of each dimension that a file uses first; the rest of an inch file in inch units.

    >>> str(preferred_units([parse_unit("in")])[FORCE].symbol)
    'lbf'
    """
    found: dict[Dimension, Unit] = {}
    for unit in used:
        if unit.symbol not in FOR_MODULI and unit.symbol not in ("%", "1"):
            found.setdefault(unit.dimension, unit)
    if found.get(LENGTH) in (parse_unit("in"), parse_unit("ft")):
        return {**INCH_TRADE, **found}
    return found
