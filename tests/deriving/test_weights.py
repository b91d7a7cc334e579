"""Own weight on its way to the ground, by hand from geometry, density and standard gravity."""

from math import cos, pi, radians

import pytest

from reviewer.stock.materials import materials

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2
BIRCH = materials().find("birch plywood").density
ALUMINIUM = materials().find("6063-T5").density
STEEL = materials().find("C45").density

DISC = "kind: top, material: birch plywood, thickness: 18"


@pytest.mark.parametrize(
    ("part", "mass", "source"),
    [
        ("{kind: base, mass: 24 kg}", 24.0, "given"),
        ("{kind: clamp, mass: 300 g}", 0.3, "given"),
        (
            f"{{{DISC}, diameter: 1200}}",
            pi / 4 * 1.2**2 * 0.018 * BIRCH,
            "disc: pi/4 D^2 t rho",
        ),
        (
            f"{{{DISC}, diameter: 1200, opening: 400}}",
            pi / 4 * (1.2**2 - 0.4**2) * 0.018 * BIRCH,
            "ring: pi/4 (D^2 - d^2) t rho",
        ),
        (
            f"{{{DISC}, length: 1200, width: 700, opening: 400}}",
            (1.2 * 0.7 - pi / 4 * 0.4**2) * 0.018 * BIRCH,
            "rectangle less a hole: (L W - pi/4 d^2) t rho",
        ),
        (
            "{kind: slewing_ring, plate: {material: birch plywood, thickness: 18, "
            "diameter: 560, opening: 200}, carry: {bearing: '6001', count: 6, circle: 460}}",
            pi / 4 * (0.56**2 - 0.2**2) * 0.018 * BIRCH,
            "the plate alone: pi/4 (D^2 - d^2) t rho",
        ),
        (
            "{kind: arm, count: 5, section: {tube: [40, 30, 2]}, material: 6063-T5, reach: 430}",
            5 * (0.040 * 0.030 - 0.036 * 0.026) * 0.430 * ALUMINIUM,
            "five tubes: n (b h - (b - 2 t)(h - 2 t)) L rho",
        ),
        (
            "{kind: arm, section: {round: [25]}, material: C45, reach: 430}",
            pi / 4 * 0.025**2 * 0.430 * STEEL,
            "one round bar: pi/4 d^2 L rho",
        ),
        (
            "{kind: shaft, diameter: 20, wall: 2, length: 600, material: C45}",
            pi / 4 * (0.020**2 - 0.016**2) * 0.600 * STEEL,
            "pipe: pi/4 (d^2 - (d - 2 t)^2) L rho",
        ),
        (
            "{kind: skirt, material: birch plywood, thickness: 9, height: 70, diameter: 1300, "
            "supports: 5}",
            pi * 1.3 * 0.070 * 0.009 * BIRCH,
            "strip around: pi D h t rho",
        ),
        (
            "{kind: tray, count: 5, material: birch plywood, thickness: 15, inner: 300, "
            "depth: 320, width: 400}",
            5 * 0.320 * 0.400 * 0.015 * BIRCH,
            "five trays: n d w t rho",
        ),
    ],
)
def test_weight_of_a_part(answers, part: str, mass: float, source: str) -> None:
    found = answers(f"parts: {{it: {part}}}")
    assert found("it.bears.force") == pytest.approx(mass * G, rel=1e-12)


STACK = """
parts:
  base: {kind: base, feet: {count: 4, circle: 900}, height: 620, mass: 24 kg}
  ring: {kind: slewing_ring, carried_by: base, mass: 7 kg, carry: {count: 6}}
  arms: {kind: arm, carried_by: ring, count: 3, mass: 1.2 kg}
  trays: {kind: tray, carried_by: arms, count: 3, mass: 2 kg}
  lift: {kind: shaft, carried_by: ring, mass: 1.5 kg}
  grip: {kind: clamp, carried_by: lift, mass: 300 g}
  gap: {kind: gap, between: [trays, lift], width: 30}
"""


@pytest.mark.parametrize(
    ("part", "mass"),
    [
        ("trays", 3 * 2.0),
        ("arms", 3 * 2.0 + 3 * 1.2),
        ("grip", 0.3),
        ("lift", 0.3 + 1.5),
        ("ring", 9.6 + 1.8 + 7.0),
        ("base", 18.4 + 24.0),
    ],
)
def test_each_part_bears_what_stands_on_it_and_itself(answers, part: str, mass: float) -> None:
    assert answers(STACK)(f"{part}.bears.force") == pytest.approx(mass * G, rel=1e-12)


@pytest.mark.parametrize(
    ("place", "x", "y"),
    [
        ("{x: 0, y: 0}", 0.0, 0.0),
        ("{x: 200, y: 0}", 0.2, 0.0),
        ("{x: -150, y: 100}", -0.15, 0.1),
    ],
)
def test_weight_off_the_middle_loads_the_nearest_foot(
    answers, place: str, x: float, y: float
) -> None:
    """Four feet at (+-a, +-b): W/4 (1 + |x|/a + |y|/b) on the busiest; statics of a rigid body."""
    found = answers(
        f"""
parts:
  base: {{kind: base, feet: {{length: 1200, width: 800}}, height: 600, mass: 10 kg}}
  box: {{kind: top, carried_by: base, at: {place}, mass: 30 kg}}
"""
    )
    busiest = 10 * G / 4 + 30 * G / 4 * (1 + abs(x) / 0.6 + abs(y) / 0.4)
    idlest = 10 * G / 4 + 30 * G / 4 * (1 - abs(x) / 0.6 - abs(y) / 0.4)
    assert found("base.feet.peak_load") == pytest.approx(busiest, rel=1e-9)
    assert found("base.feet.least_load") == pytest.approx(idlest, rel=1e-9)


def test_places_add_up_along_the_carriers(answers) -> None:
    """A box at 100 mm on a box at 200 mm stands at 300 mm."""
    found = answers(
        """
parts:
  base: {kind: base, feet: {length: 1200, width: 800}, height: 600, mass: 0 kg}
  lower: {kind: top, carried_by: base, at: {x: 200}, mass: 0 kg}
  upper: {kind: top, carried_by: lower, at: {x: 100, y: 50}, mass: 20 kg}
"""
    )
    assert found("upper.place.x") == pytest.approx(0.3, rel=1e-12)
    assert found("base.feet.peak_load") == pytest.approx(
        20 * G / 4 * (1 + 0.3 / 0.6 + 0.05 / 0.4), rel=1e-9
    )


def test_one_arm_off_the_axis_weighs_at_its_middle(answers) -> None:
    """One arm from radius 200 to 600 at 60 degrees: its mass stands at 400 (cos 60, sin 60)."""
    found = answers(
        """
parts:
  base: {kind: base, feet: {length: 1600, width: 1600}, height: 600, mass: 40 kg}
  arm: {kind: arm, carried_by: base, mass: 3 kg, from: 60 deg, root: {radius: 200}, reach: 400}
"""
    )
    assert found("arm.centre.x") == pytest.approx(0.4 * cos(radians(60)), rel=1e-12)
    assert found("arm.centre.y") == pytest.approx(0.4 * cos(radians(30)), rel=1e-12)


def test_evenly_spaced_arms_weigh_on_the_axis(answers) -> None:
    found = answers(
        """
parts:
  base: {kind: base, feet: {length: 1600, width: 1600}, height: 600, mass: 40 kg}
  arms:
    {kind: arm, carried_by: base, count: 5, mass: 3 kg, at: {x: 30}, root: {radius: 200},
     reach: 400}
"""
    )
    assert (found("arms.centre.x"), found("arms.centre.y")) == (0.03, 0.0)
    assert found("arms.weight") == pytest.approx(15 * G, rel=1e-12)


def test_a_weight_that_is_not_known_is_known_nowhere_below(answers) -> None:
    found = answers(STACK.replace(", mass: 300 g", ""))
    assert found.reasons("base.bears.force") == ["grip.mass is not given: mass"]
    assert found.reasons("ring.bears.force") == ["grip.mass is not given: mass"]
    assert found("arms.bears.force") == pytest.approx(9.6 * G, rel=1e-12)
