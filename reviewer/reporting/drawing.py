"""Plain drawings in SVG: a few shapes and texts, no script and nothing fetched."""

from collections.abc import Iterable
from html import escape

from reviewer.notation.plain import plain

FONT = "font-family='sans-serif' font-size='12'"
Point = tuple[float, float]


class Drawing:
    """An SVG picture under way; lengths are pixels, y goes down. Texts are made safe."""

    def __init__(self, width: float, height: float, title: str, says: str, name: str = "") -> None:
        """Begin a picture, with what it shows in words for those who do not see it.

        `name`, of letters, tells it apart from other pictures on one page.
        """
        behind = f"-{name}" if name else ""
        self.width = width
        self.height = height
        self._pieces = [
            f"<svg xmlns='http://www.w3.org/2000/svg' width='{number(width)}' "
            f"height='{number(height)}' viewBox='0 0 {number(width)} {number(height)}' "
            f"role='img' aria-labelledby='title{behind} says{behind}'>",
            f"<title id='title{behind}'>{safe(title)}</title>",
            f"<desc id='says{behind}'>{safe(says)}</desc>",
            f"<rect width='{number(width)}' height='{number(height)}' fill='#ffffff'/>",
        ]

    def line(self, start: Point, end: Point, look: str = "stroke='#000000'") -> None:
        """A straight line; `look` are SVG attributes."""
        (x1, y1), (x2, y2) = start, end
        place = f"x1='{number(x1)}' y1='{number(y1)}' x2='{number(x2)}' y2='{number(y2)}'"
        self._pieces.append(f"<line {place} {look}/>")

    def path(self, points: Iterable[Point], look: str) -> None:
        """A line through points."""
        listed = " ".join(f"{number(x)},{number(y)}" for x, y in points)
        self._pieces.append(f"<polyline points='{listed}' fill='none' {look}/>")

    def box(self, corner: Point, size: Point, look: str) -> None:
        """A rectangle from its upper left corner."""
        place = f"x='{number(corner[0])}' y='{number(corner[1])}'"
        extent = f"width='{number(size[0])}' height='{number(size[1])}'"
        self._pieces.append(f"<rect {place} {extent} {look}/>")

    def circle(self, middle: Point, radius: float, look: str) -> None:
        """A circle about its middle."""
        place = f"cx='{number(middle[0])}' cy='{number(middle[1])}' r='{number(radius)}'"
        self._pieces.append(f"<circle {place} {look}/>")

    def text(self, place: Point, words: str, anchor: str = "start", look: str = "") -> None:
        """A text at the end, in the middle or at the start of which the place is."""
        where = f"x='{number(place[0])}' y='{number(place[1])}' text-anchor='{anchor}'"
        self._pieces.append(f"<text {where} {FONT} {look}>{safe(words)}</text>")

    def svg(self) -> str:
        """The whole picture."""
        return "\n".join([*self._pieces, "</svg>", ""])


def safe(words: str) -> str:
    """Words that cannot be taken for anything else."""
    return escape(plain(words, 400), quote=True)


def number(value: float) -> str:
    """A length as short as it can be written to a hundredth of a pixel.

    >>> number(12.0), number(3.14159)
    ('12', '3.14')
    """
    return f"{value:.2f}".rstrip("0").rstrip(".")
