"""Symmetric 3 by 3 matrices by the thousand: factors L D L', written out.

A matrix is its upper triangle (6, columns): row by row, 00 01 02 11 12 22.
"""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.layout import Array, Flags

WEAK = 1e-9  # of its own stiffness: a way of moving that the springs hold less than this is loose
LOST = 1e12  # times that stiffness: where both are as weak together, the last is rounding
FLOOR = 1e-13  # of the stiffness with all springs touching: what a loose way is given
LOOSE = 4e-15  # as WEAK, for the springs all together: no spring holds that way of moving


class Factors(NamedTuple):
    """The entries of L (10, 20, 21) and the inverse of D, each (columns)."""

    lower: tuple[Array, Array, Array]
    inverse: tuple[Array, Array, Array]


def factor(matrix: Array) -> Factors:
    """Factors of matrices that are known, or will be seen, to be sound."""
    return _factor(matrix, lambda way, pivot: 1 / pivot)


def sound(factors: Factors, matrix: Array) -> Flags:
    """Whether every way of moving is held, so that the factors can be trusted.

    What is left of the last pivot is rounding where the one before has lost as many digits.
    """
    first, second, third = factors.inverse
    loss, last_loss = second * matrix[3], third * matrix[5]
    held = (first > 0) & (second > 0) & (third > 0) & (loss < 1 / WEAK) & (last_loss < 1 / WEAK)
    return np.asarray(held & (loss * last_loss < LOST), bool)


def floors(matrix: Array) -> Array:
    """Least stiffness (3, .) to give each way of moving; zero where nothing holds it at all."""
    own = matrix[[0, 3, 5]]
    held = []

    def note(way: int, pivot: Array) -> Array:
        held.append(np.where(pivot > LOOSE * own[way], pivot, 0.0))
        return np.where(held[-1] > 0, 1 / pivot, 0.0)

    _factor(matrix, note)
    return FLOOR * np.array(held)


def floored_factor(matrix: Array, floor: Array) -> Factors:
    """Factors that stay finite on a loose body; a way that nothing holds does not move."""
    return _factor(
        matrix,
        lambda way, pivot: np.where(floor[way] > 0, 1 / np.maximum(pivot, floor[way]), 0.0),
    )


def _factor(matrix: Array, inverse: Callable[[int, Array], Array]) -> Factors:
    first = inverse(0, matrix[0])
    low_0, low_1 = matrix[1] * first, matrix[2] * first
    second = inverse(1, matrix[3] - low_0 * matrix[1])
    cross = matrix[4] - low_1 * matrix[1]
    low_2 = cross * second
    third = inverse(2, matrix[5] - low_1 * matrix[2] - low_2 * cross)
    return Factors((low_0, low_1, low_2), (first, second, third))


def solve(factors: Factors, load: Array) -> Array:
    """Movement (3, columns) under a load (3, columns)."""
    low_0, low_1, low_2 = factors.lower
    about_x = load[1] - low_0 * load[0]
    about_y = load[2] - low_1 * load[0] - low_2 * about_x
    slope_y = about_y * factors.inverse[2]
    slope_x = about_x * factors.inverse[1] - low_2 * slope_y
    sink = load[0] * factors.inverse[0] - low_0 * slope_x - low_1 * slope_y
    return np.array([sink, slope_x, slope_y])
