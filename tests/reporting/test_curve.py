"""The curve of a gap, measured back: axes, bands, the least gap, and what is beyond the picture."""

from math import cos, pi
from pathlib import Path

import pytest

from reviewer import review
from reviewer.reporting.drawings.curve import Course, bands_of, curve_drawing
from reviewer.reporting.drawings.marks import Mark
from tests.reporting.picture import Picture

BENCH = Path(__file__).parents[2] / "specimens" / "potting_bench" / "revision_a.yaml"
PLACES = tuple(number / 100 for number in range(101))
DIPS = Course(PLACES, tuple(0.060 + 0.050 * cos(2 * pi * each) for each in PLACES))


def picture(course: Course = DIPS, part: str = "under_middle") -> Picture:
    found = review(BENCH)
    marks = [
        Mark(8, each) for each in found.findings if each.part == part and each.verdict == "fail"
    ]
    return Picture(curve_drawing(found, part, course, marks))


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
    far = Course((0.0, 1.0), (0.0, 1.0))
    drawn = picture(far)
    assert "opens to 1000 mm" in drawn.words()
    assert max(levels(drawn)) < 200
    drawn.is_whole()
