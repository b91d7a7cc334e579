"""Ramps end to end, against the statics of textbooks."""

from math import atan, degrees, radians, sqrt, tan

import pytest

RAMP = """
  ramp: {{kind: ramp, carried_by: base, mass: 0 kg, {more}}}
  box: {{kind: top, carried_by: ramp, mass: 0 kg, diameter: 300}}
loads: {{pot: {{force: 1000 N, on: box}}}}
"""


def sliding(angle: float, friction: float, more: str = "") -> str:
    rise = 1000 * tan(radians(angle))
    return RAMP.format(
        more=f"rise: {rise!r}, run: 1000, follower: slides, "
        f"friction: {{least: {friction}, largest: {friction}}}, {more}"
    )


@pytest.mark.parametrize(
    ("angle", "friction", "up", "down"),
    [
        (5, 0.10, 0.1891, 0.0124),
        (5, 0.20, 0.2926, 0.1106),
        (10, 0.20, 0.3901, 0.0229),
        (15, 0.20, 0.4944, -0.0645),
    ],
)
def test_a_sliding_follower(asked, angle, friction, up, down) -> None:
    """Meriam and Kraige, Statics, 6/4: table of ramps (machine.md 4, computed)."""
    found = asked(sliding(angle, friction))
    assert found("ramp.slope_force") == pytest.approx(1000 * up, abs=0.051)
    margin = found("ramp.rest.held") - found("ramp.rest.asked")
    assert margin == pytest.approx(1000 * down, abs=0.051)
    assert found.verdict("ramp.rests") == ("pass" if down > 0 else "fail")


@pytest.mark.parametrize(("push", "verdict"), [(10, "pass"), (12, "pass"), (13, "fail")])
def test_a_push_uses_up_what_friction_holds(asked, push: int, verdict: str) -> None:
    """5 deg and 0.10 hold 12.4 N of 1000 N: the same table."""
    assert asked(sliding(5, 0.10, f"load: 1000 N, push: {push} N")).verdict("ramp.rests") == verdict


@pytest.mark.parametrize(
    ("slope", "resistance", "force", "source"),
    [
        (0.2, 0.01, 210.42, "W (s + c)/(1 - c s), Meriam and Kraige 6/4"),
        (0.2, 0.0, 200.0, "W s"),
        (0.35, 0.05, 407.12, "the same"),
    ],
)
def test_a_rolling_follower(asked, slope, resistance, force, source) -> None:
    found = asked(
        RAMP.format(
            more=f"rise: {1000 * slope}, run: 1000, rolling_resistance: {resistance}, "
            'bearing: "6001"'
        )
    )
    assert found("ramp.slope_force") == pytest.approx(force, abs=0.01)
    assert found("ramp.steepest") == pytest.approx(atan(slope), rel=1e-12)


# A slope of 120 by 40, a level of 30, and where on it the follower stands.
PLACES = [
    ("stands: 60", 1000 / 3, 0, "a rolling follower never locks on a slope"),
    ("stands: 120", 1000 / 3, 0, "on the very crest it falls back"),
    ("stands: 121", 0, 0, "on the level it rests"),
    ("stands: 150", 0, 0, "at the end of the level"),
    ("stands: 0", 0, 0, "at the foot there is nowhere to go"),
    ("stands: 121, push: 50 N", 50, 0, "and is pushed off it"),
    ("stands: 121, push: 50 N, stop_force: 60 N", 50, 60, "unless a stop holds it"),
    (
        "stands: 121, push: 50 N, dip: 0.1",
        *(50, 1000 * sqrt(0.1 * (28 - 0.1)) / (14 - 0.1)),
        "or a dip: moments about its edge, W sqrt(2 r h - h^2)/(r - h), r = 14 mm of a 6001",
    ),
    ("stands: 60, stop_force: 340 N", 1000 / 3, 340, "a stop on the slope"),
]


@pytest.mark.parametrize(("more", "moves", "held", "source"), PLACES)
def test_where_a_roller_rests(asked, more, moves, held, source) -> None:
    found = asked(
        RAMP.format(more=f'rise: 40, run: 120, flat: 30, bearing: "6001", load: 1000 N, {more}')
    )
    assert found("ramp.rest.asked") == pytest.approx(moves, abs=1e-6)
    assert found("ramp.rest.held") == pytest.approx(held, abs=1e-6)
    assert found.verdict("ramp.rests") == ("pass" if moves <= held else "fail")


PROFILE = "profile: [[0, 0], [100, 20], [150, 20], [200, 50], [220, 44]]"


@pytest.mark.parametrize(
    ("stands", "height", "moves"),
    [
        (50, 10, 200),
        (100, 20, 200),
        (125, 20, 0),
        (150, 20, 0),
        (175, 35, 600),
        (200, 50, 600),
        (210, 47, 300),
        (220, 44, 0),
    ],
)
def test_a_profile_of_points(asked, stands, height, moves) -> None:
    """Straight lines between the points; the slope that leads down, by hand."""
    found = asked(RAMP.format(more=f"{PROFILE}, stands: {stands}"))
    assert found("ramp.height") == pytest.approx(height / 1000, abs=1e-12)
    assert found("ramp.rest.asked") == pytest.approx(moves, abs=1e-6)
    assert found("ramp.reached") == pytest.approx(0.050, abs=1e-12)
    assert found("ramp.travel") == pytest.approx(0.220, abs=1e-12)


def test_the_steepest_part_of_a_profile_governs(asked) -> None:
    """W (s + c)/(1 - c s) with s = 30/50 and c = 0.03."""
    found = asked(RAMP.format(more=PROFILE))
    assert found("ramp.slope_force") == pytest.approx(1000 * 0.63 / (1 - 0.018), rel=1e-9)


def test_what_stands_on_it_rises_with_the_configuration(asked) -> None:
    found = asked(RAMP.format(more=PROFILE), "configurations: {low: {}, high: {ramp.stands: 200}}")
    assert found("box.level", "pot, low") == pytest.approx(0.5 + 0.044, abs=1e-12)
    assert found("box.level", "pot, high") == pytest.approx(0.5 + 0.050, abs=1e-12)


@pytest.mark.parametrize(("lift", "verdict"), [(40, "pass"), (41, "fail")])
def test_it_lifts_high_enough(asked, lift: int, verdict: str) -> None:
    found = asked(RAMP.format(more=f"rise: 40, run: 120, flat: 30, lift: {lift}"))
    assert found.verdict("ramp.high_enough") == verdict


@pytest.mark.parametrize(
    ("friction", "verdict"), [(0.4, "pass"), (0.52, "pass"), (0.56, "fail"), (1.0, "fail")]
)
def test_a_sliding_follower_jams(asked, friction: float, verdict: str) -> None:
    """18.4 deg and twice atan(mu) reach 75 deg at mu = tan(28.3 deg) = 0.538."""
    found = asked(
        RAMP.format(more=f"rise: 40, run: 120, follower: slides, friction: {{largest: {friction}}}")
    )
    angle = degrees(atan(1 / 3) + 2 * atan(friction))
    assert degrees(found("ramp.jam_angle")) == pytest.approx(angle, rel=1e-9)
    assert found.verdict("ramp.runs_free") == verdict


def test_past_the_limit_no_force_is_told(asked) -> None:
    found = asked(
        RAMP.format(more="rise: 240, run: 120, follower: slides, friction: {largest: 0.6}")
    )
    assert found.reasons("ramp.drive_force") == [
        "ramp.slope_force jams: its slope and the friction together are too steep"
    ]


def test_a_step_at_the_foot(asked) -> None:
    """400 N over an edge of 1 mm with a roller of 14 mm: 159.9 N, moments about the edge."""
    text = RAMP.format(more='rise: 1, run: 1000, step: 1, bearing: "6001"')
    found = asked(text.replace("1000 N", "400 N"))
    assert found("ramp.edge_force") == pytest.approx(400 * sqrt(27) / 13, rel=1e-9)
    assert found("ramp.drive_force") == found("ramp.edge_force")


def test_a_crest_of_steel_and_one_of_wood(asked) -> None:
    """Hertz, Johnson (1985) 4.2(c): F = pi L R (1.67 Y)^2 / E*, one roller of two.

    Roller of a 6001: radius 14, width 8 mm (ISO 15); edge 2 mm; S235 (EN 10025-2).
    """
    more = 'rise: 40, run: 120, followers: 2, bearing: "6001", crest: {radius: 2}'
    found = asked(RAMP.format(more=f"{more}, material: S235"))
    modulus = 210e9 / (2 * (1 - 0.09))
    radius = 0.014 * 0.002 / 0.016
    expected = 3.14159265 * 0.008 * radius * (1.67 * 235e6) ** 2 / modulus
    assert found("ramp.crest.capacity") == pytest.approx(expected, rel=1e-6)
    assert found("ramp.crest.load") == pytest.approx(500, rel=1e-12)
    assert asked(RAMP.format(more=f"{more}, material: birch plywood")).verdict(
        "ramp.crest_holds"
    ) == ("fail")


def test_a_push_on_an_empty_follower_moves_it(asked) -> None:
    """Friction and dip hold by the load: without one, in the case of own weight, nothing holds."""
    found = asked(sliding(5, 0.10, "push: 5 N"))
    assert found("ramp.rest.held", "own weight") == 0.0
    assert found.verdict("ramp.rests") == "fail"
