"""A sweep: one given value over a range or over what is sold, and what each rule makes of it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import networkx as nx
import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.judging.rule import Rule
from reviewer.notation.show import show
from reviewer.parts.row import Measure
from reviewer.studying.given import Given, bound_of
from reviewer.studying.governing import study_whole
from reviewer.studying.rewriting import unit_of
from reviewer.studying.study import (
    FAILS,
    HELD,
    NOT_APPLICABLE,
    OPEN,
    PASSES,
    REVIEW,
    Course,
    Key,
    Point,
)

LEVELS = ("must", "should")
STANDING = (FAILS, HELD, OPEN)
ROUNDS, PARTS = 3, 16  # of bisection at the edge of what passes


@dataclass(frozen=True, slots=True)
class Stop:
    """One size of a sweep: as a study takes it, its number, and what the file would say."""

    point: Point
    size: float
    text: str


@dataclass(frozen=True, slots=True)
class Span:
    """The sizes from one to another at which all passes that depends on the value and ever does."""

    first: Stop
    last: Stop


@dataclass(frozen=True)
class Sweep:
    """Every finding over the sizes of one given value, in rising order.

    `moved` are the findings that depend on it; `now` is the number of the present size, or the
    number of sizes where it is not among them.
    """

    derived: Derived
    given: Given
    stops: tuple[Stop, ...]
    now: int
    courses: tuple[Course, ...]
    moved: frozenset[Key]
    spans: tuple[Span, ...]

    @cached_property
    def concerned(self) -> tuple[Course, ...]:
        """The courses that depend on the value, of rules that must or should hold, and apply."""
        return tuple(
            each
            for each in self.courses
            if each.key in self.moved and each.rule.level in LEVELS and applies(each)
        )

    @cached_property
    def standing(self) -> tuple[Course, ...]:
        """Of what depends on the value, that which fails or stays open at every size."""
        return tuple(each for each in self.concerned if never_passes(each))

    def governing(self, index: int) -> Course | None:
        """The finding that is used most at one size; the first of those that tie."""
        return governing_at(self.concerned, index)

    def takeovers(self) -> list[tuple[int, Course]]:
        """Where, in rising order, each finding begins to govern."""
        found: list[tuple[int, Course]] = []
        for index in range(len(self.stops)):
            course = self.governing(index)
            if course is not None and (not found or found[-1][1] is not course):
                found.append((index, course))
        return found


def applies(course: Course) -> bool:
    """Whether a rule applies anywhere, and is not for a person to judge."""
    return not bool(np.isin(course.verdict, (NOT_APPLICABLE, REVIEW)).all())


def never_passes(course: Course) -> bool:
    """Whether a finding fails, or cannot be judged, at every sample."""
    return bool(np.isin(course.verdict, STANDING).all())


def governing_at(courses: Sequence[Course], index: int) -> Course | None:
    """The course with the largest utilisation at one sample; the first of those that tie.

    One that waits for another, or does not apply, governs nothing.
    """
    known = [
        each
        for each in courses
        if each.verdict[index] in (PASSES, FAILS) and not np.isnan(each.utilisation[index])
    ]
    return max(known, key=lambda each: float(each.utilisation[index]), default=None)


def sweep(
    derived: Derived,
    rules: Sequence[Rule],
    given: Given,
    stops: Sequence[Stop],
    *,
    between: bool = True,
) -> Sweep:
    """Judge a design at every size of a given value; the sizes rise.

    `between` tells whether it may have any size between those.
    """
    found = study_whole(derived, [stop.point for stop in stops], rules)
    present = given.value.value
    now = next(
        (index for index, stop in enumerate(stops) if _is_now(stop, given, present)), len(stops)
    )
    moved = frozenset(moved_by(derived, found, [stops[0].point]))
    keys = {
        key for key in moved if found[key].rule.level in LEVELS and not never_passes(found[key])
    }
    spans = tuple(_spans(stops, found, keys))
    if between and isinstance(given.row.given, Measure):  # else there is nothing in between
        spans = tuple(_closely(derived, rules, given, stops, span, keys) for span in spans)
    return Sweep(derived, given, tuple(stops), now, tuple(found.values()), moved, spans)


def _is_now(stop: Stop, given: Given, present: Any) -> bool:
    value = stop.point.get(given.field)
    return value == present if value is not None else False


def moved_by(derived: Derived, found: dict[Key, Course], points: Sequence[Point]) -> Iterator[Key]:
    """The findings of which any quantity depends on the fields of some points."""
    plan = derived.values.plan
    slots = {plan.slots[field[:2]] for point in points for field in point}
    below = slots.union(*(nx.descendants(plan.graph, slot) for slot in slots))
    for key, course in found.items():
        names = course.rule.names
        if below.intersection(bound_of(derived, course.rule, key).all_slots(names)):
            yield key


def _spans(stops: Sequence[Stop], found: dict[Key, Course], keys: set[Key]) -> Iterator[Span]:
    """The spans of a sweep's sizes within which some findings all pass."""
    good = _good(found, keys, len(stops))
    if not keys:
        return
    edges = np.flatnonzero(np.diff(np.concatenate([[False], good, [False]])))
    for first, last in zip(edges[::2], edges[1::2] - 1, strict=True):
        yield Span(stops[int(first)], stops[int(last)])


def _closely(
    derived: Derived,
    rules: Sequence[Rule],
    given: Given,
    stops: Sequence[Stop],
    span: Span,
    keys: set[Key],
) -> Span:
    """A span with its ends between the sizes of the sweep, where they lie there."""
    first, last = stops.index(span.first), stops.index(span.last)
    low, high = span.first, span.last
    if first > 0:
        low = _closer(derived, rules, given, stops[first - 1], low, keys)
    if last < len(stops) - 1:
        high = _closer(derived, rules, given, stops[last + 1], high, keys)
    return Span(low, high)


def _good(found: dict[Key, Course], keys: set[Key], count: int) -> NDArray[np.bool_]:
    """At which samples all of some findings pass."""
    holds = np.ones(count, dtype=bool)
    for key in keys:
        holds &= ~np.isin(found[key].verdict, STANDING)
    return holds


def _closer(
    derived: Derived, rules: Sequence[Rule], given: Given, bad: Stop, good: Stop, keys: set[Key]
) -> Stop:
    """The size nearest to one that does not pass at which everything does."""
    fails, passes = bad.size, good.size
    for _ in range(ROUNDS):
        sizes = np.linspace(fails, passes, PARTS + 1)[1:-1].tolist()
        found = study_whole(derived, [{given.field: size} for size in sizes], rules)
        holds = _good(found, keys, len(sizes))
        if holds.any():
            index = int(np.argmax(holds))
            fails, passes = (sizes[index - 1] if index else fails), sizes[index]
        else:
            fails = sizes[-1]
    quantity = given.value.quantity
    text = show(passes, unit_of(quantity), 4) if quantity else good.text
    return Stop({given.field: passes}, passes, text)
