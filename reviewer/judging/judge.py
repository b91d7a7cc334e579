"""Judging: every rule on every part that it is for, each after those that it stands behind."""

from collections.abc import Callable, Container, Iterable, Iterator, Sequence
from functools import partial
from typing import Any, NamedTuple, Protocol

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.cases import Cases
from reviewer.deriving.evaluate import Values
from reviewer.judging.binding import Bound, bind
from reviewer.judging.finding import Finding
from reviewer.judging.judged import Judged
from reviewer.judging.outcome import Outcome
from reviewer.judging.rule import Rule
from reviewer.judging.telling import Teller
from reviewer.reading.design import Design

NEARLY = 1e-9  # utilisations closer than this are equal: the first case by number governs


def judge(
    design: Design, values: Values, cases: Cases, rules: Sequence[Rule]
) -> tuple[Finding, ...]:
    """The findings of all rules, each after those that it stands behind.

    `rules` come in an order in which each stands after those that it is behind.
    """
    hearing = Hearing(Teller(design, values, cases))
    for rule in rules:
        for bound in bind(rule, design, values):
            behind = stands_behind(rule, bound, design, hearing.failed)
            hearing.hear(rule, bound, behind, partial(judge_one, rule, bound))
    return tuple(hearing.findings)


class Hearing:
    """The findings of one design, as its rules are judged one after the other.

    `failed` tells by rule and part whether it holds others back.
    """

    def __init__(self, teller: Teller) -> None:
        """Nothing has been judged yet."""
        self._teller = teller
        self.failed: dict[tuple[str, str], bool] = {}
        self.findings: list[Finding] = []

    def hear(
        self,
        rule: Rule,
        bound: Bound,
        behind: Iterable[tuple[str, str]],
        judge: Callable[[], Judged],
    ) -> None:
        """Judge a rule on a part, unless it is held back by a finding that it stands behind."""
        held = next((key for key in behind if self.failed[key]), None)
        verdict = "open"
        if held:
            name = f"{held[1]}.{held[0].split('.', 1)[1]}"
            self.findings.append(self._teller.held(rule, bound, name))
        else:
            judged = judge()
            verdict = judged.verdict
            if verdict != "not applicable" or not rule.scope.is_of_any:
                self.findings.append(self._teller.told(rule, bound, judged))
        key = rule.name, bound.part  # of pairs, one part may be in several
        fails = held is not None or verdict == "fail"
        self.failed[key] = (fails and not rule.is_silenced) or self.failed.get(key, False)


class OfPart(Protocol):
    """Anything that is of one part: a rule bound to it, or what it came to."""

    @property
    def part(self) -> str:
        """The part's name."""
        ...


def stands_behind(
    rule: Rule, bound: OfPart, design: Design, judged: Container[tuple[str, str]]
) -> Iterator[tuple[str, str]]:
    """The judged (rule, part) that a finding stands behind: of the part or its nearest carriers."""
    for name in rule.behind:
        level: tuple[str, ...] = (bound.part,)
        while level and not any((name, part) in judged for part in level):
            below = (design.parts[part].carried_by for part in level if part in design.parts)
            level = tuple(dict.fromkeys(part for carriers in below for part in carriers))
        yield from ((name, part) for part in level if (name, part) in judged)


class Marks(NamedTuple):
    """Where a rule applies, surely fails, or is unknown, over (samples, cases); and its outcome.

    The outcome's arrays are of the same shape; there is none where the rule applies nowhere or
    asks a person.
    """

    applies: NDArray[np.bool_]
    fails: NDArray[np.bool_]
    unknown: NDArray[np.bool_]
    outcome: Outcome | None


def marks(rule: Rule, bound: Bound) -> Marks:
    """What a rule comes to on one part, for every sample and case at once."""
    shape = (bound.samples, bound.cases)
    applies, sure = np.ones(shape, dtype=bool), np.ones(shape, dtype=bool)
    if rule.when is not None:
        truth, known = rule.when.test(bound.lookup)
        applies, sure = _over(truth, shape) & _over(known, shape), _over(known, shape)
    nowhere = np.zeros(shape, dtype=bool)
    if rule.require is None or not applies.any():
        return Marks(applies, nowhere, ~sure, None)
    outcome = Outcome(*(_over(value, shape) for value in rule.require.judge(bound.lookup)))
    return Marks(
        applies,
        applies & outcome.known & ~outcome.holds,
        (applies & ~outcome.known) | ~sure,
        outcome,
    )


def _over(value: Any, shape: tuple[int, int]) -> NDArray[Any]:
    return np.broadcast_to(np.asarray(value), shape)


def judge_one(rule: Rule, bound: Bound) -> Judged:
    """The verdict of one rule on one part over all cases, of the nominal sample."""
    return verdict_of(rule, bound, marks(rule, bound), 0)


def verdict_of(rule: Rule, bound: Bound, found: Marks, sample: int) -> Judged:
    """The verdict that a rule's marks over samples come to in one of them, which `bound` is of."""
    applies, fails, unknown = found.applies[sample], found.fails[sample], found.unknown[sample]
    outcome = found.outcome
    nominal = None if outcome is None else Outcome(*(value[sample] for value in outcome))
    if nominal is not None and fails.any():
        return Judged("fail", governing(nominal.utilisation, fails), nominal)
    if unknown.any():
        tests = [test for test in (rule.when, rule.require) if test is not None]
        names = tuple(name for test in tests for name in test.names)
        return Judged(
            "open", int(np.flatnonzero(unknown)[0]), nominal, tuple(bound.all_slots(names))
        )
    if not applies.any():
        return Judged("not applicable", 0, None)
    if nominal is None:
        return Judged("review", most_said(rule, bound, applies), None)
    return Judged("pass", governing(nominal.utilisation, applies), nominal)


def most_said(rule: Rule, bound: Bound, among: NDArray[np.bool_]) -> int:
    """The case to put a question about: where the first number that differs is largest."""
    values = bound.values
    for slot in bound.all_slots(tuple(name for name, _ in rule.says.names)):
        if values.varies(slot) and values.plan.nodes[slot].row.is_number:
            row = np.broadcast_to(values.number(slot)[0], among.shape)
            return governing(row, among)
    return int(np.flatnonzero(among)[0])


def governing(utilisation: NDArray[np.float64], among: NDArray[np.bool_]) -> int:
    """The case of the largest utilisation among some; the first of those that tie."""
    candidates = np.flatnonzero(among & ~np.isnan(utilisation))
    if not len(candidates):
        return int(np.flatnonzero(among)[0])
    largest = utilisation[candidates].max()
    near = utilisation[candidates] >= largest - NEARLY * max(1.0, abs(largest))
    return int(candidates[near][0])
