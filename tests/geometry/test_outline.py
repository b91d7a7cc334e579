"""Outlines: area, extent and place against plane geometry."""

from math import cos, hypot, pi, sin, sqrt, tan

import pytest
from shapely import Point

from reviewer.geometry.outline import (
    Body,
    Disc,
    Outline,
    Polygon,
    Rectangle,
    RegularPolygon,
    Ring,
    Sector,
    Slot,
    crosses_itself,
    extent,
    footprint,
    polygon,
    vertical_extent,
)

SQUARE = ((0.0, 0.0), (0.0, 0.2), (0.2, 0.2), (0.2, 0.0))
CROSSED = ((0.0, 0.0), (0.2, 0.2), (0.2, 0.0), (0.0, 0.2))
MEASURES = [  # outline, area, greatest distance from its origin; source: plane geometry
    (Disc(0.3), pi * 0.09, 0.3),
    (Ring(0.3, 0.1), pi * 0.08, 0.3),
    (Sector(0.3, 0.1, pi / 3), pi * 0.08 / 6, 0.3),
    (Sector(0.3, 0.0, 4.0), 0.09 * 2.0, 0.3),
    (Rectangle(0.4, 0.2), 0.08, sqrt(0.05)),
    (RegularPolygon(5, 0.3), 2.5 * 0.09 * sin(2 * pi / 5), 0.3),
    (RegularPolygon(3, 0.2), 3 * 0.01 * tan(pi / 3), 0.2),
    (Polygon(SQUARE), 0.04, hypot(0.2, 0.2)),
    (Slot(0.3, 0.1), 0.02 + pi * 0.0025, 0.15),
]


@pytest.mark.parametrize(("outline", "area", "far"), MEASURES, ids=repr)
def test_area_and_extent(outline: Outline, area: float, far: float) -> None:
    shape = polygon(outline, 1e-6)
    assert shape.is_valid
    assert shape.area == pytest.approx(area, abs=1e-6 * shape.length)
    assert extent(outline) == pytest.approx(far)


def test_no_chord_is_further_off_than_asked() -> None:
    shape = polygon(Disc(0.5), 2e-4)
    corner = shape.exterior.coords[0]
    assert hypot(*corner) == pytest.approx(0.5)
    assert 1e-4 < 0.5 - shape.exterior.distance(Point(0.0, 0.0)) <= 2e-4


def test_a_body_is_turned_then_placed_then_repeated_round_the_carrier() -> None:
    body = Body(Rectangle(0.2, 0.1), 0.0, 0.018, x=0.5, azimuth=pi / 2, count=4)
    shape = footprint(body)
    assert shape.area == pytest.approx(0.08)
    assert shape.bounds == pytest.approx((-0.55, -0.55, 0.55, 0.55))
    assert not shape.covers(polygon(Disc(0.4)))


def test_a_standing_body_shows_its_thickness_in_plan() -> None:
    side = Polygon(((0.0, 0.0), (0.3, 0.0), (0.3, 0.05)))
    body = Body(side, -0.006, 0.006, azimuth=pi / 6, standing=True)
    assert vertical_extent(body) == (0.0, 0.05)
    shape = footprint(body)
    assert shape.area == pytest.approx(0.3 * 0.012)
    assert shape.bounds[2] == pytest.approx(0.3 * cos(pi / 6) + 0.006 * sin(pi / 6))


def test_a_polygon_that_crosses_itself_is_known() -> None:
    assert crosses_itself(Polygon(CROSSED))
    assert not crosses_itself(Polygon(SQUARE))


WRONG = [
    (Disc, (0.0,), "the radius of a disc is more than 0"),
    (Disc, (float("nan"),), "the radius of a disc is more than 0"),
    (Ring, (0.1, 0.2), "the outer radius of a ring is more than its inner radius"),
    (Sector, (0.2, -0.1, 1.0), "the inner radius of a sector is at least 0"),
    (Sector, (0.2, 0.1, 7.0), "the angle of a sector is less than a whole turn"),
    (RegularPolygon, (2, 0.1), "a polygon has three sides or more"),
    (Polygon, (((0, 0), (1, 1)),), "a polygon has three corners or more"),
    (Slot, (0.1, 0.2), "the length of a slot is more than its width"),
    (Body, (Disc(0.1), 0.2, 0.1), "the top of a body is not below its bottom"),
]


@pytest.mark.parametrize(("make", "measures", "says"), WRONG, ids=[each[2] for each in WRONG])
def test_what_is_no_outline_is_refused(make: type, measures: tuple, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        make(*measures)
