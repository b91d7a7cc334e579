"""Every piece of the circle of directions, between those that were tried first."""

from typing import Any

import numpy as np

from reviewer.mechanics.springs.arcs import added_angle, half_tangent, turned
from reviewer.mechanics.springs.grid import Columns
from reviewer.mechanics.springs.layout import Array, Indices, take
from reviewer.mechanics.springs.turning import Pieces, TurningLoad, joined, pieces_at
from reviewer.mechanics.springs.worst_of import round_the_circle

ROUNDS = 40  # each at least halves what is not covered
MOST = 64  # pieces for each direction tried first: finer than this, what is left is rounding
COVERED = 1e-9  # a gap between two arcs that is narrower than this is none [half rad]


def in_order(pieces: Pieces) -> Pieces:
    """Each item's pieces together, in order round the circle."""
    order = np.lexsort((round_the_circle(pieces.unit), pieces.item))
    parts: Any = (take(part, order) for part in pieces)
    return Pieces(*parts)


def all_pieces(load: TurningLoad, columns: Columns, covered: float = COVERED) -> Pieces:
    """Pieces at the columns' directions, and at others until their arcs leave no gap.

    A gap between two neighbours' arcs is tried in its middle, until the arcs meet: then every
    direction of the circle is known.
    """
    pieces = pieces_at(load, columns.item, columns.unit, None)
    left = np.flatnonzero(columns.after != np.arange(len(columns.item)))
    right = columns.after[left]
    for _ in range(ROUNDS):
        middle, open_ = _gaps(pieces, left, right, covered)
        if not len(open_) or len(pieces.item) > MOST * len(columns.item):
            break
        left, right = left[open_], right[open_]
        unit = turned(take(pieces.unit, left), middle[open_])
        found = pieces_at(load, pieces.item[left], unit, take(pieces.touching, left), strict=0)
        new = np.arange(len(left)) + len(pieces.item)
        pieces = joined([pieces, found])
        left, right = np.concatenate([left, new]), np.concatenate([new, right])
    return pieces


def _gaps(pieces: Pieces, left: Indices, right: Indices, covered: float) -> tuple[Array, Indices]:
    """Middle of the gap between each two neighbours, seen from the left, and which are open."""
    whole = half_tangent(take(pieces.unit, left), take(pieces.unit, right))
    first = np.minimum(pieces.ahead[left], whole)
    last = added_angle(whole, -np.minimum(pieces.back[right], whole))
    return (first + last) / 2, np.flatnonzero(last - first > covered)
