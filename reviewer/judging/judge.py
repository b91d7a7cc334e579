"""Judging: every rule on every part that it is for, each after those that it stands behind."""

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.cases import Cases
from reviewer.deriving.evaluate import Values
from reviewer.judging.binding import Bound, bind
from reviewer.judging.finding import Finding, Verdict
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
    teller = Teller(design, values, cases)
    verdicts: dict[tuple[str, str], Verdict | str] = {}
    findings: list[Finding] = []
    for rule in rules:
        for bound in bind(rule, design, values):
            held = _held_by(rule, bound, design, verdicts)
            if held:
                findings.append(teller.held(rule, bound, held))
                verdicts[rule.name, bound.part] = "held"
                continue
            judged = judge_one(rule, bound)
            verdicts[rule.name, bound.part] = judged.verdict
            findings.append(teller.told(rule, bound, judged))
    return tuple(findings)


def _held_by(
    rule: Rule, bound: Bound, design: Design, verdicts: dict[tuple[str, str], Any]
) -> str | None:
    """The failed finding behind which this one stands: of the same part or its nearest carrier."""
    for name in rule.behind:
        part: str | None = bound.part
        while part is not None and (name, part) not in verdicts:
            carriers = design.parts[part].carried_by if part in design.parts else ()
            part = carriers[0] if carriers else None
        if part is not None and verdicts[name, part] in ("fail", "held"):
            return f"{part}.{name.split('.', 1)[1]}"
    return None


def judge_one(rule: Rule, bound: Bound) -> Judged:
    """The verdict of one rule on one part over all cases, of the nominal sample."""
    applies, sure = _applies(rule, bound)
    if not applies.any():
        if sure.all():
            return Judged("not applicable", 0, None)
        case = int(np.flatnonzero(~sure)[0])
        names = rule.when.names if rule.when else ()
        return Judged("open", case, None, tuple(bound.all_slots(names)))
    if rule.require is None:
        return Judged("review", int(np.flatnonzero(applies)[0]), None)
    outcome = _spread(rule.require.judge(bound.lookup), len(applies))
    failing = applies & outcome.known & ~outcome.holds
    if failing.any():
        return Judged("fail", _governing(outcome.utilisation, failing), outcome)
    unknown = applies & ~outcome.known
    if unknown.any():
        case = int(np.flatnonzero(unknown)[0])
        return Judged("open", case, outcome, tuple(bound.all_slots(rule.require.names)))
    return Judged("pass", _governing(outcome.utilisation, applies), outcome)


def _applies(rule: Rule, bound: Bound) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """Where the rule's `when` holds, and where that is known, over the cases."""
    count = bound.cases
    if rule.when is None:
        return np.ones(count, dtype=bool), np.ones(count, dtype=bool)
    truth, known = rule.when.test(bound.lookup)
    truth, known = _row(truth, count), _row(known, count)
    return truth & known, known


def _spread(outcome: Outcome, count: int) -> Outcome:
    """The nominal sample of an outcome, one entry a case."""
    return Outcome(*(_row(value, count) for value in outcome))


def _row(value: Any, count: int) -> NDArray[Any]:
    array = np.asarray(value)
    row = array[0] if array.ndim == 2 else array
    return np.broadcast_to(row, (count,))


def _governing(utilisation: NDArray[np.float64], among: NDArray[np.bool_]) -> int:
    """The case of the largest utilisation among some; the first of those that tie."""
    candidates = np.flatnonzero(among & ~np.isnan(utilisation))
    if not len(candidates):
        return int(np.flatnonzero(among)[0])
    largest = utilisation[candidates].max()
    near = utilisation[candidates] >= largest - NEARLY * max(1.0, abs(largest))
    return int(candidates[near][0])
