"""The worst of all directions of many items, block by block."""

import numpy as np

from reviewer.mechanics.springs.arcs import turned
from reviewer.mechanics.springs.closer import pieces_seen_closely
from reviewer.mechanics.springs.coverage import all_pieces, in_order
from reviewer.mechanics.springs.grid import FINE_STEP, STEP, Compass, columns_of, compass
from reviewer.mechanics.springs.layout import Indices, take
from reviewer.mechanics.springs.peaks import narrow, peaks
from reviewer.mechanics.springs.turning import TurningLoad, block_of
from reviewer.mechanics.springs.worst_of import Worst, worst_of

BLOCK = 60_000  # springs times directions tried first at once: arrays of a few megabytes


def searched(load: TurningLoad, items: Indices, groups: list[Indices]) -> Worst:
    """Worst of each answer (answers, items): greatest and least of each group, then the others."""
    count = len(load.layout.basis)
    answers = [*groups, *(count + group for group in groups)]
    answers += [np.array([2 * count + last]) for last in range(3)]
    shape = (len(answers), len(load.layout.row))
    whole = Worst(np.full(shape, np.nan), np.full(shape, np.nan), np.full(shape, -1))
    directions = compass(load.layout, FINE_STEP if callable(load.sag) else STEP)
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
    if callable(load.sag):
        pieces = narrow(pieces_seen_closely(load, columns, answers))
    else:
        pieces = in_order(all_pieces(load, columns))
    found = peaks(load, pieces, answers)
    unit = turned(take(pieces.unit, found.column), found.t)
    member = found.row % len(pieces.touching)
    return worst_of(len(answers) * len(load.turning), found.place, found.value, unit, member)
