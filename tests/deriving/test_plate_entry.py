"""Where loads come into the plate of a ring: by hand, and in balance with the load path."""

import pytest

PLATE = """
parts:
  ring:
    kind: slewing_ring
    mass: 0 kg
    plate: {material: birch plywood, thickness: 18, diameter: 520}
    carry: {bearing: "6001", count: 10, circle: 430}
"""
ARMS = """
  arms:
    kind: arm
    carried_by: ring
    count: 4
    section: {tube: [30, 30, 2]}
    material: 6063-T5
    mass: 0 kg
    root: {radius: 200}
    seat: 120
    reach: 400
"""


def entry(found):
    return found.derived.values.values[found.slot("ring.plate.entry")]


def test_on_the_plate_a_load_enters_where_it_stands(answers) -> None:
    load = "loads: {stone: {force: 600 N, on: ring, at: {radius: 90}, all_round: true}}"
    points = entry(answers(PLATE + load)).points
    assert len(points) == 1
    assert points[0][0][0, 0] == pytest.approx(0.09)
    assert points[0][1][0, 1] == pytest.approx(600)


def test_beyond_the_plate_on_a_top_it_enters_at_the_edge(answers) -> None:
    top = "  top: {kind: top, carried_by: ring, mass: 0 kg, diameter: 900}\n"
    load = "loads: {lean: {force: 300 N, on: top, at: rim, all_round: true}}"
    points = entry(answers(PLATE + top + load)).points
    assert points[0][0][0, 0] == pytest.approx(0.26)


def test_through_an_arm_it_enters_as_two_forces(answers) -> None:
    """500 N at 600 mm: at 200 mm 500 + 500 x 400/120 down, at 80 mm 500 x 400/120 up."""
    load = "loads: {lean: {force: 500 N, on: arms, at: rim, all_round: true}}"
    found = entry(answers(PLATE + ARMS + load))
    couple = 500 * 0.4 / 0.12
    assert [radius[0, 0] for radius, _ in found.points] == pytest.approx([0.20, 0.08])
    assert [force[0, 1] for _, force in found.points] == pytest.approx([500 + couple, -couple])
    force = sum(force[0, 1] for _, force in found.points)
    moment = sum(force[0, 1] * radius[0, 0] for radius, force in found.points)
    assert (force, moment) == pytest.approx((500, 300))  # as in the load path
    assert found.outer[0, 0] == pytest.approx(0.20)
    assert found.inner[0, 0] == pytest.approx(0.08)


def test_what_lies_on_all_arms_enters_as_a_couple_all_round(answers) -> None:
    """800 N carried at the tips, 400 mm out from the roots; half of it on one half."""
    top = "  top: {kind: top, carried_by: arms, mass: 0 kg, diameter: 1300}\n"
    load = "loads: {soil: {force: 800 N, over: top}}"
    answered = answers(PLATE + ARMS + top + load)
    found = entry(answered)
    whole, half = answered.number("soil"), answered.number("soil on one half")
    couple = 800 * 0.4 / 0.12
    for case, share in ((whole, 1.0), (half, 0.5)):
        forces = [force[0, case] for _, force in found.rings]
        assert forces == pytest.approx([share * couple, -share * couple])
    assert not found.points


def test_of_loads_at_azimuths_of_their_own_the_greatest_moment_enters_at_one_place(answers) -> None:
    loads = """
loads:
  near: {force: 900 N, on: ring, at: {x: 50}}
  far: {force: 300 N, on: ring, at: {x: -200}}
"""
    answered = answers(PLATE + loads)
    points = entry(answered).points
    every = answered.number("all loads")
    forces = {float(radius[0, 0]): float(force[0, every]) for radius, force in points}
    assert forces == pytest.approx({0.2: 300, 0.05: 0})
    alone = answered.number("near")
    assert {float(radius[0, 0]): float(force[0, alone]) for radius, force in points} == (
        pytest.approx({0.2: 0, 0.05: 900})
    )


def test_level_forces_and_lifting_ones_do_not_press_at_one_place(answers) -> None:
    loads = """
loads:
  hip: {force: 100 N, on: ring, at: rim, direction: inward, all_round: true}
  pull: {force: 50 N, on: ring, at: rim, direction: up, all_round: true}
"""
    assert not entry(answers(PLATE + loads)).points
