"""One-way springs in columns, and their answer for a given set of touching springs.

With a movement u = (sink, slope, slope) of the body, spring i is pressed p = B u - gap - C f and
pushes with f = k max(0, p); C is the body's own compliance, if it has one. While the same springs
touch, forces are linear in u, and u in the load.
"""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.flexible import Flexibility, flexible_piece, give
from reviewer.mechanics.springs.layout import FIRST, SECOND, Array, Flags, Indices, pick, total

WEAK = 1e-9  # of its own stiffness: a way of moving that the springs hold less than this is loose
FLOOR = 1e-13  # of the stiffness with all springs touching: what a loose way is given
LOOSE = 1e-12  # as WEAK, for the springs all together: no spring holds that way of moving


class Springs(NamedTuple):
    """Springs under loads: arrays end in an axis of columns, or of one column for all.

    basis : (n, 3, .) s (1, x, y)
    products : (n, 6, .) upper triangle of the outer product of the basis
    stiffness : (n, .)
    gap : (n, .) way before touching, less the body's own sag there
    load : (3, columns)
    flexibility : of the body, or None where it is stiff
    """

    basis: Array
    products: Array
    stiffness: Array
    gap: Array
    load: Array
    flexibility: Flexibility | None


class StiffPiece(NamedTuple):
    """A stiff body on a set of touching springs.

    stiffness : (6, columns) that its movement meets, upper triangle
    start : (3, .) load that the springs carry before it moves
    working : (n, columns) stiffness of the touching springs
    """

    stiffness: Array
    start: Array
    working: Array


class FlexiblePiece(NamedTuple):
    """A flexible body on a set of touching springs, of forces response . movement + rest.

    stiffness : (6, columns), start : (3, .) as for a stiff body
    response : (n, 3, columns), rest : (n, columns)
    """

    stiffness: Array
    start: Array
    response: Array
    rest: Array


Piece = StiffPiece | FlexiblePiece


class Factors(NamedTuple):
    """L D L' of a symmetric 3 by 3 matrix: the entries of L and the inverse of D, each (3, .)."""

    lower: tuple[Array, Array, Array]
    inverse: tuple[Array, Array, Array]


def choose(springs: Springs, columns: Indices) -> Springs:
    """Some of the columns."""
    body = springs.flexibility
    return Springs(
        pick(springs.basis, columns),
        pick(springs.products, columns),
        pick(springs.stiffness, columns),
        pick(springs.gap, columns),
        springs.load[:, columns],
        None if body is None else body._replace(row=body.row[columns]),
    )


def piece(springs: Springs, touching: Flags) -> Piece:
    """The body on a given set of touching springs."""
    if springs.flexibility is not None:
        response, rest = flexible_piece(springs.flexibility, springs.basis, springs.gap, touching)
        stiffness = total(response[:, FIRST] * springs.basis[:, SECOND])
        return FlexiblePiece(stiffness, carried(springs, rest), response, rest)
    working = springs.stiffness * touching
    start = np.zeros((3, 1))
    if np.any(springs.gap):
        start = carried(springs, -working * springs.gap)
    return StiffPiece(total(springs.products * working[:, None]), start, working)


def forces_in(springs: Springs, part: Piece, movement: Array) -> Array:
    """Forces (n, columns) of the touching springs after a movement."""
    if isinstance(part, FlexiblePiece):
        return along(part.response, movement) + part.rest
    forces: Array = part.working * (along(springs.basis, movement) - springs.gap)
    return forces


def forces_added(springs: Springs, part: Piece, movement: Array) -> Array:
    """What a further movement adds to the forces (n, columns) of the touching springs."""
    if isinstance(part, FlexiblePiece):
        return along(part.response, movement)
    return part.working * along(springs.basis, movement)


def pressed(springs: Springs, movement: Array, forces: Array | None) -> Array:
    """How far each spring is pressed in; below zero, how far it is from touching."""
    way = along(springs.basis, movement) - springs.gap
    if springs.flexibility is None or forces is None:
        return way
    return way - give(springs.flexibility, forces)


def along(basis: Array, movement: Array) -> Array:
    """Way of each spring (n, columns) for a movement (3, columns), or force for a response."""
    way: Array = basis[:, 0] * movement[0]
    way += basis[:, 1] * movement[1]
    way += basis[:, 2] * movement[2]
    return way


def carried(springs: Springs, forces: Array) -> Array:
    """Load (3, columns) that forces (n, columns) carry."""
    return total(springs.basis * forces[:, None])


def added(terms: Array) -> Array:
    """Sum over the springs of terms (n, columns), the same for one column as for many."""
    result: Array = terms[0].copy()
    for term in terms[1:]:
        result += term
    return result


def factor(matrix: Array) -> Factors:
    """Factors of matrices that are known, or will be seen, to be sound."""
    return _factor(matrix, lambda way, pivot: 1 / pivot)


def sound(factors: Factors, matrix: Array) -> Flags:
    """Whether the springs hold every way of moving, so that the factors can be trusted."""
    first, second, third = factors.inverse
    held = (second > 0) & (second * matrix[3] < 1 / WEAK)
    return np.asarray((first > 0) & held & (third > 0) & (third * matrix[5] < 1 / WEAK), bool)


def floors(matrix: Array) -> Array:
    """Least stiffness (3, .) to give each way of moving; zero where no spring holds it at all."""
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
