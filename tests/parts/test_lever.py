"""Levers end to end, against statics worked by hand."""

from math import cos, pi, radians, sin

import pytest
from scipy.integrate import quad

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2
STEEL = 7850.0  # kg/m3, EN 1991-1-1 table A.4: 77 to 78.5 kN/m3

LEVER = """
  lever: {{kind: lever, carried_by: base, mass: 0 kg, load_arm: 60, hand_arm: 400,
    section: {{round: [20]}}, material: S235, {more}}}
  box: {{kind: top, carried_by: lever, mass: 0 kg, diameter: 300}}
loads: {{pot: {{force: 500 N, on: box}}}}
"""


@pytest.mark.parametrize(
    ("more", "start", "end", "peak", "source"),
    [
        ("", 75, 75, 75, "W a / b, level"),
        ("from: -30 deg, to: 60 deg", 64.95, 37.5, 75, "W a cos(A) / b; level on its way"),
        ("from: 20 deg, to: 60 deg", 70.48, 37.5, 70.48, "never level"),
        (
            "from: -30 deg, to: 60 deg, pull: plumb",
            *(75, 75, 75),
            "a plumb pull on a straight lever: both arms shorten alike",
        ),
        (
            "from: -30 deg, to: 60 deg, friction_torque: 4 N m",
            *(74.95, 47.5, 85),
            "4 N m more over 400 mm",
        ),
        (
            "from: 0 deg, to: 30 deg, pull: plumb, bend: 30 deg",
            *(75 / cos(radians(30)), 75 * cos(radians(30)) / cos(radians(60)), 129.904),
            "the hand's arm stands 30 deg steeper",
        ),
    ],
)
def test_the_hand_by_moments_about_the_pivot(asked, more, start, end, peak, source) -> None:
    found = asked(LEVER.format(more=more))
    assert found("lever.start_force") == pytest.approx(start, abs=0.01)
    assert found("lever.end_force") == pytest.approx(end, abs=0.01)
    assert found("lever.hand_force") == pytest.approx(peak, abs=0.01)


def test_the_work_of_the_hand_is_the_work_of_the_load(asked) -> None:
    """Conservation of energy: the force at any angle, integrated over the hand's way."""

    def force(angle: float) -> float:
        found = asked(LEVER.format(more=f"from: {angle} rad, to: {angle} rad"))
        return found("lever.hand_force")

    work, _ = quad(lambda angle: force(angle) * 0.4, radians(-30), radians(60), epsabs=1e-4)
    found = asked(LEVER.format(more="from: -30 deg, to: 60 deg"))
    assert work == pytest.approx(500 * found("lever.lift"), rel=1e-6)
    assert found("lever.lift") == pytest.approx(0.06 * (sin(radians(60)) + 0.5), rel=1e-12)
    assert found("lever.hand_way") == pytest.approx(0.4 * radians(90), rel=1e-12)


@pytest.mark.parametrize(
    ("more", "moment", "source"),
    [
        ("", 30.0, "W a at the pivot"),
        ("hand_side: same", 25.5, "75 N times 340 mm beyond the load"),
        ("from: 60 deg, to: 80 deg", 15.0, "W a cos(60 deg)"),
        ("friction_torque: 4 N m", 34.0, "and what the pivot takes"),
    ],
)
def test_the_bar_bends(asked, more: str, moment: float, source: str) -> None:
    """sigma = 32 M / (pi d^3): Gere and Goodno, Mechanics of Materials (2009), 5.5."""
    found = asked(LEVER.format(more=more))
    assert found("lever.bending_moment") == pytest.approx(moment, rel=1e-9)
    assert found("lever.bending_stress") == pytest.approx(32 * moment / (pi * 0.02**3), rel=1e-9)
    inertia = pi * 0.02**4 / 64
    sinks = 500 * 0.06**3 / (3 * 210e9 * inertia)  # table G-1 case 4; E of EN 1993-1-1, 3.2.6
    assert found("lever.sinks") == pytest.approx(sinks, rel=1e-9)


@pytest.mark.parametrize(("side", "length"), [("opposite", 0.46), ("same", 0.40)])
def test_its_own_weight_comes_down(asked, side: str, length: float) -> None:
    text = LEVER.format(more=f"hand_side: {side}").replace("mass: 0 kg, load_arm", "load_arm")
    own = pi / 4 * 0.02**2 * length * STEEL * G
    assert asked(text)("lever.load") == pytest.approx(500 + own, rel=1e-3)


ON_SHAFT = """
  shaft: {kind: shaft, carried_by: base, mass: 0 kg, diameter: 20, length: 400, material: C45,
    lever: {length: 80}}
  lever: {kind: lever, carried_by: shaft, mass: 0 kg, section: {round: [20]}, material: S235}
  box: {kind: top, carried_by: lever, mass: 0 kg, diameter: 300}
loads: {pot: {force: 500 N, on: box}}
"""


def test_a_lever_on_a_shaft_takes_its_length_from_it_and_needs_no_hand(asked) -> None:
    found = asked(ON_SHAFT)
    assert found("lever.bending_moment") == pytest.approx(40, rel=1e-12)
    assert found("shaft.torque") == pytest.approx(40, rel=1e-12)
    assert found.verdict("lever.by_hand") == "not applicable"
    assert found.verdict("lever.bending") == "pass"


@pytest.mark.parametrize(
    ("hand", "verdict"), [(400, "pass"), (251, "pass"), (249, "fail"), (100, "fail")]
)
def test_by_hand_close_to_the_limit(asked, hand: int, verdict: str) -> None:
    """500 N times 60 mm over 120 N is 250 mm."""
    found = asked(LEVER.format(more="").replace("hand_arm: 400", f"hand_arm: {hand}"))
    assert found.verdict("lever.by_hand") == verdict


def test_children_must_not_strain(asked) -> None:
    found = asked(LEVER.format(more=""), "reached_by: [children]")
    assert found("lever.allowed_hand_force") == 40
    assert found.verdict("lever.by_hand") == "fail"


def test_a_hand_cannot_pull_along_its_lever(asked) -> None:
    found = asked(LEVER.format(more="to: 60 deg, pull: plumb, bend: 40 deg"))
    assert found.verdict("lever.by_hand") == "open"


def test_the_level_place_is_met_between_any_two_steps(asked) -> None:
    """A weight pulls hardest at a level arm: exactly W a / b there."""
    found = asked(LEVER.format(more="from: -31 deg, to: 61.7 deg"))
    assert found("lever.hand_force") == pytest.approx(75, rel=1e-12)
