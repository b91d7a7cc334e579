"""The least clearance of two moving bodies over all travels, and where they come near.

Branch and bound over boxes of travels: of each box the distance in its middle is known exactly, and
so is a distance below which it cannot fall anywhere in the box (bounds.py). The box with the lowest
bound is halved until no bound is more than the tolerance below the least distance that was found.
So the answer is above the true least clearance by at most the tolerance, a hundredth of a
millimetre, and no collision is missed: where bodies overlap, the answer is at most the tolerance.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.bounds import Encounter, distances, examine, motion
from reviewer.geometry.chain import courses_of
from reviewer.geometry.course import breaks_of

Array = NDArray[np.float64]
TOLERANCE = 1e-5  # a hundredth of a millimetre
MOST = 60_000  # boxes after which a search gives up, and says so
AT_FIRST, AT_ONCE = 8, 32  # boxes that are looked at together: one at a time takes as long
SAME = 1e-9  # distances nearer than this are the same: the earlier position is told


class Least(NamedTuple):
    """The least clearance [m], the travels at which it is, and how it was found.

    `bound` is the guaranteed least; `evaluations` counts distances that were computed. Where
    `settled` is false the search gave up, and only the bound is sure.
    """

    clearance: float
    at: tuple[float, ...]
    bound: float
    evaluations: int
    settled: bool


class _Boxes(NamedTuple):
    """Boxes of travels: middles and half widths (boxes, travels)."""

    middles: Array
    halves: Array


def least_clearance(
    encounter: Encounter,
    tolerance: float = TOLERANCE,
    beyond: float = np.inf,
) -> Least:
    """The least clearance over all positions of all travels, to within the tolerance.

    Where it is sure to be `beyond` a distance, how far beyond is of no interest: what is told then
    is a clearance that occurs, and the bound is at least that distance less the tolerance.
    """
    boxes, corners = _begin(encounter)
    best, at = _better(np.inf, (), distances(encounter, corners), corners)
    evaluations = len(corners)
    middles, halves = boxes.middles, boxes.halves
    moving = halves.any(axis=1)
    middles, halves = middles[moving], halves[moving]
    bounds = np.zeros(len(middles))
    while len(middles) and evaluations < MOST:
        few = max(AT_FIRST, min(AT_ONCE, len(middles) // 4))
        chosen = np.argsort(bounds, kind="stable")[:few]
        found = examine(encounter, middles[chosen], halves[chosen])
        evaluations += len(chosen)
        best, at = _better(best, at, found.distance, middles[chosen])
        rest = np.ones(len(middles), dtype=np.bool_)
        rest[chosen] = False
        lower = np.maximum(found.least, bounds[chosen])
        new, of = _halved(encounter, middles[chosen], halves[chosen])
        middles = np.concatenate([middles[rest], new.middles])
        halves = np.concatenate([halves[rest], new.halves])
        bounds = np.concatenate([bounds[rest], lower[of]])
        open_ = bounds < min(best, beyond) - tolerance
        middles, halves, bounds = middles[open_], halves[open_], bounds[open_]
        if best <= 0.0:
            break
    settled = not len(middles) or best <= 0.0
    sure = max(min(best, beyond) - tolerance, 0.0)
    lowest = sure if settled else min([best, *bounds])
    return Least(best, at, float(lowest), evaluations, bool(settled))


def _begin(encounter: Encounter) -> tuple[_Boxes, Array]:
    """Boxes between the breaks of all travels, and the corners of all of them."""
    courses = courses_of(encounter.chain)
    grids = []
    for travel in range(encounter.travels):
        used = any(course.travel == travel for course in courses)
        grids.append(np.array(breaks_of(courses, travel) if used else (0.0,)))
    corners = _grid(grids)
    grids = [_finer(grid, len(grids)) for grid in grids]
    middles = [(grid[1:] + grid[:-1]) / 2 if len(grid) > 1 else grid for grid in grids]
    halves = [(grid[1:] - grid[:-1]) / 2 if len(grid) > 1 else 0.0 * grid for grid in grids]
    return _Boxes(_grid(middles), _grid(halves)), corners


def _finer(grid: Array, travels: int) -> Array:
    """Breaks with a few places between them, as many boxes as are looked at together."""
    pieces = len(grid) - 1
    parts = max(1, int(AT_FIRST ** (1.0 / travels)) // max(pieces, 1))
    if pieces < 1 or parts < 2:
        return grid
    return np.interp(np.arange(pieces * parts + 1) / parts, np.arange(len(grid)), grid)


def _grid(columns: list[Array]) -> Array:
    """Every combination, the last column fastest."""
    if not columns:
        return np.zeros((1, 0))
    return np.stack([each.ravel() for each in np.meshgrid(*columns, indexing="ij")], axis=1)


def _better(
    best: float, at: tuple[float, ...], found: Array, positions: Array
) -> tuple[float, tuple[float, ...]]:
    """The least distance so far, at the earliest of the positions that share it."""
    lowest = float(found.min())
    lowest = 0.0 if lowest < SAME else lowest
    if lowest > best + SAME:
        return best, at
    near = positions[found <= lowest + SAME]
    first = min(tuple(float(each) for each in position) for position in near)
    if lowest < best - SAME:
        return lowest, first
    return min(best, lowest), min(at, first)


def _halved(encounter: Encounter, middles: Array, halves: Array) -> tuple[_Boxes, NDArray[np.intp]]:
    """Each box cut in two across the travel that moves the bodies most, and whose half it is."""
    rows = np.arange(len(middles))
    cut = np.argmax(halves > 0.0, axis=1)
    if np.count_nonzero(halves.any(axis=0)) > 1:
        weight = np.empty_like(halves)
        for travel in range(halves.shape[1]):
            alone = np.zeros_like(halves)
            alone[:, travel] = halves[:, travel]
            weight[:, travel] = motion(encounter, middles, alone)
        cut = np.argmax(weight, axis=1)
    quarter = np.zeros_like(halves)
    quarter[rows, cut] = halves[rows, cut] / 2
    can = halves[rows, cut] > 0.0
    rows, halved = rows[can], halves - quarter
    both = np.concatenate([middles - quarter, middles + quarter])
    of = np.concatenate([rows, rows])
    keep = np.concatenate([can, can])
    return _Boxes(both[keep], np.concatenate([halved, halved])[keep]), of
