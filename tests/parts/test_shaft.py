"""Shafts end to end, against textbook examples and statics by hand."""

from math import pi

import numpy as np
import pytest

PSI, POUND_INCH = 6894.757, 0.112984829  # Pa and N m; NIST SP 811, appendix B.8
STEEL, STEEL_SHEAR = 210e9, 81e9  # Pa; EN 1993-1-1, 3.2.6
SHAFT = """
  shaft: {{kind: shaft, carried_by: base, mass: 0 kg, material: C45, {more}}}
  shelf: {{kind: top, carried_by: shaft, mass: 0 kg, diameter: 300}}
loads: {{pots: {{force: 600 N, on: shelf}}}}
"""


def shaft(more: str = "") -> str:
    return SHAFT.format(more=f"diameter: 20, length: 400, span: 500, {more}")


def test_bending_and_torsion_of_a_crank(asked) -> None:
    """Shigley, Mechanical Engineering Design, ch. 3: F = 300 lbf, d = 3/4 in (machine.md 1.4).

    Bending 28.97, torsion 18.11, both together 42.70 kpsi; computed from the book's statement.
    """
    found = asked(
        SHAFT.format(
            more="diameter: 0.75 in, length: 5 in, lever: {length: 100}, "
            f"bending_moment: {1200 * POUND_INCH} N m, torque: {1500 * POUND_INCH} N m"
        )
    )
    assert found("shaft.bending_stress") == pytest.approx(28.97e3 * PSI, rel=2e-3)
    assert found("shaft.torsion_stress") == pytest.approx(18.11e3 * PSI, rel=2e-3)
    assert found("shaft.combined_stress") == pytest.approx(42.70e3 * PSI, rel=2e-3)


# Gere and Goodno, Mechanics of Materials (2009), 4.5: moments in N m of 600 N on a span of 500 mm.
MOMENTS = [
    ("", 75.0, "F L / 4: its place is not told"),
    ("at: 250", 75.0, "F a b / L in the middle"),
    ("at: 50", 27.0, "F a b / L near a bearing"),
    ("at: 0", 0.0, "over a bearing"),
    ("at: 450", 27.0, "near the other"),
    ("count: 2, share: alike", 15.0, "300 N, 50 mm from each bearing"),
    ("count: 3, share: alike", 35.0, "200 N at 50, 250 and 450 mm: 300 * 250 - 200 * 200 N mm"),
    ("count: 5, share: alike", 39.0, "120 N every 100 mm: 300 * 250 - 120 * (200 + 100) N mm"),
    ("count: 3, share: one", 75.0, "all of it over any one"),
    ("count: 1, share: alike", 75.0, "there is but one"),
    ("count: 2, share: alike, at: 100", 24.0, "at 100 and 500 mm: 300 * 100 * 400 / 500"),
]


@pytest.mark.parametrize(("more", "moment", "source"), MOMENTS)
def test_bending_by_the_place_of_the_levers(asked, more: str, moment: float, source: str) -> None:
    found = asked(shaft(f"lever: {{length: 80, {more}}}"))
    assert found("shaft.bending_moment") == pytest.approx(moment, abs=1e-9)


def test_a_lever_beside_the_bearings_is_not_between_them(asked) -> None:
    found = asked(shaft("lever: {length: 80, at: 501}"))
    assert found.verdict("shaft.strong_enough") == "open"


@pytest.mark.parametrize(
    ("more", "share", "source"),
    [
        ("", 1.0, "all of it over the far lever: an upper bound"),
        ("count: 2, share: alike", 0.5, "half of the torque over all of the length"),
        ("count: 3, share: alike", 0.5, "2/3 over one half of it and 1/3 over the other"),
        ("count: 4, share: alike", 0.5, "3/4, 2/4 and 1/4 over a third each"),
    ],
)
def test_twist_and_lag(asked, more: str, share: float, source: str) -> None:
    """T L / (G J), J = pi d^4 / 32: Gere and Goodno, Mechanics of Materials (2009), 3.3, 3.4."""
    found = asked(shaft(f"lever: {{length: 80, {more}}}"))
    twist = share * 600 * 0.08 * 0.4 / (STEEL_SHEAR * pi * 0.02**4 / 32)
    assert found("shaft.twist") == pytest.approx(twist, rel=1e-9)
    assert found("shaft.lag") == pytest.approx(0.08 * twist, rel=1e-9)


@pytest.mark.parametrize(
    ("diameter", "following"), [(20, 22), (16, 18), (19.9, 20), (20.5, 22), (6, 8)]
)
def test_the_next_diameter_in_stock(asked, diameter: float, following: float) -> None:
    """Bars by ISO 1035 sizes; the twist falls with the fourth power of the diameter."""
    found = asked(SHAFT.format(more=f"diameter: {diameter}, length: 200, lever: {{length: 10}}"))
    assert found("shaft.next_diameter") == pytest.approx(following / 1000, abs=1e-9)
    ratio = (diameter / following) ** 4
    twist, lag = found("shaft.twist"), found("shaft.lag")
    assert found("shaft.next_diameter_twist") == pytest.approx(twist * ratio, rel=1e-9)
    assert found("shaft.next_diameter_lag") == pytest.approx(lag * ratio, rel=1e-9)


def test_past_the_thickest_bar_there_is_no_next(asked) -> None:
    found = asked(SHAFT.format(more="diameter: 900, length: 200, lever: {length: 10}"))
    assert found.reasons("shaft.next_diameter_twist") == [
        "shaft.next_diameter has none larger in stock"
    ]
    assert found.verdict("shaft.lifts_level") == "pass"


# 3 E I (a + b) e / (a^2 b^2), Gere and Goodno (2009), table G-2 case 5 turned round.
MISFITS = [
    ("offset: 0.5", 0.25, 0.25),
    ("offset: 0.5, left: 100", 0.1, 0.4),
    ("offset: 0.5, left: 100, right: 100", 0.1, 0.1),
]


@pytest.mark.parametrize(("more", "left", "right"), MISFITS)
def test_a_bearing_out_of_line(asked, more: str, left: float, right: float) -> None:
    found = asked(shaft(f"lever: {{length: 80}}, supports: {{{more}}}"))
    stiffness = STEEL * pi * 0.02**4 / 64
    span = left + right
    deflection = found("shaft.supports.force") * left**2 * right**2 / (3 * stiffness * span)
    assert deflection == pytest.approx(0.5e-3, rel=1e-9)
    moment = found("shaft.supports.force") * left * right / span
    assert found("shaft.supports.moment") == pytest.approx(moment, rel=1e-9)
    section = pi * 0.02**3 / 32
    assert found("shaft.bending_stress") == pytest.approx((75 + moment) / section, rel=1e-9)


@pytest.mark.parametrize(("offset", "verdict"), [(0.0, "pass"), (0.94, "pass"), (0.95, "fail")])
def test_a_stiffer_shaft_fights_its_bearings_harder(asked, offset: float, verdict: str) -> None:
    """48 E I e / L^3 is 633 N for each millimetre: 600 N at 0.947 mm; the next bar 1.46 times."""
    found = asked(
        "  shaft: {kind: shaft, carried_by: base, mass: 61.1829 kg, material: C45, diameter: 20, "
        f"length: 400, span: 500, lever: {{length: 80}}, supports: {{offset: {offset}}}}}"
    )
    force = 48 * STEEL * pi * 0.02**4 / 64 * offset / 1000 / 0.5**3
    assert found("shaft.supports.force") == pytest.approx(force, rel=1e-9)
    assert found.verdict("shaft.in_line") == verdict
    assert found("shaft.next_diameter_force") == pytest.approx(force * 1.1**4, rel=1e-9)


TURNING = """
  shaft: {{kind: shaft, carried_by: base, mass: 0 kg, diameter: 1.1 in, length: 10 in,
    material: C45, bending_moment: {moment} N m, torque: {torque} N m, lever: {{length: 80}},
    fatigue: {{motion: turns, bending_notch: 1.58, torsion_notch: 1.37, ultimate: {ultimate} MPa,
      endurance: {endurance} MPa}}}}
"""


def test_fatigue_of_a_turning_shaft(asked) -> None:
    """Shigley, example 7-1 (machine.md 1.3): n = 1.63 by Goodman.

    d 1.1 in, M 1260 reversed, T 1100 lbf in steady, Se 29.3, Sut 105 kpsi.
    """
    found = asked(
        TURNING.format(
            moment=1260 * POUND_INCH,
            torque=1100 * POUND_INCH,
            ultimate=105e3 * PSI / 1e6,
            endurance=29.3e3 * PSI / 1e6,
        )
    )
    assert found("shaft.fatigue.safety", "own weight") == pytest.approx(1.63, rel=0.01)
    assert found.verdict("shaft.lasts") == "pass"


def test_a_swinging_shaft_rises_from_nothing_to_its_load(asked) -> None:
    """Modified Goodman by hand: 1/n = 16/(pi d^3) (A/Se + B/Sut), A = B of half the load."""
    found = asked(
        shaft(
            "lever: {length: 80}, fatigue: {motion: swings, bending_notch: 1, torsion_notch: 1, "
            "endurance: 180 MPa, ultimate: 580 MPa}"
        )
    )
    half = np.sqrt(4 * 37.5**2 + 3 * 24.0**2)
    unit = 16 / (pi * 0.02**3) * (half / 180e6 + half / 580e6)
    assert found("shaft.fatigue.safety") == pytest.approx(1 / unit, rel=1e-9)


def test_a_tube_is_held_as_the_bar_of_its_section_modulus(asked) -> None:
    """W = pi (D^4 - d^4) / (32 D)."""
    found = asked(shaft("wall: 2, lever: {length: 80}"))
    modulus = pi * (0.02**4 - 0.016**4) / (32 * 0.02)
    assert found("shaft.fatigue.diameter") == pytest.approx(np.cbrt(32 * modulus / pi), rel=1e-12)


def test_aluminium_has_no_endurance_limit(asked) -> None:
    text = shaft("lever: {length: 80}, fatigue: {motion: swings}").replace("C45", "6061-T6")
    found = asked(text)
    assert found.verdict("shaft.lasts") == "open"
    assert found.reasons("shaft.fatigue.safety") == [
        "shaft.fatigue.endurance has no endurance limit in the tables: it is none of the steels"
    ]


def test_a_shaft_that_rests_is_not_held_against_fatigue(asked) -> None:
    assert asked(shaft("lever: {length: 80}")).verdict("shaft.lasts") == "not applicable"
