"""Greatest forces and movements on the arcs of all pieces of the circle of directions."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.arcs import FARTHEST, arc_peak
from reviewer.mechanics.springs.curves import curve_peaks
from reviewer.mechanics.springs.layout import Array, Indices, pick, take
from reviewer.mechanics.springs.one_way import added
from reviewer.mechanics.springs.turning import Pieces, TurningLoad
from reviewer.mechanics.springs.worst_of import TIE


class Peaks(NamedTuple):
    """Peaks that may be the greatest of their place: an answer, and in it an item.

    `column` is the piece, `t` where on its arc. Rows are each support's force, each one's negative,
    the uplift, the sink and the tilt; that of a peak is `row`.
    """

    place: Indices
    column: Indices
    row: Indices
    value: Array
    t: Array


def narrow(pieces: Pieces) -> Pieces:
    """Pieces that speak for their own direction only."""
    none = np.zeros_like(pieces.back)
    return pieces._replace(back=none, ahead=none)


def peaks(load: TurningLoad, pieces: Pieces, answers: list[Indices]) -> Peaks:
    """Peaks of each answer, a list of rows, that could be its greatest; items are in order."""
    items, count = len(load.turning), len(pieces.touching)
    rows = _sinusoids(load, pieces)
    row, column, answer = _promising(rows, pieces, answers[:-2])
    own, slope, bend = (rows[row, order, column] for order in range(3))
    value, t = arc_peak(own, slope, bend, pieces.back[column], pieces.ahead[column])
    least = (row >= count) & (row < 2 * count)
    forces = Peaks(
        answer * items + pieces.item[column],
        column,
        row,
        np.where(least, np.minimum(value, 0.0), value),
        t,
    )
    moved = _movements(load, pieces, len(answers) - 2)
    return Peaks(*(np.concatenate(part) for part in zip(forces, moved, strict=True)))


def _sinusoids(load: TurningLoad, pieces: Pieces) -> Array:
    """Forces, their negatives and the uplift (2 n + 1, orders, columns)."""
    forces = pieces.way * pieces.touching[:, None]
    sign = pick(load.layout.sign, load.layout.row[pieces.item])
    uplift = added(forces * (sign < 0)[:, None])
    return np.concatenate([forces, -forces, uplift[None]])


def _promising(
    rows: Array, pieces: Pieces, answers: list[Indices]
) -> tuple[Indices, Indices, Indices]:
    """Row, column and answer where an arc might reach the greatest value at any one direction."""
    asked = np.concatenate(answers)
    answer = np.repeat(np.arange(len(answers)), [len(group) for group in answers])
    value, slope, bend = (rows[asked, order] for order in range(3))
    best = np.maximum.reduceat(value, np.flatnonzero(np.diff(answer, prepend=-1)), axis=0)
    best = np.maximum.reduceat(best, np.flatnonzero(np.diff(pieces.item, prepend=-1)), axis=1)
    enough = best - TIE * np.abs(best)
    reach = value + 2 * FARTHEST * (np.abs(slope) + FARTHEST * np.abs(bend))
    row, column = np.nonzero(reach >= take(enough, pieces.item)[answer])
    return asked[row], column, answer[row]


def _movements(load: TurningLoad, pieces: Pieces, answer: int) -> Peaks:
    """Greatest sink of each piece, then greatest tilt of each, as an answer and the next."""
    number = len(pieces.item)
    column, kind = np.tile(np.arange(number), 2), np.repeat([0, 1], number)
    sink, tilt = np.where(kind == 0, 1.0, 0.0), np.where(kind == 0, load.rim, 1.0)
    moved = take(pieces.moved, column)
    value, t = curve_peaks(moved, sink, tilt, pieces.back[column], pieces.ahead[column])
    place = (answer + kind) * len(load.turning) + pieces.item[column]
    return Peaks(place, column, 2 * len(pieces.touching) + 1 + kind, value, t)
