"""A lever through its travel: what the hand must give at its worst place."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.followers import lever_hand_force
from reviewer.mechanics.formula import Number, valid_when

STEPS = 120
"""Parts in which the travel is looked at; the ends and the level place are always among them."""


class LeverTravel(NamedTuple):
    """Forces of the hand on a lever: at the start, at the end, the largest; and the torque."""

    start_force: Number
    end_force: Number
    peak_force: Number
    peak_torque: Number


def _hand_can_pull(start: Any, end: Any, bend: Any, keeps_direction: Any) -> Any:
    with np.errstate(invalid="ignore"):
        farthest = np.maximum(np.abs(start + bend), np.abs(end + bend))
        return keeps_direction * farthest < 0.5 * np.pi


@defined(positive="load_arm hand_arm", not_negative="load friction_torque")
@valid_when(_hand_can_pull, "the hand pulls along its lever")
@valid_when(
    lambda start, end: (np.abs(start) <= 0.5 * np.pi) & (np.abs(end) <= 0.5 * np.pi),
    "the lever must stay within 90 deg of level",
)
def lever_travel(
    load: Number,
    load_arm: Number,
    hand_arm: Number,
    start: Number,
    end: Number,
    bend: Number = 0.0,
    keeps_direction: Number = 0.0,
    friction_torque: Number = 0.0,
) -> LeverTravel:
    """Force of a hand on a lever while it lifts a weight from one angle to another.

    Statics: moments about the pivot.

    Parameters
    ----------
    load : weight on the load's arm [N]
    load_arm : from the pivot to the load [m]
    hand_arm : from the pivot to the hand [m]
    start : angle of the load's arm above level where the travel begins [rad]
    end : angle of the load's arm above level where the travel ends [rad]
    bend : between the hand's arm and the line of the load's arm [rad]
    keeps_direction : 1 where the hand pulls straight down, 0 where it stays square to its arm [1]
    friction_torque : in the pivot and what it drives [N m]

    Returns
    -------
    start_force : of the hand where the travel begins [N]
    end_force : of the hand where the travel ends [N]
    peak_force : largest of the hand over the travel [N]
    peak_torque : largest about the pivot over the travel [N m]

    Notes
    -----
    (W a cos(A) + T)/(b cos(B)) at 120 steps of the travel, its ends, and level where it passes
    through it. B = 0, or A + bend for a hand that pulls straight down.

    >>> travel = lever_travel(400.0, 0.04, 0.40, np.radians(-30.0), np.radians(60.0))
    >>> round(travel.end_force, 2), round(travel.peak_force, 2), round(travel.peak_torque, 2)
    (20.0, 40.0, 16.0)
    """

    def over(value: Number) -> Any:
        return np.asarray(value)[..., None]

    level = np.clip(0.0, np.minimum(start, end), np.maximum(start, end))
    even = over(start) + over(end - start) * np.linspace(0.0, 1.0, STEPS + 1)
    angles = np.concatenate([even, over(level)], axis=-1)
    hand_angle = over(keeps_direction) * (angles + over(bend))
    arms = over(load_arm), over(hand_arm)
    force = np.asarray(
        lever_hand_force(over(load), *arms, angles, hand_angle, over(friction_torque))
    )
    torque = over(load) * over(load_arm) * np.cos(angles) + over(friction_torque)
    return LeverTravel(
        force[..., 0], force[..., STEPS], np.max(force, axis=-1), np.max(torque, axis=-1)
    )
