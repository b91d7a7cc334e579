"""The worst of all directions of many items, block by block."""

from typing import Any

import numpy as np

from reviewer.mechanics.springs.arcs import turned
from reviewer.mechanics.springs.coverage import ROUNDS, all_pieces
from reviewer.mechanics.springs.grid import Compass, columns_of, compass
from reviewer.mechanics.springs.layout import Indices, take
from reviewer.mechanics.springs.peaks import Peaks, narrow, peaks
from reviewer.mechanics.springs.turning import Pieces, TurningLoad, block_of, joined, pieces_at
from reviewer.mechanics.springs.worst_of import Worst, worst_of

BLOCK = 60_000  # springs times directions tried first at once: arrays of a few megabytes
CLOSER = 6  # rounds in which a peak is approached where the body's own sag turns with the load
GAIN = 1e-11  # of the greatest value: what is still worth a closer look


def searched(load: TurningLoad, items: Indices, groups: list[Indices]) -> Worst:
    """Worst of each answer (answers, items): greatest and least of each group, then the others."""
    count = len(load.layout.basis)
    answers = [*groups, *(count + group for group in groups)]
    answers += [np.array([2 * count + last]) for last in range(3)]
    shape = (len(answers), len(load.layout.row))
    whole = Worst(np.full(shape, np.nan), np.full(shape, np.nan), np.full(shape, -1))
    directions = compass(load.layout)
    step = max(1, BLOCK // (count * int(np.max(directions.number, initial=1))))
    for start in range(0, len(items), step):
        block = items[start : start + step]
        for target, part in zip(whole, _in_block(load, block, directions, answers), strict=True):
            target[:, block] = part.reshape(len(answers), len(block))
    return whole


def _in_block(
    load: TurningLoad, block: Indices, directions: Compass, answers: list[Indices]
) -> Worst:
    columns = columns_of(directions, load.layout.row[block], load.turning[block] > 0)
    load = block_of(load, block)
    pieces = _in_order(all_pieces(load, columns, CLOSER if callable(load.sag) else ROUNDS))
    if callable(load.sag):
        pieces = narrow(_seen_closely(load, pieces, answers))
    return _worst(load, pieces, peaks(load, pieces, answers), answers)


def _in_order(pieces: Pieces) -> Pieces:
    """Each item's pieces together."""
    order = np.argsort(pieces.item, kind="stable")
    parts: Any = (take(part, order) for part in pieces)
    return Pieces(*parts)


def _worst(load: TurningLoad, pieces: Pieces, found: Peaks, answers: list[Indices]) -> Worst:
    unit = turned(take(pieces.unit, found.column), found.t)
    member = found.row % len(pieces.touching)
    return worst_of(len(answers) * len(load.turning), found.place, found.value, unit, member)


def _seen_closely(load: TurningLoad, pieces: Pieces, answers: list[Indices]) -> Pieces:
    """Pieces with others wherever an arc promises more than any direction yet tried has shown.

    Where the body's own sag turns with the load, a sinusoid is only near the truth, and nearer the
    closer it is: so what counts in the end is a piece's own direction.
    """
    for _ in range(CLOSER):
        shown = np.full(len(answers) * len(load.turning), -np.inf)
        own = peaks(load, narrow(pieces), answers)
        np.maximum.at(shown, own.place, own.value)
        found = peaks(load, pieces, answers)
        more = found.value > (shown + GAIN * np.abs(shown))[found.place]
        if not np.any(more):
            break
        column = found.column[more]
        unit = turned(take(pieces.unit, column), found.t[more])
        item, touching = pieces.item[column], take(pieces.touching, column)
        pieces = _in_order(joined([pieces, pieces_at(load, item, unit, touching, strict=0)]))
    return pieces
