"""Loads on their way to the ground, by hand: statics of rigid bodies on equal one-way supports.

Four feet at (+-a, +-b) under W at (x, y), all of them pressed: W/4 (1 +- x/a +- y/b).
"""

from math import cos, hypot, pi, radians, sin, sqrt

import pytest

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2
A, B = 0.6, 0.4

BASE = "base: {kind: base, feet: {length: 1200, width: 800}, height: 600, mass: 0 kg}"


def on_base(load: str) -> str:
    return f"parts: {{{BASE}}}\nloads: {{it: {load}}}"


@pytest.mark.parametrize(
    ("load", "force", "x", "y", "source"),
    [
        ("{force: 800 N, on: base}", 800, 0, 0, "at the middle where nothing is said"),
        ("{force: 800 N, on: base, at: centre}", 800, 0, 0, "at the middle"),
        ("{force: 800 N, on: base, at: {x: 300, y: -100}}", 800, 0.3, -0.1, "plan position"),
        ("{force: 800 N, on: base, at: {y: 100}}", 800, 0, 0.1, "one plan coordinate"),
        ("{force: 800 N, on: base, at: {radius: 200}}", 800, 0.2, 0, "azimuth 0 is along x"),
        (
            "{force: 800 N, on: base, at: {radius: 200, azimuth: 90 deg}}",
            *(800, 0, 0.2),
            "azimuth 90 deg is along y",
        ),
        (
            "{force: 800 N, on: base, at: {radius: 200, azimuth: 210 deg}}",
            *(800, 0.2 * cos(radians(210)), 0.2 * sin(radians(210))),
            "polar position: r (cos t, sin t)",
        ),
        (
            "{mass: 60 kg, on: base, at: {x: 300, y: -100}}",
            *(60 * G, 0.3, -0.1),
            "a mass weighs m g",
        ),
    ],
)
def test_a_load_at_its_place(answers, load: str, force, x, y, source: str) -> None:
    found = answers(on_base(load))
    assert found("base.bears.force") == pytest.approx(force, rel=1e-12)
    peak, least = 1 + abs(x) / A + abs(y) / B, 1 - abs(x) / A - abs(y) / B
    assert found("base.feet.peak_load") == pytest.approx(force / 4 * peak, rel=1e-9)
    assert found("base.feet.least_load") == pytest.approx(force / 4 * least, rel=1e-9)


def test_a_load_that_comes_from_all_round_stands_where_it_is_worst(answers) -> None:
    """W/4 (1 + r max(cos t / a + sin t / b)) = W/4 (1 + r sqrt(1/a^2 + 1/b^2))."""
    found = answers(on_base("{force: 800 N, on: base, at: {radius: 150}, all_round: true}"))
    most = 0.15 * sqrt(1 / A**2 + 1 / B**2)
    assert found("base.feet.peak_load") == pytest.approx(200 * (1 + most), rel=1e-9)
    assert found("base.feet.least_load") == pytest.approx(200 * (1 - most), rel=1e-9)


def test_a_load_that_pulls_up(answers) -> None:
    """300 N up at x = 300 mm on 800 N of base: the feet carry 500 N, of moment -90 N m."""
    sections = on_base("{force: 300 N, on: base, direction: up, at: {x: 300}}")
    found = answers(sections.replace("mass: 0 kg", f"mass: {800 / G} kg"))
    assert found("base.bears.force") == pytest.approx(500, rel=1e-9)
    assert found("base.feet.least_load") == pytest.approx(125 - 90 / (4 * A), rel=1e-9)
    assert found("base.feet.peak_load") == pytest.approx(125 + 90 / (4 * A), rel=1e-9)


DISC = "box: {kind: top, carried_by: base, at: {x: 100}, mass: 0 kg, diameter: 500}"
RECTANGLE = "box: {kind: top, carried_by: base, at: {x: 100}, mass: 0 kg, length: 600, width: 250}"


@pytest.mark.parametrize(
    ("part", "load", "x", "y", "source"),
    [
        (
            DISC,
            "{force: 400 N, on: box, at: rim, all_round: false}",
            0.35,
            0,
            "rim of a disc: D/2 from its middle",
        ),
        (
            DISC,
            "{force: 400 N, on: box, at: rim, inset: 50, all_round: false}",
            *(0.3, 0),
            "ISO 7172:1988: 50 mm inside the edge",
        ),
        (
            RECTANGLE,
            "{force: 400 N, on: box, at: rim, all_round: false}",
            *(0.1 + hypot(0.6, 0.25) / 2, 0),
            "rim of a rectangle: its corner is farthest",
        ),
        (DISC, "{force: 400 N, on: box, at: {x: -50, y: 80}}", 0.05, 0.08, "from its middle"),
        (DISC, "{force: 400 N, over: box}", 0.1, 0, "spread over it, on its middle"),
    ],
)
def test_a_load_on_a_part_off_the_axis(answers, part: str, load: str, x, y, source: str) -> None:
    found = answers(f"parts:\n  {BASE}\n  {part}\nloads: {{it: {load}}}")
    peak, least = 1 + abs(x) / A + abs(y) / B, 1 - abs(x) / A - abs(y) / B
    assert found("base.feet.peak_load") == pytest.approx(100 * peak, rel=1e-9)
    assert found("base.feet.least_load") == pytest.approx(100 * least, rel=1e-9)


@pytest.mark.parametrize(
    ("part", "half", "source"),
    [
        (DISC, 4 * 0.25 / (3 * pi), "half a disc: 4 R / (3 pi)"),
        (
            DISC.replace("diameter: 500", "diameter: 500, opening: 200"),
            4 * (0.25**3 - 0.1**3) / (3 * pi * (0.25**2 - 0.1**2)),
            "half a ring: 4 (R^3 - r^3) / (3 pi (R^2 - r^2))",
        ),
        (RECTANGLE, 0.6 / 4, "half a rectangle cut across its length: L / 4"),
    ],
)
def test_a_distributed_load_is_tried_on_one_half(answers, part: str, half, source: str) -> None:
    """On one half stands half of it, at the middle of any half; on the whole all of it."""
    found = answers(f"parts:\n  {BASE}\n  {part}\nloads: {{soil: {{force: 600 N, over: box}}}}")
    whole, on_half = "soil", "soil on one half"
    assert found("base.bears.force", whole) == pytest.approx(600, rel=1e-12)
    assert found("base.bears.force", on_half) == pytest.approx(300, rel=1e-12)
    most = 0.1 / A + half * sqrt(1 / A**2 + 1 / B**2)
    at_worst = 300 / 4 * (1 + most) if most < 1 else None
    if at_worst is not None:  # all feet pressed
        assert found("base.feet.peak_load", on_half) == pytest.approx(at_worst, rel=1e-9)


def test_half_of_four_trays_is_two_neighbours(answers) -> None:
    """Two trays at radius r, 90 deg apart, have their middle at r cos 45 deg."""
    found = answers(
        """
parts:
  base: {kind: base, feet: {count: 4, circle: 2400}, height: 600, mass: 0 kg}
  trays:
    {kind: tray, carried_by: base, count: 4, mass: 0 kg, inner: 200, depth: 300, width: 100}
loads: {soil: {force: 400 N, over: trays}}
"""
    )
    middle = 0.35 * cos(radians(45))
    assert found("trays.half.radius") == pytest.approx(middle, rel=1e-12)
    peak = 200 / 4 * (1 + 2 * middle / 1.2)  # four feet on a circle: W/4 (1 + 2 e/R)
    assert found("base.feet.peak_load", "soil on one half") == pytest.approx(peak, rel=1e-9)
    assert found("base.feet.peak_load", "soil") == pytest.approx(100, rel=1e-9)


LEVEL = """
parts:
  base: {kind: base, feet: {count: 4, circle: 1000}, height: 600, mass: 100 kg}
  ring:
    {kind: slewing_ring, carried_by: base, mass: 0 kg, height: 50,
     carry: {bearing: "6001", count: 12, circle: 800}}
  box: {kind: top, carried_by: ring, mass: 20 kg, height: 40}
"""


@pytest.mark.parametrize(
    ("where", "level", "source"),
    [
        ("level: 900", 0.9, "given: height above the floor"),
        ("", 0.6 + 0.05 + 0.04, "at the top of what it pushes: heights add up"),
    ],
)
@pytest.mark.parametrize("direction", ["outward", "inward"])
@pytest.mark.parametrize("azimuth", ["all_round: true", "at: {radius: 100, azimuth: 40 deg}"])
def test_a_level_force_turns_about_each_joint_by_its_height_above_it(
    answers, where: str, level: float, source: str, direction: str, azimuth: str
) -> None:
    """H (h - z) about a joint at level z, whichever way it comes from; it weighs nothing."""
    fields = ", ".join(filter(None, ["force: 90 N, on: box", where, azimuth]))
    found = answers(f"{LEVEL}loads: {{push: {{{fields}, direction: {direction}}}}}")
    assert found("ring.carry.moment") == pytest.approx(90 * (level - 0.6), rel=1e-9)
    assert found("ring.carry.axial_load") == pytest.approx(20 * G, rel=1e-12)
    assert found("base.bears.force") == pytest.approx(120 * G, rel=1e-12)
    assert found("base.tipping.moment") == pytest.approx(90 * level, rel=1e-9)
    assert found("base.tipping.restoring_moment") == pytest.approx(
        120 * G * 0.5 * cos(pi / 4), rel=1e-9
    )


def test_level_force_and_weight_on_a_ring_add_up(answers) -> None:
    """At azimuth 0: 90 N outward at 900 mm and 200 N down at x = 250 mm, about the ring.

    Where they point against each other their sizes are added all the same: an upper bound.
    """
    loads = """
loads:
  push: {force: 90 N, on: box, direction: outward, level: 900, at: {radius: 250}}
  stone: {force: 200 N, on: box, at: {radius: 250}}
"""
    found = answers(LEVEL + loads)
    both = "all loads"
    assert found("ring.carry.moment", both) == pytest.approx(90 * 0.3 + 200 * 0.25, rel=1e-9)
    inward = answers(LEVEL + loads.replace("outward", "inward"))
    assert inward("ring.carry.moment", both) >= 200 * 0.25 - 90 * 0.3


def test_level_force_and_weight_without_a_turning_joint_are_vectors(answers) -> None:
    """About the line through two feet at x = 500 mm: 90 x 0.9 - 200 x (0.5 - 0.25) and so on."""
    parts = """
parts:
  base: {kind: base, feet: {length: 1000, width: 1000}, height: 600, mass: 100 kg}
  box: {kind: top, carried_by: base, mass: 0 kg}
loads:
  push: {force: 90 N, on: box, direction: outward, level: 900, at: {radius: 250}}
  stone: {force: 20 N, on: box, at: {radius: 750}}
"""
    found = answers(parts)
    assert found("base.tipping.moment", "push") == pytest.approx(90 * 0.9, rel=1e-9)
    assert found("base.tipping.moment", "stone") == pytest.approx(20 * (0.75 - 0.5), rel=1e-9)
    assert found("base.tipping.moment", "all loads") == pytest.approx(81 + 5, rel=1e-9)
    inward = answers(parts.replace("outward", "inward"))  # the line opposite, at x = -500 mm
    turned = 81 - 20 * (0.75 + 0.5)
    assert inward("base.tipping.moment", "all loads") == pytest.approx(turned, rel=1e-9)


def test_only_a_level_force_needs_a_level(answers) -> None:
    """A base of unknown height bears a vertical load all the same."""
    sections = on_base("{force: 800 N, on: base, at: {x: 300}}").replace("height: 600, ", "")
    assert answers(sections)("base.feet.peak_load") == pytest.approx(200 * 1.5, rel=1e-9)


TIPPING = """
parts:
  base: {kind: base, feet: {count: 3, circle: 800}, height: 600, mass: 20 kg}
  box: {kind: top, carried_by: base, mass: 0 kg, diameter: 1200}
loads:
  lean: {force: 300 N, on: box, at: rim, inset: 50, all_round: true}
"""


def test_tipping_over_the_line_through_two_feet(answers) -> None:
    """ISO 7172:1988 puts the force 50 mm inside the edge; three feet: the line is R/2 away."""
    found = answers(TIPPING)
    line = 0.4 * cos(pi / 3)
    assert found("base.tipping.moment", "lean") == pytest.approx(300 * (0.55 - line), rel=1e-9)
    assert found("base.tipping.restoring_moment", "lean") == pytest.approx(20 * G * line, rel=1e-9)
    assert found("base.tipping.restoring_moment", "lean, 0.9 of own weight") == pytest.approx(
        0.9 * 20 * G * line, rel=1e-9
    )


def test_a_base_that_tips_over_has_no_foot_load_and_says_so(answers) -> None:
    found = answers(TIPPING)
    assert found("base.tipping.moment", "lean") > found("base.tipping.restoring_moment", "lean")
    reasons = found.reasons("base.feet.peak_load", "lean")
    assert len(reasons) == 1
    assert reasons[0].startswith("base.feet.peak_load ")
    assert reasons[0].endswith("the loads tip it over")
    assert found("base.feet.peak_load", "own weight") == pytest.approx(20 * G / 3, rel=1e-9)


# parts, middle of their heavier half over their radius: two neighbours and half of the next, on
# paper as points of equal weight, the halves of all that stand farthest to one side
HALVES = [
    (2, 1.0, "one of two"),
    (3, sqrt(3) / 3, "one and a half: hypot(0.75, 0.433) / 1.5"),
    (4, cos(radians(45)), "two neighbours"),
    (5, hypot(0.904508, 1.244949) / 2.5, "1 + e^72 + e^144 / 2, over 2.5"),
    (6, 2 / 3, "three neighbours: 1 + 2 cos 60, over 3"),
]


@pytest.mark.parametrize(("count", "share", "source"), HALVES)
def test_one_half_of_any_number_of_trays(answers, count, share, source) -> None:
    found = answers(
        f"""
parts:
  base: {{kind: base, feet: {{count: 4, circle: 2400}}, height: 600, mass: 0 kg}}
  trays:
    {{kind: tray, carried_by: base, count: {count}, mass: 0 kg, inner: 200, depth: 300, width: 100}}
loads: {{soil: {{force: 400 N, over: trays}}}}
"""
    )
    assert found("trays.half.radius") == pytest.approx(0.35 * share, rel=1e-6), source
