"""The directions in which a load is tried first: one column each, an item's columns together."""

from math import atan2, cos, pi, sin
from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.layout import Array, Flags, Indices, Layout, by_one, pick, take

STEP = pi / 8  # directions are at most this far apart
FINE_STEP = pi / 18  # the same where the body's own sag turns with the load
SAME = 1e-9  # directions closer than this are one


class Compass(NamedTuple):
    """Unit vectors (2, all samples' directions), and each sample's first one and number."""

    unit: Array
    first: Indices
    number: Indices


class Columns(NamedTuple):
    """One column an item and direction.

    `item` counts within the block; `unit` (2, columns) points the way; `after` is the next column
    of the same item, round the circle.
    """

    item: Indices
    unit: Array
    after: Indices


def compass(layout: Layout, step: float = STEP) -> Compass:
    """Directions of each sample: at every support, midway between two, and steps between those.

    Where the supports repeat around the circle, so do the directions.
    """
    sign = layout.basis[:, 0]
    azimuth = by_one(atan2, sign * layout.basis[:, 2], sign * layout.basis[:, 1])
    azimuth = np.sort(_within_a_turn(azimuth), axis=0)
    midway = _within_a_turn(azimuth + _arcs(azimuth) / 2)
    marks = np.sort(np.concatenate([azimuth, midway]), axis=0).T
    arcs = _arcs(marks.T).T
    parts = np.where(arcs > SAME, np.ceil(arcs / step - 1e-6), 0).astype(int)
    number = np.sum(parts, axis=1)
    each = parts.ravel()
    place = np.arange(number.sum()) - np.repeat(np.cumsum(each) - each, each)
    share = place / np.repeat(each, each)
    angle = np.repeat(marks.ravel(), each) + share * np.repeat(arcs.ravel(), each)
    return Compass(
        np.array([by_one(cos, angle), by_one(sin, angle)]), np.cumsum(number) - number, number
    )


def _within_a_turn(angle: Array) -> Array:
    angle = np.where(angle < 0, angle + 2 * pi, angle)
    return np.where(angle >= 2 * pi, angle - 2 * pi, angle)


def _arcs(angle: Array) -> Array:
    """Arcs (marks, samples) from each mark to the next, round the circle."""
    return np.concatenate([angle[1:], angle[:1] + 2 * pi]) - angle


def columns_of(compass: Compass, row: Indices, all_round: Flags) -> Columns:
    """Columns of a block of items, of which each belongs to a row and turns or does not."""
    number = np.where(all_round, np.broadcast_to(pick(compass.number, row), row.shape), 1)
    start = np.cumsum(number) - number
    item = np.repeat(np.arange(len(row)), number)
    place = np.arange(len(item)) - start[item]
    origin = np.broadcast_to(pick(compass.first, row), row.shape)[item]
    unit = np.where(all_round[item], take(compass.unit, origin + place), [[1.0], [0.0]])
    after = np.where(place == number[item] - 1, 0, place + 1) + start[item]
    return Columns(item, unit, after)
