"""Measurements held against what is predicted: calibration first, then agreement, then findings."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from math import isnan, nan
from typing import Any, NamedTuple

from reviewer.deriving.derived import Derived, derive
from reviewer.deriving.unknown import why_open
from reviewer.judging.finding import Finding, Side
from reviewer.judging.judge import judge
from reviewer.judging.measured import Calibration, Explanation, Stale, Tested
from reviewer.judging.rule import Rule
from reviewer.notation.plain import plain
from reviewer.notation.preferred import preferred_units
from reviewer.notation.problem import on_line
from reviewer.notation.quantity import Quantity
from reviewer.notation.show import show, unit_for
from reviewer.notation.units import Unit, parse_unit
from reviewer.parts.measurement import MEASUREMENT, OWN_WEIGHT
from reviewer.reading.design import Configuration, Design, GivenValue, Measured, Part
from reviewer.studying.explaining import Candidate, candidates, explained, solved
from reviewer.studying.gauge import SCATTER, Gauge, factors_of, gauges, limit
from reviewer.studying.staleness import Find, stale_of

MOST_EXPLAINED = 3
AGREES = f"{MEASUREMENT.name}.agrees"  # its difference is told in the unit of what was measured
DIGITS = 4


class Held(NamedTuple):
    """A design with what its proven measurements calibrate, and what became of each of them."""

    derived: Derived
    tests: tuple[Tested, ...]


def held_against(derived: Derived, find: Find) -> Held:
    """Hold the measurements of a design against it, calibrated by those that are proven."""
    tests = derived.design.measured
    stale = [stale_of(derived, test, find) for test in tests]
    derived, calibrations, reasons = _calibrated(derived, tests, stale)
    told = tuple(
        _tested(gauge, test, stale_one, calibrations.get(test.name), reasons.get(test.name, ""))
        for gauge, test, stale_one in zip(gauges(derived, tests), tests, stale, strict=True)
    )
    return Held(derived, told)


def _calibrated(
    derived: Derived, tests: Iterable[Measured], stale: Iterable[Stale]
) -> tuple[Derived, dict[str, Calibration], dict[str, str]]:
    """The design with each value that a proven measurement settles, one after the other."""
    done: dict[str, Calibration] = {}
    reasons: dict[str, str] = {}
    for test, since in zip(tests, stale, strict=True):
        if test.calibrates is None:
            continue
        if not since.is_fresh:  # which is a finding of its own
            continue
        found = _settled(derived, test)
        if any(each.name == ".".join(test.calibrates) for each in done.values()):
            found = "another measurement calibrates the same value"
        if isinstance(found, str):
            reasons[test.name] = found
            continue
        value, calibration = found
        derived = derive(_with_value(derived.design, test.calibrates, value))
        done[test.name] = calibration
    return derived, done, reasons


def _settled(derived: Derived, test: Measured) -> tuple[GivenValue, Calibration] | str:
    """The value that makes the prediction equal to what was read; a text says why there is none."""
    gauge = gauges(derived, [test])[0]
    on = set(factors_of(derived.design, test))
    name = ".".join(test.calibrates or ())
    candidate = next((each for each in candidates(gauge, test, on) if each.name == name), None)
    if candidate is None:
        return f"{name} is not known, or is not behind {test.quantity} under this load"
    quantity = test.value.quantity
    assert quantity is not None
    targets = (quantity.value, quantity.low, quantity.high)
    needed = [float(solved(gauge, [candidate], [each])[0]) for each in targets]
    if isnan(needed[0]):
        return f"no {name} between a tenth and ten times of what it is gives that reading"
    ends = [each for each in needed if not isnan(each)]
    return _value(derived, test, candidate, needed[0], (min(ends), max(ends)))


def _value(
    derived: Derived, test: Measured, each: Candidate, value: float, band: tuple[float, float]
) -> tuple[GivenValue, Calibration]:
    """A value as a measurement gives it, with the band that its uncertainty leaves."""
    unit = _unit(derived, each.row)
    text = show(value, unit, DIGITS)
    quantity = Quantity(value, each.row.dimension, unit, *band, "normal", text)
    given = GivenValue(value, text, test.place, quantity, calibrated_by=test.name)
    return given, Calibration(test.name, each.name, each.now, value, unit, test.place)


def _unit(derived: Derived, row: Any) -> Unit:
    if row.unit == "1":
        return parse_unit("1")
    return unit_for(row.dimension, preferred_units(derived.design.units))


def _with_value(design: Design, where: tuple[str, str], value: GivenValue) -> Design:
    name, path = where
    part = design.parts[name]
    parts = {**design.parts, name: replace(part, given={**part.given, path: value})}
    return replace(design, parts=parts)


def _tested(
    gauge: Gauge, test: Measured, stale: Stale, calibration: Calibration | None, why: str
) -> Tested:
    design = gauge.derived.design
    predicted = gauge.nominal
    least, most = gauge.band()
    quantity = test.value.quantity
    assert quantity is not None
    above = quantity.value >= predicted
    band = most - predicted if above else predicted - least
    own = quantity.value - quantity.low if above else quantity.high - quantity.value
    unknown = why_open(gauge.derived.values, [gauge.slot], gauge.case) if isnan(predicted) else ()
    row = gauge.derived.values.plan.nodes[gauge.slot].row
    found = Tested(
        measured=test,
        loading=loading_words(design, test),
        predicted=predicted,
        least=least,
        most=most,
        tolerated=band + own,
        scatter=limit(design, SCATTER),
        unit=_unit(gauge.derived, row),
        stale=stale,
        calibration=calibration,
        why_unknown=tuple(f"{cause.name} {cause.reason}" for cause in unknown),
        why_uncalibrated=why,
    )
    if found.agrees is not False or not stale.is_fresh:
        return found
    on = set(factors_of(design, test))
    return replace(found, explanations=explained(gauge, test, on, quantity.value, MOST_EXPLAINED))


def loading_words(design: Design, test: Measured) -> str:
    """How it was loaded, in words: half of lean, closed, from zero under own weight."""
    factors = factors_of(design, test)
    step = {"half": "half of ", "full": ""}.get(test.step)
    if step is None:
        step = f"{max(factors.values(), default=1.0):g} of "
    words = [f"{step}{' and '.join(test.under)}" if factors else OWN_WEIGHT]
    configuration = design.configurations[test.configuration].name
    words += [configuration] if configuration else []
    words += ["zero under own weight"] if test.zeroed else []
    return plain(", ".join(words))


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


def explained_words(explanations: Sequence[Explanation], own: str) -> str:
    """The values that would explain a reading, each with what it is and would have to be."""
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


def with_calibrations(
    findings: Iterable[Finding], derived: Derived, tests: Iterable[Tested]
) -> tuple[Finding, ...]:
    """The findings, each with the calibrated values that it stands on named in its message."""
    plan = derived.values.plan
    settled = [
        (plan.slots[each.measured.calibrates], each.calibration)
        for each in tests
        if each.calibration is not None and each.measured.calibrates is not None
    ]
    reached = [(plan.below(frozenset((slot,))) | {slot}, each) for slot, each in settled]
    return tuple(_calibrating(finding, reached) for finding in findings)


def _calibrating(
    finding: Finding, reached: Sequence[tuple[frozenset[int], Calibration]]
) -> Finding:
    on = [each for slots, each in reached if slots.intersection(finding.slots)]
    if not on or finding.verdict == "not applicable":
        return finding
    told = " and ".join(
        f"{each.name} of {show(each.after, each.unit, DIGITS)}, as {each.test} calibrates it"
        for each in on
    )
    message = f"{finding.message} Computed with {told}."
    return replace(finding, message=message, calibrated=tuple(each.name for each in on))
