"""What matters: how far one per cent of each given value moves a finding that fails or nearly does.

All values are moved in one batch on the sample axis, each in two samples of its own.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace

import networkx as nx
import numpy as np

from reviewer.deriving.derived import Derived
from reviewer.judging.finding import Finding
from reviewer.judging.influence import Influence
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.parts.row import Measure
from reviewer.reading.due import is_within
from reviewer.studying.given import Given, bound_of, places_of
from reviewer.studying.governing import governing_cases, on_cases
from reviewer.studying.study import Course, Key, courses, key_of, vary

NEAR = 0.9  # utilisation from which on a finding that holds is looked at too
STEP = 0.005  # half of one per cent to either side
LEAST = 1e-4  # elasticities below this are none


def is_concerned(finding: Finding) -> bool:
    """Whether a finding fails, or nearly does, by a number that can be moved."""
    judged = finding.verdict in ("pass", "fail") and bool(finding.requires)
    return judged and finding.utilisation > NEAR


def with_influences(review: Review, rules: Sequence[Rule]) -> Review:
    """The review with what moves each finding that fails or nearly does."""
    if review.derived is None:
        return review
    concerned = [each for each in review.findings if is_concerned(each)]
    found = influences(review.derived, rules, [key_of(each) for each in concerned])
    told = [
        replace(each, influences=found.get(key_of(each)) if is_concerned(each) else None)
        for each in review.findings
    ]
    return replace(review, findings=tuple(told))


def influences(
    derived: Derived, rules: Sequence[Rule], keys: Sequence[Key]
) -> dict[Key, tuple[Influence, ...]]:
    """For some findings the given values that move them, the strongest first.

    The utilisation at half a per cent more, less that at half a per cent less.
    """
    wanted_rules = [rule for rule in rules if any(key[0] == rule.name for key in keys)]
    by_name = {rule.name: rule for rule in wanted_rules}
    slots = {
        key: bound_of(derived, by_name[key[0]], key).all_slots(by_name[key[0]].names)
        for key in keys
    }
    graph = derived.values.plan.graph
    above = {
        key: set(found).union(*(nx.ancestors(graph, slot) for slot in found))
        for key, found in slots.items()
    }
    wanted = frozenset().union(*above.values())
    moved = [each for each in measures(derived) if _slot(derived, each) in wanted]
    if not moved:
        return dict.fromkeys(keys, ())
    chosen = governing_cases(derived, wanted_rules)
    cases = sorted(set().union(*(chosen[key] for key in keys)))
    some = on_cases(derived, cases)
    found = {course.key: course for course in _moved(some, wanted_rules, moved, wanted)}
    return {
        key: tuple(
            _ranked(found[key], moved, [_slot(derived, each) in above[key] for each in moved])
        )
        for key in keys
    }


def measures(derived: Derived) -> list[Given]:
    """The measures that a file gives for its parts and loads, other than zero."""
    design = derived.design
    owners = [*design.parts.values(), *design.loads.values()]
    return [
        given
        for owner in owners
        for row in owner.kind.rows
        if isinstance(row.given, Measure)
        for given in places_of(design, owner, row)
        if given.value.value and _may_move(given)
    ]


def _may_move(given: Given) -> bool:
    entry = given.row.given
    assert isinstance(entry, Measure)
    value = given.value.value
    return is_within(entry, value * (1 + STEP)) and is_within(entry, value * (1 - STEP))


def _slot(derived: Derived, given: Given) -> int:
    return derived.values.plan.slots[given.field[:2]]


def _moved(
    derived: Derived, rules: Sequence[Rule], moved: Sequence[Given], wanted: frozenset[int]
) -> Iterable[Course]:
    """Sample 2 i has the i-th value half a per cent larger, sample 2 i + 1 as much smaller."""
    numbers = {}
    for index, given in enumerate(moved):
        column = np.full(2 * len(moved), float(given.value.value))
        column[2 * index] *= 1 + STEP
        column[2 * index + 1] *= 1 - STEP
        numbers[given.field] = column
    return courses(derived, vary(derived, numbers, {}, wanted), rules)


def _ranked(course: Course, moved: Sequence[Given], matters: Sequence[bool]) -> list[Influence]:
    """The influences on one finding, the strongest first; equal ones in order of name."""
    used = course.utilisation
    found = []
    for index, (given, may) in enumerate(zip(moved, matters, strict=True)):
        effect = float(used[2 * index] - used[2 * index + 1])
        middle = float(used[2 * index] + used[2 * index + 1]) / 2
        if may and effect == effect and abs(effect) > LEAST * middle / 100:
            part, field = given.field[:2]
            share = 100 * effect / middle
            found.append(Influence(part, field, given.value.text, given.value.place, effect, share))
    return sorted(found, key=lambda each: (-round(abs(each.elasticity), 6), each.name, each.place))
