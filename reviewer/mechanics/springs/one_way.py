"""One-way springs in columns, and their answer for a given set of touching springs.

With a movement u = (sink, slope, slope) of the body, spring i is pressed p = B u - gap - C f and
pushes with f = k max(0, p); C is the body's own compliance, if it has one. While the same springs
touch, forces are linear in u, and u in the load.
"""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.flexible import (
    Flexibility,
    FlexibleFooting,
    flexible_answer,
    flexible_footing,
    give,
)
from reviewer.mechanics.springs.layout import Array, Flags, Indices, pick, take, total
from reviewer.mechanics.springs.matrices import (
    Factors,
    factor,
    floored_factor,
    floors,
    solve,
    sound,
)


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


class StiffFooting(NamedTuple):
    """A stiff body on sets of touching springs.

    working : (n, columns) stiffness of the touching springs
    stiffness : (6, columns) that a movement meets
    factors : of that stiffness
    """

    working: Array
    stiffness: Array
    factors: Factors


Footing = StiffFooting | FlexibleFooting


class Answer(NamedTuple):
    """Movement (3, columns), how far springs are pressed and their forces (n, columns)."""

    movement: Array
    way: Array
    forces: Array


def choose(springs: Springs, columns: Indices) -> Springs:
    """Some of the columns."""
    body = springs.flexibility
    return Springs(
        pick(springs.basis, columns),
        pick(springs.products, columns),
        pick(springs.stiffness, columns),
        pick(springs.gap, columns),
        take(springs.load, columns),
        None if body is None else body._replace(row=body.row[columns]),
    )


def stand(springs: Springs, touching: Flags, floor: Array | None = None) -> Footing:
    """The body on given sets of touching springs; a floor steadies a stiff one on too few."""
    if springs.flexibility is not None:
        return flexible_footing(springs.flexibility, springs.basis, springs.products, touching)
    working = springs.stiffness * touching
    stiffness = total(springs.products * working[:, None])
    factors = factor(stiffness) if floor is None else floored_factor(stiffness, floor)
    return StiffFooting(working, stiffness, factors)


def steadied(footing: Footing) -> Footing:
    """A footing that does not move in a way in which its springs do not hold it."""
    if isinstance(footing, FlexibleFooting) or steady(footing).all():
        return footing
    floor = floors(footing.stiffness)
    return footing._replace(factors=floored_factor(footing.stiffness, floor))


def steady(footing: Footing) -> Flags:
    """Whether the touching springs hold the body in every way."""
    if isinstance(footing, FlexibleFooting):
        return np.asarray(footing.hold[footing.which] == 0, bool)
    return sound(footing.factors, footing.stiffness)


def respond(
    springs: Springs, footing: Footing, load: Array, gap: Array, near: Array | None = None
) -> Answer:
    """Movement and forces under a load, if the springs of the footing are those that touch.

    On too few springs the answer is the one close to a given movement.
    """
    if isinstance(footing, FlexibleFooting):
        movement, forces = flexible_answer(footing, load, gap, near)
        return Answer(movement, pressed(springs, movement, forces, gap), forces)
    if near is not None:
        rest = along(springs.basis, near) - gap
        load = load - carried(springs, footing.working * rest)
        movement = near + solve(footing.factors, load)
    else:
        if gap.any():
            load = load + carried(springs, footing.working * gap)
        movement = solve(footing.factors, load)
    way = along(springs.basis, movement) - gap
    return Answer(movement, way, footing.working * way)


def pressed(springs: Springs, movement: Array, forces: Array, gap: Array) -> Array:
    """How far each spring is pressed in; below zero, how far it is from touching."""
    way = along(springs.basis, movement) - gap
    return way if springs.flexibility is None else way - give(springs.flexibility, forces)


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
