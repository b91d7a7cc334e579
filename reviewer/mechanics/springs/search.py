"""The worst direction of a turning load: scanned, then sought around every candidate.

While the same springs touch, a force is a sinusoid of the direction, and its peak follows from its
slope and bend in one step. Where another spring starts to touch, it has a kink: then the peak
lies between the two sides' tangents, and the search closes in on it from both.
"""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.springs.grid import Columns
from reviewer.mechanics.springs.layout import Array, Flags, Indices, take
from reviewer.mechanics.springs.one_way import Springs
from reviewer.mechanics.springs.settling import Settled, settle
from reviewer.mechanics.springs.turning import TurningLoad, answers_of, springs_towards

ROUNDS = 40
PRECISE = 1e-11  # of the value: what a closer search could still win
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
    far.
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
    rows = np.concatenate(answers)
    answer = np.repeat(np.arange(len(answers)), [len(group) for group in answers])
    values = values[rows]
    top = np.maximum.reduceat(values, np.flatnonzero(np.diff(answer, prepend=-1)), axis=0)
    best = np.maximum.reduceat(top, columns.start, axis=1)
    enough = best - TIE * np.abs(best)
    place, column = _peaks(values, columns)
    own, before, after = (
        values[place, which] for which in (column, columns.before[column], columns.after[column])
    )
    bound = own + np.maximum(own - before, own - after)
    able = bound >= enough[answer[place], columns.item[column]]
    first, level = _first_of_each(values, top, columns, answer, enough)
    place = np.concatenate([place[able], level])
    column = np.concatenate([column[able], first])
    bound = np.concatenate([bound[able], values[level, first]])
    return Candidates(column, rows[place], answer[place], bound)


def _peaks(values: Array, columns: Columns) -> tuple[Indices, Indices]:
    """Rows and columns of values that are not below their neighbours, of a level the first."""
    before = take(values, columns.before)
    risen = (values > before) | columns.first
    row, column = np.nonzero(risen & (values >= take(values, columns.after)))
    real = values[row, column] >= before[row, column]
    return row[real], column[real]


def _first_of_each(
    values: Array, top: Array, columns: Columns, answer: Indices, enough: Array
) -> tuple[Indices, Indices]:
    """First column, and in it the first row, of the greatest values of each answer and item."""
    far = top.shape[1]
    place = np.where(top >= take(enough, columns.item), np.arange(far), far)
    first = np.minimum.reduceat(place, columns.start, axis=1)
    known = np.flatnonzero(first < far)
    column, asked = first.ravel()[known], known // first.shape[1]
    level = take(values, column) >= enough.ravel()[known]
    return column, np.argmax(level & (answer[:, None] == asked), axis=0)


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
        step, expected = _next(bracket, hair[left], turn)
        open_ = np.flatnonzero((expected > best[left] + hair[left]) & (bracket.reach > NEAR))
        if not len(open_):
            break
        left, bracket = left[open_], _some(bracket, open_)
        middle = _end_at(load, item[left], row[left], bracket, step[open_])
        better = np.flatnonzero(middle.value > best[left])
        best[left[better]] = middle.value[better]
        unit[:, left[better]] = take(middle.unit, better)
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
    near = _scanned(load, columns, settled, found.column, found.row)
    dip = np.flatnonzero(np.abs(near.slope) < FLAT * near.bend)
    which = np.concatenate([np.arange(len(found.row)), dip])
    turn = np.where(near.slope < 0, -1.0, 1.0)[which]
    turn[len(found.row) :] *= -1
    column = found.column[which]
    ahead = np.where(turn > 0, columns.after[column], columns.before[column])
    far = _along(_scanned(load, columns, settled, ahead, found.row[which]), turn)
    near = _along(_of(near, which), turn)
    near = near._replace(slope=np.maximum(near.slope, FLAT * near.bend))
    return Bracket(near, far, _tangent(near.unit, far.unit) * turn, turn), which


def _scanned(
    load: TurningLoad, columns: Columns, settled: Settled, column: Indices, row: Indices
) -> End:
    """A direction of the scan as an end."""
    item, unit = columns.item[column], take(columns.unit, column)
    parts: Any = (take(part, column) for part in settled)
    return _end(load, item, row, unit, springs_towards(load, item, unit), Settled(*parts))


def _end(
    load: TurningLoad, item: Indices, row: Indices, unit: Array, springs: Springs, here: Settled
) -> End:
    return End(unit, *answers_of(load, item, unit, springs, here, row), here.touching)


def _along(end: End, turn: Array) -> End:
    return end._replace(slope=end.slope * turn)


def _end_at(load: TurningLoad, item: Indices, row: Indices, bracket: Bracket, step: Array) -> End:
    """A step (as a tangent) ahead of the near end."""
    x, y = bracket.near.unit
    aside = bracket.turn * step
    unit = np.array([x - aside * y, y + aside * x]) / np.sqrt(1 + step * step)
    springs = springs_towards(load, item, unit)
    here = settle(springs, bracket.near.touching, strict=0)
    return _along(_end(load, item, row, unit, springs, here), bracket.turn)


def _tangent(one: Array, other: Array) -> Array:
    """Tangent of the angle from one direction to another."""
    across = one[0] * other[1] - one[1] * other[0]
    return np.asarray(across / (one[0] * other[0] + one[1] * other[1]), float)


def _next(bracket: Bracket, hair: Array, turn: int) -> tuple[Array, Array]:
    """How far ahead of near to look next, as a tangent, and the value expected at most.

    At the peak of near's own sinusoid, or of far's, or else where the two meet. Where they do not
    bound the value between them there is more to it than the two: then at the peak of near's own,
    or of the parabola through near and far, and at every other turn in the middle.
    """
    near, far, reach = bracket.near, bracket.far, bracket.reach
    meet, bounding = _meeting(bracket, hair)
    up = np.where(near.bend < 0, -near.slope / near.bend, np.inf)
    down = np.where(far.bend < 0, _ahead(far.slope / far.bend, reach), -np.inf)
    step = np.where(up <= meet, up, np.maximum(down, meet))
    expected = np.where(step <= meet, _value(near, step), _value(far, _ahead(reach, step)))
    drop = near.slope * reach - (far.value - near.value)
    parabola = np.where(drop > 0, near.slope * reach * reach / (2 * drop), reach / 2)
    blind = reach / 2 if turn % 2 else np.where(up < reach, up, parabola)
    step = np.where(bounding, step, blind)
    return step, np.where(bounding, expected, near.value + near.slope * reach)


def _ahead(here: Array, there: Array) -> Array:
    """Tangent of the angle from one to another, each given as a tangent."""
    return np.asarray((there - here) / (1 + here * there), float)


def _value(end: End, step: Array) -> Array:
    """Value of an end's own sinusoid a step (as a tangent) ahead of it."""
    cosine = 1 / np.sqrt(1 + step * step)
    sine = step * cosine
    return np.asarray(end.value + end.slope * sine + end.bend * sine * sine / (1 + cosine), float)


def _meeting(bracket: Bracket, hair: Array) -> tuple[Array, Flags]:
    """Where the sinusoids of near and far meet, and whether they bound the value between them."""
    near, far, reach = bracket.near, bracket.far, bracket.reach
    cosine = 1 / np.sqrt(1 + reach * reach)
    sine = reach * cosine
    below = _value(far, -reach) - near.value  # how much far's lies above near's, at near
    above = _value(near, reach) - far.value  # and near's above far's, at far
    rise = near.slope + far.bend * sine - far.slope * cosine
    both = below + 2 * (near.value + near.bend - far.value - far.bend)
    root = below / (rise + np.sqrt(np.maximum(rise * rise + both * below, 0.0)))
    meet = 2 * root / (1 - root * root)
    bounding = (far.slope <= 0) & (below >= -hair) & (above >= -hair)
    return np.where(below > 0, np.where(above > 0, meet, reach), 0.0), bounding


def _split(bracket: Bracket, middle: End) -> Bracket:
    """The part of a bracket that holds the peak, split at a direction within it."""
    on = (middle.slope > 0) & (middle.value >= bracket.near.value)
    parts: Any = (np.where(on, new, old) for new, old in zip(middle, bracket.near, strict=True))
    near = End(*parts)
    parts = (np.where(on, old, new) for new, old in zip(middle, bracket.far, strict=True))
    far = End(*parts)
    return Bracket(near, far, _tangent(near.unit, far.unit) * bracket.turn, bracket.turn)
