"""Split clamps on a shaft: the torque that they hold, and the pressure that they hold it with."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

LINE = 1.0
"""Grip factor of two rigid halves that touch the shaft along two lines: the safe lower bound."""

COSINE = 4.0 / np.pi
"""Grip factor with the pressure of a shaft that has run in: as the cosine around each half."""

UNIFORM = np.pi / 2.0
"""Grip factor of thin halves bored to size: the same pressure all round."""


class ClampTorques(NamedTuple):
    """Torque held with each of the three distributions of pressure."""

    line: Number
    cosine: Number
    uniform: Number


_IN_A_HALF = valid_when(
    lambda half_angle: half_angle <= np.pi / 2 + 1e-9, "each half goes around half of the shaft"
)


@defined(positive="half_angle")
@_IN_A_HALF
def cosine_factor(half_angle: Number) -> Number:
    """Grip factor of halves that touch the shaft over part of their arc, pressure as the cosine.

    Shigley, Mechanical Engineering Design, 16-3 (symmetric shoe); from memory.

    Parameters
    ----------
    half_angle : from the middle of a half to the end of its contact [rad]

    Returns
    -------
    factor : friction of the clamp against that of two lines [1]

    Notes
    -----
    4 sin t / (2 t + sin 2 t): 1 for a line, 4/pi for the whole half.

    >>> round(cosine_factor(np.pi / 4), 4)
    1.1002
    """
    return 4.0 * np.sin(half_angle) / (2.0 * half_angle + np.sin(2.0 * half_angle))


@defined(positive="half_angle")
@_IN_A_HALF
def uniform_factor(half_angle: Number) -> Number:
    """Grip factor of halves that touch the shaft over part of their arc, pressure the same.

    Statics.

    Parameters
    ----------
    half_angle : from the middle of a half to the end of its contact [rad]

    Returns
    -------
    factor : friction of the clamp against that of two lines [1]

    Notes
    -----
    t / sin t: 1 for a line, pi/2 for the whole half.

    >>> round(uniform_factor(np.pi / 4), 4)
    1.1107
    """
    return half_angle / np.sin(half_angle)


@defined(positive="diameter factor", not_negative="grip friction")
def clamp_torque(grip: Number, diameter: Number, friction: Number, factor: Number = LINE) -> Number:
    """Torque that a clamp holds by friction.

    Statics; Coulomb friction.

    Parameters
    ----------
    grip : force that presses the two halves together over this hub [N]
    diameter : of the shaft [m]
    friction : of hub on shaft, 0.15 prudent for dry metal [1]
    factor : grip factor: 1 lines, 4/pi cosine, pi/2 uniform [1]

    Returns
    -------
    torque : at slipping [N m]

    Notes
    -----
    T = k mu F d. A factor above 1 only for a hub bored to size.

    >>> round(clamp_torque(31.84e3, 20e-3, 0.15), 1)
    95.5
    """
    return factor * friction * grip * diameter


@defined(positive="diameter", not_negative="grip friction")
def clamp_torques(grip: Number, diameter: Number, friction: Number) -> ClampTorques:
    """Torque that a clamp holds, for each of the three distributions of pressure.

    Statics; Coulomb friction.

    Parameters
    ----------
    grip : force that presses the two halves together over this hub [N]
    diameter : of the shaft [m]
    friction : of hub on shaft [1]

    Returns
    -------
    line : rigid halves with clearance [N m]
    cosine : halves that have run in [N m]
    uniform : thin halves bored to size [N m]

    Notes
    -----
    The truth lies between the first and the last, 57 % apart.

    >>> [round(torque, 1) for torque in clamp_torques(31.84e3, 20e-3, 0.15)]
    [95.5, 121.6, 150.0]
    """
    line = friction * grip * diameter
    return ClampTorques(LINE * line, COSINE * line, UNIFORM * line)


@defined(positive="bolt_distance shaft_distance", not_negative="bolt_force")
def slotted_hub_grip(bolt_force: Number, bolt_distance: Number, shaft_distance: Number) -> Number:
    """Force between the halves of a hub that is slotted on one side and whole on the other.

    Statics: moments about the whole side.

    Parameters
    ----------
    bolt_force : sum of the bolts on the open side [N]
    bolt_distance : from the middle of the whole side to the bolts [m]
    shaft_distance : from the middle of the whole side to the shaft's axis [m]

    Returns
    -------
    grip : force that presses the two halves together [N]

    Notes
    -----
    F l_bolt / l_shaft; what bends the whole side is taken off the bolt force before.

    >>> round(slotted_hub_grip(10e3, 36e-3, 18e-3))
    20000
    """
    return bolt_force * bolt_distance / shaft_distance


@defined(positive="diameter length", not_negative="grip")
def mean_pressure(grip: Number, diameter: Number, length: Number) -> Number:
    """Mean pressure between clamp and shaft.

    Statics: the grip over the projected area.

    Parameters
    ----------
    grip : force that presses the two halves together [N]
    diameter : of the shaft [m]
    length : of the hub on the shaft [m]

    Returns
    -------
    pressure : mean over the projected area [Pa]

    Notes
    -----
    F / (d L).

    >>> round(mean_pressure(31.84e3, 20e-3, 25e-3) / 1e6, 1)
    63.7
    """
    return grip / (diameter * length)


@defined(positive="diameter length half_angle", not_negative="grip")
@_IN_A_HALF
def peak_pressure(
    grip: Number, diameter: Number, length: Number, half_angle: Number = np.pi / 2
) -> Number:
    """Largest pressure between clamp and shaft, pressure as the cosine.

    Statics; the distribution of Shigley, Mechanical Engineering Design, 16-3.

    Parameters
    ----------
    grip : force that presses the two halves together [N]
    diameter : of the shaft [m]
    length : of the hub on the shaft [m]
    half_angle : from the middle of a half to the end of its contact [rad]

    Returns
    -------
    pressure : in the middle of a half [Pa]

    Notes
    -----
    4 / (2 t + sin 2 t) times the mean: 4/pi for the whole half.

    >>> round(peak_pressure(31.84e3, 20e-3, 25e-3) / 1e6, 1)
    81.1
    """
    return 4.0 / (2.0 * half_angle + np.sin(2.0 * half_angle)) * grip / (diameter * length)


@defined(positive="diameter length")
def engagement_ratio(length: Number, diameter: Number) -> Number:
    """Length of a clamp on its shaft, in diameters.

    Common practice: 1 to 2; split muff couplings 1.75 for each shaft.

    Parameters
    ----------
    length : of the hub on the shaft [m]
    diameter : of the shaft [m]

    Returns
    -------
    ratio : length over diameter [1]

    Notes
    -----
    >>> engagement_ratio(30e-3, 20e-3)
    1.5
    """
    return length / diameter


@defined(positive="diameter", not_negative="torque axial")
def slip_demand(torque: Number, axial: Number, diameter: Number) -> Number:
    """Torque alone that would use as much friction as a torque and an axial force together.

    Statics: friction acts against the resultant of both.

    Parameters
    ----------
    torque : on the clamp [N m]
    axial : force along the shaft [N]
    diameter : of the shaft [m]

    Returns
    -------
    torque : to hold against the clamp's [N m]

    Notes
    -----
    sqrt(T^2 + (F d/2)^2).

    >>> slip_demand(3.0, 400.0, 20e-3)
    5.0
    """
    return np.hypot(torque, 0.5 * axial * diameter)
