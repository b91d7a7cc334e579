"""Pairs: two values changed together, where no one of them alone mends a finding."""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

from reviewer.judging.remedies import Remedy
from reviewer.studying.axis import Axis, Option
from reviewer.studying.search import Search, Target, passes
from reviewer.studying.study import Point

MOST_AXES = 5
MOST_OPTIONS = 12  # of one axis on the grid of a pair
MOST_JUDGED = 12  # points of the grid on which every finding is judged
MOST_VERIFIED = 3


class Both(NamedTuple):
    """Two options taken together, and how far they are from the present values."""

    distance: float
    options: tuple[Option, Option]

    @property
    def point(self) -> Point:
        """Both as one point of a study."""
        return {**self.options[0].point, **self.options[1].point}


def best_pair(search: Search, target: Target, axes: Sequence[Axis]) -> Remedy | None:
    """The pair of changes nearest to the present values that mends a target, if there is one."""
    coarse = [(axis, _coarse(axis)) for axis in axes[:MOST_AXES]]
    good: list[Both] = []
    for first, second in combinations(coarse, 2):
        grid = list(_grid(first, second))
        if grid:
            found = search.look([target], [both.point for both in grid])
            holds = passes(found[target.key])
            good += [both for both, each in zip(grid, holds, strict=True) if each]
    good.sort(key=lambda both: both.distance)
    return _first_that_mends(search, target, good[:MOST_JUDGED])


def _coarse(axis: Axis) -> list[Option]:
    """A few options over the whole range of an axis, as they can be had."""
    looked = axis.first_look()
    stride = max(1, math.ceil(len(looked) / MOST_OPTIONS))
    if axis.rungs:
        return list(looked[::stride])
    return [each for option in looked[::stride] for each in axis.towards(option.size)]


def _grid(first: tuple[Axis, list[Option]], second: tuple[Axis, list[Option]]) -> Iterator[Both]:
    for one in first[1]:
        for other in second[1]:
            if not one.point.keys() & other.point.keys():
                distance = _distance(first[0], one) + _distance(second[0], other)
                yield Both(distance, (one, other))


def _distance(axis: Axis, option: Option) -> float:
    return abs(math.log(option.size / axis.now)) if axis.now else 1.0


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
