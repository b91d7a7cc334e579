"""Pairs: two values changed together, where no one of them alone mends a finding."""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

from reviewer.judging.remedies import Remedy
from reviewer.studying.axis import Axis, Option
from reviewer.studying.search import Search, Target, passes
from reviewer.studying.study import Point

MOST_AXES = 4  # of the finding's own, and of what its single changes break
MOST_OPTIONS = 6  # of one axis on the grid of a pair
MOST_JUDGED = 12  # points of the grids on which every finding is judged
MOST_VERIFIED = 3

Column = tuple[Axis, list[Option]]


class Both(NamedTuple):
    """Two options taken together, and how far they are from the present values."""

    distance: float
    options: tuple[Option, Option]

    @property
    def point(self) -> Point:
        """Both as one point of a study."""
        return {**self.options[0].point, **self.options[1].point}


def best_pair(
    search: Search, target: Target, own: Sequence[Axis], partners: Sequence[Axis]
) -> Remedy | None:
    """The pair of changes nearest to the present values that mends a target, if there is one.

    Of the target's own axes those options that bring it nearer to its limit, together with each
    other; and with all options of the partners, which mend what the target's own would break.
    """
    columns = [(axis, _improving(search, target, axis)) for axis in own[:MOST_AXES]]
    others = [(axis, _coarse(axis)) for axis in partners[:MOST_AXES]]
    pairs = [*combinations(columns, 2), *((one, other) for one in columns for other in others)]
    good: list[Both] = []
    for first, second in pairs:
        grid = list(_grid(first, second))
        if grid:
            found = search.look([target], [both.point for both in grid])
            holds = passes(found[target.key])
            good += [both for both, each in zip(grid, holds, strict=True) if each]
    good.sort(key=lambda both: both.distance)
    return _first_that_mends(search, target, good[:MOST_JUDGED])


def _improving(search: Search, target: Target, axis: Axis) -> list[Option]:
    """Of the options that were looked at, some that bring a target nearer to its limit."""
    seen = search.seen.get((axis.key, target.key))
    if seen is None:
        return _coarse(axis)
    options, used = seen
    now = search.now[target.key].utilisation[0]
    better = [option for option, nearer in zip(options, used < now, strict=True) if nearer]
    return _spread(axis, better)


def _coarse(axis: Axis) -> list[Option]:
    """A few options over the whole range of an axis, as they can be had."""
    return _spread(axis, axis.first_look())


def _spread(axis: Axis, options: Sequence[Option]) -> list[Option]:
    """Some of many options, evenly spread, as they can be had."""
    stride = max(1, math.ceil(len(options) / MOST_OPTIONS))
    chosen = options[::-stride][::-1]
    if axis.rungs:
        return list(chosen)
    return [each for option in chosen for each in axis.towards(option.size)]


def _grid(first: Column, second: Column) -> Iterator[Both]:
    for one in first[1]:
        for other in second[1]:
            if not one.point.keys() & other.point.keys():
                distance = first[0].distance(one) + second[0].distance(other)
                yield Both(distance, (one, other))


def _first_that_mends(search: Search, target: Target, good: Sequence[Both]) -> Remedy | None:
    if not good:
        return None
    judged = search.judged([both.point for both in good])
    mending = [both for index, both in enumerate(good) if judged.mends(target, index)]
    for both in mending[:MOST_VERIFIED]:
        every = search.judged([both.point], every_case=True)
        if every.mends(target, 0):
            changes = (*both.options[0].changes, *both.options[1].changes)
            return Remedy(changes, float(every.courses[target.key].utilisation[0]))
        search.learn(target, int(every.courses[target.key].case[0]))
    return None
