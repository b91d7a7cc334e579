"""Marks of divided circles and openings as a template draws them."""

from collections.abc import Iterator
from math import cos, isnan, pi, sin

from reviewer.geometry.rim import Arc, Circle, Edge, Line, Point, moved
from reviewer.reporting.sheets.circle import Circle as Divided
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.templates.template import Layer, Stroke, Words, cross, on

NEARLY = 1e-9
BEYOND = 0.012  # m, how far a number stands inside its mark
BESIDE = 0.006  # m, and how far aside
HALF_CROSS = 0.005  # m


def marks_of(
    values: Quantities, part: str, *, on_plate: bool = False
) -> tuple[tuple[Stroke, ...], tuple[Words, ...]]:
    """The scribed circle, its centre lines, a cross and a hole at each mark, and its number.

    A plate has centre lines of its own, along x and y: there only others are drawn.
    """
    circle = Divided(values, part)
    if not circle.is_known:
        return (), ()
    radius, hole = circle.diameter / 2, circle.number("hole")
    strokes = [Stroke(Layer.CIRCLES, Circle((0.0, 0.0), radius))]
    own = on_plate and abs(sin(2 * circle.start)) < NEARLY
    for turn in () if own else (circle.start, circle.start + pi / 2):
        ends = (_at(radius + BEYOND, turn), _at(-radius - BEYOND, turn))
        strokes += on(Layer.LINES, (Line(*ends),))
    words = []
    for number, angle in enumerate(circle.angles, 1):
        place = _at(radius, angle)
        strokes += cross(place, HALF_CROSS, Layer.HOLES, angle)
        if not isnan(hole):
            strokes.append(Stroke(Layer.HOLES, Circle(place, hole / 2)))
        inside = BEYOND + (0.0 if isnan(hole) else hole / 2)
        x, y = _at(radius - inside, angle)
        aside = (x - BESIDE * sin(angle), y + BESIDE * cos(angle))  # beside a centre line
        words.append(Words(aside, str(number)))
    return tuple(strokes), tuple(words)


def measures_of(values: Quantities, part: str) -> str:
    """What is measured on the template of a divided circle once it is printed."""
    circle, chord = (values.told(part, path, 4) for path in ("circle", "chord"))
    hole = values.told(part, "hole")
    drilled = f", holes {hole}" if hole else ""
    return f"{values.count(part)} marks on a circle of {circle}, chord {chord}{drilled}"


def _at(radius: float, angle: float) -> Point:
    return (radius * cos(angle), radius * sin(angle))


def openings_of(values: Quantities, part: str) -> tuple[Stroke, ...]:
    """Round or cornered openings, one or several on a circle; nothing where a size is unknown."""
    width, length = values.number(part, "width"), values.number(part, "length")
    circle, count = values.number(part, "circle"), values.count(part)
    if isnan(width) or isnan(length):
        return ()
    radius = 0.0 if isnan(circle) else circle / 2
    if values.named(part, "shape") == "round":
        edges: tuple[Edge, ...] = (Circle((0.0, 0.0), width / 2),)
    else:
        corner = values.number(part, "corner")
        edges = tuple(_cornered(length, width, 0.0 if isnan(corner) else corner))
    strokes: list[Stroke] = []
    if radius:
        strokes.append(Stroke(Layer.CIRCLES, Circle((0.0, 0.0), radius)))
    for number in range(count):
        turn = 2 * pi * number / count
        x, y = _at(radius, turn)
        strokes += on(Layer.OPENINGS, (moved(edge, x, y, turn) for edge in edges))
        strokes += cross((x, y), HALF_CROSS, Layer.CENTRE, turn)
    return tuple(strokes)


def _cornered(length: float, width: float, corner: float) -> Iterator[Edge]:
    """A rectangle about the origin, length along x, its corners round."""
    corner = min(corner, length / 2, width / 2)
    x, y = length / 2, width / 2
    inner_x, inner_y = x - corner, y - corner
    if inner_x > 0:
        yield Line((-inner_x, -y), (inner_x, -y))
        yield Line((inner_x, y), (-inner_x, y))
    if inner_y > 0:
        yield Line((x, -inner_y), (x, inner_y))
        yield Line((-x, inner_y), (-x, -inner_y))
    if corner > 0:
        quarters = (
            (-inner_x, -inner_y),
            (inner_x, -inner_y),
            (inner_x, inner_y),
            (-inner_x, inner_y),
        )
        for number, place in enumerate(quarters, 2):
            yield Arc(place, corner, number * pi / 2, (number + 1) * pi / 2)
