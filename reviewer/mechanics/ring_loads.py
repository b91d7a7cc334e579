"""Closed forms of a rigid plate on a ring of rollers, and the torque that it takes to turn it."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class TurningTorque(NamedTuple):
    """What a loaded ring takes to turn: by the track, the bearings, spin, toe-in, and in all."""

    rolling: Number
    bearing: Number
    spin: Number
    toe_in: Number
    total: Number


_A_RING = valid_when(lambda count: count >= 3, "a ring needs three rollers")


@defined(positive="circle_radius count", not_negative="axial")
@_A_RING
@valid_when(
    lambda axial, moment, circle_radius: 2.0 * np.abs(moment) <= (1 + 1e-9) * axial * circle_radius,
    "past e = R/2 rollers lift off; take the supports solver",
)
def peak_roller_load(axial: Number, moment: Number, circle_radius: Number, count: Number) -> Number:
    """Load on the busiest roller of a rigid plate while all rollers carry.

    Statics: bolt circle, equal springs.

    Parameters
    ----------
    axial : load along the axis [N]
    moment : tipping moment [N m]
    circle_radius : of the circle of rollers [m]
    count : rollers, evenly spaced [1]

    Returns
    -------
    load : with a roller in the direction of the moment [N]

    Notes
    -----
    W/n + 2 M/(n R).

    >>> round(peak_roller_load(600.0, 60.0, 0.23, 6), 1)
    187.0
    """
    return axial / count + 2.0 * np.abs(moment) / (count * circle_radius)


@defined(positive="circle_radius count")
@_A_RING
def tipping_eccentricity(circle_radius: Number, count: Number) -> Number:
    """Distance from the axis at which a load tips a plate that nothing holds down.

    Statics: the line through two neighbouring rollers.

    Parameters
    ----------
    circle_radius : of the circle of rollers or feet [m]
    count : rollers or feet, evenly spaced [1]

    Returns
    -------
    eccentricity : of the resultant, in the weakest direction [m]

    Notes
    -----
    R cos(pi/n).

    >>> round(tipping_eccentricity(0.45, 4) * 1e3, 1)
    318.2
    """
    return circle_radius * np.cos(np.pi / count)


@defined(
    positive="circle_radius roller_radius",
    not_negative="load rolling_coefficient bore bearing_friction contact_length "
    "sliding_friction toe_in",
)
def turning_torque(
    load: Number,
    circle_radius: Number,
    roller_radius: Number,
    rolling_coefficient: Number,
    bore: Number,
    bearing_friction: Number,
    contact_length: Number,
    sliding_friction: Number,
    toe_in: Number,
) -> TurningTorque:
    """Torque that turns a plate on rollers, by what takes it.

    Johnson, Contact Mechanics (1985), 9.4 for the track; statics for the rest.

    Parameters
    ----------
    load : sum of the loads on the rollers [N]
    circle_radius : of the circle of rollers [m]
    roller_radius : outer radius of a roller [m]
    rolling_coefficient : rolling resistance of the track against load [1]
    bore : bore of the bearings [m]
    bearing_friction : friction of the bearings at the bore [1]
    contact_length : width of a roller on the track [m]
    sliding_friction : of roller on track [1]
    toe_in : angle between a roller's way and the circle's tangent [rad]

    Returns
    -------
    rolling : lost in the track [N m]
    bearing : lost in the bearings [N m]
    spin : a cylinder turns on the spot while it follows a circle [N m]
    toe_in : sliding sideways [N m]
    total : sum of the four [N m]

    Notes
    -----
    F c R; 0.5 mu F d R/r; mu F l/4; mu F R sin(a). The last two are upper bounds (full sliding).

    >>> torque = turning_torque(1200.0, 0.23, 0.014, 0.003, 12e-3, 0.0015, 8e-3, 0.25, 0.01)
    >>> [round(part, 2) for part in torque]
    [0.83, 0.18, 0.6, 0.69, 2.3]
    """
    rolling = load * rolling_coefficient * circle_radius
    bearing = 0.5 * bearing_friction * load * bore * circle_radius / roller_radius
    spin = 0.25 * sliding_friction * load * contact_length
    sideways = sliding_friction * load * circle_radius * np.sin(toe_in)
    return TurningTorque(rolling, bearing, spin, sideways, rolling + bearing + spin + sideways)


@defined(positive="radius", not_negative="torque")
def hand_force(torque: Number, radius: Number) -> Number:
    """Force of a hand that turns something at a radius.

    Statics.

    Parameters
    ----------
    torque : to turn it [N m]
    radius : at which the hand pushes along the rim [m]

    Returns
    -------
    force : along the rim [N]

    Notes
    -----
    >>> round(hand_force(2.3, 0.6), 1)
    3.8
    """
    return torque / radius
