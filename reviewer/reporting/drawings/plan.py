"""The plan of a design, from above and to scale."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from reviewer.judging.reviewed import Review
from reviewer.parts.figures import Round
from reviewer.reporting.drawings.canvas import AXIS, Canvas
from reviewer.reporting.drawings.dimensions import put_dimensions
from reviewer.reporting.drawings.edges import put_edges, seen_from_above
from reviewer.reporting.drawings.labels import Label, put_labels
from reviewer.reporting.drawings.legend import Legend, put_heading, put_legend
from reviewer.reporting.drawings.marks import (
    Mark,
    dimensions_of,
    numbers_of,
    pinches_of,
    put_pinches,
)
from reviewer.reporting.drawings.roller_loads import largest_of, put_in_plan, rollers_of, words_of
from reviewer.reporting.drawings.scene import Placed, Scene, scene_of
from reviewer.reporting.drawings.view import View, view_of

if TYPE_CHECKING:
    from shapely import Geometry


def plan_drawing(
    review: Review, configuration: str | None = None, marks: Sequence[Mark] = (), name: str = "plan"
) -> str:
    """The plan of a design in a configuration (the first, if none is named), as SVG.

    `marks` number the findings that it shows: dimensions of what they want changed, the pinch
    point circled, the number beside the name of the part. `name` begins the ids of the picture.
    Raises NoSuchConfiguration.
    """
    scene = scene_of(review, configuration)
    seen = seen_from_above(scene)
    lines = {placed.name: _lines(placed) for placed in scene.parts.values()}
    boxes = [each.area.bounds for each in seen]
    boxes += [line.bounds for drawn in lines.values() for line, _ in drawn]
    view = view_of(boxes)
    legend = Legend(scene, "Plan", marks)
    canvas = Canvas(name, legend.title, legend.says)
    put_edges(canvas, view, seen, plan=True)
    for drawn in lines.values():
        for line, circle in drawn:
            _put_line(canvas, view, line, circle)
    rollers = rollers_of(scene, [mark.finding for mark in marks])
    for each in rollers:
        put_in_plan(canvas, view, each, largest_of(rollers))
    put_pinches(canvas, view, pinches_of(scene, marks, plan=True))
    put_labels(canvas, view, _labels(scene, lines, marks))
    below = put_dimensions(
        canvas, view, legend.design, dimensions_of(scene, marks, upright=False), canvas.bottom
    )
    put_legend(
        canvas, view, legend, [words for each in rollers for words in words_of(scene, each)], below
    )
    put_heading(canvas, legend)
    return canvas.svg()


Line = tuple["Geometry", tuple[float, float, float] | None]


def _lines(placed: Placed) -> list[Line]:
    """The lines of a part that are no edges, in plan; of a circle its centre and radius too."""
    from shapely import LinearRing, LineString, Point

    found: list[Line] = []
    for line in placed.drawn.lines:
        if isinstance(line, Round):
            circle = Point(placed.x, placed.y).buffer(line.radius, quad_segs=32).exterior
            found.append((circle, (placed.x, placed.y, line.radius)))
            continue
        places = [(placed.x + x, placed.y + y) for x, y, _ in line.places]
        if len(set(places)) < 2:
            continue  # upright: a point in plan
        found.append((LinearRing(places) if line.closed else LineString(places), None))
    return found


def _put_line(
    canvas: Canvas, view: View, line: "Geometry", circle: tuple[float, float, float] | None
) -> None:
    if circle is not None:
        x, y, radius = circle
        canvas.circle(view.at(x, y), radius * view.scale, AXIS)
        return
    for run in view.all(line):
        canvas.run(run, AXIS)


def _labels(scene: Scene, lines: dict[str, list[Line]], marks: Sequence[Mark]) -> list[Label]:
    """Each part that is seen, by the edges of its bodies, or by its lines if it has none."""
    from shapely import union_all

    found = []
    for name in scene.parts:
        solids = [solid.plan.boundary for solid in scene.of(name) if solid.piece not in ROLLERS]
        edges = solids or [line for line, _ in lines[name]]
        if edges:
            found.append(Label(name, numbers_of(name, marks), union_all(edges)))
    return found


ROLLERS = frozenset({"carry", "hold_down", "side"})
