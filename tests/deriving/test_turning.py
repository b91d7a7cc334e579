"""A joint that turns freely: what has a direction above it has any direction below it."""

from math import sqrt

import pytest

A, B = 0.6, 0.4

PARTS = """
parts:
  base: {{kind: base, feet: {{length: 1200, width: 800}}, height: 600, mass: 0 kg}}
  {joint}
  box: {{kind: top, carried_by: joint, mass: 0 kg}}
"""
RING = (
    "joint: {kind: slewing_ring, carried_by: base, mass: 0 kg, "
    'carry: {bearing: "6001", count: 12, circle: 900}}'
)
FIXED = "joint: {kind: top, carried_by: base, mass: 0 kg}"
STONE = "\nloads: {stone: {force: 800 N, on: box, at: {x: 90, y: 120}}}"  # 150 mm from its middle


def test_a_fixed_load_on_what_turns_meets_the_worst_foot(answers) -> None:
    """W/4 (1 + r/a) where it stands still, W/4 (1 + r sqrt(1/a^2 + 1/b^2)) where it turns."""
    still = answers(PARTS.format(joint=FIXED) + STONE)
    turning = answers(PARTS.format(joint=RING) + STONE)
    assert still("base.feet.peak_load") == pytest.approx(200 * (1 + 0.09 / A + 0.12 / B), rel=1e-9)
    most = 0.15 * sqrt(1 / A**2 + 1 / B**2)
    assert turning("base.feet.peak_load") == pytest.approx(200 * (1 + most), rel=1e-9)
    assert turning("base.feet.least_load") == pytest.approx(200 * (1 - most), rel=1e-9)


def test_loads_opposite_each_other_balance_above_the_ring(answers) -> None:
    """300 N at x = 200 mm and 200 N at x = -300 mm have no moment together, turned or not."""
    loads = """
loads:
  left: {force: 200 N, on: box, at: {x: -300}}
  right: {force: 300 N, on: box, at: {x: 200}}
"""
    found = answers(PARTS.format(joint=RING) + loads)
    assert found("joint.carry.moment", "left") == pytest.approx(60, rel=1e-9)
    assert found("joint.carry.moment", "all loads") == pytest.approx(0, abs=1e-9)
    assert found("joint.carry.peak_load", "all loads") == pytest.approx(500 / 12, rel=1e-9)
    assert found("base.feet.peak_load", "all loads") == pytest.approx(125, rel=1e-9)


def test_a_weight_that_balances_a_load_is_kept_beside_it(answers) -> None:
    """A counterweight of 300 N at x = -200 mm against 300 N at x = 200 mm."""
    weight = (
        f"counter: {{kind: clamp, carried_by: joint, at: {{x: -200}}, mass: {300 / 9.80665} kg}}"
    )
    found = answers(
        PARTS.format(joint=RING)
        + f"  {weight}\nloads: {{stone: {{force: 300 N, on: box, at: {{x: 200}}}}}}"
    )
    assert found("joint.carry.moment", "own weight") == pytest.approx(60, rel=1e-9)
    assert found("joint.carry.moment", "stone") == pytest.approx(0, abs=1e-9)
    assert found("base.feet.peak_load", "stone") == pytest.approx(150, rel=1e-9)
    assert found("joint.carry.moment", "stone, 0.9 of own weight") == pytest.approx(6, rel=1e-9)


def test_a_load_from_all_round_adds_to_a_fixed_one(answers) -> None:
    loads = """
loads:
  lean: {force: 100 N, on: box, at: {radius: 350}, all_round: true}
  stone: {force: 300 N, on: box, at: {x: 100}}
"""
    found = answers(PARTS.format(joint=RING) + loads)
    assert found("joint.carry.moment", "all loads") == pytest.approx(35 + 30, rel=1e-9)
    assert found("joint.carry.peak_load", "all loads") == pytest.approx(
        400 / 12 * (1 + 2 * (65 / 400) / 0.45), rel=1e-9
    )


def test_a_ring_off_the_axis_turns_about_its_own(answers) -> None:
    """The ring stands at x = 100 mm; 800 N at 150 mm from its middle may be at any azimuth there.

    About the ring's axis 800 N have 120 N m, about the design's from 40 to 200 N m.
    """
    joint = RING.replace("carried_by: base,", "carried_by: base, at: {x: 100},")
    found = answers(PARTS.format(joint=joint) + STONE)
    assert found("joint.carry.moment") == pytest.approx(120, rel=1e-9)
    most = 0.1 / A + 0.15 * sqrt(1 / A**2 + 1 / B**2)
    assert found("base.feet.peak_load") == pytest.approx(200 * (1 + most), rel=1e-9)
