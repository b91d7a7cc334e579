"""What is found, numbered as the report numbers it, and where in a drawing it is."""

from collections.abc import Sequence
from math import dist
from typing import TYPE_CHECKING, NamedTuple

from reviewer.judging.finding import Finding
from reviewer.judging.reviewed import Review
from reviewer.reporting.drawing import Point
from reviewer.reporting.drawings.canvas import Canvas
from reviewer.reporting.drawings.dimensions import Dimension
from reviewer.reporting.drawings.pinch_point import pinch_point
from reviewer.reporting.drawings.scene import Scene
from reviewer.reporting.drawings.view import View

if TYPE_CHECKING:
    pass

RING = 13.0  # radius of the circle about a pinch point
APART = 19.0  # from one number to the next
PINCHES = frozenset({"crushing", "shearing"})


class Mark(NamedTuple):
    """A finding and the number under which the report lists it."""

    number: int
    finding: Finding


class Pinch(NamedTuple):
    """A place where something can be caught: from one edge to the other [m]."""

    number: int
    start: tuple[float, float]
    end: tuple[float, float]


def marks_of(review: Review) -> tuple[Mark, ...]:
    """What fails or asks for a judgement, numbered in the order of the findings."""
    asked = [finding for finding in review.findings if finding.verdict in ("fail", "review")]
    return tuple(Mark(number, finding) for number, finding in enumerate(asked, 1))


def numbers_of(part: str, marks: Sequence[Mark]) -> tuple[int, ...]:
    """The numbers of what is found of a part, in order."""
    found = {
        mark.number for mark in marks if part == mark.finding.part or part in mark.finding.others
    }
    return tuple(sorted(found))


def dimensions_of(scene: Scene, marks: Sequence[Mark], *, upright: bool) -> list[Dimension]:
    """The fields that findings want changed, where they are distances of a part's shape.

    In plan those that are level, from the front (`upright`) those that are heights.
    """
    wanted: dict[tuple[str, str], set[int]] = {}
    for mark in marks:
        for change in mark.finding.change:
            part, _, path = change.partition(" (")[0].partition(".")
            wanted.setdefault((part, path), set()).add(mark.number)
    found = []
    for placed in scene.parts.values():
        for size in placed.drawn.sizes:
            numbers = wanted.get((placed.name, size.path))
            if numbers is None or (size.start[2] != size.end[2]) != upright:
                continue
            name = f"{placed.name}.{size.path}"
            first = placed.stance.each[0]
            (x1, y1, z1), (x2, y2, z2) = map(first.place, (size.start, size.end))
            ends = ((x1, z1), (x2, z2)) if upright else ((x1, y1), (x2, y2))
            length = dist(*ends)
            found.append(Dimension(name, length, *ends, tuple(sorted(numbers))))
    return found


def pinches_of(scene: Scene, marks: Sequence[Mark], *, plan: bool) -> list[Pinch]:
    """Where the gaps of findings are, and where parts that move run into each other."""
    found = []
    for mark in marks:
        if not _is_pinch(mark.finding):
            continue
        ends = pinch_point(scene, mark.finding, plan=plan)
        if ends is not None:
            found.append(Pinch(mark.number, *ends))
    return found


def _is_pinch(finding: Finding) -> bool:
    """Whether a finding is about a place between two parts."""
    return finding.hazard in PINCHES or finding.rule.startswith(("gap.", "moving_pair."))


def not_placed(scene: Scene, marks: Sequence[Mark], pinches: Sequence[Pinch]) -> list[str]:
    """Marks of parts that are not drawn, or of the whole design, in words."""
    drawn = {name for name in scene.parts if name not in scene.not_drawn}
    shown = {pinch.number for pinch in pinches}
    left = [
        mark
        for mark in marks
        if mark.number not in shown
        and mark.finding.part not in drawn
        and not drawn.intersection(mark.finding.others)
    ]
    named = ", ".join(f"({mark.number}) {mark.finding.name}" for mark in left)
    return [f"Without a place in this view: {named}."] if named else []


def put_pinches(canvas: Canvas, view: View, pinches: Sequence[Pinch]) -> None:
    """A circle about each place, with its number beside it."""
    taken: list[tuple[float, float]] = []
    by_place: dict[tuple[float, float], list[Pinch]] = {}
    for pinch in pinches:
        x, y = ((pinch.start[k] + pinch.end[k]) / 2 for k in (0, 1))
        by_place.setdefault((round(x, 6), round(y, 6)), []).append(pinch)
    for (x, y), here in by_place.items():
        centre = view.at(x, y)
        canvas.circle(centre, RING, "stroke='currentColor' stroke-width='2'")
        for pinch in here:
            place = _free(centre, taken)
            taken.append(place)
            canvas.balloon(place, str(pinch.number))


def _free(centre: Point, taken: Sequence[Point]) -> Point:
    """A place for a number beside a circle, over no other number: at a corner, else above."""
    corners = [
        (centre[0] + side * (RING + 8), centre[1] + up * (RING + 2))
        for up in (-1, 1)
        for side in (1, -1)
    ]
    for corner in corners:
        if all(dist(corner, other) >= APART for other in taken):
            return corner
    place = corners[0]
    while any(dist(place, other) < APART for other in taken):
        place = (place[0], place[1] - APART)
    return place
