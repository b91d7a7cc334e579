"""Which springs touch: the equilibrium of a body on one-way springs, many cases at once.

The movement (and, for a flexible body, the forces) minimises a convex energy, of which every set
of touching springs gives one parabola. Newton's step leads to the bottom of that parabola: the
exact answer as soon as the set is right.

Most columns get there by taking the set that each answer calls for. That can go round in circles
(a ring loaded at half its radius) and has no footing on fewer than three springs, so the
stragglers go on with an exact line search, under which the energy can only fall.
"""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.flexible import Flexibility
from reviewer.mechanics.springs.layout import Array, Flags, Indices, Layout, pick, take
from reviewer.mechanics.springs.line_search import lowest_point
from reviewer.mechanics.springs.matrices import floors
from reviewer.mechanics.springs.one_way import (
    Springs,
    StiffFooting,
    carried,
    choose,
    pressed,
    respond,
    stand,
    steadied,
    steady,
)

QUICK = 8  # rounds of the quick way
STRICT = 3  # of them, rounds in which the set has to agree exactly
LIMIT = 60  # rounds of the sure way
NEARLY = 1e-5  # of the load: what is out of equilibrium by less after all those can be corrected
CLOSE = 3e-13  # of the load: nearer than this to equilibrium, an answer is taken
TRUE = 5e-15  # of the load: farther than this from equilibrium, an answer is corrected
POOR = 1e-12  # of the load: if then still farther than this, it is sought again with care
ROUNDING = 4e-15  # of a force: what is left of it by rounding


class Settled(NamedTuple):
    """Movement (3, columns), forces (n, columns) and touching springs (n, columns)."""

    movement: Array
    forces: Array
    touching: Flags


def springs_under(layout: Layout, items: Indices, load: Array, sag: Array) -> Springs:
    """The springs of some items under loads (3, columns), one column an entry of items."""
    row = layout.row[items]
    body = None
    if layout.flexibility is not None:
        body = Flexibility(layout.flexibility, layout.stiffness, row)
    return Springs(
        pick(layout.basis, row),
        pick(layout.products, row),
        pick(layout.stiffness, row),
        pick(layout.gap, row) - pick(layout.sign, row) * sag,
        load,
        body,
    )


def first_guess(springs: Springs) -> Flags:
    """Springs under the body touch, and so do preloaded ones over it."""
    touching = (springs.basis[:, 0] > 0) | (springs.gap < 0)
    return np.array(np.broadcast_to(touching, (len(touching), springs.load.shape[1])), order="C")


def settle(springs: Springs, start: Flags, strict: int = STRICT) -> Settled:
    """Equilibrium of each column from a first guess of its touching springs; NaN if not found.

    For `strict` rounds the set has to agree exactly: the check for rounding takes time, and is of
    use where a spring is just about to touch.
    """
    count, columns = start.shape
    answer = Settled(np.full((3, columns), np.nan), np.full((count, columns), np.nan), start.copy())
    left = np.arange(columns)
    rest, touching = springs, start
    for turn in range(QUICK):
        found, called, done = _quick_round(rest, touching, turn >= strict)
        if done.all() and turn == 0:
            answer = found
            break
        _keep(answer, left, found, done)
        if done.all():
            break
        going = np.flatnonzero(~done)
        left, rest, touching = left[going], choose(rest, going), take(called, going)
    else:
        _go_the_sure_way(springs, left, answer)
    _settle_with_care(springs, _correct(springs, answer), answer)
    return answer


def _keep(answer: Settled, columns: Indices, found: Settled, done: Flags) -> None:
    which = np.flatnonzero(done)
    into = columns[which]
    for whole, part in zip(answer, found, strict=True):
        whole[:, into] = take(part, which)


def _quick_round(springs: Springs, touching: Flags, lenient: bool) -> tuple[Settled, Flags, Flags]:
    """Answer for one set, the set that it calls for, and whether they are the same, or at least
    differ by no more force than can be told from rounding."""
    footing = stand(springs, touching)
    answer = respond(springs, footing, springs.load, springs.gap)
    called = answer.way > 0
    found = Settled(answer.movement, answer.forces, touching)
    agreed = np.logical_and.reduce(called == touching, axis=0)
    if lenient:
        agreed = agreed | _agreed(springs, found, answer.way)
    return found, called, agreed & steady(footing)


def _agreed(springs: Springs, found: Settled, way: Array) -> Flags:
    """Whether the set and the answer differ by no more force than can be told from rounding."""
    wrong = springs.stiffness * np.abs(way) * ((way > 0) != found.touching)
    hair = CLOSE * size_of(springs.load) + rounding(springs, found.movement)
    result: Flags = np.all(wrong <= hair, axis=0)
    return result


def rounding(springs: Springs, movement: Array) -> Array:
    """What rounding leaves of each spring's force: little, but for stiff springs moved far."""
    result: Array = springs.stiffness * (ROUNDING * (np.abs(springs.gap) + size_of(movement)))
    return result


def size_of(vector: Array) -> Array:
    """Sum of the sizes of a load's or movement's components."""
    result: Array = np.abs(vector[0]) + np.abs(vector[1]) + np.abs(vector[2])
    return result


def _go_the_sure_way(springs: Springs, left: Indices, answer: Settled) -> None:
    """Newton's method with an exact line search, from the body held by all its springs.

    Where a body hangs on a lever of next to nothing, rounding keeps the movement from being found;
    the forces may still be.
    """
    unknown = ~np.isfinite(size_of(springs.load) + np.max(np.abs(springs.gap), axis=0))
    left = left[~unknown[left]]
    rest = choose(springs, left)
    whole = stand(rest, np.ones((len(springs.basis), len(left)), bool))
    floor = floors(whole.stiffness) if isinstance(whole, StiffFooting) else None
    start = respond(rest, steadied(whole), rest.load, np.zeros((len(rest.gap), 1)))
    movement, forces = start.movement, start.forces
    for turn in range(LIMIT):
        touching = pressed(rest, movement, forces, rest.gap) > 0
        close = CLOSE if turn < LIMIT - 1 else NEARLY
        target, done = _sure_round(rest, touching, movement, floor, close)
        if turn == LIMIT - 1:
            target.movement[:] = np.nan  # forces are left to statics, the movement to rounding
        _keep(answer, left, target, done)
        going = np.flatnonzero(~done)
        if not len(going):
            return
        step = lowest_point(rest, (movement, forces), target[:2])
        movement = take(movement + step * (target.movement - movement), going)
        forces = take(forces + step * (target.forces - forces), going)
        left, rest = left[going], choose(rest, going)
        floor = None if floor is None else take(floor, going)


def _sure_round(
    springs: Springs, touching: Flags, movement: Array, floor: Array | None, close: float
) -> tuple[Settled, Flags]:
    """Newton's step from a movement, and whether it ends close to equilibrium."""
    footing = stand(springs, touching, floor)
    target = respond(springs, footing, springs.load, springs.gap, movement)
    found = Settled(target.movement, target.forces, touching)
    missing = size_of(springs.load - carried(springs, target.forces))
    hair = np.max(rounding(springs, target.movement) * touching, axis=0)
    closed = missing <= close * size_of(springs.load) + hair
    return found, closed & _agreed(springs, found, target.way)


def _correct(springs: Springs, answer: Settled) -> Indices:
    """Close what rounding has left between forces and load, which stiff springs with gaps need.

    Returns the columns that are still out of equilibrium, or unknown.
    """
    np.maximum(answer.forces, 0.0, out=answer.forces)
    off = _out_of_balance(springs, answer.forces, TRUE)
    for allowed in (TRUE, TRUE, POOR):
        if not len(off):
            break
        some, forces = choose(springs, off), take(answer.forces, off)
        footing = steadied(stand(some, take(answer.touching, off) & (forces > 0)))
        missing = some.load - carried(some, forces)
        added = respond(some, footing, missing, np.zeros((len(some.gap), 1))).forces
        forces = np.maximum(forces + added, 0.0)
        answer.forces[:, off] = forces
        off = off[_out_of_balance(some, forces, allowed)]
    return off


def _out_of_balance(springs: Springs, forces: Array, allowed: float) -> Indices:
    """Columns whose forces miss the load by more than a share of it, or are unknown."""
    missing = size_of(springs.load - carried(springs, forces))
    hair = allowed * size_of(springs.load) + ROUNDING * np.max(forces, axis=0)
    return np.flatnonzero(~(missing <= hair))


def _settle_with_care(springs: Springs, columns: Indices, answer: Settled) -> None:
    """Settle again what was lost to rounding, with forces and movement solved for together.

    That is how a flexible body is solved, and a stiff one is a flexible one that does not give.
    It is slower, and bears stiffnesses that differ by a factor of a million million.
    """
    if springs.flexibility is not None or not len(columns):
        return
    count = len(springs.basis)
    some = choose(springs, columns)
    stiffness = np.array(np.broadcast_to(some.stiffness, (count, len(columns))), order="C")
    body = Flexibility(np.zeros((1, count, count)), stiffness, np.arange(len(columns)))
    some = some._replace(flexibility=body)
    again = settle(some, first_guess(some))
    _keep(answer, columns, again, np.isfinite(again.movement[0]))
