"""Concessions: failures accepted on purpose, and those that no longer fit anything."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date

from reviewer.judging.finding import Finding
from reviewer.notation.nearest import nearest
from reviewer.notation.plain import plain
from reviewer.reading.design import Concession, Design

RULE = "design.concession_stands"


def with_concessions(findings: Sequence[Finding], design: Design, on: date) -> tuple[Finding, ...]:
    """The findings, each fail with the concession that accepts it on a date.

    A concession that is past its date, or that accepts nothing that fails, is a finding of its own
    that no concession can accept.
    """
    told = [_accepted(finding, design.concessions, on) for finding in findings]
    return (*told, *_stale(findings, design.concessions, on))


def _accepted(finding: Finding, concessions: Sequence[Concession], on: date) -> Finding:
    for concession in concessions:
        if finding.verdict == "fail" and _is_of(concession, finding) and not _past(concession, on):
            return replace(finding, concession=concession)
    return finding


def _is_of(concession: Concession, finding: Finding) -> bool:
    if concession.rule not in (finding.rule, finding.name):
        return False
    if concession.other is None:
        return concession.part == finding.part
    return {concession.part, concession.other} == {finding.part, *finding.others}


def _past(concession: Concession, on: date) -> bool:
    return concession.until is not None and date.fromisoformat(concession.until) < on


def _stale(
    findings: Sequence[Finding], concessions: Sequence[Concession], on: date
) -> Iterator[Finding]:
    for concession in concessions:
        of_it = [finding for finding in findings if _is_of(concession, finding)]
        if not of_it:
            yield _unfit(
                concession, f"there is no such rule on that part{_meant(findings, concession)}"
            )
        elif all(finding.verdict not in ("fail", "open") for finding in of_it):
            yield _unfit(concession, "nothing fails there any more, so that it can go")
        elif _past(concession, on):
            yield _unfit(concession, f"it ended on {concession.until}")


def _meant(findings: Sequence[Finding], concession: Concession) -> str:
    """The nearest rule on a part of that name, or the nearest part where there is none."""
    parts = {finding.part for finding in findings}
    if concession.part not in parts:
        near = nearest(concession.part, sorted(parts))
        return f"; the nearest part is {near}" if near else ""
    there = {each.rule for each in findings if each.part == concession.part}
    near = nearest(concession.rule, sorted(there))
    return f"; the nearest is {near}" if near else ""


def _unfit(concession: Concession, reason: str) -> Finding:
    what = f"{plain(concession.part)}, {plain(concession.rule)}"
    return Finding(
        rule=RULE,
        part=concession.part,
        others=(),
        verdict="fail",
        level="must",
        stage="cutting",
        hazard=None,
        utilisation=math.nan,
        demand=None,
        capacity=None,
        case=None,
        place=concession.place,
        message=f"The concession of {what} by {plain(concession.by)} does not stand: {reason}.",
        because="A concession that accepts nothing hides the next failure.",
        source="ISO 9000:2015, 3.12.5",
        change=(),
        numbers=(),
    )
