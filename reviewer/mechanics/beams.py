"""Beams on two supports, with and without an overhang."""

from math import inf

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


@valid_when(
    lambda position, at, span: (position >= 0) & (position <= span) & (at >= 0) & (at <= span),
    "the load and the place looked at must lie between the supports",
)
@defined(positive="span bending_stiffness shear_stiffness")
def beam_deflection(
    force: Number,
    position: Number,
    at: Number,
    span: Number,
    bending_stiffness: Number,
    shear_stiffness: Number = inf,
) -> Number:
    """Deflection anywhere on a beam on two supports under a force anywhere between them.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 5; shear: Timoshenko.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from the left support [m]
    at : distance of the place looked at from the left support [m]
    span : distance between the supports [m]
    bending_stiffness : E I [N m^2]
    shear_stiffness : kappa G A; without it shear is left out [N]

    Returns
    -------
    deflection : deflection at that place in the direction of the force [m]

    Notes
    -----
    P b x (L^2 - b^2 - x^2) / (6 L E I) + P b x / (L kappa G A) for x up to the force; b = L - a.

    >>> round(float(beam_deflection(48.0, 0.5, 0.5, 1.0, 100.0)), 6)
    0.01
    """
    left = np.minimum(position, at)
    right = span - np.maximum(position, at)
    product = force * right * left / span
    bending = product * (span * span - right * right - left * left) / (6 * bending_stiffness)
    deflection: Number = bending + product / shear_stiffness
    return deflection


@valid_when(
    lambda position, span: (position >= 0) & (position <= span),
    "the load must stand between the supports",
)
@defined(positive="span")
def beam_moment(force: Number, position: Number, span: Number) -> Number:
    """Bending moment under a force on a beam on two supports.

    Gere and Goodno, Mechanics of Materials (2009), 4.5.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from one support [m]
    span : distance between the supports [m]

    Returns
    -------
    moment : bending moment under the force, the largest in the beam [N m]

    Notes
    -----
    P a b / L.

    >>> beam_moment(100.0, 0.5, 1.0)
    25.0
    """
    return force * position * (span - position) / span


@valid_when(
    lambda position, span: (position >= 0) & (position <= span),
    "the load must stand between the supports",
)
@defined(positive="span bending_stiffness")
def beam_end_slope(
    force: Number, position: Number, span: Number, bending_stiffness: Number
) -> Number:
    """Slope at the support that the position is measured from.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 5.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from that support [m]
    span : distance between the supports [m]
    bending_stiffness : E I [N m^2]

    Returns
    -------
    slope : slope at that support [rad]

    Notes
    -----
    P b (L^2 - b^2) / (6 L E I), b = L - a.

    >>> round(beam_end_slope(16.0, 0.5, 1.0, 100.0), 6)
    0.01
    """
    other = span - position
    return force * other * (span * span - other * other) / (6 * span * bending_stiffness)


@defined(positive="span bending_stiffness shear_stiffness")
def beam_uniform_deflection(
    line_load: Number, span: Number, bending_stiffness: Number, shear_stiffness: Number = inf
) -> Number:
    """Deflection at the middle of a beam on two supports under an even load: a shelf.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 1; shear: Timoshenko.

    Parameters
    ----------
    line_load : load per length [N/m]
    span : distance between the supports [m]
    bending_stiffness : E I [N m^2]
    shear_stiffness : kappa G A; without it shear is left out [N]

    Returns
    -------
    deflection : deflection at the middle [m]

    Notes
    -----
    5 w L^4 / (384 E I) + w L^2 / (8 kappa G A).

    >>> beam_uniform_deflection(76.8, 1.0, 100.0)
    0.01
    """
    square = span * span
    bending = 5 * line_load * square * square / (384 * bending_stiffness)
    return bending + line_load * square / (8 * shear_stiffness)


@defined(positive="span")
def beam_uniform_moment(line_load: Number, span: Number) -> Number:
    """Bending moment at the middle of a beam on two supports under an even load.

    Gere and Goodno, Mechanics of Materials (2009), 4.5.

    Parameters
    ----------
    line_load : load per length [N/m]
    span : distance between the supports [m]

    Returns
    -------
    moment : bending moment at the middle [N m]

    Notes
    -----
    w L^2 / 8.

    >>> beam_uniform_moment(80.0, 1.0)
    10.0
    """
    return line_load * span * span / 8


@valid_when(
    lambda overhang, span: (overhang >= 0) & (span > 0),
    "the overhang must not be negative and the span above zero",
)
@defined(positive="span bending_stiffness shear_stiffness")
def overhang_deflection(
    force: Number,
    overhang: Number,
    span: Number,
    bending_stiffness: Number,
    shear_stiffness: Number = inf,
) -> Number:
    """Deflection at the free end of a beam that runs past one of its two supports.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 8.1 by superposition.

    Parameters
    ----------
    force : force across the free end [N]
    overhang : distance of the free end from the nearer support [m]
    span : distance between the supports, where the beam is held down at the far one [m]
    bending_stiffness : E I [N m^2]
    shear_stiffness : kappa G A; without it shear is left out [N]

    Returns
    -------
    deflection : deflection of the free end [m]

    Notes
    -----
    P c^2 (L + c) / (3 E I) + P c (1 + c/L) / (kappa G A).

    >>> overhang_deflection(10.0, 0.5, 1.0, 125.0)
    0.01
    """
    bending = force * overhang * overhang * (span + overhang) / (3 * bending_stiffness)
    return bending + force * overhang * (1 + overhang / span) / shear_stiffness


@valid_when(
    lambda overhang, span: (overhang >= 0) & (span > 0),
    "the overhang must not be negative and the span above zero",
)
@defined(positive="span")
def overhang_hold_down(force: Number, overhang: Number, span: Number) -> Number:
    """Force that holds down the far end of a beam loaded on its overhang.

    Statics.

    Parameters
    ----------
    force : force across the free end [N]
    overhang : distance of the free end from the nearer support [m]
    span : distance between the supports [m]

    Returns
    -------
    hold_down : downward force needed at the far support [N]

    Notes
    -----
    P c / L; the nearer support carries P (1 + c/L).

    >>> overhang_hold_down(100.0, 0.5, 1.0)
    50.0
    """
    return force * overhang / span
