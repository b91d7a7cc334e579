"""Many samples of a design in blocks, so that memory does not grow with their number."""

from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass

import networkx as nx
import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.judging.rule import Rule
from reviewer.notation.under_way import under_way
from reviewer.studying.given import bound_of
from reviewer.studying.governing import governing_cases, on_cases
from reviewer.studying.study import Course, Field, Key, courses_alone, vary

BLOCK = 2000  # samples that are evaluated at once

Columns = Mapping[Field, NDArray[np.float64]]


@dataclass(frozen=True)
class Job:
    """Some findings of a design with all that they need, and the cases on which to judge them."""

    derived: Derived
    rules: tuple[Rule, ...]
    keys: frozenset[Key]
    wanted: frozenset[int]
    cases: tuple[int, ...]

    def run(self, columns: Columns, chosen: NDArray[np.intp]) -> dict[Key, Course]:
        """Judge the findings at some samples, none held back because another fails."""
        some = on_cases(self.derived, self.cases)
        pieces: dict[Key, list[Course]] = {key: [] for key in self.keys}
        for start in range(0, len(chosen), BLOCK):
            under_way("samples", start, len(chosen))
            block = chosen[start : start + BLOCK]
            numbers = {field: column[block] for field, column in columns.items()}
            values = vary(some, numbers, {}, self.wanted)
            for course in courses_alone(some, values, self.rules):
                if course.key in pieces:
                    pieces[course.key].append(course)
        return {key: joined(found) for key, found in pieces.items() if found}

    def on(self, cases: Iterable[int]) -> "Job":
        """The same on other cases."""
        return Job(self.derived, self.rules, self.keys, self.wanted, tuple(sorted(set(cases))))

    @property
    def in_every_case(self) -> "Job":
        """The same on all cases."""
        return self.on(range(self.derived.values.cases))


def joined(pieces: Sequence[Course]) -> Course:
    """One course of several blocks of samples."""
    first = pieces[0]
    return Course(
        first.rule,
        first.part,
        first.others,
        np.concatenate([each.verdict for each in pieces]),
        np.concatenate([each.utilisation for each in pieces]),
        np.concatenate([each.case for each in pieces]),
    )


def job_of(derived: Derived, rules: Sequence[Rule], keys: Iterable[Key], kept: int) -> Job:
    """The job of some findings, on the cases that govern them now."""
    keys = frozenset(keys)
    names = {key[0] for key in keys}
    some = tuple(rule for rule in rules if rule.name in names)
    slots = {slot for key in keys for slot in slots_of(derived, some, key)}
    graph = derived.values.plan.graph
    wanted = frozenset(slots.union(*(nx.ancestors(graph, slot) for slot in slots)))
    chosen = governing_cases(derived, some, kept)
    cases = set().union(*(chosen[key] for key in keys)) if keys else {0}
    return Job(derived, some, keys, wanted, tuple(sorted(cases)))


def slots_of(derived: Derived, rules: Sequence[Rule], key: Key) -> list[int]:
    """The slots that a finding reads."""
    rule = next(rule for rule in rules if rule.name == key[0])
    return bound_of(derived, rule, key).all_slots(rule.names)


def searching(derived: Derived) -> frozenset[int]:
    """The slots of quantities that are found by a search, and all that depends on them."""
    plan = derived.values.plan
    slots = {node.slot for node in plan.nodes if node.row.searches and not node.given}
    return frozenset(slots.union(*(nx.descendants(plan.graph, slot) for slot in slots)))


def touched_by(derived: Derived, fields: Container[Field]) -> frozenset[int]:
    """The slots of some fields, and all that depends on them."""
    plan = derived.values.plan
    slots = {slot for field, slot in plan.slots.items() if field in fields}
    return frozenset(slots.union(*(nx.descendants(plan.graph, slot) for slot in slots)))
