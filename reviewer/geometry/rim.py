"""The rim of an outline as it is drawn and cut: exact straight lines and arcs, no chords.

Line(start, end)                      points (x, y) [m]
Arc(centre, radius, start, end)       counter-clockwise from one angle to the other [rad]
Circle(centre, radius)

rim(outline)                          the outer rim, and then the rim of a hole
moved(edge, x, y, turn)               turned about the origin, then moved
reach(edge)                           (west, south, east, north) of what an edge covers
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

from reviewer.geometry.outline import Disc, Outline, Ring, Sector, Slot, corners

Point = tuple[float, float]
Box = tuple[float, float, float, float]
NEARLY = 1e-12


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line [m]."""

    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, counter-clockwise: centre and radius [m], angles [rad]."""

    centre: Point
    radius: float
    start: float
    end: float

    def at(self, angle: float) -> Point:
        """The point of the circle at an angle [rad]."""
        (x, y), radius = self.centre, self.radius
        return (x + radius * cos(angle), y + radius * sin(angle))


@dataclass(frozen=True, slots=True)
class Circle:
    """A whole circle [m]."""

    centre: Point
    radius: float


Edge = Line | Arc | Circle
Rim = tuple[Edge, ...]


def rim(outline: Outline) -> tuple[Rim, ...]:
    """The outer rim of an outline, and the rim of its hole where it has one."""
    middle = (0.0, 0.0)
    match outline:
        case Disc(radius):
            return ((Circle(middle, radius),),)
        case Ring(outer, inner):
            return ((Circle(middle, outer),), (Circle(middle, inner),))
        case Sector(outer, inner, angle):
            return (_sector(outer, inner, angle / 2),)
        case Slot(length, width):
            return (_slot((length - width) / 2, width / 2),)
    return (closed(corners(outline)),)


def closed(points: Iterable[Point]) -> Rim:
    """Straight lines from point to point and back to the first."""
    listed = tuple(points)
    pairs = zip(listed, listed[1:] + listed[:1], strict=True)
    return tuple(Line(start, end) for start, end in pairs)


def opened(points: Iterable[Point]) -> Rim:
    """Straight lines from point to point."""
    listed = tuple(points)
    return tuple(Line(start, end) for start, end in pairwise(listed))


def _sector(outer: float, inner: float, half: float) -> Rim:
    outside = Arc((0.0, 0.0), outer, -half, half)
    low, high = outside.at(-half), outside.at(half)
    if inner <= 0.0:
        return (outside, Line(high, (0.0, 0.0)), Line((0.0, 0.0), low))
    inside = Arc((0.0, 0.0), inner, -half, half)
    ends = (Line(high, inside.at(half)), Line(inside.at(-half), low))
    return (outside, ends[0], inside, ends[1])


def _slot(middle: float, radius: float) -> Rim:
    return (
        Line((-middle, -radius), (middle, -radius)),
        Arc((middle, 0.0), radius, -pi / 2, pi / 2),
        Line((middle, radius), (-middle, radius)),
        Arc((-middle, 0.0), radius, pi / 2, 3 * pi / 2),
    )


def moved(edge: Edge, x: float, y: float, turn: float = 0.0) -> Edge:
    """An edge turned about the origin [rad] and then moved [m]."""
    cosine, sine = cos(turn), sin(turn)

    def placed(point: Point) -> Point:
        along, aside = point
        return (x + along * cosine - aside * sine, y + along * sine + aside * cosine)

    match edge:
        case Line(start, end):
            return Line(placed(start), placed(end))
        case Arc(centre, radius, start, end):
            return Arc(placed(centre), radius, start + turn, end + turn)
        case Circle(centre, radius):
            return Circle(placed(centre), radius)


def reach(edge: Edge) -> Box:
    """West, south, east and north end of what an edge covers [m].

    >>> west, south, east, north = reach(Arc((0.0, 0.0), 2.0, 0.0, pi))
    >>> round(west, 9), round(south, 9), round(east, 9), round(north, 9)
    (-2.0, 0.0, 2.0, 2.0)
    """
    match edge:
        case Line(start, end):
            points = [start, end]
        case Circle((x, y), radius):
            points = [(x - radius, y - radius), (x + radius, y + radius)]
        case Arc(start=start, end=end):
            turns = [quarter * pi / 2 for quarter in range(-8, 13)]
            within = [turn for turn in turns if start - NEARLY <= turn <= end + NEARLY]
            points = [edge.at(turn) for turn in (start, end, *within)]
    across, along = [x for x, _ in points], [y for _, y in points]
    return (min(across), min(along), max(across), max(along))
