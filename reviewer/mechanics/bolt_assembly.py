"""Bolts tightened up to their own yield: preload and torque by VDI 2230."""

import numpy as np

from reviewer.mechanics.bolts import STRESS_DIAMETER
from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

PITCH_DIAMETER = 0.6495
"""ISO 68-1: pitch diameter is d - 0.6495 P."""


@defined(positive="diameter pitch yield_stress", not_negative="friction share")
@valid_when(lambda diameter, pitch: pitch < diameter, "the pitch must be below the diameter")
def assembly_preload(
    diameter: Number,
    pitch: Number,
    yield_stress: Number,
    friction: Number,
    share: Number = 0.9,
) -> Number:
    """Largest preload under which tension and tightening torsion together stay below yield.

    VDI 2230 Part 1; from memory.

    Parameters
    ----------
    diameter : nominal diameter [m]
    pitch : pitch of the thread [m]
    yield_stress : least yield or 0.2 % proof stress of the bolt [Pa]
    friction : friction in the thread [1]
    share : of the yield stress that tightening uses [1]

    Returns
    -------
    force : assembly preload FM [N]

    Notes
    -----
    FM = 0.9 Rp As / sqrt(1 + 3 [1.5 d2/d0 (P/(pi d2) + 1.155 mu)]^2), d0 of the stress area.

    >>> round(assembly_preload(8e-3, 1.25e-3, 640e6, 0.12) / 1e3, 1)
    18.6
    """
    mean = diameter - PITCH_DIAMETER * pitch
    stressed = diameter - STRESS_DIAMETER * pitch
    twist = 1.5 * mean / stressed * (pitch / (np.pi * mean) + 1.155 * friction)
    area = np.pi / 4.0 * stressed * stressed
    force: Number = share * yield_stress * area / np.sqrt(1.0 + 3.0 * twist * twist)
    return force


@defined(
    positive="diameter pitch head_diameter hole_diameter",
    not_negative="force thread_friction head_friction",
)
@valid_when(
    lambda head_diameter, hole_diameter: hole_diameter < head_diameter,
    "the hole must be smaller than the head",
)
def assembly_torque(
    force: Number,
    diameter: Number,
    pitch: Number,
    thread_friction: Number,
    head_friction: Number,
    head_diameter: Number,
    hole_diameter: Number,
) -> Number:
    """Torque that tightens a bolt to a preload, with the size of its head.

    VDI 2230 Part 1; from memory.

    Parameters
    ----------
    force : preload [N]
    diameter : nominal diameter [m]
    pitch : pitch of the thread [m]
    thread_friction : friction in the thread [1]
    head_friction : friction under the head [1]
    head_diameter : outer diameter of the bearing face [m]
    hole_diameter : diameter of the clearance hole [m]

    Returns
    -------
    torque : assembly torque MA [N m]

    Notes
    -----
    MA = FM (0.159 P + 0.577 d2 mu_thread + (dw + dh)/4 mu_head).

    >>> round(assembly_torque(18.6e3, 8e-3, 1.25e-3, 0.12, 0.12, 11.63e-3, 9e-3), 1)
    24.5
    """
    mean = diameter - PITCH_DIAMETER * pitch
    head = 0.25 * (head_diameter + hole_diameter) * head_friction
    return force * (0.159 * pitch + 0.577 * mean * thread_friction + head)
