"""Calibration: a proven measurement settles one value, and what stands on it says so."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import isnan

from reviewer.deriving.derived import Derived, derive
from reviewer.judging.finding import Finding
from reviewer.judging.measured import Calibration, Stale, Tested
from reviewer.notation.preferred import preferred_units
from reviewer.notation.quantity import Quantity
from reviewer.notation.show import show, unit_for
from reviewer.notation.units import Unit, parse_unit
from reviewer.parts.row import Row
from reviewer.reading.design import Design, GivenValue, Measured
from reviewer.studying.explaining import Candidate, candidates, solved
from reviewer.studying.gauge import factors_of, gauges

DIGITS = 4


def calibrated(
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
    unit = unit_of(derived, each.row)
    text = show(value, unit, DIGITS)
    quantity = Quantity(value, each.row.dimension, unit, *band, "normal", text)
    given = GivenValue(value, text, test.place, quantity, calibrated_by=test.name)
    return given, Calibration(test.name, each.name, each.now, value, unit, test.place)


def unit_of(derived: Derived, row: Row) -> Unit:
    """The unit in which a row of a design is shown."""
    if row.unit == "1":
        return parse_unit("1")
    return unit_for(row.dimension, preferred_units(derived.design.units))


def _with_value(design: Design, where: tuple[str, str], value: GivenValue) -> Design:
    name, path = where
    part = design.parts[name]
    parts = {**design.parts, name: replace(part, given={**part.given, path: value})}
    return replace(design, parts=parts)


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
