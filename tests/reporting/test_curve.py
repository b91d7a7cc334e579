"""The curve of a gap, measured back: axes, bands, the least gap, and what is beyond the picture."""

from math import cos, hypot, pi, sin
from pathlib import Path

import pytest

from reviewer import review
from reviewer.parts.gap_course import Curve
from reviewer.reporting.drawings.curve import (
    NoCurve,
    bands_of,
    curve_drawing,
    drawn_curve,
    gaps_with_a_curve,
)
from reviewer.reporting.drawings.marks import Mark
from tests.reporting.picture import Picture

BENCH = Path(__file__).parents[2] / "specimens" / "potting_bench" / "revision_a.yaml"
PLACES = tuple(number / 100 for number in range(101))
DIPS = Curve(
    PLACES, tuple(0.060 + 0.050 * cos(2 * pi * each) for each in PLACES), "lift", "a and b"
)


def picture(course: Curve = DIPS, part: str = "under_middle") -> Picture:
    found = review(BENCH)
    marks = [
        Mark(8, each) for each in found.findings if each.part == part and each.verdict == "fail"
    ]
    return Picture(drawn_curve(found, part, course, marks))


def levels(drawn: Picture) -> dict[float, float]:
    """How high each gap [mm] stands, by the numbers at the upright axis."""
    ticks = [each for each in drawn.every("text") if each.attrib["text-anchor"] == "end"]
    return {
        float(each.text or ""): float(each.attrib["y"]) - 4
        for each in ticks
        if (each.text or "").replace(".", "").isdigit()
    }


def height_of(drawn: Picture, gap: float) -> float:
    """Where a gap [mm] stands, between two numbers of the axis."""
    ticks = levels(drawn)
    step = max(ticks) - min(ticks)
    return ticks[0.0] + gap / step * (ticks[max(ticks)] - ticks[0.0])


def test_the_curve_goes_through_its_points() -> None:
    drawn = picture()
    drawn.is_whole()
    curve = next(run for run in drawn.runs() if len(run) == len(PLACES))
    assert curve[0][1] == pytest.approx(height_of(drawn, 110), abs=0.1)
    assert curve[50][1] == pytest.approx(height_of(drawn, 10), abs=0.1)
    assert curve[25][0] - curve[0][0] == pytest.approx((curve[100][0] - curve[0][0]) / 4, abs=0.02)


def test_the_bands_are_those_of_whoever_reaches_it() -> None:
    """Public, and children reach: a finger from 5 to 25 mm; 200 mm deep, so a hand to 100 mm."""
    drawn = picture()
    bands = {
        band.name: (band.lower, band.upper) for band in bands_of(review(BENCH), "under_middle")
    }
    assert bands == {
        "finger": pytest.approx((0.005, 0.025)),
        "hand": pytest.approx((0.030, 0.100)),
    }
    dashed = [each for each in drawn.every("line") if each.attrib.get("stroke-dasharray") == "5 3"]
    found = sorted({float(each.attrib["y1"]) for each in dashed}, reverse=True)
    assert found == [pytest.approx(height_of(drawn, each), abs=0.1) for each in (5, 25, 30, 100)]


def test_it_is_heavy_where_a_finger_is_caught() -> None:
    drawn = picture()
    heavy = [point for run in drawn.runs(stroke_width="4") for point in run]
    low, high = height_of(drawn, 5), height_of(drawn, 25)
    assert heavy
    assert all(high - 0.1 <= y <= low + 0.1 for _, y in heavy)


def test_the_least_gap_is_circled_and_numbered_like_its_finding() -> None:
    drawn = picture()
    curve = next(run for run in drawn.runs() if len(run) == len(PLACES))
    ring = next(each for each in drawn.circles() if each[2] == 5.0)
    assert ring[:2] == pytest.approx(curve[50], abs=0.02)
    assert {"10 mm", "8"} <= set(drawn.words())


def test_what_opens_far_beyond_the_bands_is_told_and_not_drawn() -> None:
    far = Curve((0.0, 1.0), (0.0, 1.0), "lift", "")
    drawn = picture(far)
    assert "opens to 1000 mm" in drawn.words()
    assert max(levels(drawn)) < 200
    drawn.is_whole()


MOVES = """design: trays that slide
lengths: mm
service: public
travels: {open: {}}
parts:
  base: {kind: base, feet: {count: 5, circle: 1140}, height: 720, mass: 64 kg}
  deck: {kind: top, carried_by: base, material: birch plywood, thickness: 18, diameter: 1000}
  trays: {kind: tray, carried_by: deck, count: 5, material: birch plywood, thickness: 15,
    inner: 290, depth: 310, width: 545, moves: {slide: {by: open, distance: 200}}}
  middle: {kind: top, carried_by: deck, material: birch plywood, thickness: 15, diameter: 570}
  seam: {kind: gap, between: [middle, trays], must_close: true}
configurations: {closed: {}, open: {open: 1}}
"""


def test_a_gap_between_parts_that_move_has_the_curve_of_its_travel() -> None:
    """By hand: the middle has a radius of 285 mm, the sector's inner edge moves from 290 to 490;
    it stays nearest on its middle line until its corners are nearer to the middle of the disc."""
    found = review(MOVES)
    assert gaps_with_a_curve(found) == (
        "seam",
        "deck_and_trays",
        "middle_and_trays",
        "trays_and_trays",
    )
    drawn = Picture(curve_drawing(found, "seam"))
    drawn.is_whole()
    assert {"open, per cent", "5 mm", "between middle and trays 1"} <= set(drawn.words())
    curve = next(run for run in drawn.runs() if len(run) > 100)
    half = 545 / (290 + 155) / 2
    corner = hypot(290 * cos(half) + 200, 290 * sin(half)) - 285
    assert curve[-1][1] == pytest.approx(0.0)  # at the upper edge: it opens farther
    told = next(each for each in drawn.words() if each.startswith("opens to"))
    assert float(told.split()[2]) == pytest.approx(min(corner, 205.0), abs=0.6)


def test_error_no_curve() -> None:
    with pytest.raises(NoCurve) as error:
        curve_drawing(review(MOVES), "seams")
    assert (error.value.name, error.value.known[0]) == ("seams", "seam")
