"""Pinch and shear points of parts that move: by hand, and verdicts on both sides of each limit."""

from math import pi, sin, sqrt

import pytest

from reviewer import review

PUBLIC = "service: public"


class Turning:
    """A square table of 400 mm that turns a quarter round, a post, and a shelf under it."""

    def __init__(self, post: float = 325, *, shelf: float = 8, more: str = "", facts: str = PUBLIC):
        self.found = review(
            f"design: turns\nlengths: mm\n{facts}\ntravels: {{round: {{}}}}\nparts:\n"
            "  foot: {kind: base, feet: {length: 620, width: 620}, height: 700, mass: 60 kg}\n"
            "  table: {kind: top, carried_by: foot, material: birch plywood, thickness: 24,"
            " length: 400, width: 400, level: 700, moves: {turn: {by: round, angle: 90 deg}}}\n"
            f"  post: {{kind: top, carried_by: foot, at: {{x: {post}}}, level: 600,"
            " material: beech, thickness: 300, diameter: 60}\n"
            "  shelf: {kind: panel, carried_by: foot, at: {y: -300}, material: birch plywood,"
            f" level: {682 - shelf}, thickness: 18, length: 500, width: 160}}\n{more}"
        )
        assert not self.found.problems, self.found.problems

    def __call__(self, part: str, path: str) -> float:
        values = self.found.derived.values
        return values.at(values.plan.slots[part, path], 0)

    def verdict(self, name: str) -> str:
        return next(each.verdict for each in self.found.findings if each.name == name)


CORNER = 200 * sqrt(2)


def test_a_pinch_half_way_that_neither_end_shows() -> None:
    """By hand: 325 - 30 - 200 = 95 mm at both ends, 325 - 30 - 200 sqrt 2 = 12.16 mm between."""
    turning = Turning()
    gaps = [turning("post_and_table", each) for each in ("clearance", "gap.most", "ends")]
    assert gaps == [pytest.approx(each / 1e3, abs=1e-4) for each in (295 - CORNER, 95, 95)]
    assert turning("post_and_table", "gap.passes") == 0
    assert turning.verdict("post_and_table.fingers") == "fail"


@pytest.mark.parametrize(
    ("facts", "least", "verdict", "source"),
    [
        (PUBLIC, 24.9, "fail", "ISO 13854:2017, Table 1, finger, as reprinted"),
        (PUBLIC, 25.1, "pass", "ISO 13854:2017, Table 1, finger, as reprinted"),
        ("reached_by: [adults, children]", 24.9, "fail", "ISO 13854:2017, Table 1, as reprinted"),
        ("service: private", 17.9, "fail", "EN 581-1:2017, 5.3, as reprinted"),
        ("service: private", 18.1, "pass", "EN 581-1:2017, 5.3, as reprinted"),
    ],
)
def test_who_reaches_it_decides_how_near_it_may_come(
    facts: str, least: float, verdict: str, source: str
) -> None:
    turning = Turning(30 + CORNER + least, facts=facts)
    assert turning("post_and_table", "clearance") == pytest.approx(least / 1e3, abs=2e-5)
    assert turning.verdict("post_and_table.fingers") == verdict, source


def test_edges_that_pass_each_other_are_shears_and_no_press() -> None:
    turning = Turning(shelf=8)
    assert turning("shelf_and_table", "gap.passes") == 1
    assert turning("shelf_and_table", "clearance") == pytest.approx(0.008)
    assert turning.verdict("shelf_and_table.shears") == "review"
    assert turning.verdict("shelf_and_table.fingers") == "not applicable"


@pytest.mark.parametrize(("below", "verdict"), [(24.9, "review"), (25.1, "not applicable")])
def test_far_enough_below_they_cut_nothing(below: float, verdict: str) -> None:
    assert Turning(shelf=below).verdict("shelf_and_table.shears") == verdict


def test_a_gap_that_the_design_gives_takes_its_width_from_the_motion() -> None:
    more = "  corner: {kind: gap, between: [table, post], must_close: true, closing_force: 30 N}\n"
    turning = Turning(more=more)
    assert turning("corner", "least") == pytest.approx((295 - CORNER) / 1e3, abs=1e-5)
    assert turning("corner", "most") == pytest.approx(0.095, abs=1e-4)
    assert turning("corner", "level") == pytest.approx(0.7)
    assert turning.verdict("corner.seam_guarded") == "review"
    assert turning.verdict("corner.fingers") == "not applicable"
    assert turning.verdict("post_and_table.fingers") == "not applicable"


def test_what_a_gap_gives_itself_stands() -> None:
    more = "  corner: {kind: gap, between: [table, post], least: 30, most: 95}\n"
    turning = Turning(more=more)
    assert turning("corner", "least") == pytest.approx(0.030)
    assert turning.verdict("corner.fingers") == "pass"


def test_like_parts_that_slide_apart() -> None:
    """Five sectors: closed, neighbours are apart by 2 r sin(half the angle) at the inner edge.
    They open by 2 d sin(36 deg) more along the line between their corners. By hand."""
    found = review(
        "design: slides\nlengths: mm\ntravels: {open: {}}\nparts:\n"
        "  foot: {kind: base, feet: {count: 5, circle: 900}, height: 700, mass: 60 kg}\n"
        "  trays: {kind: tray, carried_by: foot, count: 5, material: birch plywood, thickness: 15,"
        " inner: 290, depth: 310, width: 545, moves: {slide: {by: open, distance: 200}}}\n"
        "  between: {kind: gap, between: [trays], depth: 15}\n"
    )
    values = found.derived.values
    between = 2 * pi / 5 - 545 / (290 + 155)
    least = values.at(values.plan.slots["between", "least"], 0)
    most = values.at(values.plan.slots["between", "most"], 0)
    assert least == pytest.approx(0.290 * 2 * sin(between / 2), abs=1e-5)
    corner = complex(0.290 * 2 * sin(between / 2), 0) + 0.2 * 2 * sin(pi / 5)
    assert most == pytest.approx(abs(corner), abs=2e-4)
    assert next(each.verdict for each in found.findings if each.name == "between.fingers") == "fail"
