"""Counts, limits and sentences."""

import math
from dataclasses import replace

import pytest

from reviewer.judging.finding import Finding, Side
from reviewer.judging.reviewed import Review
from reviewer.notation.units import parse_unit
from reviewer.reporting.limits import bound, usage
from reviewer.reporting.words import verdict_sentence


@pytest.fixture(scope="module")
def failing(stage: Review) -> Finding:
    return next(each for each in stage.findings if each.name == "curtain.wide_enough")


@pytest.mark.parametrize(
    ("requires", "expected"),
    [
        ("least >= 25 mm", "least"),
        ("least > 25 mm", "least"),
        ("mass <= 10 kg", "most"),
        ("10 kg >= mass", "most"),
        ("25 mm <= least", "least"),
        ("a <= b and c < d", "most"),
        ("a <= b and c >= d", ""),
        ("most <= 5 mm or least >= 25 mm", ""),
        ("5 mm <= least <= 25 mm", ""),
        ("every (arms.reach <= 2 m)", "most"),
        ('shape == "hole"', ""),
        ("not an expression <", ""),
        ("", ""),
    ],
)
def test_a_requirement_is_a_least_or_a_most(requires: str, expected: str) -> None:
    assert bound(requires) == expected


@pytest.mark.parametrize(
    ("requires", "demand", "capacity", "utilisation", "expected"),
    [
        ("a >= b", 0.025, 0.01, 2.5, "needs 25 mm, has 10 mm, 2.50 times as much"),
        ("a <= b", 0.025, 0.01, 2.5, "is 25 mm, may be 10 mm, 2.50 times as much"),
        ("a <= b", 0.010004, 0.01, 1.0004, "is 10.004 mm, may be 10 mm, 1.0004 times as much"),
        ("a <= b", 2.0, 0.01, 200.0, "is 2000 mm, may be 10 mm, over 100 times as much"),
        ("a >= b", 0.03, 0.0, math.nan, "needs 30 mm, has 0 mm"),
        ("a > 0 N", 0.0, 0.0, math.nan, "needs more than 0 mm, has 0 mm"),
        ("a < b", 0.01, 0.01, math.nan, "is 10 mm, must be less than 10 mm"),
        ("a <= b or c >= d", 0.03, 0.01, 3.0, "30 mm against 10 mm, 3.00 times as much"),
    ],
)
def test_usage(
    failing: Finding,
    requires: str,
    demand: float,
    capacity: float,
    utilisation: float,
    expected: str,
) -> None:
    unit = parse_unit("mm")
    finding = replace(
        failing,
        requires=requires,
        demand=Side(demand, unit),
        capacity=Side(capacity, unit),
        utilisation=utilisation,
    )
    assert usage(finding) == expected


def test_usage_of_what_has_no_sides(failing: Finding) -> None:
    assert usage(replace(failing, demand=None)) == ""


def test_the_verdict_in_one_sentence(failing: Finding) -> None:
    opened = replace(failing, verdict="open")
    later = replace(failing, stage="loading")
    asked = replace(failing, verdict="review")
    passed = replace(failing, verdict="pass")
    assert verdict_sentence([failing] * 5 + [asked] * 2 + [opened] * 3) == (
        "Five things to change before cutting, two to judge, three not reviewed."
    )
    assert verdict_sentence([later, failing, failing]) == (
        "Two things to change before cutting, one when loading."
    )
    assert verdict_sentence([later]) == "One thing to change when loading."
    assert verdict_sentence([passed]) == "Nothing to change."
    assert verdict_sentence([passed, opened]) == "Nothing to change, one not reviewed."
    assert verdict_sentence([failing] * 40) == "40 things to change before cutting."
    assert verdict_sentence([]) == "No rule is for what this design has: nothing was reviewed."
