"""Slots in a turning plate that move slides in and out: torque, jamming, holding, play, webs."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


class SlotPlay(NamedTuple):
    """What a follower's clearance in its slot becomes."""

    radial: Number
    turn: Number


_PUSHES = valid_when(
    lambda slot_angle, friction, guide_friction: (
        slot_angle + np.arctan(friction) + np.arctan(guide_friction) < 0.5 * np.pi
    ),
    "slot angle and friction together reach 90 deg: the slide jams",
)
_A_SLOT = valid_when(
    lambda slot_angle: (slot_angle >= 0) & (slot_angle <= 0.5 * np.pi),
    "a slot lies between the circle (0) and the radius (90 deg)",
)


@defined(positive="radius", not_negative="advance")
def slot_angle(radius: Number, advance: Number) -> Number:
    """Angle of a curved slot to the circle through the follower.

    Geometry of the polar curve.

    Parameters
    ----------
    radius : from the axis to the follower [m]
    advance : radial travel of the slide for each angle that the plate turns [m/rad]

    Returns
    -------
    angle : psi, 0 along the circle, 90 deg along the radius [rad]

    Notes
    -----
    atan((dr/dtheta) / r); psi is also the pressure angle of the slide.

    >>> round(float(np.degrees(slot_angle(0.20, 0.20))), 3)
    45.0
    """
    return np.arctan2(advance, radius)


@defined(positive="radius", not_negative="distance")
@valid_when(lambda distance, radius: distance <= radius, "the slot does not come so near the axis")
def straight_slot_angle(distance: Number, radius: Number) -> Number:
    """Angle of a straight slot to the circle through the follower.

    Geometry of the right triangle.

    Parameters
    ----------
    distance : of the slot's line from the axis [m]
    radius : from the axis to the follower [m]

    Returns
    -------
    angle : psi, 0 along the circle, 90 deg along the radius [rad]

    Notes
    -----
    acos(d / r): steeper further out.

    >>> round(float(np.degrees(straight_slot_angle(0.10, 0.20))), 3)
    60.0
    """
    return np.arccos(distance / radius)


@defined(positive="radius", not_negative="force slot_angle friction guide_friction")
@_PUSHES
def slot_torque(
    force: Number,
    radius: Number,
    slot_angle: Number,
    friction: Number,
    guide_friction: Number = 0.0,
) -> Number:
    """Torque on a slotted plate that moves one slide against a force.

    Statics: pressure angle and friction angle add; Norton, Cam Design, 7 (pressure angle).

    Parameters
    ----------
    force : of the slide along the radius [N]
    radius : from the axis to the follower [m]
    slot_angle : psi, between the slot and the circle [rad]
    friction : of the follower in the slot, small if it rolls [1]
    guide_friction : of the slide in its guide under the side force [1]

    Returns
    -------
    torque : for this slide, those of all slides add up [N m]

    Notes
    -----
    F r t/(1 - mu_g t), t = tan(psi + phi).

    >>> round(slot_torque(50.0, 0.20, np.radians(40.0), 0.2, 0.2), 2)
    16.64
    """
    slope = np.tan(slot_angle + np.arctan(friction))
    return force * radius * slope / (1.0 - guide_friction * slope)


@silent
@_A_SLOT
def slot_jam_margin(slot_angle: Number, friction: Number, guide_friction: Number = 0.0) -> Number:
    """Angle that is left until a slotted plate no longer moves its slide.

    Statics: pressure angle and friction angles add up to 90 deg.

    Parameters
    ----------
    slot_angle : psi, between the slot and the circle [rad]
    friction : of the follower in the slot [1]
    guide_friction : of the slide in its guide [1]

    Returns
    -------
    margin : 90 deg - psi - phi - phi_g, below zero where it jams [rad]

    Notes
    -----
    Near the limit the torque grows without bound: common practice keeps psi + phi under 45 deg.

    >>> round(float(np.degrees(slot_jam_margin(np.radians(40.0), 0.2, 0.2))), 1)
    27.4
    """
    return 0.5 * np.pi - slot_angle - np.arctan(friction) - np.arctan(guide_friction)


@silent
@_A_SLOT
def slot_hold_margin(slot_angle: Number, friction: Number) -> Number:
    """Angle by which a slot is flatter than it needs to be to hold its slide by friction.

    Statics: the ramp of Meriam and Kraige, Statics, 6/4.

    Parameters
    ----------
    slot_angle : psi, between the slot and the circle [rad]
    friction : least friction of the follower in the slot, nearly none if it rolls [1]

    Returns
    -------
    margin : phi - psi, below zero where leaning on the slide turns the plate [rad]

    Notes
    -----
    >>> round(float(np.degrees(slot_hold_margin(np.radians(40.0), 0.2))), 1)
    -28.7
    """
    return np.arctan(friction) - slot_angle


@defined(positive="radius", not_negative="force friction")
@_A_SLOT
def slot_backdrive_torque(
    force: Number, radius: Number, slot_angle: Number, friction: Number
) -> Number:
    """Torque on a slotted plate when somebody leans on its slide.

    Statics: the ramp of Meriam and Kraige, Statics, 6/4.

    Parameters
    ----------
    force : on the slide along the radius [N]
    radius : from the axis to the follower [m]
    slot_angle : psi, between the slot and the circle [rad]
    friction : of the follower in the slot [1]

    Returns
    -------
    torque : that a stop or a catch must hold, zero where friction holds [N m]

    Notes
    -----
    F r tan(psi - phi). A slot along the circle (psi = 0), a dwell, holds by itself.

    >>> round(slot_backdrive_torque(300.0, 0.20, np.radians(40.0), 0.05), 1)
    45.4
    """
    return force * radius * np.tan(np.maximum(slot_angle - np.arctan(friction), 0.0))


@defined(positive="radius", not_negative="clearance slot_angle")
@_A_SLOT
def slot_play(clearance: Number, radius: Number, slot_angle: Number) -> SlotPlay:
    """Play that a follower's clearance in its slot gives the slide and the plate.

    Geometry: the clearance lies across the slot.

    Parameters
    ----------
    clearance : width of the slot less the follower [m]
    radius : from the axis to the follower [m]
    slot_angle : psi, between the slot and the circle [rad]

    Returns
    -------
    radial : of the slide, plate held [m]
    turn : of the plate, slide held [rad]

    Notes
    -----
    c/cos(psi) and c/(r sin(psi)), from wall to wall.

    >>> play = slot_play(0.2e-3, 0.20, np.radians(30.0))
    >>> round(play.radial * 1e3, 3), round(play.turn * 1e3, 3)
    (0.231, 2.0)
    """
    return SlotPlay(clearance / np.cos(slot_angle), clearance / (radius * np.sin(slot_angle)))


@defined(positive="radius", not_negative="slot_angle width")
@_A_SLOT
@valid_when(lambda count: count >= 1, "there must be a slot")
def slot_web(radius: Number, count: Number, slot_angle: Number, width: Number) -> Number:
    """Web that is left between neighbouring slots, where they overlap.

    Geometry: equal slots evenly spaced, curvature neglected.

    Parameters
    ----------
    radius : at which the web is measured [m]
    count : slots, evenly spaced [1]
    slot_angle : psi, between the slots and the circle [rad]
    width : of a slot [m]

    Returns
    -------
    web : across the slots, below zero where they run into each other [m]

    Notes
    -----
    2 pi r sin(psi)/n - w; least at the inner end. Only where the slots overlap in angle.

    >>> round(slot_web(0.12, 5, np.radians(40.0), 12e-3) * 1e3, 1)
    84.9
    """
    return 2.0 * np.pi * radius * np.sin(slot_angle) / count - width
