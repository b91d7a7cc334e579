"""Ball bearings that turn: dynamic rating, equivalent load and life."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.bearings import ball_ratio
from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

GROOVE = 0.52
"""Groove radius against ball diameter, on both rings, for which ISO 281 tabulates fc."""

# ISO 281:2007 Table 3, deep groove, normal clearance: f0 Fa/C0, limit e and axial factor Y.
_AXIAL_LOADS = np.array([0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89])
_LIMITS = np.array([0.19, 0.22, 0.26, 0.28, 0.30, 0.34, 0.38, 0.42, 0.44])
_AXIAL_FACTORS = np.array([2.30, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1.00])


class AxialFactors(NamedTuple):
    """Up to which share of axial load it is neglected, and its factor above."""

    limit: Number
    factor: Number


@defined(positive="ratio")
@valid_when(lambda ratio: (ratio > 0) & (ratio <= 0.40), "fc holds for a ball ratio from 0 to 0.40")
def dynamic_factor(ratio: Number) -> Number:
    """Factor fc of the dynamic rating of single-row deep groove ball bearings.

    ISO/TR 1281-1; the values are those of ISO 281:2007, Table 2.

    Parameters
    ----------
    ratio : Dw cos(alpha) / Dpw [1]

    Returns
    -------
    factor : fc for newtons and millimetres [1]

    Notes
    -----
    Closed form with groove radii of 0.52 Dw; within 0.05 of all forty values of the table.

    >>> round(dynamic_factor(0.20), 1)
    59.9
    """
    open_ratio = (1 - ratio) / (1 + ratio)
    # Both groove radii are equal, so that the factor between them, to the power 0.41, is one.
    rings = 1 + np.power(1.04 * np.power(open_ratio, 1.72), 10 / 3)
    shape = np.power(ratio, 0.3) * np.power(1 - ratio, 1.39) / np.cbrt(1 + ratio)
    groove = np.power(2 * GROOVE / (2 * GROOVE - 1), 0.41)
    factor: Number = 4.1 * 9.80665 * 0.95 * np.power(rings, -0.3) * shape * groove
    return factor


@defined(positive="ball_count ball_diameter pitch_diameter rows")
@valid_when(
    lambda ball_diameter, pitch_diameter, contact_angle: (
        ball_diameter * np.cos(contact_angle) <= 0.40 * pitch_diameter
    ),
    "fc holds for a ball ratio up to 0.40",
)
def dynamic_rating(
    ball_count: Number,
    ball_diameter: Number,
    pitch_diameter: Number,
    contact_angle: Number = 0.0,
    rows: Number = 1.0,
) -> Number:
    """Basic dynamic radial load rating of a deep groove ball bearing.

    ISO 281:2007, 5.1.

    Parameters
    ----------
    ball_count : balls in a row [1]
    ball_diameter : diameter of a ball [m]
    pitch_diameter : diameter of the circle of ball centres [m]
    contact_angle : nominal contact angle, 0 for deep groove [rad]
    rows : rows of balls [1]

    Returns
    -------
    rating : C [N]

    Notes
    -----
    C = 1.3 fc (i cos alpha)^0.7 Z^(2/3) Dw^1.8 in N and mm; above 25.4 mm 3.647 Dw^1.4.

    >>> round(dynamic_rating(7, 3.969e-3, 15e-3))
    3296
    """
    millimetres = ball_diameter * 1e3
    factor = dynamic_factor(ball_ratio(ball_diameter, pitch_diameter, contact_angle))
    small, large = np.power(millimetres, 1.8), 3.647 * np.power(millimetres, 1.4)
    size = np.where(millimetres <= 25.4, small, large)
    balls = np.cbrt(ball_count * ball_count)
    rating: Number = 1.3 * factor * np.power(rows * np.cos(contact_angle), 0.7) * balls * size
    return rating


@defined(not_negative="ratio")
@valid_when(lambda ratio: ratio <= 6.89, "the table of Y and e ends at f0 Fa/C0 = 6.89")
def axial_factors(ratio: Number) -> AxialFactors:
    """Limit e and axial factor Y of a deep groove ball bearing of normal clearance.

    ISO 281:2007, Table 3.

    Parameters
    ----------
    ratio : f0 Fa / C0 [1]

    Returns
    -------
    limit : Fa / Fr up to which the axial load does not count, e [1]
    factor : axial factor Y above it [1]

    Notes
    -----
    Linear between the rows; below the first row, 0.172, the first row (common practice).

    >>> limit, factor = axial_factors(0.905)
    >>> round(limit, 3), round(factor, 3)
    (0.273, 1.609)
    """
    return AxialFactors(
        np.interp(ratio, _AXIAL_LOADS, _LIMITS), np.interp(ratio, _AXIAL_LOADS, _AXIAL_FACTORS)
    )


@defined(positive="static_rating static_factor", not_negative="radial axial")
@valid_when(
    lambda axial, static_rating, static_factor: static_factor * axial <= 6.89 * static_rating,
    "the table of Y and e ends at f0 Fa/C0 = 6.89",
)
def equivalent_load(
    radial: Number, axial: Number, static_rating: Number, static_factor: Number
) -> Number:
    """Dynamic equivalent radial load of a deep groove ball bearing.

    ISO 281:2007, 5.2.

    Parameters
    ----------
    radial : radial load [N]
    axial : axial load [N]
    static_rating : basic static load rating C0 [N]
    static_factor : factor f0 of the static rating [1]

    Returns
    -------
    load : P [N]

    Notes
    -----
    P = Fr while Fa/Fr <= e, else 0.56 Fr + Y Fa.

    >>> round(equivalent_load(200.0, 100.0, 1370.0, 12.4), 1)
    272.9
    """
    limit, factor = axial_factors(static_factor * axial / static_rating)
    return np.where(axial <= limit * radial, radial, 0.56 * radial + factor * axial)


@defined(positive="rating load")
def life_revolutions(rating: Number, load: Number) -> Number:
    """Basic rating life of a ball bearing, in revolutions.

    ISO 281:2007, 5.3.

    Parameters
    ----------
    rating : basic dynamic load rating C [N]
    load : equivalent load P [N]

    Returns
    -------
    life : revolutions that nine in ten bearings reach [1]

    Notes
    -----
    L10 = 1e6 (C/P)^3.

    >>> life_revolutions(22.4e3, 3.2e3) / 1e6
    343.0
    """
    ratio = rating / load
    return 1e6 * ratio * ratio * ratio


@defined(positive="rating load speed")
def life_time(rating: Number, load: Number, speed: Number) -> Number:
    """Basic rating life of a ball bearing at a steady speed.

    ISO 281:2007, 5.3.

    Parameters
    ----------
    rating : basic dynamic load rating C [N]
    load : equivalent load P [N]
    speed : speed of turning [rad/s]

    Returns
    -------
    life : time that nine in ten bearings reach [s]

    Notes
    -----
    >>> round(life_time(22.4e3, 3.2e3, 68.068) / 3600)
    8795
    """
    return life_revolutions(rating, load) * 2 * np.pi / speed


@defined(positive="life", not_negative="load")
def required_rating(load: Number, life: Number) -> Number:
    """Dynamic rating that a ball bearing needs for a life.

    ISO 281:2007, 5.3, solved for C.

    Parameters
    ----------
    load : equivalent load P [N]
    life : revolutions asked for [1]

    Returns
    -------
    rating : C [N]

    Notes
    -----
    >>> round(required_rating(2000.0, 960e6))
    19730
    """
    return load * np.cbrt(life / 1e6)
