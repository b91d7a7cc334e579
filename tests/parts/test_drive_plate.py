"""Drive plates end to end, against statics and geometry by hand."""

from math import acos, atan, cos, degrees, pi, radians, sin, sqrt, tan

import pytest

PLATE = """
  plate: {{kind: drive_plate, carried_by: base, mass: 0 kg, diameter: 560, slots: 5,
    slot: {{inner: 120, outer: 220, {slot}, width: 12}}, {more}}}
  trays: {{kind: top, carried_by: plate, mass: 0 kg, diameter: 500}}
loads:
  soil: {{force: 500 N, over: trays}}
"""
SPIRAL = "turn: 60 deg"
FRICTION = "friction: {least: 0.1, largest: 0.2}"
ADVANCE = 0.100 / radians(60)  # m/rad


def plate(slot: str = SPIRAL, more: str = FRICTION) -> str:
    return PLATE.format(slot=slot, more=more)


def torque(force: float, radius: float, angle: float, friction: float, guide: float) -> float:
    """F r tan(psi + phi)/(1 - mu_g tan(psi + phi)): pressure angle and friction angle add."""
    slope = tan(angle + atan(friction))
    return force * radius * slope / (1 - guide * slope)


def test_a_spiral_is_steepest_inside(asked) -> None:
    found = asked(plate())
    assert found("plate.slot.steepest") == pytest.approx(atan(ADVANCE / 0.120), rel=1e-12)


def test_a_straight_slot_is_steepest_outside(asked) -> None:
    found = asked(plate("distance: 100"))
    assert found("plate.slot.steepest") == pytest.approx(acos(100 / 220), rel=1e-12)
    turn = degrees(acos(100 / 220) - acos(100 / 120))
    assert degrees(found("plate.slot.turn")) == pytest.approx(turn, rel=1e-9)


def test_a_line_that_the_slot_does_not_reach(asked) -> None:
    found = asked(plate("distance: 130"))
    assert found.verdict("plate.runs_free") == "open"


@pytest.mark.parametrize(
    ("slot", "angle"),
    [
        (SPIRAL, lambda radius: atan(ADVANCE / radius)),
        ("distance: 100", lambda radius: acos(0.100 / radius)),
    ],
)
def test_the_torque_of_all_slides_at_the_worst_place(asked, slot, angle) -> None:
    """Each of five slides carries 100 N, which rub with 0.2: 20 N along the radius."""
    found = asked(plate(slot))
    assert found("plate.slide_force") == pytest.approx(20, rel=1e-12)
    places = (0.120 + 0.100 * step / 2000 for step in range(2001))
    worst = max(torque(20, radius, angle(radius), 0.2, 0.2) for radius in places)
    assert found("plate.torque") == pytest.approx(5 * worst, rel=2e-4)
    assert found("plate.hand_force") == pytest.approx(5 * worst / 0.280, rel=2e-4)


def test_a_follower_that_rolls_drives_more_easily_and_holds_nothing(asked) -> None:
    found = asked(plate(more=f"{FRICTION}, follower: rolls, rolling_resistance: 0.01, push: 100 N"))
    worst = max(torque(20, r, atan(ADVANCE / r), 0.01, 0.2) for r in (0.120, 0.220))
    assert found("plate.torque") == pytest.approx(5 * worst, rel=1e-9)
    assert found("plate.leaning_torque") == pytest.approx(100 * ADVANCE, rel=1e-9)


@pytest.mark.parametrize(
    ("stands", "catch", "verdict"),
    [(220, 0, "fail"), (220, 14, "fail"), (220, 15, "pass"), (120, 12, "fail")],
)
def test_leaning_on_a_slide_turns_the_plate(asked, stands, catch, verdict) -> None:
    """F r tan(psi - phi), with the least friction: 200 N at 220 mm is 14.08 N m."""
    more = f"{FRICTION}, push: 200 N, stands: {stands}, catch_torque: {catch} N m"
    found = asked(plate(more=more))
    radius = stands / 1000
    expected = 200 * radius * tan(atan(ADVANCE / radius) - atan(0.1))
    assert found("plate.leaning_torque") == pytest.approx(expected, rel=1e-9)
    assert found.verdict("plate.holds") == verdict


def test_a_flat_slot_holds_by_friction(asked) -> None:
    """A straight slot whose line lies at the follower's radius runs along the circle there."""
    found = asked(plate("distance: 120", f"{FRICTION}, push: 200 N, stands: 120"))
    assert found("plate.leaning_torque") == 0.0
    assert found.verdict("plate.holds") == "pass"


def test_webs_and_play(asked) -> None:
    """Geometry: 2 pi r sin(psi)/n - w inside; c / cos(psi) and c / (r sin(psi))."""
    found = asked(plate(more=f"{FRICTION}, pin: {{diameter: 11.7}}"))
    inside, outside = atan(ADVANCE / 0.120), atan(ADVANCE / 0.220)
    web = 2 * pi * 0.120 * sin(inside) / 5 - 0.012
    assert found("plate.slot.web") == pytest.approx(web, rel=1e-9)
    assert found("plate.slot.edge") == pytest.approx(0.280 - 0.220 - 0.006, rel=1e-9)
    assert found("plate.slot.radial_play") == pytest.approx(0.0003 / cos(inside), rel=1e-9)
    assert found("plate.slot.turning_play") == pytest.approx(
        0.0003 / (0.120 * sin(inside)), rel=1e-9
    )
    assert inside > outside
    assert found.verdict("plate.play") == "pass"


def test_a_bearing_gives_the_diameter_of_what_runs_in_the_slot(asked) -> None:
    """Outer diameter of a 608 is 22 mm (ISO 15)."""
    found = asked(
        plate(more=f'{FRICTION}, pin: {{bearing: "608"}}').replace("width: 12", "width: 23")
    )
    assert found("plate.slot.clearance") == pytest.approx(0.001, abs=1e-12)
    assert found.verdict("plate.play") == "fail"


@pytest.mark.parametrize(
    ("slots", "verdict"),
    [(5, "pass"), (19, "pass"), (20, "fail"), (40, "fail")],
)
def test_too_many_slots_leave_no_web(asked, slots: int, verdict: str) -> None:
    """At 120 mm the spiral's slots are 2 pi r sin(psi) = 469.5 mm in all: 24 mm from 19.6 on."""
    found = asked(plate().replace("slots: 5", f"slots: {slots}"))
    pitch = 2 * pi * 120 * sin(atan(ADVANCE / 0.120)) / slots
    assert (pitch - 12 >= 12) == (verdict == "pass")
    assert found.verdict("plate.webs") == verdict


@pytest.mark.parametrize(
    ("more", "verdict"),
    [
        ("first: slide, lift: {from: 60 deg, to: 100 deg}", "pass"),
        ("first: slide, lift: {from: 59 deg, to: 100 deg}", "fail"),
        ("first: lift, lift: {from: 0 deg, to: 40 deg}, slide: {from: 40 deg}", "pass"),
        ("first: lift, lift: {from: 0 deg, to: 41 deg}, slide: {from: 40 deg}", "fail"),
        ("lift: {from: 0 deg, to: 41 deg}", "not applicable"),
    ],
)
def test_the_order_of_slide_and_lift(asked, more: str, verdict: str) -> None:
    assert asked(plate(more=more)).verdict("plate.in_order") == verdict


def test_a_steep_slot_with_rough_slides_jams(asked) -> None:
    """psi + phi + phi_g past 90 deg: no torque moves it."""
    found = asked(plate("turn: 20 deg", "friction: {largest: 0.5}"))
    psi = degrees(atan(0.100 / radians(20) / 0.120))
    assert degrees(found("plate.jam_angle")) == pytest.approx(
        psi + 2 * degrees(atan(0.5)), rel=1e-9
    )
    assert found.verdict("plate.runs_free") == "fail"
    assert found.reasons("plate.hand_force") == [
        "plate.torque jams: its slots and the friction together are too steep"
    ]


def test_straight_and_spiral_agree_where_they_touch(asked) -> None:
    """tan(psi) = sqrt(r^2 - d^2)/d of a line; of a spiral its advance over r."""
    line = asked(plate("distance: 100", f"{FRICTION}, push: 100 N, stands: 200"))
    expected = 100 * 0.2 * tan(atan(sqrt(200**2 - 100**2) / 100) - atan(0.1))
    assert line("plate.leaning_torque") == pytest.approx(expected, rel=1e-9)
