"""Directions of a load that the body's own sag turns with: approached, as no arc is exact."""

import numpy as np

from reviewer.mechanics.springs.arcs import half_tangent, turned
from reviewer.mechanics.springs.coverage import all_pieces, in_order
from reviewer.mechanics.springs.grid import Columns
from reviewer.mechanics.springs.layout import Array, Indices, take
from reviewer.mechanics.springs.peaks import Peaks, narrow, peaks
from reviewer.mechanics.springs.settling import size_of
from reviewer.mechanics.springs.turning import Pieces, TurningLoad, joined, pieces_at

ROUNDS = 30
COVERED = 5e-4  # a gap between two arcs that is narrower than this is left to the closer look
SAME = 1e-7  # two spots closer than this on an arc are one
NEARLY = 0.999  # of the way to a neighbour: there is nothing new to be seen from here on
GAIN = 5e-10  # of the greatest value, and of the load: what is still worth a closer look


def pieces_seen_closely(load: TurningLoad, columns: Columns, answers: list[Indices]) -> Pieces:
    """Pieces at the columns' directions, and wherever their arcs promise more than was seen.

    Where the body's own sag turns with the load, a sinusoid is only near the truth, the nearer the
    closer it is. So each arc ends where its neighbour stands, the most promising place is tried
    for every answer and item, and what counts in the end is each piece's own direction.
    """
    pieces = in_order(all_pieces(load, columns, COVERED))
    left = np.arange(len(load.turning))
    for _ in range(ROUNDS):
        shown = _greatest(peaks(load, narrow(pieces), answers), len(answers) * len(left))
        back, ahead = _neighbours(pieces)
        found = peaks(load, _between(pieces, back, ahead), answers)
        best = _promising(load, found, shown, len(answers))
        if not len(best):
            break
        column, t = found.column[best], found.t[best]
        taken = (t > NEARLY * ahead[column]) | (t < -NEARLY * back[column])
        unit = turned(take(pieces.unit, column), np.where(taken, _half(t), t))
        more = pieces_at(load, pieces.item[column], unit, take(pieces.touching, column), strict=0)
        pieces = in_order(joined([pieces, more]))
    return pieces


def _neighbours(pieces: Pieces) -> tuple[Array, Array]:
    """How far each piece's neighbours are, back and ahead."""
    first = np.flatnonzero(np.diff(pieces.item, prepend=-1))
    last = np.append(first[1:], len(pieces.item)) - 1
    after, before = np.arange(len(pieces.item)) + 1, np.arange(len(pieces.item)) - 1
    after[last], before[first] = first, last
    ahead = half_tangent(pieces.unit, take(pieces.unit, after))
    return half_tangent(take(pieces.unit, before), pieces.unit), ahead


def _between(pieces: Pieces, back: Array, ahead: Array) -> Pieces:
    """Each piece's arc as far as its neighbours."""
    return pieces._replace(
        ahead=np.minimum(pieces.ahead, ahead), back=np.minimum(pieces.back, back)
    )


def _half(t: Array) -> Array:
    """Half the angle."""
    return np.asarray(t / (1 + np.sqrt(1 + t * t)), float)


def _greatest(found: Peaks, places: int) -> Array:
    greatest = np.full(places, -np.inf)
    np.maximum.at(greatest, found.place, found.value)
    return greatest


def _promising(load: TurningLoad, found: Peaks, shown: Array, answers: int) -> Indices:
    """The peaks that promise more than was seen at their place; of one spot, only one."""
    size = size_of(load.fixed) + load.turning
    force = np.repeat(np.arange(answers) < answers - 2, len(size))
    enough = shown + GAIN * (np.abs(shown) + force * np.tile(size, answers))
    which = np.flatnonzero(found.value > enough[found.place])
    which = which[np.lexsort((found.t[which], found.column[which]))]
    column, t = found.column[which], found.t[which]
    same = (np.diff(column, prepend=-1) == 0) & (np.abs(np.diff(t, prepend=9.0)) < SAME)
    kept: Indices = which[~same]
    return kept
