"""Gaps: what part of the body gets in, what it needs, who reaches it, and what closes it."""

import math

import pytest

WIDE = "moves: true, depth: 400, closing_force: 300 N"
CHILDREN = "reached_by: [adults, children]"
PUBLIC = "service: public"


def gap(fields: str) -> str:
    return f"  gap: {{kind: gap, {fields}}}"


# The least gaps are those of ISO 13854:2017, Table 1, seen in reprints; which opening and depth
# let a part of the body in is common practice, in limits.yaml.
LARGEST = [
    # most mm, depth mm, level mm, entrant, least gap mm, source
    ("6", "400", "900", "none", 0, "EN 581-1:2017, 5.3: no finger of an adult in 7 mm"),
    ("8", "400", "900", "finger", 18, "EN 581-1:2017, 5.3: safe again from 18 mm"),
    ("31", "61", "900", "hand", 100, "ISO 13854:2017, Table 1"),
    ("31", "59", "900", "finger", 18, "EN 581-1:2017, 5.3"),
    ("51", "61", "299", "foot", 120, "ISO 13854:2017, Table 1"),
    ("51", "61", "301", "hand", 100, "ISO 13854:2017, Table 1"),
    ("101", "201", "900", "arm", 120, "ISO 13854:2017, Table 1"),
    ("101", "199", "900", "hand", 100, "ISO 13854:2017, Table 1"),
    ("121", "201", "699", "leg", 180, "ISO 13854:2017, Table 1"),
    ("121", "201", "701", "arm", 120, "ISO 13854:2017, Table 1"),
    ("151", "201", "900", "head", 300, "ISO 13854:2017, Table 1"),
    ("301", "301", "900", "body", 500, "ISO 13854:2017, Table 1"),
    ("301", "299", "900", "head", 300, "ISO 13854:2017, Table 1"),
]


@pytest.mark.parametrize(("most", "depth", "level", "entrant", "least", "source"), LARGEST)
def test_the_largest_part_of_the_body_that_gets_in_decides(
    asked, most, depth, level, entrant, least, source
):
    found = asked(gap(f"least: 2, most: {most}, depth: {depth}, level: {level}"))
    assert found("gap.entrant.clears") * 1e3 == pytest.approx(least), source
    assert found("gap.entrant.name") == entrant, source


@pytest.mark.parametrize(
    ("rest", "most", "entrant", "clears"),
    [
        ("", "130", "arm", 120),
        (PUBLIC, "130", "head", 300),
        (CHILDREN, "130", "head", 300),
        ("", "6", "none", 0),
        (PUBLIC, "6", "finger", 25),
        (CHILDREN, "6", "finger", 25),
    ],
)
def test_who_reaches_it_decides_what_gets_in(asked, rest, most, entrant, clears):
    found = asked(gap(f"least: 2, most: {most}, depth: 400, level: 900"), rest)
    assert (found("gap.entrant.name"), found("gap.entrant.clears") * 1e3) == (
        entrant,
        pytest.approx(clears),
    )


def test_a_depth_that_is_not_told_leaves_open_what_gets_in(asked):
    found = asked(gap("least: 2, most: 200, closing_force: 300 N"))
    assert math.isnan(found("gap.entrant.clears"))
    assert found.verdict("gap.larger_parts") == "open"


@pytest.mark.parametrize(
    ("fields", "verdict"),
    [
        ("least: 121, most: 200, largest_part: arm", "pass"),
        ("least: 119, most: 200, largest_part: arm", "fail"),
        ("least: 299, most: 310, level: 900, largest_part: head", "fail"),
        ("least: 301, most: 310, level: 900, largest_part: head", "pass"),
        ("least: 301, most: 310, level: 900", "fail"),  # a body needs 500 mm
        ("least: 119, most: 200, largest_part: hand", "not applicable"),
        ("least: 2, most: 200, acts: shear", "not applicable"),
        ("least: 2, most: 200, level: 2600", "not applicable"),
    ],
)
def test_a_gap_that_closes_on_more_than_a_hand(asked, fields, verdict):
    assert asked(gap(f"{fields}, {WIDE}")).verdict("gap.larger_parts") == verdict


def test_a_gap_that_opens_to_the_hand_and_no_farther_is_the_hands_own(asked):
    found = asked(gap(f"least: 40, most: 99, {WIDE}"))
    assert found.verdict("gap.larger_parts") == "not applicable"
    assert found.verdict("gap.hands") == "fail"


def test_a_part_that_is_named_is_to_be_judged(asked):
    assert (
        asked(gap(f"least: 121, most: 200, largest_part: arm, {WIDE}")).verdict("gap.kept_out")
        == "review"
    )


# ISO 13857:2019, Table 4 (14 years and up) as reprinted; Table 5 (3 years and up) from memory.
THROUGH = [
    ("through: {width: 5, shape: slot}", "", 10, "Table 4, slot 4 to 6"),
    ("through: {width: 9, shape: slot}", "", 80, "Table 4, slot 8 to 10"),
    ("through: {width: 25, shape: slot, length: 60}", "", 200, "Table 4, thumb stops at 65 mm"),
    ("through: {width: 25, shape: slot}", "", 850, "Table 4, slot 20 to 30"),
    ("through: {width: 18, shape: round}", "", 120, "Table 4, round 12 to 20"),
    ("through: {width: 15, shape: slot}", CHILDREN, 900, "Table 5, from memory"),
    ("through: {width: 25, shape: square}", CHILDREN, 550, "Table 5, from memory"),
    ("through: {width: 300, shape: square}", "", 850, "an arm to the shoulder, Table 4"),
]


@pytest.mark.parametrize(("through", "rest", "reach", "source"), THROUGH)
def test_how_far_somebody_reaches_through_an_opening(asked, through, rest, reach, source):
    found = asked(gap(f"least: 2, most: 20, {through}"), rest)
    assert found("gap.through.reach") * 1e3 == pytest.approx(reach), source


@pytest.mark.parametrize(
    ("distance", "verdicts"), [(79, ("fail", "fail")), (81, ("pass", "not applicable"))]
)
def test_a_gap_behind_an_opening_is_reached_or_not(asked, distance, verdicts):
    found = asked(gap(f"least: 2, most: 20, through: {{width: 9, distance: {distance}}}"))
    assert (found.verdict("gap.behind_opening"), found.verdict("gap.fingers")) == verdicts


@pytest.mark.parametrize(
    ("fields", "verdict"),
    [
        ("width: 4, acts: shear", "review"),  # safe from crushing, not from shear
        ("width: 4", "not applicable"),
        ("width: 4, acts: shear, moves: false", "not applicable"),
    ],
)
def test_edges_that_pass_each_other_are_to_be_judged(asked, fields, verdict):
    found = asked(gap(fields), PUBLIC)
    assert found.verdict("gap.shears") == verdict
    assert found.verdict("gap.fingers") != "fail"


SHAFT = (
    "  rod: {kind: shaft, carried_by: base, diameter: 20, length: 300, material: C45, mass: 2 kg,"
    " lever: {length: 60}}\n"
    "  lid: {kind: top, carried_by: rod, mass: 18 kg, thickness: 18, diameter: 600}\n"
)
LEVER = (
    "  bar: {kind: lever, carried_by: base, mass: 0 kg, load_arm: 100, hand_arm: 400, load: 50 N,"
    " section: {solid: [12, 30]}, material: S235}\n"
)


def test_what_a_shaft_lifts_closes_with_its_weight(asked):
    """By hand: 20 kg hang on the levers."""
    found = asked(SHAFT + gap("between: [lid, base], least: 30, most: 90"))
    assert found("gap.closing_force") == pytest.approx(20 * 9.80665)


def test_a_hand_on_a_lever_adds_to_the_weight(asked):
    """By hand: a private user may be asked for 120 N, four times that at the load's end."""
    found = asked(LEVER + gap("between: [base], driven_by: bar, least: 30, most: 90"))
    assert found("gap.closing_force") == pytest.approx(50 + 4 * found("bar.allowed_hand_force"))


def test_a_slide_that_is_held_gets_all_of_the_hands_force(asked):
    """By hand, without friction: F R = F_s r tan(psi), and r tan(psi) = dr/dtheta on a spiral."""
    plate = (
        "  plate: {kind: drive_plate, carried_by: base, material: birch plywood, thickness: 12,"
        " diameter: 600, slots: 4, slot: {inner: 160, outer: 260, turn: 60 deg, width: 12},"
        " follower: rolls, rolling_resistance: 0, guide_friction: 0}\n"
    )
    found = asked(plate + gap("between: [base], driven_by: plate, least: 30, most: 90"))
    advance = 0.100 / math.radians(60)
    force = found("plate.allowed_hand_force") * 0.300 / advance
    assert found("gap.closing_force") == pytest.approx(force)


def test_without_a_drive_the_force_is_open(asked):
    found = asked(gap("between: [base], least: 30, most: 90"))
    assert math.isnan(found("gap.closing_force"))
    assert found.reasons("gap.closing_force") == [
        "gap.closing_force needs the force, or a part on one of its sides that a drive moves"
    ]


def test_it_stands_as_high_as_the_higher_of_its_sides(asked):
    lid = "  lid: {kind: top, carried_by: base, mass: 1 kg, thickness: 18, diameter: 600}\n"
    assert asked(lid + gap("between: [lid, base], width: 9"))("gap.level") == pytest.approx(0.5)
