"""How much a roller gives way: springs in series, worked by hand."""

from math import log, pi, sqrt

import pytest

RING = """
  ring:
    kind: slewing_ring
    carried_by: base
    mass: 0 kg
    plate: {{material: birch plywood, thickness: 18, diameter: 520{plate}}}
    carry: {{bearing: "6001", count: 10, circle: 430{carry}}}
    hold_down: {{bearing: "6000", count: 5, circle: 430}}
loads: {{stone: {{force: 1200 N, on: ring}}}}
"""
# of 6001: 28 mm across, 8 mm wide, bore 12 mm, 8 balls of 4.762 mm; birch 1.08 GPa through the face
LOAD, LENGTH, RADIUS, THICK = 120.0, 0.008, 0.014, 0.018
CONTACT = 1 / ((1 - 0.3**2) / 1.08e9 + (1 - 0.3**2) / 206e9)


def ring(plate="", carry=""):
    return RING.format(plate=plate, carry=carry)


def track() -> float:
    """Johnson, Contact Mechanics (1985), equations 4.43 and 4.57; the lesser bound counts."""
    half = sqrt(4 * LOAD * RADIUS / (pi * LENGTH * CONTACT))
    deep = 2 * log(2 * THICK / half) - 0.3 / 0.7
    broad = 2 * log(2 * LENGTH / half) + 1
    return pi * CONTACT * LENGTH / min(deep, broad)


def bolt() -> float:
    """A cantilever of 12 mm, 6 mm long (half the bearing and a washer), with shear 6/7 G A."""
    long, thick, young = 0.006, 0.012, 205e9
    bending = long**3 / (3 * young * pi * thick**4 / 64)
    shear = long / (6 / 7 * young / 2.6 * pi * thick**2 / 4)
    return 1 / (bending + shear)


def bearing(balls: int, size: float) -> float:
    """Palmgren (1959): 0.436e-3 (Q^2 / Dw)^(1/3) mm, Q = 5 F / Z; from memory."""
    return LOAD / (0.436e-6 * ((5 * LOAD / balls) ** 2 / size) ** (1 / 3))


def test_track_bearing_and_bolt_in_series(asked) -> None:
    found = asked(ring())
    values = found.values
    row = values.values[values.plan.slots["ring", "carry.bearing"]]
    parts = (track(), bearing(row.balls, row.ball_diameter * 1e3), bolt())
    assert found("ring.roller.reference_load") == pytest.approx(LOAD)
    assert found("ring.carry.track_stiffness") == pytest.approx(parts[0], rel=1e-6)
    assert found("ring.carry.bearing_stiffness") == pytest.approx(parts[1], rel=1e-6)
    assert found("ring.carry.bolt_stiffness") == pytest.approx(parts[2], rel=1e-6)
    assert found("ring.carry.stiffness") == pytest.approx(1 / sum(1 / k for k in parts), rel=1e-6)


def test_the_heaviest_case_is_the_reference(asked) -> None:
    light = asked(ring() + "combinations: {a: {stone: 1}, b: {stone: 0.5}}")
    assert light("ring.carry.stiffness", "a") == light("ring.carry.stiffness", "b")


def test_a_given_stiffness_wins(asked) -> None:
    assert asked(ring(carry=", stiffness: 3 kN/mm"))("ring.carry.stiffness") == 3e6


@pytest.mark.parametrize("text", [ring(", rigid: true"), ring().replace("birch plywood", "MDF")])
def test_two_kilonewtons_a_millimetre_where_it_is_not_derived(asked, text) -> None:
    """The rigid answer alone, and a panel of which no modulus through the face is known."""
    assert asked(text)("ring.carry.stiffness") == 2e6
