"""A central spindle with two bearings, the other way to carry a turning plate."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number


class HubReactions(NamedTuple):
    """Radial loads on the two bearings; below zero means the other way."""

    upper: Number
    lower: Number


@defined(positive="spacing")
def hub_reactions(radial: Number, height: Number, moment: Number, spacing: Number) -> HubReactions:
    """Radial loads of two bearings on a spindle.

    Statics: moments about each bearing.

    Parameters
    ----------
    radial : load across the spindle [N]
    height : of that load above the upper bearing [m]
    moment : tipping moment, the same way round as the load's [N m]
    spacing : between the bearings [m]

    Returns
    -------
    upper : load on the upper bearing, with the radial load [N]
    lower : load on the lower bearing, against it [N]

    Notes
    -----
    F + (F h + M)/s and (F h + M)/s.

    >>> hub_reactions(50.0, 0.1, 120.0, 0.125)
    HubReactions(upper=1050.0, lower=1000.0)
    """
    lower = (radial * height + moment) / spacing
    return HubReactions(radial + lower, lower)


@defined(positive="spacing", not_negative="upper_clearance lower_clearance")
def hub_play_angle(upper_clearance: Number, lower_clearance: Number, spacing: Number) -> Number:
    """Angle that a spindle can take in the clearance of its bearings.

    Geometry; radial internal clearance as in ISO 5753-1.

    Parameters
    ----------
    upper_clearance : radial clearance of the upper bearing, wall to wall [m]
    lower_clearance : radial clearance of the lower bearing, wall to wall [m]
    spacing : between the bearings [m]

    Returns
    -------
    angle : from the one stop to the other [rad]

    Notes
    -----
    (c1 + c2) / s; an axial preload of angular contact takes it away.

    >>> round(hub_play_angle(18e-6, 18e-6, 0.06) * 1e3, 2)
    0.6
    """
    return (upper_clearance + lower_clearance) / spacing


@defined(positive="spacing upper_stiffness lower_stiffness bending_stiffness")
def hub_tilt(
    moment: Number,
    spacing: Number,
    upper_stiffness: Number,
    lower_stiffness: Number,
    bending_stiffness: Number = np.inf,
) -> Number:
    """Elastic tilt of a plate on a spindle with two bearings.

    Statics; Gere, Mechanics of Materials, appendix H (beam with an end moment).

    Parameters
    ----------
    moment : tipping moment at the upper bearing [N m]
    spacing : between the bearings [m]
    upper_stiffness : radial stiffness of the upper bearing and its seat [N/m]
    lower_stiffness : radial stiffness of the lower bearing and its seat [N/m]
    bending_stiffness : of the spindle between the bearings, E I [N m^2]

    Returns
    -------
    tilt : at the upper bearing [rad]

    Notes
    -----
    M (1/k1 + 1/k2)/s^2 + M s/(3 E I).

    >>> round(hub_tilt(120.0, 0.06, 20e6, 20e6, 4120.0) * 1e3, 2)
    3.92
    """
    seats = (1.0 / upper_stiffness + 1.0 / lower_stiffness) / (spacing * spacing)
    return moment * (seats + spacing / (3.0 * bending_stiffness))
