"""Beams whose two ends are kept from turning."""

from math import inf
from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class EndMoments(NamedTuple):
    """Moments at the ends of a beam and under its load."""

    near: Number
    far: Number
    under_load: Number


@valid_when(
    lambda position, at, span: (position >= 0) & (position <= span) & (at >= 0) & (at <= span),
    "the load and the place looked at must lie between the ends",
)
@defined(positive="span bending_stiffness shear_stiffness")
def fixed_beam_deflection(
    force: Number,
    position: Number,
    at: Number,
    span: Number,
    bending_stiffness: Number,
    shear_stiffness: Number = inf,
) -> Number:
    """Deflection anywhere on a beam fixed at both ends under a force anywhere on it.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 8.1 case 1d.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from the left end [m]
    at : distance of the place looked at from the left end [m]
    span : distance between the ends [m]
    bending_stiffness : E I [N m^2]
    shear_stiffness : kappa G A; without it shear is left out [N]

    Returns
    -------
    deflection : deflection at that place in the direction of the force [m]

    Notes
    -----
    P b^2 x^2 (3 a L - 3 a x - b x) / (6 L^3 E I) for x up to the force, b = L - a; shear adds
    P b x / (L kappa G A), which leaves out its small effect on the end moments away from midspan.

    >>> round(float(fixed_beam_deflection(192.0, 0.5, 0.5, 1.0, 100.0)), 6)
    0.01
    """
    beyond = at > position
    x = np.where(beyond, span - at, at)
    a = np.where(beyond, span - position, position)
    b = span - a
    shape = b * b * x * x * (3 * a * span - 3 * a * x - b * x) / (6 * span * span * span)
    deflection: Number = force * shape / bending_stiffness + force * b * x / (
        span * shear_stiffness
    )
    return deflection


@valid_when(
    lambda position, span: (position >= 0) & (position <= span),
    "the load must stand between the ends",
)
@defined(positive="span")
def fixed_beam_moments(force: Number, position: Number, span: Number) -> EndMoments:
    """Moments in a beam fixed at both ends under a force anywhere on it.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 8.1 case 1d.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from the near end [m]
    span : distance between the ends [m]

    Returns
    -------
    near : moment at the near end, hogging [N m]
    far : moment at the far end, hogging [N m]
    under_load : moment under the force, sagging [N m]

    Notes
    -----
    P a b^2/L^2, P a^2 b/L^2 and 2 P a^2 b^2/L^3.

    >>> fixed_beam_moments(80.0, 0.5, 1.0)
    EndMoments(near=10.0, far=10.0, under_load=10.0)
    """
    other = span - position
    product = force * position * other / (span * span)
    return EndMoments(product * other, product * position, 2 * product * position * other / span)


@defined(positive="span bending_stiffness shear_stiffness")
def fixed_beam_uniform_deflection(
    line_load: Number, span: Number, bending_stiffness: Number, shear_stiffness: Number = inf
) -> Number:
    """Deflection at the middle of a beam fixed at both ends under an even load.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 8.1 case 2d.

    Parameters
    ----------
    line_load : load per length [N/m]
    span : distance between the ends [m]
    bending_stiffness : E I [N m^2]
    shear_stiffness : kappa G A; without it shear is left out [N]

    Returns
    -------
    deflection : deflection at the middle [m]

    Notes
    -----
    w L^4 / (384 E I) + w L^2 / (8 kappa G A).

    >>> fixed_beam_uniform_deflection(384.0, 1.0, 100.0)
    0.01
    """
    square = span * span
    bending = line_load * square * square / (384 * bending_stiffness)
    return bending + line_load * square / (8 * shear_stiffness)


@defined(positive="span")
def fixed_beam_uniform_end_moment(line_load: Number, span: Number) -> Number:
    """Moment at the ends of a beam fixed at both ends under an even load; half of it at the middle.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 8.1 case 2d.

    Parameters
    ----------
    line_load : load per length [N/m]
    span : distance between the ends [m]

    Returns
    -------
    moment : hogging moment at each end [N m]

    Notes
    -----
    w L^2 / 12; sagging w L^2 / 24 at the middle.

    >>> fixed_beam_uniform_end_moment(120.0, 1.0)
    10.0
    """
    return line_load * span * span / 12
