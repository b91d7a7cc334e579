"""The edges of a view: what is seen as full lines, what is behind something as dashed ones."""

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from reviewer.reporting.drawings.canvas import EDGE, HIDDEN, Canvas
from reviewer.reporting.drawings.scene import Scene, Solid
from reviewer.reporting.drawings.view import View

if TYPE_CHECKING:
    from shapely import Geometry

HAIR = 1e-7  # m; edges that lie on each other are seen


class Seen(NamedTuple):
    """A solid in a view: its area, and its edges that are seen and that are not."""

    solid: Solid
    area: "Geometry"
    shown: "Geometry"
    hidden: "Geometry"


def seen_from_above(scene: Scene) -> list[Seen]:
    """Every solid from above: what reaches higher covers what lies under it."""
    return _seen(scene.solids, lambda solid: solid.plan, lambda solid: solid.top)


def seen_from_the_front(scene: Scene) -> list[Seen]:
    """Every solid from the front: what comes nearer covers what stands behind."""
    return _seen(scene.solids, lambda solid: solid.side, lambda solid: solid.near)


def _seen(
    solids: Sequence[Solid], area: Callable[[Solid], "Geometry"], rank: Callable[[Solid], float]
) -> list[Seen]:
    """From the first in rank on, each against the union of all those before it."""
    from shapely import MultiPolygon, union_all

    found: list[Seen] = []
    covering: Geometry = MultiPolygon()
    level: list[Geometry] = []
    last = float("inf")
    for solid in sorted(solids, key=lambda each: (-rank(each), each.part, each.piece)):
        if rank(solid) < last - HAIR:
            covering, level, last = union_all([covering, *level]), [], rank(solid)
        shape = area(solid)
        inside = covering.buffer(-HAIR)
        found.append(
            Seen(
                solid, shape, shape.boundary.difference(inside), shape.boundary.intersection(inside)
            )
        )
        level.append(shape)
    return found


def put_edges(canvas: Canvas, view: View, seen: Iterable[Seen], *, plan: bool) -> None:
    """Draw all edges: the hidden ones first."""
    each = list(seen)
    for one in each:
        _put(canvas, view, one, one.hidden, HIDDEN, plan=plan)
    for one in each:
        _put(canvas, view, one, one.shown, EDGE, plan=plan)


def _put(
    canvas: Canvas, view: View, seen: Seen, lines: "Geometry", look: str, *, plan: bool
) -> None:
    from shapely import line_merge

    if lines.is_empty:
        return
    circles = seen.solid.round if plan else None
    if circles is not None and abs(lines.length - seen.area.boundary.length) < HAIR:
        x, y, radii = circles
        for radius in radii:
            canvas.circle(view.at(x, y), radius * view.scale, look)
        return
    merged = line_merge(lines) if lines.geom_type == "MultiLineString" else lines
    for run in view.all(merged):
        closed = run[0] == run[-1] and len(run) > 3
        canvas.run(run[:-1] if closed else run, look, closed=closed)
