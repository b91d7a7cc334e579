"""All directions of many items: scanned in blocks, then searched where something stands out."""

from typing import Any

import numpy as np

from reviewer.mechanics.springs.grid import Compass, columns_of, compass
from reviewer.mechanics.springs.layout import Indices, take
from reviewer.mechanics.springs.search import Candidates, candidates, seek, worth_seeking
from reviewer.mechanics.springs.settling import first_guess, settle
from reviewer.mechanics.springs.turning import (
    TurningLoad,
    block_of,
    springs_towards,
    values_of,
)
from reviewer.mechanics.springs.worst_of import Worst, worst_of

BLOCK = 120_000  # springs times directions solved at once: arrays of a few megabytes


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
    """Scan the directions of a block of items, then search around what stands out."""
    all_round = load.turning[block] > 0
    columns = columns_of(directions, load.layout.row[block], all_round)
    load = block_of(load, block)
    springs = springs_towards(load, columns.item, columns.unit)
    settled = settle(springs, first_guess(springs))
    values = values_of(load, columns.item, springs, settled)
    found = candidates(values, columns, answers)
    value = values[found.row, found.column]
    unit = take(columns.unit, found.column)
    turns = all_round[columns.item[found.column]]
    worth = np.flatnonzero(turns & worth_seeking(found, value, len(settled.forces)))
    some: Any = (part[worth] for part in found)
    value[worth], unit[:, worth] = seek(load, columns, settled, Candidates(*some))
    place = found.answer * len(block) + columns.item[found.column]
    member = found.row % len(settled.forces)
    return worst_of(len(answers) * len(block), place, value, unit, member)
