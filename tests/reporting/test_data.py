"""Whole reports in JSON, and the schema that they keep."""

import json
import math
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from jsonschema import Draft202012Validator, ValidationError

from reviewer.judging.finding import LEVELS, STAGES, Side
from reviewer.judging.reviewed import Review
from reviewer.notation.units import parse_unit
from reviewer.reporting.data import JsonReport, finding_data, in_unit, review_data
from reviewer.reporting.data_schema import report_schema
from reviewer.reporting.words import VERDICTS

KEYS = (
    *("rule", "part", "with", "verdict", "level", "stage", "hazard", "utilisation", "demand"),
    *("capacity", "case", "path", "line", "column", "message", "remedies", "open_because"),
    "concession",
)  # DESIGN, contract on JSON
OF_A_DESIGN = ("path", "design", "revision", "findings", "problems")
# What was tried in vain beside the remedies, what a shop silenced, what a test calibrates.
MORE = {"rejected", "no_remedy", "influences", "tolerance", "silenced", "calibrated"}


def told(*reviews: Review) -> str:
    report = JsonReport()
    return "".join(report.add(each) for each in reviews) + report.end()


def refuse(name: str) -> Any:
    raise AssertionError(f"{name} is no JSON (RFC 8259, 6)")


def test_every_verdict(stage: Review, held: Callable[[str, str], None]) -> None:
    held("stage.json", told(stage))


def test_every_finding_has_the_keys_of_the_contract_in_order(stage: Review) -> None:
    data = json.loads(told(stage))
    assert list(data) == ["format", "designs"]
    more = ("shop", "cautions", "reviewed_under", "measured")
    assert list(data["designs"][0]) == [*OF_A_DESIGN, *more]
    assert len(data["designs"][0]["findings"]) == len(stage.findings)
    for finding in data["designs"][0]["findings"]:
        assert tuple(key for key in finding if key not in MORE) == KEYS


def test_findings_are_in_order_of_stage_verdict_level_and_name(stage: Review) -> None:
    findings = review_data(stage)["findings"]
    keys = [
        (
            STAGES.index(each["stage"]),
            VERDICTS.index(each["verdict"]),
            LEVELS.index(each["level"]),
            f"{each['part']}.{each['rule'].split('.')[1]}",
        )
        for each in findings
    ]
    assert keys == sorted(keys)


def test_the_order_in_which_findings_come_does_not_matter(stage: Review) -> None:
    turned = replace(stage, findings=tuple(reversed(stage.findings)))
    assert told(turned) == told(stage)


def test_the_schema_holds_for_all_that_is_printed(
    stage: Review, reviewed: Callable[..., Review]
) -> None:
    unread = reviewed("design: Lid\nparts:\n  lid: {kind: gap, least: 30 mn}\n")
    Draft202012Validator.check_schema(report_schema())
    validator = Draft202012Validator(report_schema())
    for text in (told(), told(stage), told(unread), told(stage, unread, stage)):
        validator.validate(json.loads(text, parse_constant=refuse))


@pytest.mark.parametrize(
    ("key", "value"),
    [("verdict", "failed"), ("utilisation", -1), ("line", 0), ("with", None), ("stage", "later")],
)
def test_the_schema_refuses_what_is_not_in_the_contract(
    stage: Review, key: str, value: object
) -> None:
    data = json.loads(told(stage))
    data["designs"][0]["findings"][0][key] = value
    with pytest.raises(ValidationError):
        Draft202012Validator(report_schema()).validate(data)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_no_nan_and_no_infinity(stage: Review, value: float) -> None:
    side = Side(value, parse_unit("N"))
    finding = replace(stage.findings[0], utilisation=value, demand=side)
    data = finding_data(finding)
    assert data["utilisation"] is None
    assert data["demand"] == {"value": None, "unit": "N"}
    json.loads(told(replace(stage, findings=(finding,))), parse_constant=refuse)


@pytest.mark.parametrize(
    ("value", "unit", "expected", "source"),
    [
        (0.0254, "in", 1.0, "the inch is 25.4 mm exactly (ISO 80000-3:2019)"),
        (4.4482216152605, "lbf", 1.0, "NIST SP 811 (2008), appendix B"),
        (296.15, "degC", 23.0, "t = T - 273.15 K (ISO 80000-5:2019)"),
        (0.1 + 0.2, "m", 0.3, "12 significant digits"),
        (math.pi, "m", 3.14159265359, "12 significant digits of pi (OEIS A000796)"),
    ],
)
def test_values_are_in_their_unit_to_12_digits(
    value: float, unit: str, expected: float, source: str
) -> None:
    assert in_unit(value, parse_unit(unit)) == expected, source


def test_problems_of_reading(reviewed: Callable[..., Review]) -> None:
    review = reviewed("design: Lid\nparts:\n  lid: {kind: gap, least: 30 mn}\n", "a/lid.yaml")
    data = json.loads(told(review))["designs"][0]
    assert data["path"] == "a/lid.yaml"
    assert (data["design"], data["revision"], data["findings"]) == (None, None, [])
    (problem,) = data["problems"]
    assert list(problem) == ["path", "line", "column", "what", "found", "expected", "mend"]
    assert (problem["path"], problem["line"], problem["column"]) == ("a/lid.yaml", 3, 30)
    assert problem["found"] == "mn"


def test_several_designs_are_one_document(stage: Review) -> None:
    data = json.loads(told(stage, stage, stage))
    assert data["designs"][0] == data["designs"][1] == data["designs"][2]


def test_no_design_is_a_document_too() -> None:
    assert json.loads(told()) == {"format": 1, "designs": []}


def test_text_is_kept_whole_and_in_ascii(reviewed: Callable[..., Review]) -> None:
    text = 'design: "b\\u00fchne \\u202e"\nparts:\n  lid: {kind: gap, least: 30 mm}\n'
    found = told(replace(reviewed(text), path="\x1b[2J\udc80.yaml"))
    assert found.isascii()
    assert found.replace("\n", "").isprintable()
    data = json.loads(found)["designs"][0]
    assert (data["design"], data["path"]) == ("b\u00fchne \u202e", "\x1b[2J\udc80.yaml")
