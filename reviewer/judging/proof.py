"""Proofs: each rule shown both ways on the values that its pack gives."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging.compiled import Requirement
from reviewer.judging.expression import Expression, Given, Name, walk
from reviewer.judging.limits import NO_LIMITS, Limits, levels_of
from reviewer.judging.pack import Pack, limits_of
from reviewer.judging.rule import Rule
from reviewer.notation.problem import Place, Problem, problems_in_order

Values = Mapping[str, Any]
SHOWS = {"holds": "a pass", "fails": "a fail", "asks": "a question"}


class Flaw(NamedTuple):
    """What is wrong with a side of a proof, what it shows, and what it should."""

    what: str
    found: str
    expected: str


def prove_all(packs: Iterable[Pack], limits: Limits | None = None) -> tuple[Problem, ...]:
    """What is wrong with the proofs of some packs; nothing where all of them hold.

    `limits` are those that packs state, whatever a shop makes of them; these packs' own where none
    are given.
    """
    packs = tuple(packs)
    limits = limits_of(packs) if limits is None else limits
    return tuple(
        problems_in_order(
            problem
            for pack in packs
            for rule in pack.rules
            for problem in prove(rule, pack.lines, limits)
        )
    )


def prove(rule: Rule, lines: Sequence[str] = (), limits: Limits = NO_LIMITS) -> Iterator[Problem]:
    """What is wrong with one rule's proof; `lines` are those of its pack, to point at the place.

    A rule must come out in each case as the case's side says. A case has the limits of the
    service that it gives (`design.service`, `design.children`), else of a private home.
    """
    for case in rule.proof.cases:
        values = {**limits.values(_levels(case.values)), **case.values}
        flaws = [*_missing(rule, case.side, values), *_uneven(rule, case.side, values)]
        for flaw in flaws or _shown(rule, case.side, values):
            yield _problem(case.place, lines, flaw)


def _levels(values: Values) -> tuple[str, ...]:
    service = values.get("design.service", "private")
    return levels_of(str(service), values.get("design.children") is True)


def _missing(rule: Rule, side: str, values: Values) -> Iterator[Flaw]:
    """The names that decide a rule and have no value on a side of its proof.

    A name that the rule asks `given(...)` of may be left out: then it is not given.
    """
    nodes = [node for each in _expressions(rule) for node in walk(each)]
    optional = {node.name.path for node in nodes if isinstance(node, Given)}
    used = dict.fromkeys(node.path for node in nodes if isinstance(node, Name))
    for name in used:
        if name not in values and name not in optional:
            what = f"the proof of {rule.name} lacks a value under {side}"
            yield Flaw(what, f"no {name}", f"{name}: and its value")


def _uneven(rule: Rule, side: str, values: Values) -> Iterator[Flaw]:
    """Collections of one kind of part that do not have the same number of members."""
    if rule.scope.how != "every":
        return
    for binder, _ in rule.scope.binders:
        lists = (
            value
            for name, value in values.items()
            if isinstance(value, list) and name.startswith(f"{binder}.")
        )
        counts = sorted({len(value) for value in lists})
        if len(counts) > 1:
            what = f"the proof of {rule.name} has lists of different lengths under {side}"
            found = " and ".join(str(count) for count in counts)
            yield Flaw(what, found, f"one length for all of {binder}")


def _expressions(rule: Rule) -> Iterator[Expression]:
    for test in (rule.when, rule.require):
        if test is not None:
            yield test.expression


def _shown(rule: Rule, side: str, values: Values) -> Iterator[Flaw]:
    """Where a side shows something else than it says."""
    resting = "no question" if rule.require is None else "a rule that does not apply"
    applies, known = (True, True) if rule.when is None else rule.when.test(values.get)
    if not np.all(known):
        found = "a condition that is unknown"
    elif not np.all(applies):
        found = resting
    else:
        found = "a question" if rule.require is None else _outcome(rule.require, values)
    expected = SHOWS.get(side, resting)
    if found != expected:
        what = f"the proof of {rule.name} does not show what it says under {side}"
        yield Flaw(what, found, expected)


def _outcome(require: Requirement, values: Values) -> str:
    outcome = require.judge(values.get)
    if not bool(np.all(outcome.known)):
        return "a requirement that is unknown"
    return "a pass" if bool(np.all(outcome.holds)) else "a fail"


def _problem(place: Place, lines: Sequence[str], flaw: Flaw) -> Problem:
    line = lines[place.line - 1] if 0 < place.line <= len(lines) else None
    return Problem(place, *flaw, None, line)
