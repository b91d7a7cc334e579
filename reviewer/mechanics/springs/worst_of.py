"""The greatest of many candidates, and which of several equal ones counts."""

from math import atan2, pi
from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.layout import Array, Indices, by_one, take

TIE = 1e-9  # of the largest: candidates closer than this are equal
SAME = 1e-6  # directions closer than this are one


class Worst(NamedTuple):
    """Greatest value of each place, its direction from 0 to 2 pi, and its member (places)."""

    value: Array
    direction: Array
    member: Indices


def worst_of(places: int, place: Indices, value: Array, unit: Array, member: Indices) -> Worst:
    """Greatest value at each place: of equals the first direction, then the least member.

    A place with an unknown candidate is unknown.
    """
    greatest = np.full(places, -np.inf)
    np.maximum.at(greatest, place, value)
    near = value >= (greatest - TIE * np.abs(greatest))[place]
    place, member, unit = place[near], member[near], np.compress(near, unit, axis=1)
    order = round_the_circle(unit)
    first = np.full(places, np.inf)
    np.minimum.at(first, place, order)
    among = np.flatnonzero(order <= first[place] + SAME)
    least = np.full(places, np.iinfo(np.int64).max)
    np.minimum.at(least, place[among], member[among])
    direction = np.full(places, np.nan)
    exact = among[order[among] == first[place[among]]]
    direction[place[exact]] = angle_of(take(unit, exact))
    known = np.isfinite(greatest)
    return Worst(np.where(known, greatest, np.nan), direction, np.where(known, least, -1))


def round_the_circle(unit: Array) -> Array:
    """A number from 0 to 4 that grows with the direction; a hair below a full turn is none."""
    x, y = unit
    share = x / (np.abs(x) + np.abs(y))
    order = np.where(y < 0, 3 + share, 1 - share)
    return np.where(order > 4 - TIE, 0.0, order)


def angle_of(unit: Array) -> Array:
    """Direction of unit vectors (2, .), from 0 to 2 pi; a hair below a full turn is none."""
    angle = by_one(atan2, unit[1], unit[0])
    angle = np.where(angle < 0, angle + 2 * pi, angle)
    return np.where(angle > 2 * pi - TIE, 0.0, angle)


def first_largest(values: Array) -> Indices:
    """The first row within a hair of the largest, for each column."""
    largest = np.max(values, axis=0)
    hair = np.where(np.isfinite(largest), TIE * np.abs(largest), 0.0)
    result: Indices = np.argmax(~(values < largest - hair), axis=0)
    return result
