"""Which change explains which movement: each made alone in the old design, and what is left over.

Changes that cannot be made alone (a part added, a key that was not there) and how changes act
together are what is left of the whole movement.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isnan, nan
from typing import Any

from reviewer.deriving.derived import Derived
from reviewer.judging.rule import Rule
from reviewer.studying.changed import Edit
from reviewer.studying.study import FAILS, PASSES, Course, Field, Key, courses, study

LEAST = 1e-9  # of a utilisation: smaller effects are none

Name = tuple[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Explained:
    """How far a utilisation moved, by each change alone, and by what is left over.

    `parts` are names of changes with their effects, the strongest first.
    """

    whole: float
    parts: tuple[tuple[str, float], ...]
    rest: float


def explained(
    old: Derived, new: Derived, rules: Sequence[Rule], made: Sequence[Edit]
) -> dict[Name, Explained]:
    """For each finding that both designs have and that moved, what explains it."""
    single = [edit for edit in made if edit.is_exchange and _is_there(old, edit)]
    points = [_point(edit) for edit in single]
    before = {course.key: course for course in courses(old, old.values, rules)}
    after = {course.key: course for course in courses(new, new.values, rules)}
    tried = study(old, points, rules) if points else {}
    found: dict[Name, Explained] = {}
    for key in before.keys() & after.keys():
        was, now = _used(before[key]), _used(after[key])
        if isnan(was) or isnan(now) or abs(now - was) <= LEAST:
            continue
        effects = _effects(key, single, tried, was)
        ranked = tuple(sorted(effects, key=lambda each: (-round(abs(each[1]), 9), each[0])))
        rest = now - was - sum(effect for _, effect in ranked)
        found[before[key].name, key[2]] = Explained(now - was, ranked, rest)
    return found


def _effects(
    key: Key, single: Sequence[Edit], tried: dict[Key, Course], was: float
) -> list[tuple[str, float]]:
    """The effects of changes made alone, as far as they are known and any."""
    effects = []
    for index, edit in enumerate(single):
        effect = float(tried[key].utilisation[index]) - was if key in tried else 0.0
        if not isnan(effect) and abs(effect) > LEAST:
            effects.append((edit.name, effect))
    return effects


def _used(course: Course) -> float:
    """How far a finding is used; unknown of one that was not judged."""
    return float(course.utilisation[0]) if course.verdict[0] in (PASSES, FAILS) else nan


def _is_there(old: Derived, edit: Edit) -> bool:
    """Whether the old design computes with the value that was changed."""
    assert edit.field is not None
    slot = old.values.plan.slot(*edit.field[:2])
    return slot is not None and (old.values.plan.nodes[slot].given or len(edit.field) == 3)


def _point(edit: Edit) -> dict[Field, Any]:
    assert edit.field is not None
    assert edit.new is not None
    value = edit.new.value
    return {edit.field: float(value) if isinstance(value, float) else value}
