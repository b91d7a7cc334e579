"""Which parts have a template, and what is drawn on each."""

import math

import pytest

from reviewer.geometry.rim import Arc, Circle, Line
from reviewer.reporting.templates.making import templates_of
from reviewer.reporting.templates.template import Layer
from reviewer.reviewing import review, review_source

HEAD = "design: By hand\nlengths: mm\nparts:\n"
BASE = "  box: {kind: base, feet: {count: 5, circle: 900}, height: 620, mass: 24 kg}\n"


def found(parts: str):
    return templates_of(review_source(HEAD + BASE + parts, "hand.yaml"))


def one(parts: str, name: str):
    return next(each for each in found(parts).templates if each.name == name)


def edges(template, layer, kind):
    return [each.edge for each in template.strokes
            if each.layer is layer and isinstance(each.edge, kind)]  # fmt: skip


def test_a_board_is_a_rectangle_with_two_lines_through_its_centre():
    board = one("  shelf: {kind: panel, carried_by: box, material: birch plywood, thickness: 18, "
                "length: 900, width: 300}\n", "shelf")  # fmt: skip
    sides = edges(board, Layer.OUTLINE, Line)
    lengths = sorted(math.dist(side.start, side.end) for side in sides)
    assert lengths == pytest.approx([0.3, 0.3, 0.9, 0.9])
    assert len(edges(board, Layer.CENTRE, Line)) == 2
    assert {each.text for each in board.words} >= {"By hand: shelf", "18 mm, birch plywood"}


def test_a_ring_has_its_opening_and_its_circle_of_rollers():
    ring = one("""
  ring:
    kind: slewing_ring
    carried_by: box
    plate: {material: birch plywood, thickness: 18, diameter: 560, opening: 120}
    carry: {bearing: "6001", count: 10, circle: 460}
    hold_down: {bearing: "6000", count: 5, circle: 460, gap: 0.15}
    side: {bearing: "6000", count: 5, gap: 0.05}
""", "ring")  # fmt: skip
    assert [each.radius for each in edges(ring, Layer.OUTLINE, Circle)] == [0.28]
    assert [each.radius for each in edges(ring, Layer.OPENINGS, Circle)] == [0.06]
    assert [each.radius for each in edges(ring, Layer.CIRCLES, Circle)] == [0.23]


def test_one_tray_of_five_by_its_middle_line():
    trays = one("  trays: {kind: tray, carried_by: box, count: 5, material: birch plywood, "
                "thickness: 15, inner: 290, depth: 310, width: 530}\n", "trays")  # fmt: skip
    arcs = edges(trays, Layer.OUTLINE, Arc)
    assert sorted(each.radius for each in arcs) == pytest.approx([0.29, 0.6])
    assert edges(trays, Layer.CENTRE, Line) == []
    assert any("5 pieces" in each.text for each in trays.words)


SLOTTED = (
    "  plate: {{kind: drive_plate, carried_by: box, material: birch plywood, thickness: 12, "
    "diameter: 700, slots: 4, slot: {{inner: 160, outer: 260, {more}, width: 22}}}}\n"
)


@pytest.mark.parametrize("more", ["turn: 60 deg", "distance: 80"])
def test_slots_are_as_wide_as_told_all_the_way(more):
    """Every place on one side is half of 22 mm from the middle line, and so are the round ends."""
    plate = one(SLOTTED.format(more=more), "plate")
    sides = edges(plate, Layer.OPENINGS, Line)
    ends = edges(plate, Layer.OPENINGS, Arc)
    assert len(ends) == 8
    assert all(each.radius == pytest.approx(0.011) for each in ends)
    assert sorted({round(math.hypot(*each.centre), 9) for each in ends}) == [0.16, 0.26]
    per_side = len(sides) // 8
    left, right = sides[:per_side], sides[per_side : 2 * per_side]
    for one_side, other in zip(left, right, strict=True):
        assert math.dist(one_side.start, other.start) == pytest.approx(0.022, abs=1e-9)
    for end in ends[:2]:
        tips = [end.at(end.start), end.at(end.end)]
        for tip in tips:
            near = min(math.dist(tip, each) for line in (left[0], left[-1], right[0], right[-1])
                       for each in (line.start, line.end))  # fmt: skip
            assert near < 1e-9


def test_the_middle_of_a_curved_slot_is_half_way_out_and_round():
    plate = one(SLOTTED.format(more="turn: 60 deg"), "plate")
    sides = edges(plate, Layer.OPENINGS, Line)
    per_side = len(sides) // 8
    left, right = sides[per_side // 2], sides[per_side + per_side // 2]
    x, y = ((p + q) / 2 for p, q in zip(left.start, right.start, strict=True))
    assert math.hypot(x, y) == pytest.approx(0.21, abs=1e-9)
    assert math.degrees(math.atan2(y, x)) == pytest.approx(30.0, abs=1e-9)


def test_an_outline_of_the_design_goes_before_what_the_kind_draws():
    octagon = "outline: {regular_polygon: {sides: 8, diameter: 640}}"
    wood = "material: birch plywood, thickness: 18, diameter: 640"
    lid = one(f"  lid: {{kind: top, carried_by: box, {wood}, {octagon}}}\n", "lid")
    assert len(edges(lid, Layer.OUTLINE, Line)) == 8
    assert edges(lid, Layer.OUTLINE, Circle) == []


def test_marks_are_on_the_part_that_they_are_on_and_by_themselves():
    parts = (
        "  lid: {kind: top, carried_by: box, material: birch plywood, thickness: 18, "
        "diameter: 640}\n"
        "  marks: {kind: divided_circle, on: lid, count: 6, circle: 400, hole: 9, from: 10 deg}\n"
    )
    for name in ("lid", "marks"):
        holes = edges(one(parts, name), Layer.HOLES, Circle)
        assert [each.radius for each in holes] == pytest.approx([0.0045] * 6)
        assert len(edges(one(parts, name), Layer.LINES, Line)) == {"lid": 4, "marks": 2}[name]
        angle = math.degrees(math.atan2(holes[0].centre[1], holes[0].centre[0]))
        assert angle == pytest.approx(10.0)


@pytest.mark.parametrize(("shape", "kind", "each"), [("round", Circle, 1), ("cornered", Line, 4)])
def test_openings(shape, kind, each):
    parts = (f"  hole: {{kind: opening, shape: {shape}, width: 30, length: 50, count: 3, "
             "circle: 200}\n")  # fmt: skip
    template = one(parts, "hole")
    assert len(edges(template, Layer.OPENINGS, kind)) == 3 * each
    on_part = parts.replace("shape", "on: box, shape", 1)
    assert "hole" not in {made.name for made in found(on_part).templates}


def test_what_is_missing_is_told():
    made = found("  marks: {kind: divided_circle, of: box}\n"
                 "  lid: {kind: top, carried_by: box, material: birch plywood}\n")  # fmt: skip
    assert made.templates == ()
    assert {each.part for each in made.untold} == {"marks", "lid"}
    assert all(each.reason for each in made.untold)


def test_a_review_that_fails_and_what_is_accepted_stand_on_every_template():
    text = HEAD + BASE + (
        "  lid: {kind: top, carried_by: box, material: birch plywood, thickness: 3, "
        "diameter: 900}\n"
        "  gap: {kind: gap, least: 12, most: 40}\n"
        "  slit: {kind: gap, least: 12, most: 40}\n"
        "loads:\n  lean: {force: 400 N, on: lid, at: rim, all_round: true}\n"
        "concessions:\n"
        "  - {rule: gap.fingers, part: gap, by: Ada Reeve, why: nobody reaches it}\n"
    )  # fmt: skip
    (lid,) = templates_of(review_source(text, "hand.yaml")).templates
    said = {each.text for each in lid.words}
    assert "THE REVIEW FAILS: do not cut before it holds" in said
    assert "accepted on purpose: gap.fingers" in said


def test_the_bench_has_a_template_of_each_flat_part_and_circle(request):
    path = request.config.rootpath / "specimens" / "potting_bench" / "setting_out.yaml"
    made = templates_of(review(path))
    named = {each.name: each for each in made.templates}
    plates, circles = ["ring", "packing", "trays", "middle"], ["bracket_marks", "hold_down_marks"]
    assert list(named) == [*plates, *circles, "outer_arm_holes", "inner_arm_holes"]
    assert len(edges(named["packing"], Layer.LINES, Line)) == 2  # its own serve its circles too
    assert len(edges(named["packing"], Layer.HOLES, Circle)) == 10  # five arms on two bolts each
    assert made.untold == ()
