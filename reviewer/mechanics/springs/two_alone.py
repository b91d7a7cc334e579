"""A load on the line of two springs, which bear it alone: the lever rule, and the least tilt.

A flexible body on two springs has no footing: it may tilt about their line until a third touches.
Its forces are known all the same. So what the search for a set of touching springs leaves open is
asked here.
"""

from itertools import combinations

import numpy as np

from reviewer.mechanics.springs.flexible import give
from reviewer.mechanics.springs.layout import Array
from reviewer.mechanics.springs.one_way import Springs, along
from reviewer.mechanics.springs.settling import Settled

ON_LINE = 1e-11  # of the load: a moment across the line that is rounding
TOUCHES = 1e-9  # of the springs' way: no nearer than this to touching


def on_two_alone(springs: Springs, settled: Settled) -> None:
    """Fill in what is still unknown where the load stands on the line of two springs."""
    open_ = np.flatnonzero(np.isnan(settled.forces[0]))
    for column in open_:
        for pair in combinations(range(len(settled.forces)), 2):
            if _try(springs, settled, int(column), pair):
                break


def _try(springs: Springs, settled: Settled, column: int, pair: tuple[int, int]) -> bool:
    """Put the answer of a pair in a column's place, if it is one."""
    basis, load = _of(springs.basis, column), springs.load[:, column]
    one, other = basis[pair[0]], basis[pair[1]]
    across = np.cross(one, other)
    size = np.sqrt(np.einsum("i,i", across, across))
    if size == 0.0:
        return False
    across = across / size
    lever = np.array([one, other, across]).T
    shares = np.linalg.solve(lever, load)
    if shares[:2].min() < 0.0 or np.abs(shares[2]) > ON_LINE * np.abs(load).max():
        return False
    forces = np.zeros(len(basis))
    forces[list(pair)] = shares[:2]
    movement = _least_tilt(springs, column, pair, forces, across)
    if movement is None:
        return False
    settled.forces[:, column], settled.movement[:, column] = forces, movement
    settled.touching[:, column] = forces > 0.0
    return True


def _least_tilt(
    springs: Springs, column: int, pair: tuple[int, int], forces: Array, across: Array
) -> Array | None:
    """The movement with the least tilt about their line at which no other spring touches."""
    basis, stiffness, gap = (
        _of(each, column) for each in (springs.basis, springs.stiffness, springs.gap)
    )
    bends = np.zeros(len(basis))
    if springs.flexibility is not None:
        body = springs.flexibility
        bends = give(body._replace(row=body.row[[column]]), forces[:, None])[:, 0]
    rest = gap + bends
    wanted = [rest[each] + forces[each] / stiffness[each] for each in pair]
    held = np.array([basis[pair[0]], basis[pair[1]], across])
    level = np.linalg.solve(held, np.array([*wanted, 0.0]))
    others = np.array([each for each in range(len(basis)) if each not in pair], int)
    room = (rest - along(basis[:, :, None], level[:, None])[:, 0])[others]
    pace = along(basis[:, :, None], across[:, None])[:, 0][others]
    scale = np.abs(rest).max() + np.abs(wanted).max()
    room = room + TOUCHES * scale
    if (room[pace == 0.0] < 0.0).any():
        return None
    most = np.min(room[pace > 0.0] / pace[pace > 0.0], initial=np.inf)
    least = np.max(room[pace < 0.0] / pace[pace < 0.0], initial=-np.inf)
    if least > most:
        return None
    movement: Array = level + np.clip(0.0, least, most) * across
    return movement


def _of(array: Array, column: int) -> Array:
    """One column, or the one that serves all."""
    picked: Array = array[..., column if array.shape[-1] > 1 else 0]
    return picked
