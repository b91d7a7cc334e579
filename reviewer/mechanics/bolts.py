"""Bolts: areas, tightening with its scatter, and what the torque makes of it."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

STRESS_DIAMETER = 0.9382
"""ISO 898-1: the stress area is that of the diameter d - 0.9382 P."""

THREAD_SECANT = float(1.0 / np.cos(np.pi / 6.0))
"""1 / cos 30 deg: friction in a thread of 60 deg presses this much harder."""


@defined(positive="diameter pitch")
@valid_when(lambda diameter, pitch: pitch < diameter, "the pitch must be below the diameter")
def stress_area(diameter: Number, pitch: Number) -> Number:
    """Tensile stress area of a metric thread.

    ISO 898-1, 9.1.

    Parameters
    ----------
    diameter : nominal diameter [m]
    pitch : pitch of the thread [m]

    Returns
    -------
    area : A_s [m^2]

    Notes
    -----
    pi/4 (d - 0.9382 P)^2.

    >>> round(stress_area(8e-3, 1.25e-3) * 1e6, 1)
    36.6
    """
    core = diameter - STRESS_DIAMETER * pitch
    return np.pi / 4.0 * core * core


@defined(positive="area proof_strength", not_negative="share")
def preload(area: Number, proof_strength: Number, share: Number = 0.75) -> Number:
    """Preload that a bolt is tightened to.

    Shigley, Mechanical Engineering Design, 8-9.

    Parameters
    ----------
    area : tensile stress area [m^2]
    proof_strength : proof strength of the bolt's class [Pa]
    share : of the proof load, 0.75 for joints that are opened again, 0.90 for lasting ones [1]

    Returns
    -------
    force : preload [N]

    Notes
    -----
    The whole proof load with a share of 1.

    >>> round(preload(36.6e-6, 580e6))
    15921
    """
    return share * area * proof_strength


@defined(positive="diameter nut_factor", not_negative="force")
def tightening_torque(force: Number, diameter: Number, nut_factor: Number = 0.20) -> Number:
    """Torque that tightens a bolt to a preload, short form.

    Shigley, Mechanical Engineering Design, equation 8-27.

    Parameters
    ----------
    force : preload [N]
    diameter : nominal diameter [m]
    nut_factor : K, 0.20 where nothing is known, 0.30 black, 0.18 lubricated [1]

    Returns
    -------
    torque : on the nut or the head [N m]

    Notes
    -----
    T = K F d. Published values of K scatter between 0.16 and 0.35 for the same surface.

    >>> round(tightening_torque(15.92e3, 8e-3), 1)
    25.5
    """
    return nut_factor * force * diameter


@defined(positive="diameter nut_factor", not_negative="torque")
def preload_from_torque(torque: Number, diameter: Number, nut_factor: Number = 0.20) -> Number:
    """Preload that a torque leaves in a bolt, short form.

    Shigley, Mechanical Engineering Design, equation 8-27, solved for the preload.

    Parameters
    ----------
    torque : on the nut or the head [N m]
    diameter : nominal diameter [m]
    nut_factor : K [1]

    Returns
    -------
    force : preload [N]

    Notes
    -----
    F = T / (K d).

    >>> round(preload_from_torque(25.5, 8e-3))
    15938
    """
    return torque / (nut_factor * diameter)


@defined(
    positive="diameter mean_diameter lead",
    not_negative="force thread_friction collar_friction",
)
@valid_when(
    lambda mean_diameter, lead, thread_friction: (
        thread_friction * lead * THREAD_SECANT < np.pi * mean_diameter
    ),
    "the thread locks against being raised",
)
def thread_torque(
    force: Number,
    diameter: Number,
    mean_diameter: Number,
    lead: Number,
    thread_friction: Number = 0.15,
    collar_friction: Number = 0.15,
) -> Number:
    """Torque that tightens a bolt to a preload, from the two frictions.

    Shigley, Mechanical Engineering Design, equation 8-26; from memory.

    Parameters
    ----------
    force : preload [N]
    diameter : nominal diameter [m]
    mean_diameter : mean diameter of the thread [m]
    lead : rise in one turn [m]
    thread_friction : friction in the thread [1]
    collar_friction : friction under the nut or the head [1]

    Returns
    -------
    torque : on the nut or the head [N m]

    Notes
    -----
    Thread flanks of 30 deg; collar 1.25 d in mean diameter.

    >>> round(thread_torque(10e3, 10e-3, 9.026e-3, 1.5e-3), 1)
    19.7
    """
    rubbing = thread_friction * THREAD_SECANT
    slope = (lead + np.pi * rubbing * mean_diameter) / (np.pi * mean_diameter - rubbing * lead)
    return force * (0.5 * mean_diameter * slope + 0.625 * diameter * collar_friction)


@defined(not_negative="scatter")
@valid_when(lambda scatter: scatter < 1, "a scatter of the whole leaves nothing")
def tightening_factor(scatter: Number) -> Number:
    """Largest preload against the least that the same tightening gives.

    VDI 2230 Part 1 (alpha A); from memory.

    Parameters
    ----------
    scatter : deviation to each side, 0.3 for a torque wrench [1]

    Returns
    -------
    factor : largest over least preload [1]

    Notes
    -----
    (1 + s) / (1 - s).

    >>> round(tightening_factor(0.3), 2)
    1.86
    """
    return (1.0 + scatter) / (1.0 - scatter)


@defined(not_negative="force scatter")
@valid_when(lambda scatter: scatter < 1, "a scatter of the whole leaves nothing")
def least_preload(force: Number, scatter: Number = 0.3) -> Number:
    """Least preload that a tightening gives.

    Shigley, Mechanical Engineering Design, 8-9 (scatter of torque control about 30 %).

    Parameters
    ----------
    force : preload aimed at [N]
    scatter : deviation to each side [1]

    Returns
    -------
    force : least preload [N]

    Notes
    -----
    F (1 - s).

    >>> least_preload(10e3)
    7000.0
    """
    return force * (1.0 - scatter)
