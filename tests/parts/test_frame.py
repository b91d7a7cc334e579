"""Frames on legs end to end: sway, falling over and rocking, by textbook formulas on paper."""

from math import sqrt

import pytest

# Legs of 32 mm by 50 mm, E 12 GPa: I = 32 x 50^3 / 12 mm4, E I = 4000 N m2; 700 mm high.
FRAME = """
  frame: {{kind: frame, carried_by: base, mass: 0 kg, height: {height}, material: beech,
    modulus: 12 GPa, section: {{solid: [32, 50]}}, {more}}}
  tray: {{kind: tray, carried_by: frame, mass: {mass} kg}}
"""
JOINTS = "joint_stiffness: 10 kN m"
BRACES = "held_by: braces, brace: {reach: 600, rise: 800, area: 200 mm2, modulus: 10 GPa"
PANELS = "held_by: panels, panel: {material: birch plywood, width: 800, height: 600, thickness: 6"
GRAVITY = 9.80665


def frame(more: str, mass: float = 0, height: float = 700) -> str:
    return FRAME.format(more=more, mass=mass, height=height)


ONE_LEG = 1 / (0.343 / (3 * 4000) + 0.49 / 10000)
PORTAL = 1 / (0.343 / (6 * 4000) + 0.49 * 1.2 / (12 * 30000) + 0.49 / (2 * 10000))
APRON = ", span: 1200, apron: {second_moment: 2500000 mm4}"

STIFFNESSES = [
    (JOINTS, 700, 4 * ONE_LEG, "cantilever with its joint, Gere table G-1: h3/3EI + h2/k"),
    (JOINTS + ", legs: 3", 700, 3 * ONE_LEG, "of three legs"),
    (JOINTS + APRON, 700, 2 * PORTAL, "two-hinged portal with joints in series, Kleinlogel"),
    (JOINTS + APRON + ", legs: 5", 700, 2 * PORTAL, "the odd leg is left out"),
    (BRACES + "}", 800, 720e3, "E A w2 / L3 = 2 MN x 0.36 / 1.0, Gere 2.2"),
    (BRACES + ", working: 2}", 800, 1440e3, "two that work"),
    (BRACES + "}", 1000, 460.8e3, "on a shorter lever, (0.8 / 1.0)^2"),
    (PANELS + "}", 600, 4.96e6, "G t w / h = 620 MPa x 6 mm x 0.8 / 0.6, Timoshenko"),
    (PANELS + ", count: 2}", 600, 9.92e6, "two panels"),
    (PANELS + "}", 1200, 1.24e6, "on half the lever"),
    ("stiffness: 50 kN/m", 700, 50e3, "as measured"),
]


@pytest.mark.parametrize(("more", "height", "stiffness", "source"), STIFFNESSES)
def test_stiffness_against_sway(asked, more, height, stiffness, source) -> None:
    found = asked(frame(more, height=height))
    assert found("frame.stiffness", "own weight") == pytest.approx(stiffness, rel=1e-9)


def test_what_holds_it_must_be_told(asked) -> None:
    found = asked(frame("held_by: braces, " + JOINTS))
    assert found.verdict("frame.sway") == "open"


@pytest.mark.parametrize(("mass", "push"), [(0, 200), (80, 200), (80, 350)])
def test_sway_with_the_load_leaning(asked, mass: float, push: float) -> None:
    """F / (k - P / h), Timoshenko and Gere (1961), 2.1; the leg's moment is (F h + P s) / 4."""
    found = asked(frame(f"stiffness: 40 kN/m, push: {push} N", mass))
    load = mass * GRAVITY
    sway = push / (40e3 - load / 0.7)
    assert found("frame.sway", "own weight") == pytest.approx(sway, rel=1e-9)
    moment = (push * 0.7 + load * sway) / 4
    stress = moment / (0.032 * 0.05**2 / 6)
    assert found("frame.bending_stress", "own weight") == pytest.approx(stress, rel=1e-9)


@pytest.mark.parametrize(("stiffness", "verdict"), [(57.2, "pass"), (57.1, "fail")])
def test_sway_close_to_the_limit(asked, stiffness: float, verdict: str) -> None:
    """200 N over 700 mm / 200 = 3.5 mm is 57.14 N/mm."""
    found = asked(frame(f"stiffness: {stiffness} kN/m"))
    assert found.verdict("frame.sway") == verdict


@pytest.mark.parametrize(("mass", "verdict"), [(71.3, "pass"), (71.5, "fail")])
def test_falling_over_close_to_the_limit(asked, mass: float, verdict: str) -> None:
    """k h / 3 = 3 kN/m x 0.7 m / 3 = 700 N, 71.38 kg."""
    found = asked(frame("stiffness: 3 kN/m", mass))
    assert found("frame.critical_load", "own weight") == pytest.approx(2100, rel=1e-9)
    assert found.verdict("frame.upright") == verdict


def test_a_frame_that_folds_has_no_sway(asked) -> None:
    found = asked(frame("stiffness: 1 kN/m", 90))
    assert any("fall over" in each for each in found.reasons("frame.sway", "own weight"))


@pytest.mark.parametrize(
    ("more", "verdict"),
    [("", "not applicable"), ("held_by: joints, ", "fail")],
)
def test_legs_bend_where_joints_hold_the_frame(asked, more: str, verdict: str) -> None:
    """2 kN on legs of W = 13,333 mm3: 350 N m each, 26 MPa; beech bears less for good."""
    held = more or "held_by: panels, "
    found = asked(frame(f"{held}stiffness: 800 kN/m, push: 2 kN"))
    assert found("frame.bending_stress", "own weight") == pytest.approx(26.25e6, rel=1e-3)
    assert found.verdict("frame.legs_bend") == verdict


FLOORS = [
    ("floor: {gap: 1}", "pass", "0.7 x 1 sqrt 2 / 0.5 = 1.98 mm"),
    ("floor: {gap: 1.02}", "fail", "2.02 mm"),
    ("floor: {gap: 1.02}, legs: 3", "pass", "three legs stand on any floor"),
]


@pytest.mark.parametrize(("more", "verdict", "source"), FLOORS)
def test_rocking_on_an_uneven_floor(asked, more: str, verdict: str, source: str) -> None:
    """Geometry: the lifted foot is half a diagonal from the line that it rocks over."""
    found = asked(frame(f"{JOINTS}, feet: {{length: 900, width: 500}}, {more}"))
    assert found.verdict("frame.rocks") == verdict


def test_tilt_on_an_uneven_floor(asked) -> None:
    found = asked(frame(f"{JOINTS}, feet: {{length: 500, width: 800}}"))
    assert found("frame.floor.tilt", "own weight") == pytest.approx(3 * sqrt(2) / 500, rel=1e-9)


def test_feet_that_adjust_do_not_rock(asked) -> None:
    found = asked(frame(f"{JOINTS}, feet: {{length: 900, width: 500, adjust: true}}"))
    assert found.verdict("frame.rocks") == "not applicable"


def test_the_legs_weigh(asked) -> None:
    """Four of 32 x 50 x 700 mm at 380 kg/m3, C18: 1.70 kg."""
    text = frame(JOINTS).replace("mass: 0 kg, height", "height").replace("beech", "C18")
    found = asked(text)
    mass = 4 * 0.032 * 0.05 * 0.7 * 380
    assert found("frame.mass", "own weight") == pytest.approx(mass, rel=1e-9)
