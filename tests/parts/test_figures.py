"""What a part's own measures say of its shape, held against closed forms and its other rows."""

from math import cos, pi, radians, sin, sqrt
from pathlib import Path

import pytest

from reviewer import review
from reviewer.geometry.outline import Body, footprint, polygon, vertical_extent
from reviewer.parts.figures import Drawn
from reviewer.parts.outlines import MAKERS
from reviewer.parts.registry import KINDS

SPECIMENS = Path(__file__).parents[2] / "specimens"
BASE = "base: {kind: base, feet: {count: 4, circle: 800}, height: 500, mass: 40 kg}"
RING = (
    "ring: {kind: slewing_ring, carried_by: base,"
    " plate: {material: birch plywood, thickness: 18, diameter: 560, opening: 100},"
    " carry: {bearing: '6001', count: 10, circle: 460, from: 9 deg},"
    " hold_down: {bearing: '6000', count: 5, circle: 460, gap: 0.5},"
    " side: {bearing: '6000', count: 3, gap: 0.25}}"
)


def drawn(part: str, line: str, rest: str = "", case: int = 0) -> Drawn:
    """The shape of one part of a design on a base."""
    found = review(f"design: shapes\nlengths: mm\nparts:\n  {BASE}\n  {line}\n{rest}")
    assert not found.problems, found.problems
    values = found.derived.values
    return values.at(values.plan.slots[part, "figure"], case).at(case=case)


def body(shape: Drawn, name: str) -> Body:
    return next(piece.body for piece in shape.pieces if piece.name == name)


def test_the_plate_of_a_ring_lies_between_its_rollers() -> None:
    """Heights by hand: a 6001 is 28 mm across and 8 wide, a 6000 26 mm (ISO 15)."""
    ring = drawn("ring", RING)
    plate, carry, hold = (body(ring, each) for each in ("plate", "carry", "hold_down"))
    levels = [(each.bottom, each.top) for each in (plate, carry, hold)]
    expected = [(0.028, 0.046), (0.0, 0.028), (0.0465, 0.0725)]
    assert levels == [pytest.approx(each) for each in expected]
    assert polygon(plate.outline).area == pytest.approx(pi / 4 * (0.56**2 - 0.1**2), rel=1e-4)
    assert [piece.name for piece in ring.pieces if piece.stays] == ["carry", "hold_down", "side"]


def test_rollers_stand_at_their_azimuths_with_their_axles_to_the_middle() -> None:
    carry = body(drawn("ring", RING), "carry")
    assert (carry.x, carry.y) == pytest.approx((0.23 * cos(radians(9)), 0.23 * sin(radians(9))))
    assert carry.count == 10
    west, south, east, north = footprint(carry).bounds
    reach = sqrt(0.234**2 + 0.014**2)  # the outer corner of a roller 8 mm wide and 28 mm across
    assert max(-west, -south, east, north) <= reach + 1e-9
    assert footprint(carry).area == pytest.approx(10 * 0.008 * 0.028)


def test_side_rollers_touch_the_edge_at_their_gap() -> None:
    side = body(drawn("ring", RING), "side")
    assert side.x - side.outline.radius == pytest.approx(0.280 + 0.00025)
    assert (side.bottom + side.top) / 2 == pytest.approx(0.037)


def test_a_height_that_is_given_is_that_of_the_plates_upper_face() -> None:
    ring = drawn("ring", RING.replace("kind: slewing_ring,", "kind: slewing_ring, height: 60,"))
    assert body(ring, "plate").top == pytest.approx(0.060)


def test_a_tray_that_is_a_sector_has_the_area_of_depth_times_width() -> None:
    line = (
        "trays: {kind: tray, carried_by: base, count: 5, material: birch plywood, thickness: 15,"
        " inner: 290, depth: 310, width: 530, offset: 20}"
    )
    tray = body(drawn("trays", line), "tray")
    assert polygon(tray.outline).area == pytest.approx(0.310 * 0.530, rel=1e-4)
    assert (tray.x, tray.y, tray.count) == (pytest.approx(0.020), 0.0, 5)
    straight = body(
        drawn("trays", line.replace("kind: tray", "kind: tray, form: rectangle")), "tray"
    )
    assert polygon(straight.outline).bounds == pytest.approx((-0.155, -0.265, 0.155, 0.265))
    assert straight.x == pytest.approx(0.290 + 0.155 + 0.020)


def test_a_configuration_moves_the_shape() -> None:
    line = (
        "trays: {kind: tray, carried_by: base, count: 4, material: birch plywood, thickness: 15,"
        " inner: 290, depth: 310, width: 400}"
    )
    rest = "configurations: {closed: {}, open: {trays.offset: 100}}"
    places = [body(drawn("trays", line, rest, case), "tray").x for case in (0, 1)]
    assert places == pytest.approx([0.0, 0.1])


def test_arms_stand_out_from_root_to_tip() -> None:
    line = (
        "arms: {kind: arm, carried_by: base, count: 3, from: 90 deg, section: {tube: [40, 30, 2]},"
        " material: 6063-T5, reach: 340, root: {radius: 250}}"
    )
    arm = body(drawn("arms", line), "arm")
    assert (arm.x, arm.y) == pytest.approx((0.0, 0.250 + 0.170))
    first = footprint(Body(arm.outline, arm.bottom, arm.top, arm.x, arm.y, arm.azimuth))
    assert first.bounds == pytest.approx((-0.020, 0.250, 0.020, 0.590))
    assert (arm.bottom, arm.top) == pytest.approx((0.0, 0.030))


def test_a_lever_stands_at_the_angle_where_its_travel_begins() -> None:
    line = (
        "bar: {kind: lever, carried_by: base, load_arm: 80, hand_arm: 420, from: 30 deg,"
        " to: 60 deg, azimuth: 0 deg, section: {solid: [12, 30]}, material: S235}"
    )
    bar = body(drawn("bar", line), "bar")
    half = 0.015 * cos(radians(30))
    low, high = -0.420 * sin(radians(30)) - half, 0.080 * sin(radians(30)) + half
    assert vertical_extent(bar) == pytest.approx((low, high))
    assert bar.top - bar.bottom == pytest.approx(0.012)
    assert polygon(bar.outline).area == pytest.approx(0.500 * 0.030)


def test_a_bent_lever_is_as_long_as_its_two_arms() -> None:
    """Each arm keeps its height and its middle line; where they meet the edges are mitred."""
    line = (
        "bar: {kind: lever, carried_by: base, load_arm: 100, hand_arm: 300, bend: 40 deg,"
        " azimuth: 0 deg, section: {solid: [12, 30]}, material: S235}"
    )
    bar = body(drawn("bar", line), "bar")
    assert polygon(bar.outline).area == pytest.approx(0.400 * 0.030)
    low = -0.300 * sin(radians(40)) - 0.015 * cos(radians(40))
    assert vertical_extent(bar) == pytest.approx((low, 0.015))


def test_what_moves_of_a_part_is_told_to_clearances_above_the_floor() -> None:
    """A part that gives heights stands at those, as high as its plate is; a ring's rollers stay."""
    text = (
        f"design: shapes\nlengths: mm\nparts:\n  {BASE}\n  {RING[:-1]}, heights: {{bottom: 500}}}}"
    )
    values = review(text).derived.values
    plate = values.at(values.plan.slots["ring", "body"], 0).at(0, 0)
    assert (plate.bottom, plate.top) == pytest.approx((0.500, 0.518))
    assert plate.outline.outer == pytest.approx(0.280)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (
            "bar: {kind: shaft, carried_by: base, diameter: 20, length: 300, material: C45}",
            "azimuth is unknown: the way that it lies, seen from above",
        ),
        ("bar: {kind: top, carried_by: base, thickness: 18}", "length is unknown"),
        ("bar: {kind: top, carried_by: base, diameter: 400}", "thickness is unknown"),
        (
            "bar: {kind: top, carried_by: base, diameter: 400, thickness: 18, opening: 500}",
            "the outer radius of a ring is more than its inner radius",
        ),
    ],
)
def test_what_is_not_told_is_no_shape_and_says_why(line: str, expected: str) -> None:
    shape = drawn("bar", line)
    assert (shape.pieces, shape.missing) == ((), (expected,))


def test_every_kind_that_asks_has_a_maker_and_every_maker_is_asked_for() -> None:
    asking = {name for name, kind in KINDS.items() if "figure" in kind.by_path}
    assert asking == set(MAKERS)


@pytest.mark.parametrize(
    ("fields", "path"),
    [
        ("profile: [[0, 5], [40, 5], [280, 45]]", [(0, 0), (40, 0), (280, 40)]),
        ("rise: 40, run: 200, flat: 60", [(0, 0), (200, 40), (260, 40)]),
    ],
)
def test_a_ramp_is_the_line_of_its_follower(fields: str, path: list[tuple[float, float]]) -> None:
    ramp = drawn("slope", f"slope: {{kind: ramp, carried_by: base, azimuth: 90 deg, {fields}}}")
    places = [(y * 1e3, up * 1e3) for _, y, up in ramp.lines[0].places]
    assert places == [pytest.approx(each) for each in path]


@pytest.mark.parametrize("path", sorted(SPECIMENS.glob("**/*.yaml")), ids=lambda path: path.stem)
def test_what_is_missing_of_the_shapes_of_specimens_is_a_measure(path: Path) -> None:
    """A reason is a sentence about a measure, never a fault of the program."""
    found = review(path)
    if found.derived is None:
        return  # a shop's file or a pack
    values = found.derived.values
    slots = [slot for (_, row), slot in values.plan.slots.items() if row == "figure"]
    for slot in slots:
        for missing in values.values[slot].at().missing:
            assert missing.endswith(REASONS), missing


REASONS = (
    *("is unknown", "is unknown: the way that it lies, seen from above"),
    *("the frame between its feet is not told", "of the feet is known"),
)
