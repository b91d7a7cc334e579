"""Screws, and ramps around an axis, with sliding friction."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class ScrewTorque(NamedTuple):
    """Torques of a screw with its collar: up, down, the collar's share, and the efficiency up."""

    raising: Number
    lowering: Number
    collar: Number
    efficiency: Number


@defined(
    positive="mean_diameter lead",
    not_negative="load friction flank_angle collar_friction collar_diameter",
)
@valid_when(
    lambda mean_diameter, lead, friction, flank_angle: (
        friction * lead < np.pi * mean_diameter * np.cos(flank_angle)
    ),
    "thread and friction together are too steep: it jams",
)
def screw_torque(
    load: Number,
    mean_diameter: Number,
    lead: Number,
    friction: Number,
    flank_angle: Number = 0.0,
    collar_friction: Number = 0.0,
    collar_diameter: Number = 0.0,
) -> ScrewTorque:
    """Torque that raises and lowers a load with a screw, or with a ramp around an axis.

    Shigley, Mechanical Engineering Design, 8-2.

    Parameters
    ----------
    load : along the axis [N]
    mean_diameter : of the thread or the ramp [m]
    lead : rise in one turn [m]
    friction : sliding friction in the thread [1]
    flank_angle : half the thread's angle, 0 for square threads and ramps [rad]
    collar_friction : friction of the collar [1]
    collar_diameter : mean diameter of the collar [m]

    Returns
    -------
    raising : torque up, with the collar [N m]
    lowering : torque down, below zero where it must be held [N m]
    collar : torque of the collar alone [N m]
    efficiency : of raising [1]

    Notes
    -----
    F d/2 (l + pi f d s)/(pi d - f l s), s = 1/cos(flank angle); the lead angle's effect on the
    flank is left out.

    >>> screw = screw_torque(6.4e3, 30e-3, 8e-3, 0.08, 0.0, 0.08, 40e-3)
    >>> [round(part, 2) for part in screw]
    [26.18, 9.77, 10.24, 0.31]
    """
    rubbing = friction / np.cos(flank_angle)
    around = np.pi * mean_diameter
    collar = 0.5 * load * collar_friction * collar_diameter
    up = 0.5 * mean_diameter * (lead + rubbing * around) / (around - rubbing * lead)
    down = 0.5 * mean_diameter * (rubbing * around - lead) / (around + rubbing * lead)
    resisting = up + 0.5 * collar_friction * collar_diameter
    efficiency = lead / (2.0 * np.pi * resisting) + 0.0 * load
    return ScrewTorque(load * up + collar, load * down + collar, collar, efficiency)
