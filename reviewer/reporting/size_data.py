"""Sweeps, maps and scaled designs as data for other programs."""

from collections.abc import Sequence
from math import isnan
from typing import Any

from reviewer.reporting.data import in_unit, rounded
from reviewer.studying.mapping import Map
from reviewer.studying.rewriting import unit_of
from reviewer.studying.scaling import Scaling
from reviewer.studying.study import FAILS, HELD, NOT_APPLICABLE, OPEN, PASSES, REVIEW, Course
from reviewer.studying.sweep import STANDING, Stop, Sweep

FORMAT = 1
Data = dict[str, Any]
VERDICTS = {
    NOT_APPLICABLE: "not applicable",
    PASSES: "pass",
    REVIEW: "review",
    OPEN: "open",
    HELD: "open",
    FAILS: "fail",
}


def sweep_data(sweep: Sweep) -> Data:
    """A sweep: its sizes, where all holds, and every rule that depends on it."""
    given = sweep.given
    return {
        **_head(sweep.derived.design),
        "field": given.name,
        "line": given.value.place.line,
        "unit": unit_of(given.value.quantity).symbol if given.value.quantity else None,
        "now": given.value.text,
        "sizes": [_stop(given, stop) for stop in sweep.stops],
        "holds": [{"from": each.first.text, "to": each.last.text} for each in sweep.spans],
        "takes_over": [
            {"at": sweep.stops[index].text, "rule": course.name}
            for index, course in sweep.takeovers()
        ],
        "never": [each.name for each in sweep.standing],
        "rules": [_course(sweep.derived.cases.names, each) for each in sweep.concerned],
    }


def map_data(found: Map) -> Data:
    """A map: the sizes down and across, and row by row what governs."""
    first, second = found.given
    names = found.derived.cases.names
    return {
        **_head(found.derived.design),
        "down": {"field": first.name, "sizes": [_stop(first, each) for each in found.down]},
        "across": {"field": second.name, "sizes": [_stop(second, each) for each in found.across]},
        "never": [each.name for each in found.standing],
        "cells": [
            [_cell(found, row, column) for column in range(len(found.across))]
            for row in range(len(found.down))
        ],
        "rules": [_course(names, each) for each in found.concerned],
    }


def scaling_data(scaling: Scaling) -> Data:
    """A scaled design: what governs and what fails at each factor."""
    concerned = scaling.concerned
    names = scaling.derived.cases.names
    return {
        **_head(scaling.derived.design),
        "factors": [_factor(scaling, concerned, index) for index in range(len(scaling.factors))],
        "kept": list(scaling.kept),
        "rules": [_course(names, each) for each in concerned],
    }


def _head(design: Any) -> Data:
    return {
        "format": FORMAT,
        "path": design.path,
        "design": design.name,
        "revision": design.revision,
    }


def _stop(given: Any, stop: Stop) -> Data:
    quantity = given.value.quantity
    value = in_unit(stop.size, unit_of(quantity)) if quantity else None
    return {"value": value, "text": stop.text}


def _course(cases: tuple[str, ...], course: Course) -> Data:
    used = course.utilisation.tolist()
    return {
        "rule": course.name,
        "level": course.rule.level,
        "verdicts": [VERDICTS[int(each)] for each in course.verdict],
        "utilisations": [rounded(each) for each in used],
        "cases": [
            None if isnan(each) else cases[int(case)]
            for each, case in zip(used, course.case, strict=True)
        ],
    }


def _cell(found: Map, row: int, column: int) -> Data:
    course = found.governing(row, column)
    index = row * len(found.across) + column
    return {
        "holds": found.passes(row, column),
        "governs": course.name if course else None,
        "utilisation": rounded(float(course.utilisation[index])) if course else None,
    }


def _factor(scaling: Scaling, concerned: Sequence[Course], index: int) -> Data:
    course = scaling.governing(index)
    return {
        "factor": rounded(scaling.factors[index]),
        "governs": course.name if course else None,
        "utilisation": rounded(float(course.utilisation[index])) if course else None,
        "fails": [each.name for each in concerned if each.verdict[index] == FAILS],
        "not_judged": [each.name for each in concerned if each.verdict[index] in STANDING[1:]],
        "bought": {
            given.name: in_unit(scaling.points[index][given.field], unit_of(given.value.quantity))
            for given in scaling.snapped
            if given.value.quantity
        },
    }
