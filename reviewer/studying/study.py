"""A study: one design evaluated and judged for many values at once, along the sample axis."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.deriving.evaluate import Values, changed
from reviewer.judging.binding import Bound, bind
from reviewer.judging.judge import marks, stands_behind
from reviewer.judging.rule import Rule

NOT_APPLICABLE, PASSES, REVIEW, OPEN, HELD, FAILS = range(6)

Field = tuple[str, str]  # part and path of a given value


@dataclass(frozen=True, slots=True)
class Course:
    """One rule on one part over the samples of a study.

    `verdict` is one of the constants above, `utilisation` the largest over the cases that apply
    (NaN where it has no number), `case` the index of that case.
    """

    rule: Rule
    part: str
    others: tuple[str, ...]
    verdict: NDArray[np.int8]
    utilisation: NDArray[np.float64]
    case: NDArray[np.intp]

    @property
    def name(self) -> str:
        """The finding's name."""
        return f"{self.part}.{self.rule.name.split('.', 1)[1]}"


def vary(
    derived: Derived, numbers: Mapping[Field, NDArray[np.float64]], choices: Mapping[Field, Any]
) -> Values:
    """The values of a design with numbers varied over samples and choices exchanged.

    `numbers` maps a given field to its SI values, one a sample, all of one length. Where a
    configuration overrides the field, the override stays.
    """
    samples = max((len(values) for values in numbers.values()), default=1)
    plan = derived.values.plan
    given: dict[int, Any] = {plan.slots[field]: value for field, value in choices.items()}
    for (part, path), values in numbers.items():
        slot = plan.slots[part, path]
        given[slot] = _not_overridden(derived, part, path, values[:, None])
    return changed(derived.values, given, samples)


def _not_overridden(derived: Derived, part: str, path: str, column: Any) -> Any:
    design, cases = derived.design, derived.cases
    overridden = [
        index
        for index, configuration in enumerate(design.configurations)
        if (part, path) in configuration.overrides
    ]
    if not overridden:
        return column
    before = derived.values.number(derived.values.plan.slots[part, path])
    return np.where(np.isin(cases.configuration, overridden)[None, :], before, column)


def courses(derived: Derived, values: Values, rules: Sequence[Rule]) -> tuple[Course, ...]:
    """Every rule on every part over the samples of some values, as a review would judge them."""
    found: dict[tuple[str, str], Course] = {}
    told: list[Course] = []
    for rule in rules:
        for bound in bind(rule, derived.design, values):
            course = _course(rule, bound)
            for before in stands_behind(rule, bound, derived.design, found):
                held = np.isin(found[before].verdict, (FAILS, HELD))
                course.verdict[held] = HELD
            found[rule.name, bound.part] = course
            told.append(course)
    return tuple(told)


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
    used = np.where(marked.applies, marked.outcome.utilisation, np.nan)
    filled = np.where(np.isnan(used), -np.inf, used)
    case = filled.argmax(axis=1)
    most = filled[np.arange(bound.samples), case]
    return Course(
        rule, bound.part, bound.others, verdict, np.where(np.isinf(most), np.nan, most), case
    )
