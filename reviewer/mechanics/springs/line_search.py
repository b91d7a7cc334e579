"""The lowest point of the springs' energy along a straight line: exact, not sampled."""

import numpy as np

from reviewer.mechanics.springs.flexible import give
from reviewer.mechanics.springs.layout import Array, total
from reviewer.mechanics.springs.one_way import Springs, added, pressed

State = tuple[Array, Array]  # movement (3, columns) and forces (n, columns)


def lowest_point(springs: Springs, start: State, end: State) -> Array:
    """Where the energy is least, as a multiple of the way from start to end (columns).

    Along the line the energy's slope rises, and is straight between the points at which a spring
    starts or ends touching: find the two points between which it passes zero.
    """
    moved, forced = end[0] - start[0], end[1] - start[1]
    way = pressed(springs, *start, springs.gap)
    pace = pressed(springs, *end, springs.gap) - way
    level, rise = _of_the_body(springs, start[1], moved, forced)
    turning = np.where(pace * way < 0, -way / np.where(pace == 0, 1.0, pace), np.inf)
    slope = _slopes(springs, way, pace, turning, level, rise)
    before = np.where((slope <= 0) & np.isfinite(turning), turning, 0.0)
    low = np.max(before, axis=0)
    high = np.min(np.where(slope > 0, turning, np.inf), axis=0)
    within = np.where(np.isfinite(high), 0.5 * (low + high), 2 * low + 1)
    touching = way + within * pace > 0
    bend = rise + added(springs.stiffness * pace * pace * touching)
    at_low = level + rise * low + added(springs.stiffness * pace * np.maximum(way + low * pace, 0))
    lowest = np.minimum(low - at_low / np.where(bend > 0, bend, 1.0), high)
    result: Array = np.where(bend > 0, lowest, within)
    return result


def _of_the_body(
    springs: Springs, forces: Array, moved: Array, forced: Array
) -> tuple[Array, Array]:
    """The part of the slope that load and flexible body make: level + rise * step."""
    load = springs.load
    level: Array = -(load[0] * moved[0] + load[1] * moved[1] + load[2] * moved[2])
    if springs.flexibility is None:
        return level, np.zeros_like(level)
    yielding = give(springs.flexibility, forced)
    return level + added(forces * yielding), added(forced * yielding)


def _slopes(
    springs: Springs, way: Array, pace: Array, turning: Array, level: Array, rise: Array
) -> Array:
    """Slope of the energy at each turning point (n, columns)."""
    step = np.where(np.isfinite(turning), turning, 0.0)
    force = springs.stiffness[:, None] * np.maximum(way[:, None] + step * pace[:, None], 0.0)
    if len(way) == 1:
        return np.asarray(level + rise * step + force[0] * pace[0], float)
    result: Array = level + rise * step + total(force * pace[:, None])
    return result
