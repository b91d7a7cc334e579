"""Measurements held against what is predicted: calibration first, then agreement."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import isnan
from typing import NamedTuple

from reviewer.deriving.derived import Derived
from reviewer.deriving.unknown import why_open
from reviewer.judging.measured import Calibration, Stale, Tested
from reviewer.notation.plain import plain
from reviewer.parts.measurement import OWN_WEIGHT
from reviewer.reading.design import Design, Measured
from reviewer.studying.calibrating import calibrated, unit_of
from reviewer.studying.explaining import explained
from reviewer.studying.gauge import SCATTER, Gauge, factors_of, gauges, limit
from reviewer.studying.staleness import Find, stale_of

MOST_EXPLAINED = 3
MOST_SEARCHED = 10  # measurements that do not agree: who has more begins with these


class Held(NamedTuple):
    """A design with what its proven measurements calibrate, and what became of each of them."""

    derived: Derived
    tests: tuple[Tested, ...]


def held_against(derived: Derived, find: Find) -> Held:
    """Hold the measurements of a design against it, calibrated by those that are proven."""
    tests = derived.design.measured
    stale = [stale_of(derived, test, find) for test in tests]
    derived, calibrations, reasons = calibrated(derived, tests, stale)
    told = tuple(
        _tested(gauge, test, stale_one, calibrations.get(test.name), reasons.get(test.name, ""))
        for gauge, test, stale_one in zip(gauges(derived, tests), tests, stale, strict=True)
    )
    return Held(derived, tuple(_with_explanations(derived, told)))


def _with_explanations(derived: Derived, told: Sequence[Tested]) -> Iterator[Tested]:
    """The measurements, the first of those that do not agree with what would explain them."""
    searched = 0
    for gauge, test in zip(gauges(derived, [each.measured for each in told]), told, strict=True):
        if test.agrees is not False or not test.stale.is_fresh:
            yield test
        elif searched == MOST_SEARCHED:
            yield replace(test, explanations=None)
        else:
            searched += 1
            on = set(factors_of(derived.design, test.measured))
            found = explained(gauge, test.measured, on, test.read, MOST_EXPLAINED)
            yield replace(test, explanations=found)


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
    return Tested(
        measured=test,
        loading=loading_words(design, test),
        predicted=predicted,
        least=least,
        most=most,
        tolerated=band + own,
        scatter=limit(design, SCATTER),
        unit=unit_of(gauge.derived, row),
        stale=stale,
        calibration=calibration,
        why_unknown=tuple(f"{cause.name} {cause.reason}" for cause in unknown),
        why_uncalibrated=why,
    )


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
