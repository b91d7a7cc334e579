"""The evaluations behind a search for remedies: each on as few cases and quantities as will do."""

from collections.abc import Sequence
from dataclasses import dataclass, field

import networkx as nx
import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.deriving.unknown import why_open
from reviewer.judging.judge import marks
from reviewer.judging.rule import Rule
from reviewer.reading.shop_stock import Tables
from reviewer.studying.axis import Option
from reviewer.studying.given import bound_of
from reviewer.studying.governing import governing_cases, on_cases
from reviewer.studying.study import (
    FAILS,
    HELD,
    OPEN,
    PASSES,
    Course,
    Field,
    Key,
    Point,
    courses,
    study,
)

AxisKey = tuple[Field, str]
Seen = tuple[Sequence[Option], NDArray[np.float64]]
"""Options that were looked at, and how far each uses the limit."""


@dataclass(frozen=True, slots=True)
class Target:
    """A finding that is to be mended: its rule, its key, and all the slots that decide it."""

    rule: Rule
    key: Key
    wanted: frozenset[int]

    @property
    def name(self) -> str:
        """The finding's name."""
        return f"{self.key[1]}.{self.rule.name.split('.', 1)[1]}"


@dataclass(frozen=True, slots=True)
class Judged:
    """All findings over some points, and for each point what breaks there.

    What breaks fails there and does not fail now, or can no longer be judged; it maps the key of a
    finding to its name.
    """

    courses: dict[Key, Course]
    broken: list[dict[Key, str]]

    def passes(self, target: Target, index: int) -> bool:
        """Whether a target holds at a point."""
        return bool(self.courses[target.key].verdict[index] == PASSES)

    def mends(self, target: Target, index: int) -> bool:
        """Whether a target holds at a point and nothing breaks there."""
        return self.passes(target, index) and not self.broken[index]


@dataclass
class Search:
    """One design and its rules, as they stand, and what is known of the cases that govern."""

    derived: Derived
    rules: Sequence[Rule]
    tables: Tables = field(default_factory=Tables)
    now: dict[Key, Course] = field(init=False)
    governing: dict[Key, set[int]] = field(init=False)
    breaking: set[int] = field(init=False)  # cases in which anything would first be seen to break
    seen: dict[tuple[AxisKey, Key], Seen] = field(default_factory=dict)  # first looks at axes

    def __post_init__(self) -> None:
        """Judge the design as it is."""
        found = courses(self.derived, self.derived.values, self.rules)
        self.now = {course.key: course for course in found}
        chosen = governing_cases(self.derived, self.rules)
        self.governing = {key: set(cases) for key, cases in chosen.items()}
        first = governing_cases(self.derived, self.rules, 1)
        self.breaking = set().union(*first.values())

    def target(self, rule: Rule, key: Key) -> Target:
        """A finding as a target of the search."""
        graph = self.derived.values.plan.graph
        slots = set(bound_of(self.derived, rule, key).all_slots(rule.names))
        return Target(rule, key, frozenset(slots.union(*(nx.ancestors(graph, s) for s in slots))))

    def look(self, targets: Sequence[Target], points: Sequence[Point]) -> dict[Key, Course]:
        """The targets alone over some points, in their governing cases."""
        cases = set().union(*(self.governing[target.key] for target in targets))
        rules = list({target.rule.name: target.rule for target in targets}.values())
        wanted = frozenset().union(*(target.wanted for target in targets))
        return study(on_cases(self.derived, sorted(cases)), points, rules, wanted)

    def least(self, target: Target) -> float:
        """The least utilisation of a target that was seen, where it could be judged; else NaN."""
        known = [
            used[~np.isnan(used)] for (_, key), (_, used) in self.seen.items() if key == target.key
        ]
        return float(min((each.min() for each in known if len(each)), default=np.nan))

    def unknown_because(self, target: Target) -> str:
        """Why a target cannot be judged in every case; nothing where it can."""
        bound = bound_of(self.derived, target.rule, target.key)
        unknown = np.flatnonzero(marks(target.rule, bound).unknown[0])
        if not len(unknown):
            return ""
        slots = bound.all_slots(target.rule.names)
        causes = why_open(self.derived.values, slots, int(unknown[0]))
        return " and ".join(f"{cause.name} {cause.reason}" for cause in causes[:1])

    def judged(self, points: Sequence[Point], *, every_case: bool = False) -> "Judged":
        """All findings over some points, in all cases or in those that govern any of them now."""
        cases = self.breaking
        derived = self.derived if every_case else on_cases(self.derived, sorted(cases))
        after = study(derived, points, self.rules)
        return Judged(after, self._broken(after, len(points)))

    def _broken(self, after: dict[Key, Course], count: int) -> list[dict[Key, str]]:
        broken: list[dict[Key, str]] = [{} for _ in range(count)]
        for key, course in after.items():
            if course.rule.is_silenced:
                continue
            before = int(self.now[key].verdict[0])
            fails = course.verdict == FAILS if before != FAILS else np.zeros(count, bool)
            unknown = (course.verdict == OPEN) & (before not in (OPEN, HELD, FAILS))
            for index in np.flatnonzero(fails | unknown):
                broken[index][key] = course.name
        return broken

    def learn(self, target: Target, case: int) -> None:
        """Keep a case that turned out to govern a finding."""
        self.governing[target.key].add(case)
        self.breaking.add(case)


def passes(course: Course) -> NDArray[np.bool_]:
    """Where a finding holds."""
    holds: NDArray[np.bool_] = course.verdict == PASSES
    return holds
