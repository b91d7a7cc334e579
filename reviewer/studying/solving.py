"""One axis solved for its targets: the limit on either side, then what can be had past it."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

import numpy as np
from numpy.typing import NDArray

from reviewer.studying.axis import Axis, Option
from reviewer.studying.search import Search, Target, passes
from reviewer.studying.study import FAILS, PASSES

ROUNDS = 2  # of refinement, each of which parts the range in so many
PARTS = 16
NEXT_STEPS = 3  # steps past the limit that are looked at before larger changes
FURTHER = 6  # larger changes that are looked at where the smallest breaks something


@dataclass(frozen=True, slots=True)
class Side:
    """One side of an axis on which a target passes: the limit, and options from there on."""

    axis: Axis
    target: Target
    up: bool
    limit: float | None
    options: tuple[Option, ...]


@dataclass(frozen=True, slots=True)
class Bracket:
    """A size at which a target still fails, and one farther out at which it passes."""

    target: Target
    up: bool
    fails: float
    passes: float


def sides_of(search: Search, axis: Axis, targets: Sequence[Target]) -> list[Side]:
    """The sides of an axis on which each of some targets comes to hold."""
    options = axis.first_look()
    if not options:
        return []
    found = search.look(targets, [option.point for option in options])
    for target in targets:
        course = found[target.key]
        known = np.isin(course.verdict, (PASSES, FAILS))
        used = np.where(known, course.utilisation, np.nan)
        search.seen[axis.key, target.key] = options, used
    verdicts = {target.key: passes(found[target.key]) for target in targets}
    brackets = [
        bracket
        for target in targets
        for bracket in _brackets(axis, options, target, verdicts[target.key])
    ]
    if not axis.rungs:
        for _ in range(ROUNDS):
            brackets = _closer(search, axis, brackets)
    return [_side(axis, options, verdicts[each.target.key], each) for each in brackets]


def _brackets(
    axis: Axis, options: Sequence[Option], target: Target, holds: NDArray[np.bool_]
) -> Iterator[Bracket]:
    """On each side of now, from the last option that fails to the first that passes."""
    sizes = np.array([option.size for option in options])
    for up in (True, False):
        on_side = np.flatnonzero(sizes >= axis.now if up else sizes < axis.now)
        outwards = on_side if up else on_side[::-1]
        before = axis.now
        for index in outwards:
            if holds[index]:
                yield Bracket(target, up, before, float(sizes[index]))
                break
            before = float(sizes[index])


def _closer(search: Search, axis: Axis, brackets: Sequence[Bracket]) -> list[Bracket]:
    """Brackets that are a sixteenth as wide, all of them in one batch."""
    inner = [
        (bracket, size) for bracket in brackets for size in _between(bracket.fails, bracket.passes)
    ]
    tried = [(bracket, each) for bracket, size in inner for each in axis.at(size)]
    if not tried:
        return list(brackets)
    targets = list({bracket.target.key: bracket.target for bracket in brackets}.values())
    found = search.look(targets, [option.point for _, option in tried])
    closer = {id(bracket): bracket for bracket in brackets}
    settled: set[int] = set()
    for index, (bracket, option) in enumerate(tried):
        if id(bracket) in settled:
            continue
        now = closer[id(bracket)]
        if passes(found[bracket.target.key])[index]:
            closer[id(bracket)] = Bracket(now.target, now.up, now.fails, option.size)
            settled.add(id(bracket))
        else:
            closer[id(bracket)] = Bracket(now.target, now.up, option.size, now.passes)
    return list(closer.values())


def _between(low: float, high: float) -> list[float]:
    if low == 0.0:
        return [float(each) for each in np.linspace(low, high, PARTS + 1)[1:-1]]
    return [float(each) for each in np.geomspace(low, high, PARTS + 1)[1:-1]]


def _side(
    axis: Axis, options: Sequence[Option], holds: NDArray[np.bool_], bracket: Bracket
) -> Side:
    """What can be had from the limit on: the next steps, then larger changes."""
    outwards = options if bracket.up else options[::-1]
    passing = [
        option
        for option, good in zip(outwards, holds if bracket.up else holds[::-1], strict=True)
        if good and (option.size >= axis.now) == bracket.up
    ]
    if axis.rungs:
        return Side(axis, bracket.target, bracket.up, None, tuple(passing[: FURTHER + NEXT_STEPS]))
    # From the last size that fails on: a step may lie between it and the first that passes.
    near = [each for step in range(NEXT_STEPS) for each in axis.towards(bracket.fails, step)]
    stride = max(1, math.ceil(len(passing) / FURTHER))
    far = [each for option in passing[1::stride] for each in axis.towards(option.size)]
    unique = {option.size: option for option in (*near, *far)}
    return Side(axis, bracket.target, bracket.up, bracket.passes, tuple(unique.values()))


def steps_between(axis: Axis, first: float, last: float, most: int) -> tuple[Option, ...]:
    """What can be had strictly between two sizes, in steps outwards from the first."""
    if axis.rungs:
        return ()
    up = last > first

    def walk() -> Iterator[Option]:
        size = first
        while True:
            made = next(axis.towards(size, 1), None)
            if made is None or made.size == size or (made.size < last) != up:
                return
            yield made
            size = made.size

    found = list(walk()) if _count(axis, first, last) <= 200 else []
    return tuple(islice(found[:: max(1, math.ceil(len(found) / most))], most))


def _count(axis: Axis, first: float, last: float) -> float:
    made = next(axis.towards(first, 1), None)
    if made is None or made.size == first:
        return math.inf
    return abs(last - first) / abs(made.size - first)
