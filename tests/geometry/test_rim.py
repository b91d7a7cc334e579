"""Rims against shapely's polygons of the same outlines, and against closed forms."""

from itertools import pairwise
from math import atan2, cos, hypot, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.geometry.outline import (
    Disc,
    Polygon,
    Rectangle,
    RegularPolygon,
    Ring,
    Sector,
    Slot,
    polygon,
)
from reviewer.geometry.rim import Arc, Circle, Line, moved, reach, rim

OUTLINES = [
    Disc(0.3),
    Ring(0.3, 0.1),
    Sector(0.6, 0.29, 1.19),
    Sector(0.6, 0.0, 4.0),
    Rectangle(0.4, 0.3),
    RegularPolygon(7, 0.2),
    Polygon(((0.0, 0.0), (0.3, 0.0), (0.1, 0.2))),
    Slot(0.3, 0.05),
]


def points(edge, count=400):
    match edge:
        case Line(start, end):
            return [start, end]
        case Circle(centre, radius):
            return points(Arc(centre, radius, 0.0, 2 * pi), count)
        case Arc(_, _, start, end):
            return [edge.at(start + (end - start) * k / count) for k in range(count + 1)]


def signed_area(edges):
    """Green's theorem over the edges, each walked the way that joins it to the one before."""
    walked = [points(edges[0])]
    for edge in edges[1:]:
        found = points(edge)
        here = walked[-1][-1]
        ahead = hypot(found[0][0] - here[0], found[0][1] - here[1])
        behind = hypot(found[-1][0] - here[0], found[-1][1] - here[1])
        assert min(ahead, behind) < 1e-12, "the edges do not join"
        walked.append(found if ahead <= behind else found[::-1])
    chain = [point for part in walked for point in part]
    assert hypot(chain[0][0] - chain[-1][0], chain[0][1] - chain[-1][1]) < 1e-12
    return sum(x * q - p * y for (x, y), (p, q) in pairwise(chain)) / 2


@pytest.mark.parametrize("outline", OUTLINES, ids=lambda each: type(each).__name__)
def test_rims_join_and_enclose_what_shapely_does(outline):
    outer, *holes = rim(outline)
    inside = abs(signed_area(outer)) - sum(abs(signed_area(hole)) for hole in holes)
    assert inside == pytest.approx(polygon(outline).area, rel=2e-4)


@pytest.mark.parametrize("outline", OUTLINES, ids=lambda each: type(each).__name__)
def test_reach_is_that_of_shapely(outline):
    boxes = [reach(edge) for edge in rim(outline)[0]]
    west, south = min(each[0] for each in boxes), min(each[1] for each in boxes)
    east, north = max(each[2] for each in boxes), max(each[3] for each in boxes)
    assert (west, south, east, north) == pytest.approx(polygon(outline).bounds, abs=2e-5)


@given(st.floats(-1, 1), st.floats(-1, 1), st.floats(-7, 7), st.floats(0, 6), st.floats(0.1, 6))
def test_moved_is_turned_and_then_moved(x, y, turn, start, sweep):
    arc = Arc((0.2, -0.1), 0.3, start, start + sweep)
    other = moved(arc, x, y, turn)
    for share in (0.0, 0.3, 1.0):
        p, q = arc.at(start + share * sweep)
        there = (x + p * cos(turn) - q * sin(turn), y + p * sin(turn) + q * cos(turn))
        assert other.at(other.start + share * sweep) == pytest.approx(there, abs=1e-12)
    line = moved(Line((0.1, 0.2), (0.3, 0.4)), x, y, turn)
    way = atan2(line.end[1] - line.start[1], line.end[0] - line.start[0])
    assert cos(way - turn - pi / 4) == pytest.approx(1.0)
