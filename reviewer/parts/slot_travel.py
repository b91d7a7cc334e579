"""A slot over its whole length: its angles, and what the worst place of it asks."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.slots import (
    slot_angle,
    slot_backdrive_torque,
    slot_play,
    slot_torque,
    slot_web,
    straight_slot_angle,
)

STEPS = 60


class SlotTravel(NamedTuple):
    """Radii [m] of the follower along the last axis, and the slot's angles there [rad]."""

    radius: Number
    angle: Number


def _last(value: Number) -> Number:
    """Put a value on an axis of its own, along which the places of the slot stand."""
    lengthened: Number = np.asarray(value)[..., None]
    return lengthened


def travel_of_slot(
    inner: Number, outer: Number, turn: Number | None, distance: Number | None
) -> SlotTravel | None:
    """Places of a follower in its slot: on a straight line, or moved evenly with the turn.

    Geometry of the straight line, and of the spiral of Archimedes.
    """
    radius = _last(inner) + _last(outer - inner) * np.linspace(0.0, 1.0, STEPS + 1)
    if distance is not None:
        return SlotTravel(radius, straight_slot_angle(_last(distance), radius))
    if turn is None:
        return None
    return SlotTravel(radius, slot_angle(radius, _last((outer - inner) / turn)))


def turn_of_line(inner: Number, outer: Number, distance: Number) -> Number:
    """Turn of the plate over the length of a straight slot.

    Geometry of the right triangle.

    Notes
    -----
    acos(d / r2) - acos(d / r1).
    """
    return straight_slot_angle(distance, outer) - straight_slot_angle(distance, inner)


def steepest_of(slot: SlotTravel) -> Number:
    """Steepest angle of the slot to the circle through the follower."""
    steepest: Number = np.max(slot.angle, axis=-1)
    return steepest


def driving_torque(
    slot: SlotTravel, force: Number, slots: int, friction: Number, guide_friction: Number
) -> Number:
    """Greatest torque on the plate that moves all its slides at once.

    Statics: pressure angle and friction angle add; Norton, Cam Design, 7, pressure angle.

    Notes
    -----
    n F r t/(1 - mu_g t), t = tan(psi + phi), at 61 places of the slot.
    """
    greatest: Number = (
        slots * force * np.max(torque_for_one(slot, friction, guide_friction), axis=-1)
    )
    return greatest


def torque_for_one(slot: SlotTravel, friction: Number, guide_friction: Number) -> Number:
    """Torque on the plate for each newton that one slide asks, along its slot."""
    asked = (_last(each) for each in (friction, guide_friction))
    return slot_torque(1.0, slot.radius, slot.angle, *asked)


def leaning_torque(
    inner: Number,
    outer: Number,
    turn: Number,
    distance: Number | None,
    stands: Number,
    push: Number,
    friction: Number,
) -> Number:
    """Torque with which a push on a slide turns the plate from where the follower stands.

    Statics: the ramp of Meriam and Kraige, Statics, 6/4.

    Notes
    -----
    F r tan(psi - phi), nothing where friction holds.
    """
    if distance is None:
        angle = slot_angle(stands, (outer - inner) / turn)
    else:
        angle = straight_slot_angle(distance, stands)
    return slot_backdrive_torque(push, stands, angle, friction)


def radial_play(slot: SlotTravel, clearance: Number) -> Number:
    """Greatest way of a slide to and fro in its slot, the plate held.

    Geometry: the clearance lies across the slot.

    Notes
    -----
    c / cos(psi).
    """
    play = slot_play(_last(clearance), slot.radius, slot.angle)
    greatest: Number = np.max(play.radial, axis=-1)
    return greatest


def turning_play(slot: SlotTravel, clearance: Number) -> Number:
    """Greatest turn of the plate to and fro, the slide held.

    Geometry: the clearance lies across the slot.

    Notes
    -----
    c / (r sin(psi)).
    """
    play = slot_play(_last(clearance), slot.radius, slot.angle)
    greatest: Number = np.max(play.turn, axis=-1)
    return greatest


def least_web(slot: SlotTravel, slots: int, width: Number) -> Number:
    """Least web between neighbouring slots.

    Geometry: equal slots evenly spaced, curvature neglected.

    Notes
    -----
    2 pi r sin(psi)/n - w; on the safe side where the slots do not overlap in angle.
    """
    web = slot_web(slot.radius, slots, slot.angle, _last(width))
    least: Number = np.min(web, axis=-1)
    return least
