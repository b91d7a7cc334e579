"""One number of each specimen, worked by hand from the specimen's measures.

Nothing here calls the project's formulas. Measures are those of the files, in SI; densities and
moduli are those of the handbooks named.
"""

from math import cos, hypot, pi, radians

import pytest

G = 9.80665  # m/s2, ISO 80000-3
BIRCH_PLYWOOD = 680.0  # kg/m3, Handbook of Finnish Plywood, mean; from memory
BEECH = 0.64 * 1.12 * 1000  # kg/m3 at 12 %, American beech, Wood Handbook table 5-3b; from memory
STEEL = 7850.0  # kg/m3, EN 1991-1-1 table A.4: 77 to 78.5 kN/m3
ALUMINIUM = 2700.0  # kg/m3, EN 1999-1-1, 3.2.5
STEEL_SHEAR = 79.3e9  # Pa, carbon steel, Shigley table A-5: 11.5 Mpsi
INCH, POUND_FORCE = 0.0254, 4.4482216152605  # m, N; NIST SP 811 appendix B.8
PSI = POUND_FORCE / INCH**2


def disc(diameter: float, thickness: float) -> float:
    """Mass of a disc of birch plywood [kg]."""
    return pi / 4 * diameter**2 * thickness * BIRCH_PLYWOOD


def busiest_arm_of_the_bench() -> float:
    """Bending stress M c / I at the root of the arm on whose tray somebody leans [Pa].

    Forces on one arm times their distances from the root at 250 mm: the leaning person, a fifth of
    the soil, one tray, the arm itself, a fifth of the apron. Tube 40 x 40 x 2.
    """
    root, tip = 0.250, 0.590
    tray = 0.310 * 0.530 * 0.015 * BIRCH_PLYWOOD * G
    arm = (0.040**2 - 0.036**2) * (tip - root) * ALUMINIUM * G
    apron = pi * 1.180 * 0.080 * 0.015 * BIRCH_PLYWOOD * G
    middle = 0.290 + 0.100 + 0.310 / 2  # of an open tray
    edge = 0.290 + 0.100 + 0.310
    moment = (
        400 * (edge - 0.050 - root)
        + (600 / 5 + tray) * (middle - root)
        + arm * (tip - root) / 2
        + apron / 5 * (tip - root)
    )
    return moment * 0.020 / ((0.040**4 - 0.036**4) / 12)


def late_lever_of_the_first_bench() -> float:
    """Lag T L a / (G J) of the far lever of revision A [m].

    All that the shaft carries at a lever of 80 mm: middle, two clamps, the shaft, pots, a hand.
    """
    shaft = pi / 4 * 0.016**2 * 0.520 * STEEL
    force = (disc(0.576, 0.018) + 2 * 0.2 + shaft) * G + 150 + 200
    return force * 0.080 * 0.520 * 0.080 / (STEEL_SHEAR * pi / 32 * 0.016**4)


def busiest_roller_of_the_stage() -> float:
    """W / n (1 + 2 e / R): six children all over and one who lands near the edge [N].

    All 24 rollers carry, since e = 0.30 m is less than R / 2 = 0.405 m.
    """
    weight = disc(1.8, 0.036) * G + 240 * G + 1600
    eccentricity = 1600 * (0.900 - 0.040) / weight
    assert eccentricity < 0.810 / 2
    return weight / 24 * (1 + 2 * eccentricity / 0.810)


def tipping_of_the_book_stand() -> float:
    """F x / (0.9 W a): a hand on the far corner of the shelf over the edge of the foot [1]."""
    edge, corner = 0.300 / 2, hypot(0.360, 0.260) / 2
    plates = disc(0.300, 0.012) + disc(0.210, 0.030)
    weight = (6 + plates + 0.360 * 0.260 * 0.018 * BEECH) * G
    return 40 * (corner - edge) / (0.9 * weight * edge)


def late_lever_of_the_shelf() -> float:
    """Lag T L a / (G J) on the right shaft, whose share follows from the lever rule [m].

    The shafts stand 600 mm apart; the machine stands 420 mm from the left one, the hand 700 mm.
    """
    shelf = 0.800 * 0.480 * 0.024 * BIRCH_PLYWOOD * G
    own = (pi / 4 * 0.028**2 * 0.460 * STEEL + 0.4) * G
    force = shelf / 2 + 45 * G * 420 / 600 + 150 * 700 / 600 + own
    return force * 0.120 * 0.460 * 0.120 / (STEEL_SHEAR * pi / 32 * 0.028**4)


def lamp_arm_in_inches() -> float:
    """M c / I of a tube 1 x 1 1/2 x 1/8 in, 25 1/2 in long, with 10 lbf at its tip [Pa]."""
    area = 1 * 1.5 - 0.75 * 1.25
    own = area * 25.5 * 0.0975  # lbf; aluminium weighs 0.0975 lb a cubic inch
    moment = 10 * 25.5 + own * 25.5 / 2
    return moment * 0.75 / ((1 * 1.5**3 - 0.75 * 1.25**3) / 12) * PSI


def play_of_the_first_design() -> float:
    """Sink of the rim in the gap of the hold-downs [m].

    The plate turns about the line of two neighbours of eight rollers until the line of two of the
    four hold-downs opposite meets it: gap / (R cos 22.5 + R cos 45) times r - R cos 22.5.
    """
    pivot, stop = 0.170 * cos(radians(22.5)), 0.170 * cos(radians(45))
    return 0.2e-3 / (pivot + stop) * (0.200 - pivot)


# specimen, part, quantity, case, worked by hand, relative tolerance, source of the formula
HEADLINES = [
    (
        *("potting_bench/revision_c", "arms", "bending_stress", "all loads, open"),
        *(busiest_arm_of_the_bench(), 1e-3),
        "flexure formula, Gere and Goodno (2009), 5.5",
    ),
    (
        *("potting_bench/revision_a", "lift", "lag", "all loads, closed"),
        *(late_lever_of_the_first_bench(), 0.03),  # G of steels differs by as much
        "torsion formula, Gere and Goodno (2009), 3.3",
    ),
    (
        *("stage_turntable", "disc", "carry.peak_load", "chorus_and_jump"),
        *(busiest_roller_of_the_stage(), 1e-6),
        "linear supports on a circle, all of which carry; as a bolt circle",
    ),
    (
        *("lift_shelf", "right_shaft", "lag", "all loads"),
        *(late_lever_of_the_shelf(), 0.03),
        "lever rule; torsion formula, Gere and Goodno (2009), 3.3",
    ),
    (
        *("inch_stand", "lamp_arms", "bending_stress", "lamp"),
        *(lamp_arm_in_inches(), 2e-3),  # the density in three digits
        "flexure formula, Gere and Goodno (2009), 5.5",
    ),
    (
        *("first_design", "ring", "play.rim", "own weight"),
        *(play_of_the_first_design(), 1e-9),
        "geometry",
    ),
]


@pytest.mark.parametrize(
    ("name", "part", "path", "case", "expected", "tolerance", "source"),
    HEADLINES,
    ids=[row[0] for row in HEADLINES],
)
def test_the_headline_number(
    name, part, path, case, expected, tolerance, source, review_of, number_of
):
    assert number_of(review_of(name), part, path, case) == pytest.approx(expected, rel=tolerance)


def test_the_book_stand_tips_as_far_as_statics_says(review_of):
    (stands,) = (each for each in review_of("book_stand").findings if each.name == "foot.stands")
    assert stands.case == "hand, 0.9 of own weight"
    assert stands.utilisation == pytest.approx(tipping_of_the_book_stand(), rel=5e-3)
