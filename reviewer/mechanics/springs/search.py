"""The worst direction of a turning load: scanned, then sought around every candidate.

While the same springs touch, a force is a sinusoid of the direction, and its peak follows from its
slope and bend in one step. Where another spring starts to touch, it has a kink: then the peak
lies between the two sides' tangents, and the search closes in on it from both.
"""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.springs.grid import Columns
from reviewer.mechanics.springs.layout import Array, Flags, Indices, take
from reviewer.mechanics.springs.settling import Settled
from reviewer.mechanics.springs.turning import TurningLoad, answers_of, settle_towards

ROUNDS = 40
PRECISE = 1e-12  # of the value: what a closer search could still win
TIE = 1e-9  # of the largest value: candidates this much below it are looked at too
FLAT = 1e-6  # of the bend: a value with less slope than this is level
NEAR = 1e-12  # directions closer than this are one [rad]


class Candidates(NamedTuple):
    """Places near which a value may be greatest: column of the scan, row of the value.

    `answer` is the number of the answer that it is for, `bound` what it might rise to nearby.
    """

    column: Indices
    row: Indices
    answer: Indices
    bound: Array


class End(NamedTuple):
    """One end of a bracket: the direction (2, columns), and there the value with its derivatives
    along the bracket's own sense, and which springs touch (n, columns)."""

    unit: Array
    value: Array
    slope: Array
    bend: Array
    touching: Flags


class Bracket(NamedTuple):
    """A value that rises at `near` and has fallen again at `far`, a way ahead of it.

    `reach` is the tangent of the angle between the two; `turn` is +1 or -1, the sense from near to
    far. Where the value does not fall at `far`, its slope and bend there say nothing: NaN.
    """

    near: End
    far: End
    reach: Array
    turn: Array


def candidates(values: Array, columns: Columns, answers: list[Indices]) -> Candidates:
    """Local peaks of the scanned values that could rise to the greatest of their answer.

    A peak between two directions of the scan is taken to rise no more above the nearer one than
    this one stands above its other neighbour. The first direction of the greatest values scanned
    is there too, as it counts where a value is the same all round.
    """
    before, after = take(values, columns.before), take(values, columns.after)
    peak = (values >= before) & (values >= after) & ((values > before) | columns.first)
    bound = values + np.maximum(values - before, values - after)
    greatest = np.maximum.reduceat(values, columns.start, axis=1)
    found = []
    for answer, rows in enumerate(answers):
        best = np.max(greatest[rows], axis=0)
        enough = (best - TIE * np.abs(best))[columns.item]
        row, column = np.nonzero(peak[rows] & (bound[rows] >= enough))
        found.append((column, rows[row], np.full(len(row), answer), bound[rows[row], column]))
        level = values[rows] >= enough
        first = _first_of_each(np.any(level, axis=0), columns)
        row = rows[np.argmax(level[:, first], axis=0)]
        found.append((first, row, np.full(len(row), answer), values[row, first]))
    return Candidates(*(np.concatenate(part) for part in zip(*found, strict=True)))


def _first_of_each(among: Flags, columns: Columns) -> Indices:
    """The first of the given columns of each item."""
    which = np.flatnonzero(among)
    _, first = np.unique(columns.item[which], return_index=True)
    return which[first]


def worth_seeking(found: Candidates, value: Array, count: int) -> Flags:
    """Not if it is level, nor for a force that stays below zero or has come down to it."""
    least = (found.row >= count) & (found.row < 2 * count)
    force = (found.row < count) | (found.row == 2 * count)
    can: Flags = np.where(least, value < 0, ~force | (found.bound > 0))
    return can & (found.bound > value + PRECISE * np.abs(value))


def seek(
    load: TurningLoad, columns: Columns, settled: Settled, found: Candidates
) -> tuple[Array, Array]:
    """Value and direction (2, .) of the peak near each candidate."""
    bracket, which = _first_brackets(load, columns, settled, found)
    item, row = columns.item[found.column[which]], found.row[which]
    best, unit = bracket.near.value.copy(), bracket.near.unit.copy()
    hair = PRECISE * (np.abs(best) + _load_size(load, item) * (row <= 2 * len(settled.forces)))
    left = np.arange(len(which))
    for turn in range(ROUNDS):
        step, expected = _next(bracket, turn)
        open_ = np.flatnonzero((expected > best[left] + hair[left]) & (bracket.reach > NEAR))
        if not len(open_):
            break
        left, bracket = left[open_], _some(bracket, open_)
        middle = _end_at(load, item[left], row[left], bracket, step[open_])
        better = np.flatnonzero(middle.value > best[left])
        best[left[better]] = middle.value[better]
        unit[:, left[better]] = middle.unit[:, better]
        bracket = _split(bracket, middle)
    return _better_side(best, unit, which, len(found.row))


def _better_side(best: Array, unit: Array, which: Indices, number: int) -> tuple[Array, Array]:
    """Of a candidate's one or two brackets (the first of all, then the second), the greater."""
    value, towards = best[:number], unit[:, :number]
    second = which[number:]
    more = best[number:] > value[second]
    value[second[more]] = best[number:][more]
    towards[:, second[more]] = unit[:, number:][:, more]
    return value, towards


def _load_size(load: TurningLoad, item: Indices) -> Array:
    fixed = take(load.fixed, item)
    size: Array = np.abs(fixed[0]) + np.abs(fixed[1]) + np.abs(fixed[2]) + load.turning[item]
    return size


def _some(bracket: Bracket, which: Indices) -> Bracket:
    near, far = _of(bracket.near, which), _of(bracket.far, which)
    return Bracket(near, far, bracket.reach[which], bracket.turn[which])


def _of(end: End, which: Indices) -> End:
    parts: Any = (take(part, which) for part in end)
    return End(*parts)


def _first_brackets(
    load: TurningLoad, columns: Columns, settled: Settled, found: Candidates
) -> tuple[Bracket, Indices]:
    """From each candidate to the neighbour on the side to which the value rises.

    A candidate at the bottom of a dip that is narrower than the scan is looked at on both sides:
    then which candidate a bracket belongs to is listed, all first sides before the second ones.
    """
    near = _end(load, columns, settled, found.column, found.row)
    dip = np.flatnonzero(np.abs(near.slope) < FLAT * near.bend)
    which = np.concatenate([np.arange(len(found.row)), dip])
    turn = np.where(near.slope < 0, -1.0, 1.0)[which]
    turn[len(found.row) :] *= -1
    column = found.column[which]
    ahead = np.where(turn > 0, columns.after[column], columns.before[column])
    far = _along(_end(load, columns, settled, ahead, found.row[which]), turn)
    falls = far.slope < 0
    far = far._replace(
        slope=np.where(falls, far.slope, np.nan), bend=np.where(falls, far.bend, np.nan)
    )
    near = _along(_of(near, which), turn)
    near = near._replace(slope=np.maximum(near.slope, FLAT * near.bend))
    return Bracket(near, far, _tangent(near.unit, far.unit) * turn, turn), which


def _end(
    load: TurningLoad, columns: Columns, settled: Settled, column: Indices, row: Indices
) -> End:
    unit = take(columns.unit, column)
    parts: Any = (take(part, column) for part in settled)
    here = Settled(*parts)
    return End(unit, *answers_of(load, columns.item[column], unit, here, row), here.touching)


def _along(end: End, turn: Array) -> End:
    return end._replace(slope=end.slope * turn)


def _end_at(load: TurningLoad, item: Indices, row: Indices, bracket: Bracket, step: Array) -> End:
    """A step (as a tangent) ahead of the near end."""
    x, y = bracket.near.unit
    aside = bracket.turn * step
    unit = np.array([x - aside * y, y + aside * x]) / np.sqrt(1 + step * step)
    new = settle_towards(load, item, unit, bracket.near.touching)
    return _along(End(unit, *answers_of(load, item, unit, new, row), new.touching), bracket.turn)


def _tangent(one: Array, other: Array) -> Array:
    """Tangent of the angle from one direction to another."""
    across = one[0] * other[1] - one[1] * other[0]
    return np.asarray(across / (one[0] * other[0] + one[1] * other[1]), float)


def _next(bracket: Bracket, turn: int) -> tuple[Array, Array]:
    """How far ahead of near to look next, as a tangent, and the value expected at most.

    At the peak of near's own sinusoid, or of far's, or else where the two meet; where far's is not
    known, at the peak of the parabola through near and far.
    """
    near, far, reach = bracket.near, bracket.far, bracket.reach
    meet = _meeting(bracket)
    up = np.where(near.bend < 0, -near.slope / near.bend, np.inf)
    down = reach + np.where(far.bend < 0, -far.slope / far.bend, -np.inf)
    step = np.where(up <= meet, up, np.where(down > meet, down, meet))
    ahead = step - reach
    on_near = near.value + step * (near.slope + step * near.bend / 2)
    on_far = far.value + ahead * (far.slope + ahead * far.bend / 2)
    expected = np.where(step <= meet, on_near, on_far)
    drop = near.slope * reach - (far.value - near.value)
    parabola = np.where(drop > 0, near.slope * reach * reach / (2 * drop), reach / 2)
    blind = ~((step >= 0) & (step <= reach))
    step = np.where(blind, np.where(up < reach, up, parabola), step)
    expected = np.where(blind, near.value + near.slope * reach, expected)
    if turn > 5 and turn % 2:
        step = reach / 2
    return np.clip(step, 0.0, reach), expected


def _meeting(bracket: Bracket) -> Array:
    """Where the values as near and as far continue them are the same; NaN where they are not."""
    near, far, reach = bracket.near, bracket.far, bracket.reach
    square = (near.bend - far.bend) / 2
    linear = near.slope - far.slope + far.bend * reach
    fixed = near.value - far.value + far.slope * reach - far.bend * reach * reach / 2
    root = np.sqrt(linear * linear - 4 * square * fixed)
    return np.asarray(-2 * fixed / (linear + root), float)


def _split(bracket: Bracket, middle: End) -> Bracket:
    """The part of a bracket that holds the peak, split at a direction within it."""
    on = (middle.slope > 0) & (middle.value >= bracket.near.value)
    parts: Any = (np.where(on, new, old) for new, old in zip(middle, bracket.near, strict=True))
    near = End(*parts)
    falls = middle.slope < 0
    fallen = middle._replace(
        slope=np.where(falls, middle.slope, np.nan), bend=np.where(falls, middle.bend, np.nan)
    )
    parts = (np.where(on, old, new) for new, old in zip(fallen, bracket.far, strict=True))
    far = End(*parts)
    return Bracket(near, far, _tangent(near.unit, far.unit) * bracket.turn, bracket.turn)
