"""Governing cases: the few out of all cases in which a rule comes near to its limit.

A study over many samples runs on these alone; what it finds is judged again in all cases.
"""

from collections.abc import Iterable, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.deriving.evaluate import Values
from reviewer.deriving.plan import DESIGN
from reviewer.judging.binding import bind
from reviewer.judging.judge import Marks, marks
from reviewer.judging.rule import Rule
from reviewer.stock.table import Choice
from reviewer.studying.study import Course, Key, Point, study

KEPT = 3  # cases that are kept of each finding
NEARLY = 1e-9  # utilisations closer than this are equal: the first case stands for all


def on_cases(derived: Derived, chosen: Sequence[int]) -> Derived:
    """A design on some of its cases alone, as it was derived; the plan is the same one."""
    index = np.array(sorted(set(chosen)), dtype=np.intp)
    every, before = derived.cases, derived.values
    if len(index) == before.cases:
        return derived
    cases = replace(
        every,
        names=tuple(every.names[each] for each in index),
        configuration=every.configuration[index],
        own_weight=every.own_weight[index],
        factors={load: factors[index] for load, factors in every.factors.items()},
        on_half=every.on_half[index],
    )
    values = [_some(value, index, before.cases) for value in before.values]
    values[before.plan.slots[DESIGN, "cases"]] = cases
    overrules = _some(dict(before.overrules), index, before.cases)
    kept = Values(before.plan, values, len(index), before.samples, overrules)
    return Derived(derived.design, cases, kept)


def _some(value: Any, index: NDArray[np.intp], cases: int) -> Any:
    """A value, or an object made of values, in some cases."""

    def some(each: Any) -> Any:
        return _some(each, index, cases)

    if isinstance(value, np.ndarray):
        return value[:, index] if value.ndim > 1 and value.shape[1] == cases else value
    if isinstance(value, tuple | list):
        parts = [some(each) for each in value]
        return type(value)(*parts) if hasattr(value, "_fields") else type(value)(parts)
    if isinstance(value, dict):
        return {key: some(each) for key, each in value.items()}
    if is_dataclass(value) and not isinstance(value, Choice | type):
        return replace(
            value, **{each.name: some(getattr(value, each.name)) for each in fields(value)}
        )
    return value


def governing_cases(
    derived: Derived, rules: Iterable[Rule], kept: int = KEPT
) -> dict[Key, tuple[int, ...]]:
    """For each finding of a design the cases in which it is used most, or is unknown."""
    found: dict[Key, tuple[int, ...]] = {}
    for rule in rules:
        for bound in bind(rule, derived.design, derived.values):
            chosen = _most_used(marks(rule, bound), kept)
            found[rule.name, bound.part, bound.others] = chosen
    return found


def _most_used(marked: Marks, kept: int) -> tuple[int, ...]:
    chosen = [np.flatnonzero(marked.unknown[0])[:1]]
    if marked.outcome is not None:
        used = np.where(marked.applies[0], marked.outcome.utilisation[0], np.nan)
        order = np.argsort(np.where(np.isnan(used), np.inf, -used), kind="stable")
        order = order[~np.isnan(used[order])]
        chosen += [np.flatnonzero(marked.fails[0] & np.isnan(used))[:1], _apart(order, used)[:kept]]
    chosen.append(np.flatnonzero(marked.applies[0])[:1])
    return tuple(sorted({int(case) for cases in chosen for case in cases}))


def _apart(order: NDArray[np.intp], used: NDArray[np.float64]) -> NDArray[np.intp]:
    """Cases in order of use, one for each value."""
    values = used[order]
    steps = np.ones(len(values), dtype=bool)
    steps[1:] = np.abs(np.diff(values)) > NEARLY * np.maximum(1.0, np.abs(values[1:]))
    return order[steps]


def study_whole(
    derived: Derived, points: Sequence[Point], rules: Sequence[Rule]
) -> dict[Key, Course]:
    """The courses of all rules over some points, on the cases that govern anywhere along them.

    It begins with those that govern now. The points at which each finding is used most are judged
    again in every case; what governs there is taken in too, until nothing is left to find. The
    cases of the courses count among all.
    """
    every = governing_cases(derived, rules)
    chosen = set().union(*every.values())
    while True:
        kept = sorted(chosen)
        found = study(on_cases(derived, kept), points, rules)
        for course in found.values():
            course.case[:] = np.asarray(kept)[course.case]
        worst = sorted({index for course in found.values() for index in _worst(course)})
        checked = study(derived, [points[index] for index in worst], rules)
        missed = {
            int(after.case[place])
            for key, after in checked.items()
            for place, index in enumerate(worst)
            if _differs(after, place, found[key], index)
        }
        if missed <= chosen:
            return found
        chosen |= missed


def _worst(course: Course) -> set[int]:
    """The points at which a finding is used most, and where its verdict is the gravest."""
    used = np.where(np.isnan(course.utilisation), -np.inf, course.utilisation)
    return {0, len(used) - 1, int(np.argmax(used)), int(np.argmax(course.verdict))}


def _differs(after: Course, place: int, before: Course, index: int) -> bool:
    if after.verdict[place] != before.verdict[index]:
        return True
    more = after.utilisation[place] - before.utilisation[index]
    return bool(more > NEARLY * max(1.0, abs(after.utilisation[place])))
