"""A part on several carriers: each bears its share, the part below them the whole, once.

It stands from the middle of all that carry it; `ON_AXIS` puts it on the axis of the design again.
"""

from math import sqrt

import pytest

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2

TWO = """
parts:
  floor: {{kind: base, feet: {{length: 4000, width: 2000}}, height: 100, mass: 0 kg}}
  left: {{kind: clamp, carried_by: floor, at: {{x: -500}}, mass: 2 kg}}
  right: {{kind: clamp, carried_by: floor, at: {{x: 700}}, mass: 3 kg}}
  plank: {{kind: top, carried_by: [left, right], at: {{x: -100}}, mass: 0 kg, height: 20}}
loads:
  it: {load}
"""


def two(load: str) -> str:
    return TWO.format(load=load)


@pytest.mark.parametrize(
    ("load", "left", "right", "source"),
    [
        ("{force: 120 N, on: plank, at: {x: 100}}", 60, 60, "midway: halves"),
        ("{force: 120 N, on: plank, at: {x: -500}}", 120, 0, "over one: that one bears all"),
        ("{force: 120 N, on: plank, at: {x: 300}}", 40, 80, "lever rule: 400 : 800 mm"),
        ("{force: 120 N, on: plank, at: {x: 900}}", -20, 140, "beyond it: the other lifts"),
        ("{force: 120 N, on: plank, at: {x: 300, y: 250}}", 40, 80, "across does not matter"),
    ],
)
def test_two_carriers_share_by_the_lever_rule(answers, load: str, left, right, source) -> None:
    found = answers(two(load))
    assert found("left.bears.force") == pytest.approx(2 * G + left, abs=1e-9)
    assert found("right.bears.force") == pytest.approx(3 * G + right, abs=1e-9)


@pytest.mark.parametrize("x", [-500, 100, 300, 900])
def test_the_part_below_bears_the_whole_once(answers, x: int) -> None:
    """As if the plank stood on the floor itself: its load and moment, whatever the shares."""
    load = f"{{force: 120 N, on: plank, at: {{x: {x}, y: 250}}}}"
    shared, straight = (
        answers(two(load)),
        answers(two(load).replace("carried_by: [left, right], at: {x: -100}", "carried_by: floor")),
    )
    for name in ("bears.force", "feet.peak_load", "feet.least_load", "tipping.moment"):
        assert shared(f"floor.{name}") == pytest.approx(straight(f"floor.{name}"), rel=1e-9)
    assert shared("floor.bears.force") == pytest.approx(5 * G + 120, rel=1e-12)


APART = """
parts:
  left: {{kind: base, feet: {{length: 600, width: 600}}, at: {{x: 0}}, height: 700, mass: 40 kg}}
  right:
    {{kind: base, feet: {{length: 600, width: 600}}, at: {{x: 1000}}, height: 700, mass: 40 kg}}
  plank: {{kind: top, carried_by: [left, right], at: {{x: -500}}, mass: 0 kg, height: 20}}
loads:
  it: {load}
"""


@pytest.mark.parametrize("name", ["left", "right"])
def test_a_load_across_two_bases_tips_each_by_half(answers, name: str) -> None:
    """500 N midway, 900 mm aside: each base has 250 N at 900 mm, over the line at 300 mm."""
    found = answers(APART.format(load="{force: 500 N, on: plank, at: {x: 500, y: 900}}"))
    assert found(f"{name}.bears.force") == pytest.approx(250 + 40 * G, rel=1e-9)
    assert found(f"{name}.tipping.moment") == pytest.approx(250 * (0.9 - 0.3), rel=1e-9)


@pytest.mark.parametrize("name", ["left", "right"])
def test_a_level_force_on_two_bases_tips_each_by_half(answers, name: str) -> None:
    load = (
        "{force: 80 N, on: plank, direction: outward, level: 720, at: {radius: 0, azimuth: 90 deg}}"
    )
    found = answers(APART.format(load=load))
    assert found(f"{name}.tipping.moment") == pytest.approx(40 * 0.72, rel=1e-9)


@pytest.mark.parametrize("name", ["left", "right"])
def test_a_load_from_all_round_tips_two_bases_sideways_too(answers, name: str) -> None:
    """500 N at 900 mm from the middle between them: across, each has 250 N at 900 mm.

    Along the line one of them bears 250 N + 500 N x 0.9 m / 1 m.
    """
    load = "{force: 500 N, on: plank, at: {radius: 900}, all_round: true}"
    text = APART.format(load=load).replace(", at: {x: -500}", "")
    found = answers(text)
    assert found(f"{name}.tipping.moment") == pytest.approx(250 * (0.9 - 0.3), rel=1e-9)
    assert found(f"{name}.bears.force") == pytest.approx(250 + 450 + 40 * G, rel=1e-9)


ON_AXIS = f"{{x: {-1000 / 3!r}, y: {-1000 / 3!r}}}"
THREE = """
parts:
  floor: {{kind: base, feet: {{length: 4000, width: 4000}}, height: 100, mass: 0 kg}}
  a: {{kind: clamp, carried_by: floor, at: {{x: 0, y: 0}}, mass: 0 kg}}
  b: {{kind: clamp, carried_by: floor, at: {{x: 1000, y: 0}}, mass: 0 kg}}
  c: {{kind: clamp, carried_by: floor, at: {{x: 0, y: 1000}}, mass: 0 kg}}
  plank: {{kind: top, carried_by: [a, b, c], at: ON_AXIS, mass: {mass} kg, height: 20}}
loads:
  it: {load}
""".replace("ON_AXIS", ON_AXIS.replace("{", "{{").replace("}", "}}"))


@pytest.mark.parametrize(
    ("x", "y", "shares"),
    [
        (200, 300, (0.5, 0.2, 0.3)),
        (0, 0, (1.0, 0.0, 0.0)),
        (500, 500, (0.0, 0.5, 0.5)),
        (1000 / 3, 1000 / 3, (1 / 3, 1 / 3, 1 / 3)),
    ],
)
def test_three_carriers_share_by_statics(answers, x: float, y: float, shares) -> None:
    """Barycentric: at (x, y) m of a right triangle of 1 m, 1 - x - y, x and y of the load."""
    load = f"{{force: 900 N, on: plank, at: {{x: {x!r}, y: {y!r}}}}}"
    found = answers(THREE.format(mass=0, load=load))
    for name, share in zip("abc", shares, strict=True):
        assert found(f"{name}.bears.force") == pytest.approx(900 * share, abs=1e-6)
    assert found("floor.bears.force") == pytest.approx(900, rel=1e-12)


def test_from_all_round_each_of_three_gets_the_most_that_it_can(answers) -> None:
    """About (300, 300) mm at 100 mm: b gets x, at most 0.4; c the same; a 0.4 + 0.1 sqrt 2."""
    load = "{force: 900 N, on: plank, at: {radius: 100}, all_round: true}"
    text = THREE.format(mass=0, load=load).replace(
        ON_AXIS, f"{{x: {300 - 1000 / 3!r}, y: {300 - 1000 / 3!r}}}"
    )
    found = answers(text)
    assert found("b.bears.force") == pytest.approx(900 * 0.4, rel=1e-9)
    assert found("c.bears.force") == pytest.approx(900 * 0.4, rel=1e-9)
    assert found("a.bears.force") == pytest.approx(900 * (0.4 + 0.1 * sqrt(2)), rel=1e-9)
    assert found("floor.bears.force") == pytest.approx(900, rel=1e-12)


def test_own_weight_is_shared_as_a_load_is(answers) -> None:
    load = "{force: 0 N, on: plank}"
    text = THREE.format(mass=12, load=load).replace(
        ON_AXIS, f"{{x: {200 - 1000 / 3!r}, y: {300 - 1000 / 3!r}}}"
    )
    found = answers(text)
    assert found("a.bears.force", "own weight") == pytest.approx(6 * G, rel=1e-9)
    assert found("b.bears.force", "own weight") == pytest.approx(2.4 * G, rel=1e-9)
    assert found("floor.bears.force", "own weight") == pytest.approx(12 * G, rel=1e-12)


THREE_BASES = """
parts:
  a: {kind: base, feet: {count: 4, circle: 400}, at: {x: 0}, height: 700, mass: 40 kg}
  b: {kind: base, feet: {count: 4, circle: 400}, at: {x: 900}, height: 700, mass: 40 kg}
  c: {kind: base, feet: {count: 4, circle: 400}, at: {y: 900}, height: 700, mass: 40 kg}
  plank: {kind: top, carried_by: [a, b, c], mass: 0 kg, height: 20}
loads:
  push: {force: 90 N, on: plank, direction: outward, level: 720, all_round: true}
"""


@pytest.mark.parametrize("name", ["a", "b", "c"])
def test_a_level_force_reaches_each_of_three_bases(answers, name: str) -> None:
    """A third of it each, and its moment about the floor: 30 N x 0.72 m."""
    assert answers(THREE_BASES)(f"{name}.tipping.moment") == pytest.approx(30 * 0.72, rel=1e-9)


def test_carriers_on_one_line_cannot_bear_what_stands_beside_it(answers) -> None:
    load = "{force: 900 N, on: plank, at: {x: 300, y: 100}}"
    text = THREE.format(mass=0, load=load).replace("{x: 0, y: 1000}", "{x: 500, y: 0}")
    found = answers(text)
    assert found("floor.bears.force") == pytest.approx(900, rel=1e-12)
    reasons = found.reasons("a.bears.force")
    assert reasons == ["a.bears.force is unknown because what it shares with others tips off them"]


NESTED = """
parts:
  floor: {kind: base, feet: {length: 4000, width: 4000}, height: 100, mass: 0 kg}
  table: {kind: top, carried_by: floor, mass: 10 kg, height: 20}
  left: {kind: clamp, carried_by: table, at: {x: -500}, mass: 2 kg}
  right: {kind: clamp, carried_by: table, at: {x: 500}, mass: 2 kg}
  shelf: {kind: top, carried_by: [left, right], at: {x: 500}, mass: 6 kg, height: 20}
  inner: {kind: clamp, carried_by: shelf, at: {x: -200}, mass: 1 kg}
  outer: {kind: clamp, carried_by: [shelf, table], at: {x: 0}, mass: 1 kg}
  lid: {kind: top, carried_by: [inner, right], at: {x: 300}, mass: 3 kg}
"""


def test_a_tree_of_several_shares_loses_nothing(answers) -> None:
    found = answers(NESTED)
    assert found("floor.bears.force") == pytest.approx(25 * G, rel=1e-12)
    assert found("table.bears.force") == pytest.approx(25 * G, rel=1e-12)


LATTICE = """
parts:
  floor: {kind: base, feet: {count: 4, circle: 3000}, height: 600, mass: 0 kg}
  a1: {kind: clamp, carried_by: floor, at: {x: -300}, mass: 1 kg}
  b1: {kind: clamp, carried_by: floor, at: {x: 300}, mass: 1 kg}
  a2: {kind: clamp, carried_by: [a1, b1], at: {x: -300}, mass: 1 kg}
  b2: {kind: clamp, carried_by: [a1, b1], at: {x: 300}, mass: 1 kg}
  a3: {kind: clamp, carried_by: [a2, b2], mass: 1 kg}
"""


@pytest.mark.parametrize(
    ("part", "mass"), [("a3", 1), ("a2", 1.5), ("b2", 1.5), ("a1", 2.5), ("b1", 2.5), ("floor", 5)]
)
def test_what_is_split_twice_comes_down_once(answers, part: str, mass: float) -> None:
    """Symmetry: half of all that is above on each side, at every storey."""
    assert answers(LATTICE)(f"{part}.bears.force") == pytest.approx(mass * G, rel=1e-9)
