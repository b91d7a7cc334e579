"""What plan and elevation have in common: edges, lines, loads, marks, names, and words around."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from reviewer.judging.reviewed import Review
from reviewer.reporting.drawings.canvas import Canvas
from reviewer.reporting.drawings.dimensions import put_dimensions
from reviewer.reporting.drawings.edges import put_edges, seen_from_above, seen_from_the_front
from reviewer.reporting.drawings.labels import Label, many_in_words, put_labels
from reviewer.reporting.drawings.legend import Legend, put_heading, put_legend
from reviewer.reporting.drawings.marks import (
    Mark,
    dimensions_of,
    not_placed,
    numbers_of,
    pinches_of,
    put_pinches,
)
from reviewer.reporting.drawings.reference_lines import Line, lines_of, put_lines
from reviewer.reporting.drawings.roller_loads import (
    largest_of,
    put_in_elevation,
    put_in_plan,
    rollers_of,
    words_of,
)
from reviewer.reporting.drawings.scene import Scene, scene_of
from reviewer.reporting.drawings.view import View, view_of

if TYPE_CHECKING:
    from shapely import Geometry

ROLLERS = frozenset({"carry", "hold_down", "side"})
Box = tuple[float, float, float, float]


def parts_view(
    review: Review,
    configuration: str | None,
    marks: Sequence[Mark],
    name: str,
    *,
    plan: bool,
    floor: Callable[[Canvas, View], None] | None = None,
) -> str:
    """A view of a design: from above (`plan`) or from the front, with what `floor` draws."""
    scene = scene_of(review, configuration)
    seen = seen_from_above(scene) if plan else seen_from_the_front(scene)
    lines = {placed.name: lines_of(placed, plan=plan) for placed in scene.parts.values()}
    boxes: list[Box] = [each.area.bounds for each in seen]
    boxes += [line.course.bounds for drawn in lines.values() for line in drawn]
    view = view_of(boxes if floor is None else [*boxes, *map(_to_the_floor, boxes)])
    legend = Legend(scene, "Plan" if plan else "Elevation", marks)
    canvas = Canvas(name, legend.title, legend.says)
    put_edges(canvas, view, seen, plan=plan)
    for drawn in lines.values():
        put_lines(canvas, view, drawn)
    if floor is not None:
        floor(canvas, view)
    rollers = rollers_of(scene, [mark.finding for mark in marks])
    put_loads = put_in_plan if plan else put_in_elevation
    for each in rollers:
        put_loads(canvas, view, each, largest_of(rollers))
    pinches = pinches_of(scene, marks, plan=plan)
    put_pinches(canvas, view, pinches)
    labels = _labels(scene, lines, marks, plan=plan)
    put_labels(canvas, view, labels, level=not plan)
    dimensions = dimensions_of(scene, marks, upright=not plan)
    below = put_dimensions(canvas, view, legend.design, dimensions, canvas.bottom)
    words = [words for each in rollers for words in words_of(scene, each)]
    words += [*many_in_words(labels), *not_placed(scene, marks, pinches)]
    put_legend(canvas, view, legend, words, below)
    put_heading(canvas, legend)
    return canvas.svg()


def _to_the_floor(box: Box) -> Box:
    """A box as far as the floor, which is drawn under everything."""
    west, south, east, north = box
    return (west, min(south, 0.0), east, north)


def _labels(
    scene: Scene, lines: dict[str, list[Line]], marks: Sequence[Mark], *, plan: bool
) -> list[Label]:
    """Each part that is seen, by the edges of its bodies, or by its lines if it has none."""
    from shapely import union_all

    found = []
    for name in scene.parts:
        solids = [solid for solid in scene.of(name) if solid.piece not in ROLLERS]
        edges: list[Geometry] = [(each.plan if plan else each.side).boundary for each in solids]
        edges = edges or [line.course for line in lines[name]]
        if edges:
            found.append(Label(name, numbers_of(name, marks), union_all(edges)))
    return found
