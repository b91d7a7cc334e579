"""A study: one design evaluated and judged for many values at once, along the sample axis."""

from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.deriving.evaluate import Values, changed
from reviewer.judging.binding import Bound, bind
from reviewer.judging.finding import Finding
from reviewer.judging.judge import marks, stands_behind
from reviewer.judging.rule import Rule
from reviewer.notation.under_way import under_way

NUMBER = object()  # stands for a value that varies from sample to sample
NOT_APPLICABLE, PASSES, REVIEW, OPEN, HELD, FAILS = range(6)

Field = tuple[str, str] | tuple[str, str, int]
"""Part and path of a given value; with a number, as that configuration overrides it."""

Point = Mapping[Field, Any]
"""One set of values to try: an SI number or a choice for each field."""

Key = tuple[str, str, tuple[str, ...]]
"""One finding: rule, part, and the rest of a pair or collection."""


def key_of(finding: Finding) -> Key:
    """The key of a finding in a study."""
    return finding.rule, finding.part, finding.others


@dataclass(frozen=True, slots=True)
class Course:
    """One rule on one part over the samples of a study.

    `verdict` is one of the constants above, `utilisation` the largest over the cases that fail, or
    else that apply (NaN where it has no number), `case` the index of that case.
    """

    rule: Rule
    part: str
    others: tuple[str, ...]
    verdict: NDArray[np.int8]
    utilisation: NDArray[np.float64]
    case: NDArray[np.intp]

    @property
    def key(self) -> Key:
        """What the course is of."""
        return self.rule.name, self.part, self.others

    @property
    def name(self) -> str:
        """The finding's name."""
        return f"{self.part}.{self.rule.name.split('.', 1)[1]}"


def vary(
    derived: Derived,
    numbers: Mapping[Field, NDArray[np.float64]],
    choices: Mapping[Field, Any],
    wanted: Container[int] | None = None,
) -> Values:
    """The values of a design with numbers varied over samples and choices exchanged.

    `numbers` maps a given field to its SI values, one a sample, all of one length. Where a
    configuration overrides the field, the override stays; a field that names a configuration
    is the override alone. `wanted` slots, if named, are the only ones computed.
    """
    samples = max((len(values) for values in numbers.values()), default=1)
    plan = derived.values.plan
    given: dict[int, Any] = {plan.slots[field[:2]]: value for field, value in choices.items()}
    overrules: dict[int, Any] = {}
    for field, values in numbers.items():
        slot = plan.slots[field[:2]]
        known, target = derived.values.number(slot), given
        if slot in derived.values.overrules:
            known, target = derived.values.overrules[slot], overrules
        before = target.get(slot, known)
        target[slot] = _in_its_cases(derived, field, before, values[:, None])
    return changed(derived.values, given, samples, wanted, overrules)


def _in_its_cases(derived: Derived, field: Field, before: Any, column: Any) -> Any:
    """A column of samples in the cases that the field is for, and what was there in the others."""
    configuration = derived.cases.configuration
    if len(field) == 3:
        return np.where(configuration[None, :] == field[2], column, before)
    overridden = [
        index for index, each in enumerate(derived.design.configurations) if field in each.overrides
    ]
    if not overridden:
        return column
    return np.where(np.isin(configuration, overridden)[None, :], before, column)


def courses(derived: Derived, values: Values, rules: Sequence[Rule]) -> tuple[Course, ...]:
    """Every rule on every part over the samples of some values, as a review would judge them."""
    found = courses_alone(derived, values, rules)
    hold_back(derived, found)
    return found


def courses_alone(derived: Derived, values: Values, rules: Sequence[Rule]) -> tuple[Course, ...]:
    """As `courses`, but each by itself: none held back because another fails."""
    return tuple(
        _course(rule, bound) for rule in rules for bound in bind(rule, derived.design, values)
    )


def hold_back(derived: Derived, found: Iterable[Course]) -> None:
    """Hold back each finding where one fails that it stands behind; they come in order."""
    before: dict[tuple[str, str], Course] = {}
    for course in found:
        for name, part in stands_behind(course.rule, course, derived.design, before):
            course.verdict[np.isin(before[name, part].verdict, (FAILS, HELD))] = HELD
        if not course.rule.is_silenced:
            before[course.rule.name, course.part] = course


def _course(rule: Rule, bound: Bound) -> Course:
    marked = marks(rule, bound)
    applies = marked.applies.any(axis=1)
    verdict = np.where(applies, REVIEW if rule.require is None else PASSES, NOT_APPLICABLE)
    verdict = np.where(marked.unknown.any(axis=1), OPEN, verdict)
    verdict = np.where(marked.fails.any(axis=1), FAILS, verdict).astype(np.int8)
    if marked.outcome is None:
        nothing = np.full(bound.samples, np.nan)
        return Course(
            rule, bound.part, bound.others, verdict, nothing, np.zeros(bound.samples, int)
        )
    somewhere = marked.fails.any(axis=1, keepdims=True)
    among = np.where(somewhere, marked.fails, marked.applies)
    used = np.where(among, marked.outcome.utilisation, np.nan)
    filled = np.where(np.isnan(used), -np.inf, used)
    case = filled.argmax(axis=1)
    most = filled[np.arange(bound.samples), case]
    return Course(
        rule, bound.part, bound.others, verdict, np.where(np.isinf(most), np.nan, most), case
    )


def study(
    derived: Derived,
    points: Sequence[Point],
    rules: Sequence[Rule],
    wanted: Container[int] | None = None,
) -> dict[Key, Course]:
    """The courses of all rules over some points, one sample a point.

    Points of the same fields and choices are one batch: formulas never see an array of counts.
    """
    groups: dict[tuple[tuple[Field, Any], ...], list[int]] = {}
    for index, point in enumerate(points):
        kind = tuple((field, _choice(value)) for field, value in point.items())
        groups.setdefault(kind, []).append(index)
    found: dict[Key, Course] = {}
    done = 0
    for kind, members in groups.items():
        if len(groups) > 1:
            under_way("values tried", done, len(points))
        done += len(members)
        choices = {field: value for field, value in kind if value is not NUMBER}
        fields = [field for field, value in kind if value is NUMBER]
        numbers = {field: np.array([points[each][field] for each in members]) for field in fields}
        values = vary(derived, numbers, choices, wanted)
        for course in courses(derived, values, rules):
            _scatter(found, course, members, len(points))
    return found


def _choice(value: Any) -> Any:
    return NUMBER if isinstance(value, float) else value


def _scatter(found: dict[Key, Course], course: Course, members: list[int], count: int) -> None:
    """Put the samples of one batch where they belong among all."""
    whole = found.get(course.key)
    if whole is None:
        whole = found[course.key] = Course(
            course.rule,
            course.part,
            course.others,
            np.full(count, NOT_APPLICABLE, np.int8),
            np.full(count, np.nan),
            np.zeros(count, int),
        )
    whole.verdict[members] = course.verdict
    whole.utilisation[members] = course.utilisation
    whole.case[members] = course.case
