"""A picture in SVG without colour of its own: ink is `currentColor`, paper stays what it is.

A page that embeds it sets `color`; where lettering crosses a line its edge is drawn in the page's
`--paper`, else in the system's own. Several pictures may stand in one page: every id begins with
the name of its picture. The picture is as large as what is drawn: nothing is cut off.
"""

import math
import re
from collections.abc import Iterable, Sequence
from itertools import pairwise

from reviewer.notation.plain import plain
from reviewer.reporting.drawing import Point, number, safe

LETTER = 0.56  # width of a letter over its size, on average
SIZE = 14.0
SMALL = 13.0
STRANGE = re.compile(r"[^a-z0-9]+", re.ASCII)
MARGIN = 10.0
WIDEST = 1.6  # pixels for each unit, at most

EDGE = "stroke='currentColor' stroke-width='1.5'"
HIDDEN = "stroke='currentColor' stroke-width='0.9' stroke-dasharray='5 3'"
AXIS = "stroke='currentColor' stroke-width='0.7' stroke-dasharray='11 3 2 3'"
THIN = "stroke='currentColor' stroke-width='0.7'"
HEAVY = "stroke='currentColor' stroke-width='2.2'"
FULL = "fill='currentColor'"
HEAD = 6.0  # length of an arrow's head


class Canvas:
    """A picture under way; y goes down. Texts are made safe."""

    def __init__(self, name: str, title: str, says: str) -> None:
        """Begin a picture, with what it shows in words for those who do not see it."""
        self.name = STRANGE.sub("-", name.casefold()).strip("-") or "drawing"
        self.title, self.says = title, says
        self.pieces: list[str] = []
        self.left = self.top = math.inf
        self.right = self.bottom = -math.inf

    def reach(self, *places: Point) -> None:
        """Make the picture large enough for some places."""
        for x, y in places:
            self.left, self.right = min(self.left, x), max(self.right, x)
            self.top, self.bottom = min(self.top, y), max(self.bottom, y)

    def put(self, element: str, place: str, look: str = "", inner: str | None = None) -> None:
        """One element: attributes that place it, then those of its look."""
        body = "/>" if inner is None else f">{inner}</{element}>"
        self.pieces.append(f"<{element} {' '.join(filter(None, (place, look)))}{body}")

    def line(self, start: Point, end: Point, look: str = THIN) -> None:
        """A straight line."""
        self.reach(start, end)
        (x1, y1), (x2, y2) = start, end
        place = f"x1='{number(x1)}' y1='{number(y1)}' x2='{number(x2)}' y2='{number(y2)}'"
        self.put("line", place, look)

    def run(self, points: Iterable[Point], look: str = EDGE, *, closed: bool = False) -> None:
        """A line through points, or round an area."""
        places = tuple(points)
        self.reach(*places)
        listed = " ".join(f"{number(x)},{number(y)}" for x, y in places)
        self.put("polygon" if closed else "polyline", f"points='{listed}'", look)

    def circle(self, centre: Point, radius: float, look: str = EDGE) -> None:
        """A circle."""
        x, y = centre
        self.reach((x - radius, y - radius), (x + radius, y + radius))
        self.put("circle", f"cx='{number(x)}' cy='{number(y)}' r='{number(radius)}'", look)

    def box(self, corner: Point, size: Point, look: str = EDGE) -> None:
        """A rectangle from its upper left corner."""
        (x, y), (width, height) = corner, size
        self.reach(corner, (x + width, y + height))
        extent = f"width='{number(width)}' height='{number(height)}'"
        self.put("rect", f"x='{number(x)}' y='{number(y)}' {extent}", look)

    def text(
        self, place: Point, words: str, anchor: str = "start", size: float = SIZE, *,
        turned: bool = False, bold: bool = False,
    ) -> None:  # fmt: skip
        """Words at the start, in the middle or at the end of which the place is."""
        x, y = place
        wide = width_of(words, size)
        before = wide * {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
        if turned:
            self.reach((x - size, y - wide + before), (x + size / 3, y + before))
        else:
            self.reach((x - before, y - size), (x - before + wide, y + size / 3))
        look = (
            f"text-anchor='{anchor}' font-size='{number(size)}' fill='currentColor' "
            "stroke='var(--paper, Canvas)' stroke-width='3' paint-order='stroke'"
        )
        if bold:
            look += " font-weight='bold'"
        if turned:
            look += f" transform='rotate(-90 {number(x)} {number(y)})'"
        self.put("text", f"x='{number(x)}' y='{number(y)}'", look, safe(words))

    def arrow(self, start: Point, end: Point, look: str = THIN, head: float = HEAD) -> None:
        """A line with a filled head at its end."""
        length = math.hypot(end[0] - start[0], end[1] - start[1])
        if length == 0:
            return
        self.line(start, end, look)
        x, y = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        foot, half = (end[0] - head * x, end[1] - head * y), head / 3
        corners = (
            end,
            (foot[0] - half * y, foot[1] + half * x),
            (foot[0] + half * y, foot[1] - half * x),
        )
        self.run(corners, FULL, closed=True)

    def hatch(self, points: Sequence[Point], apart: float = 6.0, look: str = THIN) -> None:
        """Slanting lines over an area, cut off at its edge; no pattern that a printer may lose."""
        sums = [x + y for x, y in points]
        for step in range(math.ceil(min(sums) / apart), math.ceil(max(sums) / apart)):
            crossed = sorted(_crossings(points, step * apart))
            for start, end in zip(crossed[::2], crossed[1::2], strict=False):
                self.line(start, end, look)

    def balloon(self, centre: Point, words: str, radius: float = 9.0) -> None:
        """A number in a circle, as drawings mark what a list tells."""
        look = "stroke='currentColor' stroke-width='1.2' style='fill:var(--paper, Canvas)'"
        self.circle(centre, radius, look)
        self.text((centre[0], centre[1] + 4), words, "middle", 11.0, bold=True)

    def svg(self) -> str:
        """The whole picture, as wide as the page allows up to a size that stays a drawing."""
        corner = (self.left - MARGIN, self.top - MARGIN)
        size = (self.right + MARGIN - corner[0], self.bottom + MARGIN - corner[1])
        box = " ".join(number(each) for each in (*corner, *size))
        head = (
            f"<svg xmlns='http://www.w3.org/2000/svg' viewBox='{box}' width='{number(size[0])}' "
            f"height='{number(size[1])}' style='width:100%;max-width:{number(WIDEST * size[0])}px;"
            f"height:auto' role='img' aria-labelledby='{self.name}-title {self.name}-says' "
            "font-family='sans-serif' fill='none' stroke-linejoin='round'>"
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


def wrapped(words: str, width: float, size: float = SIZE) -> list[str]:
    """Words in lines that are no wider than asked."""
    most = max(int(width / (size * LETTER)), 8)
    lines = [""]
    for word in plain(words, 400).split():
        if lines[-1] and len(lines[-1]) + 1 + len(word) > most:
            lines.append("")
        lines[-1] = f"{lines[-1]} {word}".strip()
    return [line if len(line) <= most else f"{line[: most - 1]}…" for line in lines]
