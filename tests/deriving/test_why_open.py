"""Why a quantity is unknown: root causes by name, found by walking back."""

import pytest

MISSING_PLATE = """
parts:
  base: {kind: base, feet: {count: 4, circle: 900}, height: 620, mass: 24 kg}
  ring: {kind: slewing_ring, carried_by: base, carry: {bearing: "6001", count: 6, circle: 460}}
  arms: {kind: arm, carried_by: ring, count: 5, material: 6063-T5, section: {tube: [40, 30, 2]}}
  box: {kind: top, carried_by: ring, material: birch plywood, thickness: 18}
loads:
  lean: {force: 100 N, on: box, at: rim, all_round: true}
"""

PLATE = [
    "ring.plate.diameter is not given: diameter of the plate",
    "ring.plate.material is not given: material of the plate",
    "ring.plate.thickness is not given: thickness of the plate",
]
BOX = [
    "box.diameter is not given: diameter of a round one",
    "box.length is not given: length of a rectangular one",
    "box.width is not given: width of a rectangular one",
]
REACH = ["arms.reach is not given: length from root to tip"]


@pytest.mark.parametrize(
    ("name", "reasons"),
    [
        ("ring.plate.area", PLATE[:1]),
        ("ring.weight", PLATE),
        ("arms.root.radius", PLATE[:1]),
        ("arms.rim.radius", REACH + PLATE[:1]),
        ("box.area", BOX),
        ("box.overhang", BOX + PLATE[:1]),
        ("box.edge_sag", BOX + PLATE[:1]),
        ("box.bears.force", BOX),
        ("ring.carry.peak_load", REACH + BOX + PLATE),
        ("base.bears.force", REACH + BOX + PLATE),
    ],
)
def test_every_missing_field_is_named_once_in_order(answers, name: str, reasons: list[str]) -> None:
    assert answers(MISSING_PLATE).reasons(name) == reasons


def test_fields_of_which_one_or_the_other_would_do_are_named_together(answers) -> None:
    """A bending stiffness comes from a material or from a bench test."""
    arms = "parts: {arms: {kind: arm, section: {tube: [40, 30, 2]}, reach: 400}}"
    assert answers(arms).reasons("arms.bending_stiffness") == [
        "arms.bench_test.at is not given: distance of the test's load from the root",
        "arms.bench_test.mass is not given: mass hung on one arm in a bench test",
        "arms.bench_test.sags is not given: measured sag under the test's load",
        "arms.material is not given: material",
    ]


@pytest.mark.parametrize(
    ("sections", "name", "reason"),
    [
        (
            "parts: {arms: {kind: arm, reach: 400}}",
            "arms.root.radius",
            "arms.root.radius needs a part that carries arms, which the design does not have",
        ),
        (
            "parts: {base: {kind: base}, arms: {kind: arm, carried_by: base, reach: 400}}",
            "arms.root.radius",
            "arms.root.radius needs base.rim.radius, which the design does not have",
        ),
        (
            "parts: {base: {kind: base}}\nloads: {lean: {force: 1 N, on: base, at: rim}}",
            "lean.radius",
            "lean.radius is at the rim of a part that has none",
        ),
        (
            "parts: {base: {kind: base, feet: {count: 4}}}",
            "base.feet.places",
            "base.feet.places gives neither a count and circle nor a length and width of the feet",
        ),
    ],
)
def test_what_a_design_does_not_have_and_what_a_row_says_of_itself(
    answers, sections: str, name: str, reason: str
) -> None:
    assert answers(sections).reasons(name) == [reason]


@pytest.mark.parametrize(
    ("sections", "name", "reasons"),
    [
        (
            "parts: {ring: {kind: slewing_ring, carry: {bearing: '6001', count: 1, circle: 460}}}",
            "ring.carry.spacing",
            ["ring.carry.spacing spacing needs two rollers"],
        ),
        (
            "parts: {lift: {kind: shaft, mass: 1 kg, diameter: 6, length: 900, material: C45, "
            "lever: {length: 80}, torque: 20 N m}}",
            "lift.lag",
            ["lift.lag the twist must be below 0.2 rad, where sine is the angle"],
        ),
        (  # the wall leaves no bore
            "parts: {arms: {kind: arm, section: {pipe: [20, 14]}, material: C45, reach: 400}}",
            "arms.mass",
            ["arms.section.area is outside the range in which its formula holds"],
        ),
    ],
)
def test_a_formula_left_behind_its_range_says_which_condition(
    answers, sections: str, name: str, reasons: list[str]
) -> None:
    assert answers(sections).reasons(name) == reasons


def test_a_known_quantity_has_no_reason_to_be_open(answers) -> None:
    assert answers(MISSING_PLATE).reasons("ring.carry.spacing") == []


def test_a_quantity_may_be_unknown_in_one_configuration_only(answers) -> None:
    found = answers(
        """
parts:
  base: {kind: base, mass: 1 kg}
  trays: {kind: tray, carried_by: base, inner: 300, depth: 320, width: 400}
configurations: {closed: {}, open: {trays.width: 300}}
"""
    )
    assert found.reasons("trays.area", "own weight, closed") == []
    gap = answers(
        """
parts:
  slot: {kind: gap}
configurations: {closed: {slot.width: 4}, open: {}}
"""
    )
    assert gap.reasons("slot.least", "own weight, closed") == []
    assert gap.reasons("slot.least", "own weight, open") == [
        "slot.width is not given: width of a gap that does not change"
    ]


def test_parts_may_stand_on_each_other_by_the_hundred(answers) -> None:
    """A tower of 140 boxes, the topmost of unknown mass; a design has at most 150 parts."""
    boxes = [f"  b{n}: {{kind: clamp, carried_by: b{n - 1}, mass: 1 kg}}" for n in range(1, 140)]
    tower = ["parts:", "  b0: {kind: base, mass: 1 kg}", *boxes]
    found = answers("\n".join([*tower, "  b140: {kind: clamp, carried_by: b139}"]))
    assert found.reasons("b0.bears.force") == ["b140.mass is not given: mass"]
