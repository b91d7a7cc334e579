"""Round plates with a round hole, by the functions of Roark's table 11.2."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_HOLE = "the hole must be smaller than the plate and larger than a tenth of a per cent of it"


class AnnularPlate(NamedTuple):
    """What an annular plate does: deflection of its inner edge and its governing moment."""

    deflection: Number
    moment: Number


def _has_hole(hole_radius: Number, radius: Number) -> Any:
    return (hole_radius >= 1e-3 * radius) & (hole_radius < radius)


class _Functions(NamedTuple):
    """Roark's plate constants at the hole and load constants for a load from the hole outwards."""

    c1: Number
    c2: Number
    c4: Number
    c7: Number
    c8: Number
    l3: Number
    l6: Number
    l9: Number
    l11: Number
    l14: Number
    l17: Number


def _functions(x: Number, nu: Number) -> _Functions:
    """The constants for x = hole radius / radius, with the load starting at the hole."""
    log = -np.log(x)
    square = x * x
    l9 = x * ((1 + nu) / 2 * log + (1 - nu) / 4 * (1 - square))
    return _Functions(
        (1 + nu) / 2 * x * log + (1 - nu) / 4 * (1 / x - x),
        (1 - square * (1 + 2 * log)) / 4,
        ((1 + nu) * x + (1 - nu) / x) / 2,
        (1 - nu * nu) / 2 * (1 / x - x),
        (1 + nu + (1 - nu) * square) / 2,
        x / 4 * ((square + 1) * log + square - 1),
        x / 4 * (square - 1 + 2 * log),
        l9,
        (1 + 4 * square - 5 * square * square - 4 * square * (2 + square) * log) / 64,
        (1 - square * square - 4 * square * log) / 16,
        (1 - (1 - nu) / 4 * (1 - square * square) - square * (1 + (1 + nu) * log)) / 4,
    )


@valid_when(_has_hole, _HOLE)
@defined(positive="hole_radius radius rigidity")
def annular_simple_ring_load(
    line_load: Number, hole_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> AnnularPlate:
    """Annular plate resting on its outer edge, loaded along the free edge of its hole.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 11.2 case 1a.

    Parameters
    ----------
    line_load : load per length of the hole's edge [N/m]
    hole_radius : radius of the hole [m]
    radius : radius of the supported edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection of the hole's edge along the load [m]
    moment : tangential moment per length at the hole's edge [N]

    Notes
    -----
    w a^3/D (C1 L9/C7 - L3); D (1 - nu^2)/b times the slope w a^2 L9/(D C7). Thin plate.

    >>> plate = annular_simple_ring_load(1.0, 0.5, 1.0, 1.0, 0.3)
    >>> round(float(plate.deflection), 4), round(float(plate.moment), 4)
    (0.1933, 0.7757)
    """
    x = hole_radius / radius
    f = _functions(x, poisson)
    slope = f.l9 / f.c7
    unit = line_load * radius
    return AnnularPlate(
        unit * radius * radius / rigidity * (f.c1 * slope - f.l3),
        unit * slope * (1 - poisson * poisson) / x,
    )


@valid_when(_has_hole, _HOLE)
@defined(positive="hole_radius radius rigidity")
def annular_guided_ring_load(
    line_load: Number, hole_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> AnnularPlate:
    """Annular plate resting on its outer edge, loaded along a hole whose edge cannot tilt.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 11.2 case 1b.

    Parameters
    ----------
    line_load : load per length of the hole's edge [N/m]
    hole_radius : radius of the hole [m]
    radius : radius of the supported edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection of the hole's edge along the load [m]
    moment : radial moment per length at the hole's edge [N]

    Notes
    -----
    w a^3/D (C2 L9/C8 - L3); w a L9/C8. Thin plate.

    >>> plate = annular_guided_ring_load(1.0, 0.5, 1.0, 1.0, 0.3)
    >>> round(float(plate.deflection), 4), round(float(plate.moment), 4)
    (0.0252, 0.3944)
    """
    f = _functions(hole_radius / radius, poisson)
    moment = f.l9 / f.c8
    unit = line_load * radius
    return AnnularPlate(unit * radius * radius / rigidity * (f.c2 * moment - f.l3), unit * moment)


@valid_when(_has_hole, _HOLE)
@defined(positive="hole_radius radius rigidity")
def annular_fixed_ring_load(
    line_load: Number, hole_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> AnnularPlate:
    """Annular plate clamped at its outer edge, loaded along the free edge of its hole.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 11.2 case 1e.

    Parameters
    ----------
    line_load : load per length of the hole's edge [N/m]
    hole_radius : radius of the hole [m]
    radius : radius of the clamped edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection of the hole's edge along the load [m]
    moment : radial moment per length at the clamped edge, negative where hogging [N]

    Notes
    -----
    w a^3/D (C1 L6/C4 - L3); -w a (L9 - C7 L6/C4). Thin plate.

    >>> plate = annular_fixed_ring_load(1.0, 0.5, 1.0, 1.0, 0.3)
    >>> round(float(plate.deflection), 4), round(float(plate.moment), 4)
    (0.0233, -0.2379)
    """
    f = _functions(hole_radius / radius, poisson)
    slope = f.l6 / f.c4
    unit = line_load * radius
    return AnnularPlate(
        unit * radius * radius / rigidity * (f.c1 * slope - f.l3), unit * (f.c7 * slope - f.l9)
    )


@valid_when(_has_hole, _HOLE)
@defined(positive="hole_radius radius rigidity")
def annular_simple_uniform(
    pressure: Number, hole_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> AnnularPlate:
    """Annular plate resting on its outer edge, evenly loaded, free at its hole.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 11.2 case 2a.

    Parameters
    ----------
    pressure : load per area [Pa]
    hole_radius : radius of the hole [m]
    radius : radius of the supported edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection of the hole's edge along the load [m]
    moment : tangential moment per length at the hole's edge [N]

    Notes
    -----
    q a^4/D (C1 L17/C7 - L11); D (1 - nu^2)/b times the slope q a^3 L17/(D C7). Thin plate.

    >>> plate = annular_simple_uniform(1.0, 0.5, 1.0, 1.0, 0.3)
    >>> round(float(plate.deflection), 4), round(float(plate.moment), 4)
    (0.0624, 0.2404)
    """
    x = hole_radius / radius
    f = _functions(x, poisson)
    slope = f.l17 / f.c7
    unit = pressure * radius * radius
    return AnnularPlate(
        unit * radius * radius / rigidity * (f.c1 * slope - f.l11),
        unit * slope * (1 - poisson * poisson) / x,
    )


@valid_when(_has_hole, _HOLE)
@defined(positive="hole_radius radius rigidity")
def annular_guided_uniform(
    pressure: Number, hole_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> AnnularPlate:
    """Annular plate resting on its outer edge, evenly loaded, whose hole's edge cannot tilt.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 11.2 case 2b.

    Parameters
    ----------
    pressure : load per area [Pa]
    hole_radius : radius of the hole [m]
    radius : radius of the supported edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection of the hole's edge along the load [m]
    moment : radial moment per length at the hole's edge [N]

    Notes
    -----
    q a^4/D (C2 L17/C8 - L11); q a^2 L17/C8. Thin plate.

    >>> plate = annular_guided_uniform(1.0, 0.5, 1.0, 1.0, 0.3)
    >>> round(float(plate.deflection), 4), round(float(plate.moment), 4)
    (0.0103, 0.1223)
    """
    f = _functions(hole_radius / radius, poisson)
    moment = f.l17 / f.c8
    unit = pressure * radius * radius
    return AnnularPlate(unit * radius * radius / rigidity * (f.c2 * moment - f.l11), unit * moment)


@valid_when(_has_hole, _HOLE)
@defined(positive="hole_radius radius rigidity")
def annular_fixed_uniform(
    pressure: Number, hole_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> AnnularPlate:
    """Annular plate clamped at its outer edge, evenly loaded, free at its hole.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 11.2 case 2e.

    Parameters
    ----------
    pressure : load per area [Pa]
    hole_radius : radius of the hole [m]
    radius : radius of the clamped edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection of the hole's edge along the load [m]
    moment : radial moment per length at the clamped edge, negative where hogging [N]

    Notes
    -----
    q a^4/D (C1 L14/C4 - L11); -q a^2 (L17 - C7 L14/C4). Thin plate.

    >>> plate = annular_fixed_uniform(1.0, 0.5, 1.0, 1.0, 0.3)
    >>> round(float(plate.deflection), 4), round(float(plate.moment), 4)
    (0.0053, -0.08)
    """
    f = _functions(hole_radius / radius, poisson)
    slope = f.l14 / f.c4
    unit = pressure * radius * radius
    return AnnularPlate(
        unit * radius * radius / rigidity * (f.c1 * slope - f.l11), unit * (f.c7 * slope - f.l17)
    )
