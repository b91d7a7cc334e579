"""The elevation of a design, from the front and to scale: what lies towards -y is nearest."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from reviewer.judging.reviewed import Review
from reviewer.parts.figures import Round
from reviewer.reporting.drawings.canvas import AXIS, THIN, Canvas
from reviewer.reporting.drawings.dimensions import put_dimensions
from reviewer.reporting.drawings.edges import put_edges, seen_from_the_front
from reviewer.reporting.drawings.labels import Label, put_labels
from reviewer.reporting.drawings.legend import Legend, put_heading, put_legend
from reviewer.reporting.drawings.marks import (
    Mark,
    dimensions_of,
    numbers_of,
    pinches_of,
    put_pinches,
)
from reviewer.reporting.drawings.roller_loads import (
    largest_of,
    put_in_elevation,
    rollers_of,
    words_of,
)
from reviewer.reporting.drawings.scene import Placed, Scene, scene_of
from reviewer.reporting.drawings.view import View, view_of

if TYPE_CHECKING:
    from shapely import Geometry

BELOW = 10.0  # units of the floor's hatching
ROLLERS = frozenset({"carry", "hold_down", "side"})


def elevation_drawing(
    review: Review,
    configuration: str | None = None,
    marks: Sequence[Mark] = (),
    name: str = "elevation",
) -> str:
    """The elevation of a design in a configuration (the first, if none is named), as SVG.

    As `plan_drawing`; dimensions are the heights that findings want changed.
    Raises NoSuchConfiguration.
    """
    scene = scene_of(review, configuration)
    seen = seen_from_the_front(scene)
    lines = {placed.name: _lines(placed) for placed in scene.parts.values()}
    boxes = [each.area.bounds for each in seen]
    boxes += [line.bounds for drawn in lines.values() for line in drawn]
    view = view_of(_with_floor(boxes))
    legend = Legend(scene, "Elevation", marks)
    canvas = Canvas(name, legend.title, legend.says)
    put_edges(canvas, view, seen, plan=False)
    for drawn in lines.values():
        for line in drawn:
            for run in view.all(line):
                canvas.run(run, AXIS)
    _put_floor(canvas, view)
    rollers = rollers_of(scene, [mark.finding for mark in marks])
    for each in rollers:
        put_in_elevation(canvas, view, each, largest_of(rollers))
    put_pinches(canvas, view, pinches_of(scene, marks, plan=False))
    put_labels(canvas, view, _labels(scene, lines, marks), level=True)
    below = put_dimensions(
        canvas, view, legend.design, dimensions_of(scene, marks, upright=True), canvas.bottom
    )
    put_legend(
        canvas, view, legend, [words for each in rollers for words in words_of(scene, each)], below
    )
    put_heading(canvas, legend)
    return canvas.svg()


Box = tuple[float, float, float, float]


def _with_floor(boxes: list[Box]) -> list[Box]:
    """Boxes down to the floor, which is drawn under everything."""
    return [(west, min(south, 0.0), east, north) for west, south, east, north in boxes]


def _put_floor(canvas: Canvas, view: View) -> None:
    """The floor, hatched."""
    left, right = view.at(view.west, 0.0), view.at(view.east, 0.0)
    (start, y), end = left, right[0]
    canvas.line((start - 8, y), (end + 8, y), THIN)
    corners = ((start - 8, y), (end + 8, y), (end + 8, y + BELOW), (start - 8, y + BELOW))
    canvas.hatch(corners, 8.0)


def _lines(placed: Placed) -> list["Geometry"]:
    """The lines of a part that are no edges, from the front."""
    from shapely import LineString

    found: list[Geometry] = []
    for line in placed.drawn.lines:
        if isinstance(line, Round):
            ends = [(-line.radius, line.level), (line.radius, line.level)]
        else:
            places = [*line.places, *line.places[:1]] if line.closed else line.places
            ends = [(x, z) for x, _, z in places]
        moved = [(placed.x + x, placed.level + z) for x, z in ends]
        if len(set(moved)) > 1:
            found.append(LineString(moved))
    return found


def _labels(scene: Scene, lines: dict[str, list["Geometry"]], marks: Sequence[Mark]) -> list[Label]:
    """Each part that is seen, by the edges of its bodies, or by its lines if it has none."""
    from shapely import union_all

    found = []
    for name in scene.parts:
        solids = [solid.side.boundary for solid in scene.of(name) if solid.piece not in ROLLERS]
        edges = solids or lines[name]
        if edges:
            found.append(Label(name, numbers_of(name, marks), union_all(edges)))
    return found
