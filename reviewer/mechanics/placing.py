"""A load at its place: from size, direction and position to a resultant about the axis."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Resultant


class Direction(NamedTuple):
    """Which way a force acts: its share downward, and its level share away from the axis."""

    down: float
    out: float


DIRECTIONS = {
    "down": Direction(1.0, 0.0),
    "up": Direction(-1.0, 0.0),
    "outward": Direction(0.0, 1.0),
    "inward": Direction(0.0, -1.0),
}


def placed_load(
    force: Number,
    on_half: NDArray[np.bool_],
    direction: Direction,
    place_x: Number,
    place_y: Number,
    radius: Number = 0.0,
    half_radius: Number = 0.0,
    azimuth: Number = 0.0,
    level: Number = 0.0,
    all_round: bool = False,
) -> Resultant:
    """Put a force at a radius and azimuth [rad] from a place [m], or at that radius all round.

    Where `on_half`, half of the force stands at `half_radius`, the middle of one half of its area,
    and that half may be any one. A level force acts at `level` above the floor.
    """
    share = np.where(on_half, 0.5, 1.0)
    free = np.where(np.logical_or(on_half, all_round), 1.0, 0.0)
    cosine, sine = (1.0 - free) * np.cos(azimuth), (1.0 - free) * np.sin(azimuth)
    if not direction.out:  # a vertical force: its level does not matter, and may be unknown
        down = direction.down * force * share
        arm = np.where(on_half, half_radius, radius)
        return Resultant(
            force=down,
            moment_x=down * (place_x + arm * cosine),
            moment_y=down * (place_y + arm * sine),
            moment_round=np.abs(down) * arm * free,
        )
    push = direction.out * force * share
    return Resultant(
        push_x=push * cosine,
        push_y=push * sine,
        push_round=np.abs(push) * free,
        tilt_x=push * cosine * level,
        tilt_y=push * sine * level,
        tilt_round=np.abs(push) * free * level,
    )
