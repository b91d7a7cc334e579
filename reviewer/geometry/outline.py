"""Outlines: the shape of a body in plan, its height, and where it stands.

The API, for all who draw or compare bodies (SI: metres and radians; azimuths turn counter-clockwise
from x, seen from above; z is up):

    Disc(radius)                        Ring(outer, inner)            radii
    Sector(outer, inner, angle)         between two radii, symmetric about its x axis
    Rectangle(length, width)            length along x, centred
    RegularPolygon(sides, radius)       radius to the corners, the first of them on x
    Polygon(points)                     ((x, y), ...), not crossing itself
    Slot(length, width)                 overall length along x, ends round, centred

    Body(outline, bottom, top, x, y, azimuth, count)
        an outline between two heights: turned by `azimuth` about its own origin, then set at
        (x, y) of what carries it; `count` copies of that evenly round the origin of what carries
        it. `standing` bodies have their outline in a vertical plane: its x axis lies level along
        the azimuth, its y axis points up, and bottom and top are distances to the left of that
        plane: the side of a lever, say, and its thickness.

    polygon(outline, chord)             shapely; no point of its rim is further than `chord` from
                                        the true rim: straight rims are exact
    footprint(body, chord)              shapely, of all copies, in plan, in the frame of the carrier
    extent(outline)                     greatest distance of its points from its own origin
    middle_of(body)                     plan position of the middle of the first copy's area
    vertical_extent(body)               (lowest, highest) of the body

Measures out of range raise ValueError with a sentence that names the measure. shapely is imported
only when one of these functions needs it.
"""

from dataclasses import dataclass, replace
from math import acos, ceil, cos, hypot, isfinite, pi, sin
from typing import Any

Geometry = Any  # of shapely, which has no types
CHORD = 1e-5  # a hundredth of a millimetre
MOST_CORNERS = 20_000


@dataclass(frozen=True, slots=True)
class Disc:
    """A disc about its origin; radius [m]."""

    radius: float

    def __post_init__(self) -> None:
        """Refuse what is no disc."""
        _positive("the radius of a disc", self.radius)


@dataclass(frozen=True, slots=True)
class Ring:
    """What is left of a disc with a round hole; outer and inner radius [m]."""

    outer: float
    inner: float

    def __post_init__(self) -> None:
        """Refuse what is no ring."""
        _positive("the inner radius of a ring", self.inner)
        _above("the outer radius of a ring", self.outer, "its inner radius", self.inner)


@dataclass(frozen=True, slots=True)
class Sector:
    """A piece of a ring, or of a disc where inner is 0: radii [m], angle [rad] halved by x."""

    outer: float
    inner: float
    angle: float

    def __post_init__(self) -> None:
        """Refuse what is no sector."""
        if not (isfinite(self.inner) and self.inner >= 0.0):
            raise ValueError("the inner radius of a sector is at least 0")
        _above("the outer radius of a sector", self.outer, "its inner radius", self.inner)
        _positive("the angle of a sector", self.angle)
        if self.angle >= 2 * pi:
            raise ValueError("the angle of a sector is less than a whole turn")


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A rectangle about its origin: length along x and width along y [m]."""

    length: float
    width: float

    def __post_init__(self) -> None:
        """Refuse what is no rectangle."""
        _positive("the length of a rectangle", self.length)
        _positive("the width of a rectangle", self.width)


@dataclass(frozen=True, slots=True)
class RegularPolygon:
    """A polygon of equal sides about its origin; radius to its corners [m], the first on x."""

    sides: int
    radius: float

    def __post_init__(self) -> None:
        """Refuse what is no polygon."""
        if self.sides < 3:
            raise ValueError("a polygon has three sides or more")
        _positive("the radius of a polygon", self.radius)


@dataclass(frozen=True, slots=True)
class Polygon:
    """A polygon that does not cross itself; corners (x, y) [m] in order, either way round."""

    points: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        """Refuse what is no polygon; whether it crosses itself is found by `crosses_itself`."""
        if len(self.points) < 3:
            raise ValueError("a polygon has three corners or more")
        if not all(isfinite(each) for point in self.points for each in point):
            raise ValueError("every corner of a polygon has a place")


@dataclass(frozen=True, slots=True)
class Slot:
    """A slot or a bar with round ends about its origin: length over all along x, width [m]."""

    length: float
    width: float

    def __post_init__(self) -> None:
        """Refuse what is no slot."""
        _positive("the width of a slot", self.width)
        _above("the length of a slot", self.length, "its width", self.width)


Outline = Disc | Ring | Sector | Rectangle | RegularPolygon | Polygon | Slot


@dataclass(frozen=True, slots=True)
class Body:
    """An outline between two heights at its place on what carries it; see the module's text."""

    outline: Outline
    bottom: float = 0.0
    top: float = 0.0
    x: float = 0.0
    y: float = 0.0
    azimuth: float = 0.0
    count: int = 1
    standing: bool = False

    def __post_init__(self) -> None:
        """Refuse what is no body."""
        if not self.bottom <= self.top:
            raise ValueError("the top of a body is not below its bottom")
        if self.count < 1:
            raise ValueError("there is at least one of a body")


def corners(outline: Outline) -> tuple[tuple[float, float], ...]:
    """The corners of an outline with straight sides, counter-clockwise; of others none."""
    match outline:
        case Rectangle(length, width):
            x, y = length / 2, width / 2
            return ((x, -y), (x, y), (-x, y), (-x, -y))
        case RegularPolygon(sides, radius):
            turns = (2 * pi * number / sides for number in range(sides))
            return tuple((radius * cos(turn), radius * sin(turn)) for turn in turns)
        case Polygon(points):
            return points if _twice_area(points) > 0 else points[::-1]
    return ()


def extent(outline: Outline) -> float:
    """Greatest distance of a point of an outline from its own origin [m]."""
    match outline:
        case Disc(radius):
            return radius
        case Ring(outer, _) | Sector(outer, _, _):
            return outer
        case Slot(length, _):
            return length / 2
    return max(hypot(*point) for point in corners(outline))


def polygon(outline: Outline, chord: float = CHORD) -> Geometry:
    """The outline as a shapely polygon, its arcs as chords of which none is off by more [m]."""
    from shapely.geometry import Polygon as Shape

    _positive("the chord tolerance", chord)
    match outline:
        case Disc(radius):
            return Shape(_arc(radius, 0.0, 2 * pi, chord)[:-1])
        case Ring(outer, inner):
            hole = _arc(inner, 0.0, 2 * pi, chord)[:-1]
            return Shape(_arc(outer, 0.0, 2 * pi, chord)[:-1], [hole])
        case Sector(outer, inner, angle):
            outside = _arc(outer, -angle / 2, angle / 2, chord)
            inside = _arc(inner, angle / 2, -angle / 2, chord) if inner else [(0.0, 0.0)]
            return Shape(outside + inside)
        case Slot(length, width):
            middle, radius = (length - width) / 2, width / 2
            right = [(x + middle, y) for x, y in _arc(radius, -pi / 2, pi / 2, chord)]
            left = [(x - middle, y) for x, y in _arc(radius, pi / 2, 3 * pi / 2, chord)]
            return Shape(right + left)
    return Shape(corners(outline))


def crosses_itself(outline: Polygon) -> bool:
    """Whether the sides of a polygon cross or touch, so that it has no inside."""
    return not polygon(outline).is_valid


def footprint(body: Body, chord: float = CHORD) -> Geometry:
    """All copies of a body in plan, as shapely, in the frame of what carries it."""
    from shapely import affinity, box, union_all

    shape: Any = polygon(body.outline, chord)
    if body.standing:
        west, _, east, _ = shape.bounds
        shape = box(west, body.bottom, east, body.top)
    cosine, sine = cos(body.azimuth), sin(body.azimuth)
    placed = affinity.affine_transform(shape, [cosine, -sine, sine, cosine, body.x, body.y])
    turns = (360.0 * number / body.count for number in range(body.count))
    copies = [affinity.rotate(placed, turn, origin=(0.0, 0.0)) for turn in turns]
    return copies[0] if body.count == 1 else union_all(copies)


def middle_of(body: Body) -> tuple[float, float]:
    """Where the middle of the area of the first copy of a body stands in plan [m]."""
    middle = footprint(replace(body, count=1), 1e-6).centroid
    return float(middle.x), float(middle.y)


def vertical_extent(body: Body) -> tuple[float, float]:
    """Lowest and highest level of a body as it is drawn [m]."""
    if not body.standing:
        return body.bottom, body.top
    _, low, _, high = polygon(body.outline).bounds
    return low, high


def _arc(radius: float, start: float, end: float, chord: float) -> list[tuple[float, float]]:
    """Points on an arc from one azimuth to another: a chord is off by r (1 - cos(half))."""
    half = acos(max(1.0 - chord / radius, 0.0))
    count = min(max(ceil(abs(end - start) / (2 * half)), 3), MOST_CORNERS)
    turns = [start + (end - start) * number / count for number in range(count + 1)]
    return [(radius * cos(turn), radius * sin(turn)) for turn in turns]


def _twice_area(points: tuple[tuple[float, float], ...]) -> float:
    """Twice the area inside, positive where the points go counter-clockwise (shoelace)."""
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return sum(x * next_y - next_x * y for (x, y), (next_x, next_y) in pairs)


def _positive(what: str, value: float) -> None:
    if not (isfinite(value) and value > 0.0):
        raise ValueError(f"{what} is more than 0")


def _above(what: str, value: float, other: str, limit: float) -> None:
    if not (isfinite(value) and value > limit):
        raise ValueError(f"{what} is more than {other}")
