"""Stops: the energy of what they stop, and the force that stopping it takes."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number

GRAVITY = 9.80665
"""Standard gravity, m/s^2."""


@defined(not_negative="mass speed")
def moving_energy(mass: Number, speed: Number) -> Number:
    """Energy of a part that moves along.

    Mechanics.

    Parameters
    ----------
    mass : of the part [kg]
    speed : at the stop [m/s]

    Returns
    -------
    energy : of motion [N m]

    Notes
    -----
    m v^2 / 2.

    >>> moving_energy(4.0, 0.5)
    0.5
    """
    return 0.5 * mass * speed * speed


@defined(not_negative="inertia")
def turning_energy(inertia: Number, rate: Number) -> Number:
    """Energy of a part that turns.

    Mechanics.

    Parameters
    ----------
    inertia : moment of inertia about the axis [kg m^2]
    rate : rate of turning at the stop [rad/s]

    Returns
    -------
    energy : of motion [N m]

    Notes
    -----
    J w^2 / 2.

    >>> turning_energy(4.0, 1.0)
    2.0
    """
    return 0.5 * inertia * rate * rate


@defined(not_negative="mass height")
def falling_energy(mass: Number, height: Number) -> Number:
    """Energy of a part that has dropped.

    Mechanics.

    Parameters
    ----------
    mass : of the part [kg]
    height : that it drops [m]

    Returns
    -------
    energy : at the stop [N m]

    Notes
    -----
    m g h, without friction.

    >>> round(falling_energy(5.0, 0.1), 3)
    4.903
    """
    return mass * GRAVITY * height


@defined(positive="stiffness", not_negative="energy")
def spring_stop_force(energy: Number, stiffness: Number) -> Number:
    """Largest force of a stop that gives way like a spring.

    Energy: Shigley, Mechanical Engineering Design, 4-17.

    Parameters
    ----------
    energy : to be stopped [N m]
    stiffness : of the stop and what carries it [N/m]

    Returns
    -------
    force : at the end of the travel [N]

    Notes
    -----
    sqrt(2 E k). Upper bound: nothing is lost.

    >>> spring_stop_force(0.5, 10e3)
    100.0
    """
    return np.sqrt(2.0 * energy * stiffness)


@defined(positive="stiffness", not_negative="energy")
def spring_stop_travel(energy: Number, stiffness: Number) -> Number:
    """Travel of a stop that gives way like a spring.

    Energy: Shigley, Mechanical Engineering Design, 4-17.

    Parameters
    ----------
    energy : to be stopped [N m]
    stiffness : of the stop and what carries it [N/m]

    Returns
    -------
    travel : until it stands still [m]

    Notes
    -----
    sqrt(2 E / k).

    >>> spring_stop_travel(0.5, 10e3)
    0.01
    """
    return np.sqrt(2.0 * energy / stiffness)


@defined(positive="travel", not_negative="energy")
def steady_stop_force(energy: Number, travel: Number) -> Number:
    """Force of a stop that gives way at a steady force: crushed wood, friction, a damper.

    Energy.

    Parameters
    ----------
    energy : to be stopped [N m]
    travel : over which it is stopped [m]

    Returns
    -------
    force : over the whole travel [N]

    Notes
    -----
    E / s: half of what a spring of the same travel reaches.

    >>> steady_stop_force(0.5, 0.01)
    50.0
    """
    return energy / travel


@defined(positive="static_deflection", not_negative="height")
def impact_factor(height: Number, static_deflection: Number) -> Number:
    """How many times its own weight a dropped part presses.

    Gere, Mechanics of Materials, 2.8; Shigley, Mechanical Engineering Design, 4-17.

    Parameters
    ----------
    height : that it drops [m]
    static_deflection : of what it falls on, under its weight at rest [m]

    Returns
    -------
    factor : largest force over weight [1]

    Notes
    -----
    1 + sqrt(1 + 2 h/d): twice the weight even without a drop.

    >>> impact_factor(0.0, 1e-3), round(impact_factor(0.012, 1e-3))
    (2.0, 6)
    """
    return 1.0 + np.sqrt(1.0 + 2.0 * height / static_deflection)
