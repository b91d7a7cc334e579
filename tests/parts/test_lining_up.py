"""Parts lined up by bolts in clearance holes, end to end.

ISO 273 for the holes, straight lines through them for what they leave, worked by hand.
"""

import math

import pytest

ARMS = """
  arms:
    kind: arm
    carried_by: base
    count: 5
    section: {tube: [40, 40, 2]}
    material: 6063-T5
    reach: 340
    root: {bolt: M8x60, edge: 25, spacing: 100}
"""


def line(*more: str) -> str:
    return f"{ARMS}  line: {{{', '.join(('kind: lining_up', 'of: arms', *more))}}}\n"


def test_an_arm_in_its_clearance_holes(asked):
    """M8 in two holes of 9 mm: 1 mm across a bolt; tip 365 mm out, bolts 100 mm apart."""
    found = asked(line())
    assert found("line.float") == pytest.approx(1e-3)
    assert found("line.angle.worst") == pytest.approx(2 / 100)
    assert found("line.deviation.worst") == pytest.approx(1e-3 + 2e-3 * 365 / 100)
    assert found("line.difference.worst") == pytest.approx(2 * 8.3e-3)
    assert found("line.deviation.likely") < found("line.deviation.worst")
    assert found("line.difference.likely") < found("line.difference.worst")
    assert found.verdict("line.end_in_line") == "fail"
    assert found.verdict("line.alike") == "fail"


def test_holes_that_are_drilled_apart_add_their_error(asked):
    found = asked(line("drilled: apart", "drilled_within: 0.25"))
    assert found("line.float") == pytest.approx(1.5e-3)


def test_tapped_holes_have_no_clearance(asked):
    assert asked(line("tapped: true"))("line.float") == pytest.approx(0.5e-3)
    arms = line().replace("edge: 25", "edge: 25, tapped: true, holes: fine")
    assert asked(arms)("line.float") == pytest.approx(0.2e-3)


def test_dowels_line_it_up(asked):
    """0.05 mm on diameter, 80 mm apart: 0.025 mm at each, 365 mm out."""
    dowels = "dowels: {clearance: 0.05, spacing: 80}"
    found = asked(line(dowels, "lined_up_by: dowels"))
    assert found("line.deviation.worst") == pytest.approx(0.025e-3 * (1 + 2 * 365 / 80))
    assert found.verdict("line.end_in_line") == "pass"
    assert found.verdict("line.alike") == "pass"
    assert "two dowels line it up" in asked(line(dowels)).says("line.end_in_line")


def test_dowels_that_are_not_told_leave_it_open(asked):
    found = asked(line("lined_up_by: dowels"))
    assert found.verdict("line.end_in_line") == "open"
    assert any("dowels" in each for each in found.reasons("line.deviation.worst"))


@pytest.mark.parametrize(
    ("more", "advice"),
    [
        (("holes: fine", "spacing: 200", "far_end: 100"), "neither dowels nor a fixture is needed"),
        ((), "a fixture lines it up"),
        (("fixture_within: 4",), "neither dowels nor a fixture is enough"),
    ],
)
def test_advice(asked, more, advice):
    found = asked(line(*more))
    slot = found.values.plan.slots["line", "advice"]
    assert found.values.at(slot, 0).startswith(advice)


def test_a_fixture_holds_it_while_it_is_tightened(asked):
    found = asked(line("lined_up_by: fixture", "fixture_within: 0.5"))
    assert found("line.deviation.worst") == pytest.approx(0.5e-3)
    assert found.verdict("line.end_in_line") == "pass"


@pytest.mark.parametrize(("reach", "verdict"), [(1.7, "fail"), (1.9, "pass")])
def test_an_adjustment_must_reach_as_far_as_the_worst(asked, reach, verdict):
    """8.3 mm at the tip, moved 4.65 times as far as the bolt: 1.785 mm at the bolt."""
    found = asked(line(f"adjust: {{by: slot, range: {reach}}}"))
    assert found("line.adjust.leverage") == pytest.approx(4.65)
    assert found.verdict("line.adjusts_far_enough") == verdict
    assert found.verdict("line.end_in_line") == "not applicable"


def test_an_eighth_of_a_turn_of_m8(asked):
    """Pitch 1.25 mm (ISO 261)."""
    found = asked(line("adjust: {by: screw, range: 3}"))
    assert found("line.adjust.finest") == pytest.approx(1.25e-3 / 8)
    assert found.verdict("line.adjusts_finely") == "pass"
    coarse = asked(line("adjust: {by: screw, range: 3, finest: 1}"))
    assert coarse.verdict("line.adjusts_finely") == "fail"


def test_it_must_be_reached_once_assembled(asked):
    """Head of an open spanner for 13 mm: 1.05 * 13 + 3.5 = 17.15 mm, ISO 3318 from memory."""
    tight = "adjust: {by: slot, range: 3, room: 16, swing: 20 deg, when: apart}"
    free = "adjust: {by: slot, range: 3, room: 18, swing: 40 deg}"
    for rule in ("spanner_fits", "spanner_swings", "set_when_assembled"):
        assert asked(line(tight)).verdict(f"line.{rule}") == "fail"
        assert asked(line(free)).verdict(f"line.{rule}") == "pass"
    assert asked(line(free))("line.adjust.room_needed") == pytest.approx(17.15e-3)
    assert asked(line(free))("line.adjust.swing_needed") == pytest.approx(math.radians(30))


def test_told_by_itself(asked):
    """M6 in 6.6 mm, 60 mm apart: 1.146 deg (geometry, by script)."""
    found = asked("\n  line: {kind: lining_up, bolt: M6x30, spacing: 60, far_end: 200}\n")
    assert math.degrees(found("line.angle.worst")) == pytest.approx(1.146, abs=5e-4)
    assert found.verdict("line.alike") == "not applicable"
