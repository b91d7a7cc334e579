"""The lines of parts that are no edges: circles of rollers and feet, slots, where feet stand."""

from typing import TYPE_CHECKING, NamedTuple

from reviewer.parts.figures import Round, Run
from reviewer.reporting.drawings.canvas import AXIS, Canvas
from reviewer.reporting.drawings.scene import Placed
from reviewer.reporting.drawings.view import View

if TYPE_CHECKING:
    from shapely import Geometry


class Line(NamedTuple):
    """A line in a view [m]; of a circle also its centre and radius."""

    course: "Geometry"
    circle: tuple[float, float, float] | None = None


def lines_of(placed: Placed, *, plan: bool) -> list[Line]:
    """The lines of a part from above, or from the front."""
    if placed.in_plan and not plan:
        return []
    found = (_line(placed, line, plan=plan) for line in placed.drawn.lines)
    return [line for line in found if line is not None]


def _line(placed: Placed, line: Round | Run, *, plan: bool) -> Line | None:
    from shapely import LineString, Point

    whole = placed.stance.whole
    if isinstance(line, Round):
        x, y, _ = whole.place((0.0, 0.0, 0.0))
        if plan:
            course = Point(x, y).buffer(line.radius, quad_segs=32).exterior
            return Line(course, (x, y, line.radius))
        level = line.level + whole.raised
        return Line(LineString([(x + side * line.radius, level) for side in (-1.0, 1.0)]))
    places = [*line.places, *line.places[:1]] if line.closed else list(line.places)
    moved = [(x, y) if plan else (x, z) for x, y, z in map(whole.place, places)]
    return Line(LineString(moved)) if len(set(moved)) > 1 else None


def put_lines(canvas: Canvas, view: View, lines: list[Line]) -> None:
    """Draw them as chain lines, as centre lines are drawn."""
    for course, circle in lines:
        if circle is not None:
            x, y, radius = circle
            canvas.circle(view.at(x, y), radius * view.scale, AXIS)
            continue
        for run in view.all(course):
            canvas.run(run, AXIS)
