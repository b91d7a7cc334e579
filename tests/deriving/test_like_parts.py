"""Like parts around an axis: what one of them carries, by hand."""

from math import pi

import pytest

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2

# Arms from radius 200 to 600, trays from 300 to 700: middles at 400 and 500.
BENCH = """
parts:
  base: {kind: base, feet: {count: 5, circle: 1600}, height: 600, mass: 30 kg}
  arms:
    {kind: arm, carried_by: base, count: 5, mass: 2 kg, root: {radius: 200}, reach: 400}
  trays:
    {kind: tray, carried_by: arms, count: 5, mass: 3 kg, inner: 300, depth: 400, width: 100}
loads:
  soil: {force: 500 N, over: trays}
  lean: {force: 400 N, on: trays, at: rim, inset: 50, all_round: true}
  crate: {force: 100 N, on: arms, at: {radius: 300}}
"""
OWN = (2 + 3) * G
MOMENT = 2 * G * 0.4 + 3 * G * 0.5


@pytest.mark.parametrize(
    ("case", "force", "moment", "source"),
    [
        ("own weight", OWN, MOMENT, "one arm and its tray, at their middles"),
        ("lean", OWN + 400, MOMENT + 400 * 0.65, "a person leans on one tray, 50 mm inside"),
        (
            "lean, 0.9 of own weight",
            *(0.9 * OWN + 400, 0.9 * MOMENT + 400 * 0.65),
            "EN 1990, table A1.2(A)",
        ),
        ("soil", OWN + 100, MOMENT + 100 * 0.5, "each tray bears a fifth, at its middle"),
        ("soil on one half", OWN + 100, MOMENT + 100 * 0.5, "a loaded tray bears what it bears"),
        ("crate", OWN + 100, MOMENT + 100 * 0.3, "on one arm, at the radius that is given"),
        (
            "all loads",
            *(OWN + 600, MOMENT + 400 * 0.65 + 100 * 0.5 + 100 * 0.3),
            "all on the same arm: the worst of five",
        ),
    ],
)
def test_the_busiest_of_five_arms(answers, case: str, force, moment, source: str) -> None:
    found = answers(BENCH)
    assert found("arms.member.force", case) == pytest.approx(force, rel=1e-12)
    assert found("arms.member.moment", case) == pytest.approx(moment, rel=1e-12)
    assert found("arms.root_moment", case) == pytest.approx(moment - force * 0.2, rel=1e-12)


def test_a_tray_bears_its_own_share_only(answers) -> None:
    found = answers(BENCH)
    assert found("trays.member.force", "all loads") == pytest.approx(3 * G + 500, rel=1e-12)


def test_all_of_it_comes_down_to_the_base(answers) -> None:
    found = answers(BENCH)
    total = 30 * G + 5 * OWN + 1000
    assert found("base.bears.force", "all loads") == pytest.approx(total, rel=1e-12)


def test_a_load_that_pulls_up_relieves_one_arm(answers) -> None:
    found = answers(
        BENCH.partition("loads:")[0] + "loads: {lift: {force: 40 N, on: trays, "
        "at: {radius: 600}, direction: up}}"
    )
    assert found("arms.member.force", "lift") == pytest.approx(OWN - 40, rel=1e-12)
    assert found("arms.member.moment", "lift") == pytest.approx(MOMENT - 40 * 0.6, rel=1e-12)


TOP_ON_ARMS = """
parts:
  base: {{kind: base, feet: {{count: 4, circle: 2000}}, height: 600, mass: 300 kg}}
  arms:
    {{kind: arm, carried_by: base, count: {count}, mass: 0 kg, root: {{radius: 100}}, reach: 300}}
  box: {{kind: top, carried_by: arms, mass: 0 kg, diameter: 900}}
loads:
  lean: {{force: 1000 N, on: box, at: {{radius: {radius}}}, all_round: true}}
"""


@pytest.mark.parametrize(
    ("count", "ratio", "share"),
    [
        (3, 0.2, 0.4667),
        (3, 0.4, 0.6000),
        (4, 0.2, 0.3500),
        (4, 0.5, 0.5000),
        (4, 0.6, 0.6000),
        (4, 0.7, 0.7000),
        (6, 0.5, 0.3333),
        (6, 0.6, 0.3778),
        (6, 0.7, 0.4277),
        (6, 0.8, 0.6000),
    ],
)
def test_a_top_on_arms_lies_on_them_as_on_rollers(answers, count: int, ratio, share) -> None:
    """Published check table of rings (bearings.md 5, computed by two independent solvers)."""
    found = answers(TOP_ON_ARMS.format(count=count, radius=round(400 * ratio, 6)))
    assert found("arms.member.force") == pytest.approx(1000 * share, abs=0.05)
    assert found("arms.member.moment") == pytest.approx(1000 * share * 0.4, abs=0.02)


@pytest.mark.parametrize(("count", "ratio"), [(3, 0.6), (4, 0.8), (6, 0.9)])
def test_a_top_that_tips_off_its_arms_leaves_them_open(answers, count: int, ratio: float) -> None:
    found = answers(TOP_ON_ARMS.format(count=count, radius=round(400 * ratio, 6)))
    assert found.reasons("arms.member.force") == [
        "arms.member.force is unknown because what lies on them tips off, "
        "or is neither one nor as many as they"
    ]


def test_the_radius_at_which_arms_carry_may_be_given(answers) -> None:
    text = TOP_ON_ARMS.format(count=4, radius=100).replace(
        "reach: 300", "reach: 300, support: {radius: 250}"
    )
    assert answers(text)("arms.member.force") == pytest.approx(250 * (1 + 2 * 0.1 / 0.25), rel=1e-9)


def test_parts_of_another_number_do_not_lie_on_single_arms(answers) -> None:
    """Three trays on five arms: nobody knows on which, so that it stays open."""
    found = answers(BENCH.replace("carried_by: arms, count: 5", "carried_by: arms, count: 3"))
    assert found.reasons("arms.member.force", "own weight") == [
        "arms.member.force is unknown because what lies on them tips off, "
        "or is neither one nor as many as they"
    ]


def test_arms_that_nothing_lies_on_carry_themselves(answers) -> None:
    found = answers(
        "parts: {arms: {kind: arm, count: 3, mass: 2 kg, root: {radius: 0}, reach: 400}}"
    )
    assert found("arms.root_moment", "own weight") == pytest.approx(2 * G * 0.2, rel=1e-12)


def test_stress_and_deflection_of_the_busiest_arm(answers) -> None:
    """Round bar of 20 mm, 400 mm long, 100 N at its tip: sigma = 32 M / (pi d^3), F L^3 / 3 E I.

    Gere and Goodno, Mechanics of Materials (2009), 5.5 and table G-1 case 4.
    """
    found = answers(
        """
parts:
  arms:
    {kind: arm, count: 1, mass: 0 kg, section: {round: [20]}, modulus: 200 GPa, reach: 400,
     root: {radius: 150}}
loads: {crate: {force: 100 N, on: arms, at: {radius: 550}}}
"""
    )
    assert found("arms.root_moment") == pytest.approx(40, rel=1e-12)
    assert found("arms.bending_stress") == pytest.approx(32 * 40 / (pi * 0.02**3), rel=1e-9)
    inertia = pi * 0.02**4 / 64
    assert found("arms.tip_deflection") == pytest.approx(
        100 * 0.4**3 / (3 * 200e9 * inertia), rel=1e-9
    )


def test_a_single_arm_bears_all_that_stands_on_it(answers) -> None:
    """10 kg at (300, 400) mm: 500 mm from the axis; and 50 N all round at 600 mm from there."""
    found = answers(
        """
parts:
  arm: {kind: arm, mass: 0 kg, root: {radius: 100}, reach: 500}
  box: {kind: top, carried_by: arm, at: {x: 300, y: 400}, mass: 10 kg}
loads: {lean: {force: 50 N, on: box, at: {radius: 600}, all_round: true}}
"""
    )
    assert found("arm.member.force") == pytest.approx(10 * G + 50, rel=1e-12)
    assert found("arm.member.moment") == pytest.approx((10 * G + 50) * 0.5 + 50 * 0.6, rel=1e-12)


def test_arms_that_share_a_top_with_a_post_bear_their_share(answers) -> None:
    """Post and arms both stand on the axis, so the lever rule has no lever: see `sharing`.

    With the post at x = 400 mm and the load over the axis, the arms bear all of it.
    """
    found = answers(
        """
parts:
  base: {kind: base, feet: {count: 4, circle: 2000}, height: 600, mass: 300 kg}
  arms: {kind: arm, carried_by: base, count: 4, mass: 0 kg, root: {radius: 100}, reach: 300}
  post: {kind: clamp, carried_by: base, at: {x: 400}, mass: 0 kg}
  box: {kind: top, carried_by: [arms, post], at: {x: -200}, mass: 0 kg, diameter: 1000}
loads:
  stone: {force: 800 N, on: box, at: {x: 100}}
"""
    )
    assert found("post.bears.force") == pytest.approx(200, rel=1e-9)
    assert found("arms.bears.force") == pytest.approx(600, rel=1e-9)
    assert found("arms.member.force") == pytest.approx(150, rel=1e-9)
    assert found("base.bears.force") == pytest.approx(800 + 300 * G, rel=1e-12)
