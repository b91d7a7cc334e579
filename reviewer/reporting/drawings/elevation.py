"""The elevation of a design, from the front and to scale: what lies towards -y is nearest."""

from collections.abc import Sequence

from reviewer.judging.reviewed import Review
from reviewer.reporting.drawings.canvas import THIN, Canvas
from reviewer.reporting.drawings.marks import Mark
from reviewer.reporting.drawings.parts_view import parts_view
from reviewer.reporting.drawings.view import View

BELOW, BESIDE = 10.0, 8.0  # units of the floor's hatching


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
    return parts_view(review, configuration, marks, name, plan=False, floor=_put_floor)


def _put_floor(canvas: Canvas, view: View) -> None:
    """The floor, hatched."""
    (left, y), (right, _) = view.at(view.west, 0.0), view.at(view.east, 0.0)
    start, end = left - BESIDE, right + BESIDE
    canvas.line((start, y), (end, y), THIN)
    canvas.hatch(((start, y), (end, y), (end, y + BELOW), (start, y + BELOW)), 8.0)
