"""Dimension lines of the fields that findings want changed, and the bar that shows the scale."""

from collections.abc import Sequence
from math import hypot
from typing import NamedTuple

from reviewer.notation.dimension import LENGTH
from reviewer.notation.preferred import preferred_units
from reviewer.notation.show import show_like, unit_for
from reviewer.reading.design import Design
from reviewer.reporting.drawing import Point
from reviewer.reporting.drawings.canvas import SMALL, THIN, Canvas
from reviewer.reporting.drawings.view import View, round_length

STACK = 24.0  # from one dimension line to the next
LEVEL = 1e-6  # m


class Dimension(NamedTuple):
    """A length between two places of a view [m], what it is called, and whose findings want it."""

    name: str
    length: float
    start: tuple[float, float]
    end: tuple[float, float]
    numbers: tuple[int, ...]


MOST, MOST_UPRIGHT = 8, 4  # dimension lines in one view


def put_dimensions(
    canvas: Canvas, view: View, design: Design, dimensions: Sequence[Dimension], below: float
) -> float:
    """Level ones under the view, upright ones to its left, slanting ones where they are.

    At most MOST of them, the first that are found first. Returns how far down they reach.
    """
    left = -STACK
    upright = [one for one in dimensions if abs(one.start[1] - one.end[1]) >= LEVEL]
    most = MOST_UPRIGHT if len(upright) == len(dimensions) else MOST
    chosen = sorted(dimensions, key=lambda one: (one.numbers, one.name))[:most]
    for each in sorted(chosen, key=lambda one: (one.length, one.name)):
        start, end = view.at(*each.start), view.at(*each.end)
        words = _words(design, each)
        if abs(each.start[1] - each.end[1]) < LEVEL:
            below += STACK
            _level(canvas, start, end, below, words)
        elif abs(each.start[0] - each.end[0]) < LEVEL:
            _upright(canvas, start, end, left, words)
            left -= STACK
        else:
            canvas.arrow(_middle(start, end), start)
            canvas.arrow(_middle(start, end), end)
            canvas.text(_middle(start, end), words, "middle", SMALL)
    return below


def _words(design: Design, each: Dimension) -> str:
    numbers = "".join(f" ({number})" for number in each.numbers)
    return f"{each.name} {length_words(design, each.length)}{numbers}"


def length_words(design: Design, length: float) -> str:
    """A length in the unit that the design uses."""
    return show_like(length, LENGTH, preferred_units(design.units))


def _level(canvas: Canvas, start: Point, end: Point, y: float, words: str) -> None:
    for place in (start, end):
        canvas.line((place[0], place[1] + 3), (place[0], y + 4))
    middle = ((start[0] + end[0]) / 2, y)
    for place in (start, end):
        canvas.arrow(middle, (place[0], y))
    canvas.text((middle[0], y - 4), words, "middle", SMALL)


def _upright(canvas: Canvas, start: Point, end: Point, x: float, words: str) -> None:
    for place in (start, end):
        canvas.line((place[0] - 3, place[1]), (x - 4, place[1]))
    middle = (x, (start[1] + end[1]) / 2)
    for place in (start, end):
        canvas.arrow(middle, (x, place[1]))
    canvas.text((x - 4, middle[1]), words, "middle", SMALL, turned=True)


def _middle(start: Point, end: Point) -> Point:
    return ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)


def put_scale(canvas: Canvas, view: View, design: Design, corner: Point) -> None:
    """A bar of a round length, half of it full, with its length."""
    unit = unit_for(LENGTH, preferred_units(design.units))
    length = round_length(0.3 * hypot(view.width, view.height) / view.scale / unit.factor)
    half = length * unit.factor * view.scale / 2
    x, y = corner
    canvas.box((x, y), (half, 5.0), f"fill='currentColor' {THIN}")
    canvas.box((x + half, y), (half, 5.0), THIN)
    canvas.text((x + 2 * half + 8, y + 7), f"{length:g} {unit.symbol}", size=SMALL)
