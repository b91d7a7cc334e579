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
from reviewer.mechanics.springs.layout import Array, Flags, Indices, Layout, pick
from reviewer.mechanics.springs.line_search import lowest_point
from reviewer.mechanics.springs.one_way import (
    Springs,
    StiffPiece,
    carried,
    choose,
    factor,
    floored_factor,
    floors,
    forces_added,
    forces_in,
    piece,
    pressed,
    solve,
    sound,
)

QUICK = 8  # rounds of the quick way
STRICT = 3  # of them, rounds in which the set has to agree exactly
LIMIT = 200  # rounds of the sure way
CLOSE = 3e-13  # of the load: nearer than this to equilibrium, an answer is taken
TRUE = 2e-15  # of the load: farther than this from equilibrium, an answer is corrected
ROUNDING = 4e-15  # of the force that would close a gap: what is left of it by rounding


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
    return np.array(np.broadcast_to(touching, (len(touching), springs.load.shape[1])))


def settle(springs: Springs, start: Flags) -> Settled:
    """Equilibrium of each column from a first guess of its touching springs; NaN if not found."""
    count, columns = start.shape
    answer = Settled(np.full((3, columns), np.nan), np.full((count, columns), np.nan), start.copy())
    left = np.arange(columns)
    rest, touching = springs, start
    for turn in range(QUICK):
        found, called, done = _quick_round(rest, touching, turn >= STRICT)
        if done.all() and turn == 0:
            answer = found
            break
        _keep(answer, left, found, done)
        if done.all():
            break
        going = np.flatnonzero(~done)
        left, rest, touching = left[going], choose(rest, going), called[:, going]
    else:
        _go_the_sure_way(springs, left, answer)
    _correct(springs, answer)
    return answer


def _keep(answer: Settled, columns: Indices, found: Settled, done: Flags) -> None:
    which = np.flatnonzero(done)
    into = columns[which]
    for whole, part in zip(answer, found, strict=True):
        whole[:, into] = part[:, which]


def _quick_round(springs: Springs, touching: Flags, lenient: bool) -> tuple[Settled, Flags, Flags]:
    """Answer for one set, the set that it calls for, and whether they are the same, or at least
    differ by no more force than can be told from rounding."""
    part = piece(springs, touching)
    factors = factor(part.stiffness)
    movement = solve(factors, springs.load - part.start)
    if isinstance(part, StiffPiece):
        way = pressed(springs, movement, None)
        forces = part.working * way
    else:
        forces = forces_in(springs, part, movement)
        way = pressed(springs, movement, forces)
    called = way > 0
    found = Settled(movement, forces, touching)
    agreed = np.logical_and.reduce(called == touching, axis=0)
    if lenient:
        agreed = agreed | _agreed(springs, found, way)
    return found, called, agreed & sound(factors, part.stiffness)


def _agreed(springs: Springs, found: Settled, way: Array) -> Flags:
    """Whether the set and the answer differ by no more force than can be told from rounding."""
    wrong = springs.stiffness * np.abs(way) * ((way > 0) != found.touching)
    rounding = _rounding(springs, found.movement)
    result: Flags = np.all(wrong <= CLOSE * _size(springs.load) + rounding, axis=0)
    return result


def _rounding(springs: Springs, movement: Array) -> Array:
    """What rounding leaves of each spring's force: little, but for stiff springs moved far."""
    result: Array = springs.stiffness * (ROUNDING * (np.abs(springs.gap) + _size(movement)))
    return result


def _size(vector: Array) -> Array:
    result: Array = np.abs(vector[0]) + np.abs(vector[1]) + np.abs(vector[2])
    return result


def _go_the_sure_way(springs: Springs, left: Indices, answer: Settled) -> None:
    """Newton's method with an exact line search, from the body held by all its springs."""
    unknown = ~np.isfinite(_size(springs.load) + np.max(np.abs(springs.gap), axis=0))
    left = left[~unknown[left]]
    rest = choose(springs, left)
    whole = piece(rest, np.ones((len(springs.basis), len(left)), bool))
    floor = floors(whole.stiffness)
    movement = solve(floored_factor(whole.stiffness, floor), rest.load)
    forces = forces_added(rest, whole, movement)
    for _ in range(LIMIT):
        touching = pressed(rest, movement, forces) > 0
        target, done = _sure_round(rest, touching, movement, floor)
        _keep(answer, left, target, done)
        going = np.flatnonzero(~done)
        if not len(going):
            return
        step = lowest_point(rest, (movement, forces), target[:2])[going]
        movement = movement[:, going] + step * (target.movement - movement)[:, going]
        forces = forces[:, going] + step * (target.forces - forces)[:, going]
        left, rest, floor = left[going], choose(rest, going), floor[:, going]


def _sure_round(
    springs: Springs, touching: Flags, movement: Array, floor: Array
) -> tuple[Settled, Flags]:
    """Newton's step from a movement, and whether it ends at equilibrium."""
    part = piece(springs, touching)
    factors = floored_factor(part.stiffness, floor)
    out = springs.load - carried(springs, forces_in(springs, part, movement))
    target = movement + solve(factors, out)
    forces = forces_in(springs, part, target)
    found = Settled(target, forces, touching)
    missing = _size(springs.load - carried(springs, forces))
    rounding = np.max(_rounding(springs, target) * touching, axis=0)
    closed = missing <= CLOSE * _size(springs.load) + rounding
    return found, closed & _agreed(springs, found, pressed(springs, target, forces))


def _correct(springs: Springs, answer: Settled) -> None:
    """Close what rounding has left between forces and load, which stiff springs with gaps need."""
    np.maximum(answer.forces, 0.0, out=answer.forces)
    for _ in range(2):
        missing = springs.load - carried(springs, answer.forces)
        off = np.flatnonzero(_size(missing) > TRUE * _size(springs.load))
        if not len(off):
            break
        some = choose(springs, off)
        part = piece(some, answer.touching[:, off])
        factors = floored_factor(part.stiffness, floors(part.stiffness))
        added = forces_added(some, part, solve(factors, missing[:, off]))
        answer.forces[:, off] = np.maximum(answer.forces[:, off] + added, 0.0)
