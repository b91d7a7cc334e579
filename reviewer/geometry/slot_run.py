"""How a slot runs in a plate that drives slides: its middle line, and the lines beside it.

A curved one is a spiral of Archimedes, whose radius grows with its angle; a straight one passes the
axis at a distance. Both begin on the x axis, at the inner radius.
"""

from math import acos, atan2, cos, sin
from typing import NamedTuple

Point = tuple[float, float]


class Step(NamedTuple):
    """A place on the middle line of a slot [m], and the direction in which it goes on [rad]."""

    place: Point
    way: float


def middle_line(
    inner: float, outer: float, turn: float, distance: float | None, steps: int
) -> tuple[Step, ...]:
    """The middle line from the inner radius to the outer one [m].

    It goes through `turn` [rad] in so many steps; with a distance from the axis [m] it is straight.
    """
    if distance is not None:
        further = acos(min(distance / outer, 1.0)) - acos(min(distance / inner, 1.0))
        x, y = outer * cos(further), outer * sin(further)
        way = atan2(y, x - inner)
        return (Step((inner, 0.0), way), Step((x, y), way))
    return tuple(_on_spiral(inner, outer, turn, step / steps) for step in range(steps + 1))


def _on_spiral(inner: float, outer: float, turn: float, share: float) -> Step:
    radius, angle = inner + share * (outer - inner), turn * share
    cosine, sine = cos(angle), sin(angle)
    out, round_it = outer - inner, radius * turn  # what the place moves by, for the whole share
    way = atan2(out * sine + round_it * cosine, out * cosine - round_it * sine)
    return Step((radius * cosine, radius * sine), way)


def beside(steps: tuple[Step, ...], aside: float) -> tuple[Point, ...]:
    """The line at a distance to the left of a middle line, square to its run [m]."""
    return tuple((x - aside * sin(way), y + aside * cos(way)) for (x, y), way in steps)
