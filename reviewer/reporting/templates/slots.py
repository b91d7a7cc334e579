"""The slots of a drive plate as they are cut: as wide as told, square to their run, round ends."""

from collections.abc import Iterator
from math import acos, atan2, cos, isnan, pi, sin
from typing import NamedTuple

from reviewer.geometry.rim import Arc, Edge, Point, moved, opened
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.templates.template import Layer, Stroke, cross, on

STEPS = 120  # pieces of a curved side, which are then within 0.01 mm of it on a large plate
HALF_CROSS = 0.003  # m


class _Run(NamedTuple):
    """A place on the middle line of a slot, and the direction in which it goes on [rad]."""

    place: Point
    way: float


def slots_of(values: Quantities, part: str) -> Iterator[Stroke]:
    """Both sides and both ends of each slot, and a cross where each end is drilled."""
    inner, outer, turn, width = (
        values.number(part, f"slot.{path}") for path in ("inner", "outer", "turn", "width")
    )
    count = values.choice(part, "slots")
    if not isinstance(count, int) or any(isnan(each) for each in (inner, outer, turn, width)):
        return
    runs = _middle_line(inner, outer, turn, values.number(part, "slot.distance"))
    edges = tuple(_rim(runs, width / 2))
    for number in range(count):
        angle = 2 * pi * number / count
        yield from on(Layer.OPENINGS, (moved(edge, 0.0, 0.0, angle) for edge in edges))
        for end in (runs[0], runs[-1]):
            (x, y), cosine, sine = end.place, cos(angle), sin(angle)
            place = (x * cosine - y * sine, x * sine + y * cosine)
            yield from cross(place, HALF_CROSS, Layer.CENTRE, angle + end.way)


def _middle_line(inner: float, outer: float, turn: float, distance: float) -> list[_Run]:
    """A spiral whose radius grows with its angle, or a straight line past the middle."""
    if not isnan(distance):
        further = acos(min(distance / outer, 1.0)) - acos(min(distance / inner, 1.0))
        x, y = outer * cos(further), outer * sin(further)
        way = atan2(y, x - inner)
        return [_Run((inner, 0.0), way), _Run((x, y), way)]
    runs = []
    for step in range(STEPS + 1):
        share = step / STEPS
        radius, angle = inner + share * (outer - inner), turn * share
        cosine, sine = cos(angle), sin(angle)
        out, round_it = outer - inner, radius * turn
        way = atan2(out * sine + round_it * cosine, out * cosine - round_it * sine)
        runs.append(_Run((radius * cosine, radius * sine), way))
    return runs


def _rim(runs: list[_Run], half: float) -> Iterator[Edge]:
    """The sides, half of the width square from the middle line, and half a circle at each end."""
    for side in (1.0, -1.0):
        yield from opened(
            (x - side * half * sin(way), y + side * half * cos(way)) for (x, y), way in runs
        )
    first, last = runs[0], runs[-1]
    yield Arc(first.place, half, first.way + pi / 2, first.way + 3 * pi / 2)
    yield Arc(last.place, half, last.way - pi / 2, last.way + pi / 2)
