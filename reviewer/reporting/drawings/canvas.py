"""A picture in SVG without colour of its own: ink is `currentColor`, paper stays what it is.

A page that embeds it sets `color`; where lettering crosses a line its edge is drawn in the page's
`--paper`, else in the system's own. Several pictures may stand in one page: every id begins with
the name of its picture.
"""

import math
import re
from collections.abc import Iterable, Sequence
from itertools import pairwise

from reviewer.reporting.drawing import Point, number, safe

LETTER = 0.56  # width of a letter over its size, on average
SIZE = 13.0
STRANGE = re.compile(r"[^a-z0-9]+", re.ASCII)

EDGE = "stroke-width='1.5'"
HIDDEN = "stroke-width='0.9' stroke-dasharray='5 3'"
AXIS = "stroke-width='0.7' stroke-dasharray='11 3 2 3'"
THIN = "stroke-width='0.7'"
HEAVY = "stroke-width='2.2'"
HEAD = 6.0  # length of an arrow's head


class Canvas:
    """A picture under way; lengths are units of its view box, y goes down. Texts are made safe."""

    def __init__(self, name: str, title: str, says: str) -> None:
        """Begin a picture with what it shows in words; its size follows from what is drawn."""
        self.name = STRANGE.sub("-", name.casefold()).strip("-") or "drawing"
        self.title, self.says = title, says
        self.pieces: list[str] = []

    def put(self, element: str, place: str, look: str = "", inner: str | None = None) -> None:
        """One element: attributes that place it, then those of its look."""
        body = "/>" if inner is None else f">{inner}</{element}>"
        self.pieces.append(f"<{element} {' '.join(filter(None, (place, look)))}{body}")

    def line(self, start: Point, end: Point, look: str = THIN) -> None:
        """A straight line."""
        (x1, y1), (x2, y2) = start, end
        place = f"x1='{number(x1)}' y1='{number(y1)}' x2='{number(x2)}' y2='{number(y2)}'"
        self.put("line", place, look)

    def run(self, points: Iterable[Point], look: str = EDGE, *, closed: bool = False) -> None:
        """A line through points, or round an area."""
        listed = " ".join(f"{number(x)},{number(y)}" for x, y in points)
        self.put("polygon" if closed else "polyline", f"points='{listed}'", look)

    def circle(self, centre: Point, radius: float, look: str = EDGE) -> None:
        """A circle."""
        place = f"cx='{number(centre[0])}' cy='{number(centre[1])}' r='{number(radius)}'"
        self.put("circle", place, look)

    def box(self, corner: Point, size: Point, look: str = EDGE) -> None:
        """A rectangle from its upper left corner."""
        place = f"x='{number(corner[0])}' y='{number(corner[1])}'"
        self.put("rect", f"{place} width='{number(size[0])}' height='{number(size[1])}'", look)

    def text(
        self, place: Point, words: str, anchor: str = "start", size: float = SIZE, look: str = ""
    ) -> None:
        """Words at the start, in the middle or at the end of which the place is."""
        where = f"x='{number(place[0])}' y='{number(place[1])}' text-anchor='{anchor}'"
        edge = "stroke='var(--paper, Canvas)' stroke-width='3' paint-order='stroke'"
        look = f"font-size='{number(size)}' fill='currentColor' {edge} {look}".rstrip()
        self.put("text", where, look, safe(words))

    def arrow(self, start: Point, end: Point, look: str = THIN, head: float = HEAD) -> None:
        """A line with a filled head at its end."""
        length = math.hypot(end[0] - start[0], end[1] - start[1])
        if length == 0:
            return
        self.line(start, end, look)
        x, y = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        foot = (end[0] - head * x, end[1] - head * y)
        half = head / 3
        corners = [
            end,
            (foot[0] - half * y, foot[1] + half * x),
            (foot[0] + half * y, foot[1] - half * x),
        ]
        self.run(corners, "fill='currentColor' stroke='none'", closed=True)

    def hatch(self, points: Sequence[Point], apart: float = 6.0, look: str = THIN) -> None:
        """Slanting lines over an area, cut off at its edge: no pattern that a printer may lose."""
        sums = [x + y for x, y in points]
        step = math.ceil(min(sums) / apart)
        while step * apart < max(sums):
            crossed = sorted(_crossings(points, step * apart))
            for start, end in zip(crossed[::2], crossed[1::2], strict=False):
                self.line(start, end, look)
            step += 1

    def svg(self, corner: Point, size: Point, widest: float) -> str:
        """The whole picture from its upper left corner, as wide as the page allows."""
        box = " ".join(number(each) for each in (*corner, *size))
        head = (
            f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='{box}' width='{number(size[0])}' "
            f"height='{number(size[1])}' style='width:100%;max-width:{number(widest)}px;"
            f"height:auto' role='img' aria-labelledby='{self.name}-title {self.name}-says' "
            "font-family='sans-serif' fill='none' stroke='currentColor' "
            "stroke-linejoin='round'>"
        )
        words = [
            f"<title id='{self.name}-title'>{safe(self.title)}</title>",
            f"<desc id='{self.name}-says'>{safe(self.says)}</desc>",
        ]
        return "\n".join([head, *words, *self.pieces, "</svg>", ""])


def _crossings(points: Sequence[Point], level: float) -> Iterable[Point]:
    """Where the line x + y = level crosses the edge of an area."""
    for (x1, y1), (x2, y2) in pairwise([*points, points[0]]):
        first, second = x1 + y1 - level, x2 + y2 - level
        if (first < 0) != (second < 0):
            share = first / (first - second)
            yield (x1 + share * (x2 - x1), y1 + share * (y2 - y1))


def width_of(words: str, size: float = SIZE) -> float:
    """About how wide words are."""
    return len(words) * size * LETTER
