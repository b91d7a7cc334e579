"""Arcs of the circle of directions, and values that are sinusoids along them.

A place on an arc is given by the tangent t of half its angle from the arc's own direction, so that
sine and versine of the angle are 2 t / (1 + t^2) and 2 t^2 / (1 + t^2) and nothing but arithmetic
is needed: the same for one direction as for many.
"""

import numpy as np

from reviewer.mechanics.springs.layout import Array, Flags

FARTHEST = 0.2  # t past the next direction of the scan: an arc is followed no farther
LEVEL = 1e-10  # of its value: a sinusoid that swings less than this is level


def half_tangent(one: Array, other: Array) -> Array:
    """Tangent of half the angle from one unit vector (2, .) to another."""
    across = one[0] * other[1] - one[1] * other[0]
    return np.asarray(across / (1 + one[0] * other[0] + one[1] * other[1]), float)


def turned(unit: Array, t: Array) -> Array:
    """Unit vectors (2, .) turned on."""
    whole = 1 + t * t
    cosine, sine = (1 - t * t) / whole, 2 * t / whole
    x, y = unit
    return np.array([cosine * x - sine * y, sine * x + cosine * y])


def added_angle(t: Array, more: Array) -> Array:
    """Tangent of half the sum of two angles."""
    return np.asarray((t + more) / (1 - t * more), float)


def sinusoid(value: Array, slope: Array, bend: Array, t: Array) -> Array:
    """Value at t of a sinusoid with a value, slope and bend at zero."""
    return np.asarray(value + 2 * t * (slope + bend * t) / (1 + t * t), float)


def reach_of(way: Array, touching: Flags, slack: Array) -> tuple[Array, Array]:
    """How far back and ahead the same springs touch (columns), from way (n, orders, columns).

    Each spring sets an end where its force, had or lacked, passes zero: the first root of a
    sinusoid, a quadratic in t. Slack takes up rounding.
    """
    sense = np.where(touching, 1.0, -1.0)
    room = np.maximum(way[:, 0] * sense, 0.0) + slack
    slope = way[:, 1] * sense
    square = room + 2 * way[:, 2] * sense
    under = slope * slope - square * room
    root = np.sqrt(np.maximum(under, 0.0))
    ends = []
    for pace in (-slope, slope):
        falling = np.where((pace < 0) & (under >= 0), room / (root - pace), np.inf)
        rising = np.where((pace >= 0) & (square < 0), (pace + root) / -square, falling)
        ends.append(np.minimum(np.min(rising, axis=0), FARTHEST))
    return ends[0], ends[1]


def arc_peak(
    value: Array, slope: Array, bend: Array, back: Array, ahead: Array
) -> tuple[Array, Array]:
    """Greatest value of a sinusoid on an arc, and where it is."""
    swing = np.sqrt(slope * slope + bend * bend)
    level = swing <= LEVEL * np.abs(value)
    top = np.where(level, 0.0, slope / (swing - bend))
    within = (top >= -back) & (top <= ahead)
    at_back, at_ahead = (sinusoid(value, slope, bend, end) for end in (-back, ahead))
    greatest = np.where(within, value + slope * top, np.maximum(at_back, at_ahead))
    return greatest, np.where(within, top, np.where(at_ahead >= at_back, ahead, -back))
