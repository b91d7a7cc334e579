"""What the rules of measurements say of each, judged as if it were a part of its own."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import nan
from typing import Any

from reviewer.deriving.derived import derive
from reviewer.judging.finding import Finding, Side
from reviewer.judging.judge import judge
from reviewer.judging.measured import Explanation, Tested
from reviewer.judging.rule import Rule
from reviewer.notation.problem import on_line
from reviewer.notation.show import show
from reviewer.parts.measurement import MEASUREMENT
from reviewer.reading.design import Configuration, Design, GivenValue, Part

DIGITS = 4
AGREES = f"{MEASUREMENT.name}.agrees"  # its difference is told in the unit of what was measured


def findings_of(
    tests: Sequence[Tested], design: Design, rules: Sequence[Rule]
) -> tuple[Finding, ...]:
    """What the rules of measurements say of them, each as if it were a part of its own."""
    wanted = [rule for rule in rules if rule.scope.binders == (("", MEASUREMENT.name),)]
    if not tests or not wanted:
        return ()
    parts = {each.measured.name: _as_part(each, design.path) for each in tests}
    alone = Design(
        path=design.path,
        facts=replace(design.facts, given={}),
        parts=parts,
        loads={},
        configurations=(Configuration(""),),
        lines=design.lines,
        units=design.units,
        files=design.files,
    )
    derived = derive(alone)
    found = judge(alone, derived.values, derived.cases, wanted)
    by_name = {each.measured.name: each for each in tests}
    return tuple(_told(finding, by_name[finding.part]) for finding in found)


def _told(finding: Finding, test: Tested) -> Finding:
    """A finding with no slots of a plan that is not the design's, and open for reasons of its own.

    Nothing is searched that would mend it: a reading cannot be changed.
    """
    reasons = finding.open_because
    if finding.verdict == "open" and not any(each.endswith(" fails") for each in reasons):
        reasons = test.why_unknown or ((test.stale.unknown,) if test.stale.unknown else reasons)
    told = finding.rule == AGREES and finding.verdict in ("pass", "fail")
    case = test.loading if told else None
    demand, capacity = None, None
    if finding.demand is not None and finding.rule == AGREES:
        demand, capacity = Side(test.difference, test.unit), Side(test.allowed, test.unit)
    return replace(
        finding,
        message=finding.message.rstrip(),
        demand=demand,
        capacity=capacity,
        slots=(),
        numbers=(),
        open_because=reasons,
        requires="",
        case=case,
    )


def _as_part(test: Tested, own: str) -> Part:
    measured = test.measured
    values: Mapping[str, Any] = {
        "test": measured.name,
        "quantity": measured.quantity,
        "step": measured.step,
        "by": measured.by,
        "on": measured.on,
        "proven": measured.proven,
        "calibrates": ".".join(measured.calibrates or ()) if test.stale.is_fresh else "",
        "off_by": test.difference / test.scale,
        "tolerated": test.tolerated / test.scale,
        "reading": show(test.read, test.unit),
        "expected": expected_words(test),
        "explained": "" if test.agrees else explained_words(test.explanations, own),
        "changes": nan if test.stale.unknown else float(len(test.stale.changes)),
        "changed": changed_words(test),
        "uncalibrated": float(bool(test.why_uncalibrated)),
        "calibration": calibration_words(test),
    }
    given = {path: GivenValue(value, str(value), measured.place) for path, value in values.items()}
    return Part(measured.name, MEASUREMENT, given, measured.place)


def expected_words(test: Tested) -> str:
    """What is predicted, with the ends of its band where it has one."""
    text = show(test.predicted, test.unit)
    ends = [show(each, test.unit) for each in (test.least, test.most)]
    return text if ends[0] == ends[1] else f"{text} ({ends[0]} to {ends[1]} with the tolerances)"


def changed_words(test: Tested) -> str:
    """What has changed behind a measurement, and what does not come from it any more."""
    text = ", ".join(test.stale.changes) or "nothing"
    settles = test.measured.calibrates is not None and test.stale.changes
    return f"{text}; so it calibrates nothing any more" if settles else text


def explained_words(explanations: Sequence[Explanation] | None, own: str) -> str:
    """The values that would explain a reading, each with what it is and would have to be."""
    if explanations is None:
        return "What would explain it was not searched: settle those before it first."
    if not explanations:
        return "No single value behind it explains that."
    told = "; or ".join(_one(each, own) for each in explanations)
    return f"It would be explained by {told}."


def calibration_words(test: Tested) -> str:
    """What a measurement calibrates, or why it does not."""
    done = test.calibration
    if done is None:
        return test.why_uncalibrated
    after, before = (show(value, done.unit, DIGITS) for value in (done.after, done.before))
    return f"{done.name} is {after} by this test, and would be {before} without it"


def _one(each: Explanation, own: str) -> str:
    now, needed = (show(value, each.unit, DIGITS) for value in (each.now, each.needed))
    where = on_line(each.place, own) if each.place else "not given, but from tables"
    return f"{each.name} of {needed} in place of {now} ({where})"
