"""Limits for inspection: closed forms, and each limit tried on both sides in the file itself."""

from collections.abc import Callable
from pathlib import Path

import pytest
from scipy.optimize import brentq

from reviewer import review
from reviewer.judging.reviewed import Review
from reviewer.studying.inspection import Line, inspected

SPECIMENS = Path(__file__).parents[2] / "specimens"
BRACKET = """\
design: A bracket
lengths: mm
parts:
  post: {kind: base, feet: {count: 4, circle: 900}, height: 700, mass: 60 kg}
  arm:
    kind: arm
    carried_by: post
    section: {solid: [30, 20]}
    material: S235
    root: {radius: 100}
    reach: 500
    mass: 0.000001 kg
    allowed_deflection: 1.6
loads:
  lamp: {force: 150 N, on: arm, at: rim}
"""
GAP = """\
design: A flap
lengths: mm
reached_by: [adults, children]
parts:
  flap: {kind: gap, least: 26, most: 90, depth: 15}
"""


def lines_of(found: Review) -> dict[str, Line]:
    assert found.problems == ()
    return {line.name: line for line in inspected(found.derived, found.rules)}


def sag(height: float = 0.020, reach: float = 0.500) -> float:
    """A cantilever with its load at the tip and shear, as in test_measured.py."""
    bending = 150.0 * reach**3 / (3 * 210e9 * 0.03 * height**3 / 12)
    return bending + 150.0 * reach / (5 / 6 * 81e9 * 0.03 * height)


def test_the_limits_of_a_cantilever_are_those_of_the_closed_form() -> None:
    lines = lines_of(review(BRACKET))
    height = brentq(lambda value: sag(height=value) - 1.6e-3, 0.015, 0.02, rtol=1e-14)
    reach = brentq(lambda value: sag(reach=value) - 1.6e-3, 0.5, 0.6, rtol=1e-14)
    assert lines["arm.section.height"].low.name == "arm.tip_sinks"
    assert lines["arm.section.height"].low.value == pytest.approx(height, rel=1e-5)
    assert lines["arm.section.height"].high is None
    assert lines["arm.reach"].high.value == pytest.approx(reach, rel=1e-5)
    assert lines["arm.reach"].low is None


def test_a_gap_may_be_as_small_as_no_finger_is_caught_in() -> None:
    """25 mm, limit.fingers_leave of the packs; the file has 26 mm."""
    line = lines_of(review(GAP))["flap.least"]
    assert line.low.value == pytest.approx(0.025, rel=1e-6)
    assert line.low.name == "flap.fingers"


def test_what_a_gauge_reads_has_the_limit_of_its_rule() -> None:
    """Play at the rim of 3 mm, limit.rim_play."""
    line = lines_of(review(SPECIMENS / "first_design.yaml"))["ring.play.rim"]
    assert line.high.value == pytest.approx(0.003, rel=1e-6)
    assert line.stage == "assembling"


def test_a_limit_of_zero_is_found_although_it_has_no_share_to_tell() -> None:
    """An edge that runs out by twice the gap, half of it to each side, just turns."""
    text = (SPECIMENS / "first_design.yaml").read_text("utf-8")
    text = text.replace("count: 3, gap: 0.2", "count: 3, gap: 0.2, eccentricity: 0.05")
    line = lines_of(review(text))["ring.side.run_out"]
    assert line.now == pytest.approx(0.1e-3)
    assert line.high.value == pytest.approx(0.4e-3, rel=1e-3)
    assert line.low is None


Change = Callable[[str, float], str]


WIDE = (SPECIMENS / "first_design.yaml").read_text("utf-8").replace("circle: 340", "circle: 370")


def plant(name: str, value: float) -> str:
    before = {
        "ring.plate.diameter": "diameter: 400",
        "ring.carry.circle": 'bearing: "608", count: 8, circle: 370',
        "ring.hold_down.circle": 'bearing: "608", count: 4, circle: 370',
    }[name]
    head, _, _ = before.rpartition(": ")
    assert WIDE.count(before) == 1
    return WIDE.replace(before, f"{head}: {1000 * value:.6f}")


def bracket(name: str, value: float) -> str:
    if name == "arm.reach":
        return BRACKET.replace("reach: 500", f"reach: {1000 * value:.6f}")
    return BRACKET.replace("[30, 20]", f"[30, {1000 * value:.6f}]")


@pytest.mark.parametrize(
    ("changed", "start", "names"),
    [
        (
            plant,
            WIDE,
            ("ring.plate.diameter", "ring.carry.circle", "ring.hold_down.circle"),
        ),
        (bracket, BRACKET, ("arm.reach", "arm.section.height")),
    ],
)
def test_just_inside_every_rule_holds_and_just_outside_the_named_one_fails(
    changed: Change, start: str, names: tuple[str, ...]
) -> None:
    found = review(start)
    failing = {each.name for each in found.findings if each.verdict == "fail"}
    lines = lines_of(found)
    for name in names:
        for end in (each for each in (lines[name].low, lines[name].high) if each):
            step = 1e-4 * (lines[name].now - end.value)
            inside, outside = (
                {
                    each.name
                    for each in review(changed(name, end.value + sign * step)).findings
                    if each.verdict == "fail" and each.level != "note"
                }
                for sign in (1, -1)
            )
            assert inside <= failing, (name, end)
            assert end.name in outside, (name, end)
