"""The slots of a drive plate as they are cut: as wide as told, square to their run, round ends."""

from collections.abc import Iterator
from math import cos, isnan, pi, sin

from reviewer.geometry.rim import Arc, Edge, moved, opened
from reviewer.geometry.slot_run import Step, beside, middle_line
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.templates.template import Layer, Stroke, cross, on

STEPS = 120  # pieces of a curved side, which are then within 0.01 mm of it on a large plate
HALF_CROSS = 0.003  # m


def slots_of(values: Quantities, part: str) -> Iterator[Stroke]:
    """Both sides and both ends of each slot, and a cross where each end is drilled."""
    inner, outer, turn, width, distance = (
        values.number(part, f"slot.{path}")
        for path in ("inner", "outer", "turn", "width", "distance")
    )
    count = values.choice(part, "slots")
    if not isinstance(count, int) or any(isnan(each) for each in (inner, outer, turn, width)):
        return
    steps = middle_line(inner, outer, turn, None if isnan(distance) else distance, STEPS)
    edges = tuple(_rim(steps, width / 2))
    for number in range(count):
        angle = 2 * pi * number / count
        yield from on(Layer.OPENINGS, (moved(edge, 0.0, 0.0, angle) for edge in edges))
        for end in (steps[0], steps[-1]):
            (x, y), cosine, sine = end.place, cos(angle), sin(angle)
            place = (x * cosine - y * sine, x * sine + y * cosine)
            yield from cross(place, HALF_CROSS, Layer.CENTRE, angle + end.way)


def _rim(steps: tuple[Step, ...], half: float) -> Iterator[Edge]:
    """The sides, half of the width from the middle line, and half a circle at each end."""
    yield from opened(beside(steps, half))
    yield from opened(beside(steps, -half))
    first, last = steps[0], steps[-1]
    yield Arc(first.place, half, first.way + pi / 2, first.way + 3 * pi / 2)
    yield Arc(last.place, half, last.way - pi / 2, last.way + pi / 2)
