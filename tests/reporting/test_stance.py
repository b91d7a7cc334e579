"""Parts are drawn where their travels have taken them: against the same parts drawn there."""

from cmath import exp, pi
from pathlib import Path

import pytest

from reviewer import review
from reviewer.reporting.drawings.pinch_point import pinch_point
from reviewer.reporting.drawings.reference_lines import lines_of
from reviewer.reporting.drawings.scene import Scene, scene_of

SPECIMENS = Path(__file__).parents[2] / "specimens"
HEAD = "design: moves\nlengths: mm\ntravels: {go: {}, spin: {}}\nparts:\n"
BASE = "  base: {kind: base, feet: {count: 5, circle: 900}, height: 700, mass: 60 kg}\n"
DECK = "  deck: {kind: top, carried_by: base, material: birch plywood, thickness: 18, diameter: 900"
TRAYS = (
    "  trays: {kind: tray, carried_by: deck, count: 5, material: birch plywood, thickness: 15,"
    " inner: 290, depth: 310, width: 500"
)
THERE = "configurations: {rest: {}, there: {go: 0.5, spin: 1}}\n"


def scene(parts: str, rest: str = THERE) -> Scene:
    found = review(HEAD + BASE + parts + rest)
    assert not found.problems, found.problems
    return scene_of(found, "there" if rest else None)


def test_trays_that_slide_stand_where_an_offset_would_put_them() -> None:
    moved = scene(f"{DECK}}}\n{TRAYS}, moves: {{slide: {{by: go, distance: 200}}}}}}\n")
    put = scene(f"{DECK}}}\n{TRAYS}, offset: 100}}\n", rest="")
    for one, other in zip(moved.of("trays"), put.of("trays"), strict=True):
        assert one.plan.symmetric_difference(other.plan).area < 1e-9


def test_what_lies_on_a_table_turns_with_it() -> None:
    turning = f"{DECK}, moves: {{turn: {{by: spin, angle: 30 deg}}}}}}\n"
    moved = scene(f"{turning}{TRAYS}}}\n")
    put = scene(f"{DECK}}}\n{TRAYS}, from: 30 deg}}\n", rest="")
    for one, other in zip(moved.of("trays"), put.of("trays"), strict=True):
        assert one.plan.symmetric_difference(other.plan).area < 1e-9


def test_a_lift_raises_what_it_carries() -> None:
    moved = scene(f"{DECK}, moves: {{lift: {{by: go, height: 120}}}}}}\n{TRAYS}}}\n")
    tray = moved.of("trays")[0]
    assert (tray.bottom, tray.top) == pytest.approx((0.718 + 0.060, 0.733 + 0.060))


def test_the_rollers_of_a_ring_stay_where_they_are() -> None:
    ring = (
        "  ring: {kind: slewing_ring, carried_by: base, plate: {material: birch plywood,"
        " thickness: 18, diameter: 560}, carry: {bearing: '6001', count: 3, circle: 460},"
        " moves: {turn: {by: spin, angle: 20 deg}}}\n"
        "  board: {kind: top, carried_by: ring, at: {x: 100}, material: birch plywood,"
        " thickness: 18, length: 200, width: 100}\n"
    )
    moved = scene(ring)
    rollers = [solid for solid in moved.of("ring") if solid.piece == "carry"]
    assert (rollers[0].plan.centroid.x, rollers[0].plan.centroid.y) == pytest.approx((0.230, 0.0))
    board = moved.of("board")[0].plan.centroid
    there = 0.1 * exp(1j * pi / 9)
    assert (board.x, board.y) == pytest.approx((there.real, there.imag))


def test_a_flap_swings_about_its_axis() -> None:
    """A leaf of 300 mm on hinges at its inner edge, 40 deg up: its far end by hand."""
    flap = (
        "  flap: {kind: panel, carried_by: base, at: {x: 400}, material: birch plywood,"
        " thickness: 20, length: 300, width: 200,"
        " moves: {swing: {by: spin, angle: 40 deg, about: {out: -150, height: 700}}}}\n"
    )
    solid = scene(flap).of("flap")[0]
    turn = exp(1j * pi * 2 / 9)
    corners = [
        (0.25 + (turn * each).real, 0.7 + (turn * each).imag)
        for each in (0j, 0.3, 0.3 + 0.02j, 0.02j)
    ]
    west, south, east, north = solid.side.bounds
    assert (west, south) == pytest.approx((min(x for x, _ in corners), min(z for _, z in corners)))
    assert (east, north) == pytest.approx((max(x for x, _ in corners), max(z for _, z in corners)))


@pytest.mark.parametrize(
    ("outline", "bounds", "heights"),
    [
        ("outline: {rectangle: {length: 200, width: 80}, azimuth: 90 deg}, heights: {bottom: 650}",
         (-0.04, -0.1, 0.04, 0.1), (0.650, 0.668)),
        ("outline: {slot: {length: 300, width: 40}, standing: true, at: {x: 100}},"
         " heights: {bottom: -5, top: 5}", (-0.05, -0.005, 0.25, 0.005), (-0.02, 0.02)),
    ],
)  # fmt: skip
def test_an_outline_that_the_design_gives_is_drawn_instead(
    outline: str, bounds: tuple[float, ...], heights: tuple[float, float]
) -> None:
    deck = DECK.replace("carried_by: base,", f"carried_by: base, {outline},")
    solid = scene(f"{deck}}}\n").of("deck")[0]
    assert solid.plan.bounds == pytest.approx(bounds, abs=1e-6)
    assert (solid.bottom, solid.top) == pytest.approx(heights, abs=1e-4)


HOLE = "  hole: {kind: opening, width: 80, plate: {outer: 900, thickness: 18}"


def test_an_opening_lies_in_the_face_of_the_part_that_it_is_in() -> None:
    turning = f"{DECK}, at: {{x: 50}}, moves: {{lift: {{by: go, height: 100}}}}}}\n"
    placed = scene(f"{turning}{HOLE}, on: deck}}\n").parts["hole"]
    (line,) = lines_of(placed, plan=False)
    assert line.course.bounds == pytest.approx((0.010, 0.768, 0.090, 0.768))


def test_an_opening_in_no_part_has_no_height() -> None:
    placed = scene(f"{DECK}}}\n{HOLE}}}\n").parts["hole"]
    assert lines_of(placed, plan=False) == []
    assert len(lines_of(placed, plan=True)) == 1


def test_a_pinch_half_way_is_circled_where_it_is() -> None:
    """The corner of the market table passes the post on the line to it, whatever is drawn."""
    found = review(SPECIMENS / "mechanisms" / "turning_corner.yaml")
    finding = next(each for each in found.findings if each.name == "post_and_table.fingers")
    for configuration in ("square", "across"):
        ends = pinch_point(scene_of(found, configuration), finding, plan=True)
        corner, post = sorted(ends)
        assert corner == pytest.approx((0.200 * 2**0.5, 0.0), abs=2e-3)
        assert post == pytest.approx((0.295, 0.0), abs=2e-3)
