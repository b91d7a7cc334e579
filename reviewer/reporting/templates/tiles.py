"""Sheets of paper that a template is spread over, and the marks by which they are laid together.

Neighbouring sheets overlap. In the middle of each strip that two sheets share, where it crosses the
next one, stands a register mark with a name: laid so that marks of one name coincide, the sheets
make the whole template again.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, pi
from types import MappingProxyType

from reviewer.geometry.rim import Arc, Box, Circle, Edge, Line, Point
from reviewer.reporting.templates.template import Template, box_of

MARGIN = 0.010  # m, no printer prints nearer to the edge of the paper: common practice
FOOT = 0.016  # m, below the drawing: the check bar and the name of the sheet
OVERLAP = 0.012  # m
AROUND = 0.004  # m, room around all that is drawn
SLICES = 180  # of a circle, when it is asked whether it touches a sheet
NEARLY = 1e-9


@dataclass(frozen=True, slots=True)
class Paper:
    """A size of paper [m]."""

    name: str
    width: float
    height: float

    @property
    def turned(self) -> "Paper":
        """The same paper lying on its side."""
        return Paper(self.name, self.height, self.width)

    @property
    def room(self) -> Point:
        """Width and height that are left for the drawing [m]."""
        return (self.width - 2 * MARGIN, self.height - 2 * MARGIN - FOOT)


PAPERS = MappingProxyType(
    {
        "A4": Paper("A4", 0.210, 0.297),  # ISO 216
        "Letter": Paper("Letter", 0.2159, 0.2794),  # 8 1/2 by 11 inches, ANSI Y14.1
    }
)


@dataclass(frozen=True, slots=True)
class Mark:
    """A register mark: its name, and where it stands on the template [m]."""

    name: str
    place: Point


@dataclass(frozen=True, slots=True)
class Tile:
    """One sheet: its row from the top and its column from the left, counted from 1, its part of the
    template [m] and its register marks; blank where nothing is drawn on it."""

    row: int
    column: int
    box: Box
    marks: tuple[Mark, ...]
    blank: bool

    @property
    def name(self) -> str:
        """What the sheet is called."""
        return f"row {self.row}, column {self.column}"


@dataclass(frozen=True, slots=True)
class Tiling:
    """All sheets of a template on one sort of paper."""

    paper: Paper
    rows: int
    columns: int
    tiles: tuple[Tile, ...]

    @property
    def box(self) -> Box:
        """West, south, east and north end of all sheets together [m]."""
        first, last = self.tiles[0].box, self.tiles[-1].box
        return (first[0], last[1], last[2], first[3])


def tiling_of(template: Template, paper: Paper) -> Tiling:
    """Spread a template over sheets, upright or on their side, whichever are fewer."""
    upright, lying = _tiling(template, paper), _tiling(template, paper.turned)
    return lying if len(lying.tiles) < len(upright.tiles) else upright


def _tiling(template: Template, paper: Paper) -> Tiling:
    west, south, east, north = template.box
    width, height = paper.room
    step_x, step_y = width - OVERLAP, height - OVERLAP
    columns = _count(east - west, step_x)
    rows = _count(north - south, step_y)
    left = (west + east) / 2 - (columns * step_x + OVERLAP) / 2
    top = (south + north) / 2 + (rows * step_y + OVERLAP) / 2
    tiles = []
    for row in range(rows):
        for column in range(columns):
            x, y = left + column * step_x, top - row * step_y
            box = (x, y - height, x + width, y)
            marks = tuple(_marks(row, column, box))
            tiles.append(Tile(row + 1, column + 1, box, marks, _is_blank(template, box)))
    return Tiling(paper, rows, columns, tuple(tiles))


def _count(length: float, step: float) -> int:
    """How many sheets a length needs, room around it and the last overlap included."""
    return max(1, ceil((length + 2 * AROUND - OVERLAP) / step - NEARLY))


def _marks(row: int, column: int, box: Box) -> Iterator[Mark]:
    """The four register marks of a sheet, in the middle of its overlaps."""
    west, south, east, north = box
    half = OVERLAP / 2
    for down, y in ((row, north - half), (row + 1, south + half)):
        for along, x in ((column, west + half), (column + 1, east - half)):
            yield Mark(f"{letters(along)}{down + 1}", (x, y))


def letters(number: int) -> str:
    """A column by letters: a to z, then aa.

    >>> [letters(number) for number in (0, 25, 26, 52)]
    ['a', 'z', 'aa', 'ba']
    """
    text = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        text = chr(ord("a") + rest) + text
    return text


def _is_blank(template: Template, box: Box) -> bool:
    return not (
        any(touches(stroke.edge, box) for stroke in template.strokes)
        or any(_overlap(box_of(words), box) for words in template.words)
    )


def _overlap(first: Box, second: Box) -> bool:
    return (
        first[0] < second[2] and first[2] > second[0]
        and first[1] < second[3] and first[3] > second[1]
    )  # fmt: skip


def touches(edge: Edge, box: Box) -> bool:
    """Whether any of an edge lies on a sheet; arcs are looked at in slices of two degrees."""
    return any(_crosses(start, end, box) for start, end in pairwise(_points(edge)))


def _points(edge: Edge) -> list[Point]:
    match edge:
        case Line(start, end):
            return [start, end]
        case Circle(centre, radius):
            return _points(Arc(centre, radius, 0.0, 2 * pi))
        case Arc(_, _, start, end):
            count = max(1, ceil((end - start) * SLICES / (2 * pi)))
            return [edge.at(start + (end - start) * k / count) for k in range(count + 1)]


def _crosses(start: Point, end: Point, box: Box) -> bool:
    """Whether a straight line meets a rectangle (Liang and Barsky, 1984)."""
    low, high = 0.0, 1.0
    for axis in (0, 1):
        way = end[axis] - start[axis]
        for sign, limit in ((-1.0, box[axis]), (1.0, box[axis + 2])):
            room = sign * (limit - start[axis])
            if abs(way) < NEARLY:
                if room < 0:
                    return False
            elif sign * way > 0:
                high = min(high, room / (sign * way))
            else:
                low = max(low, room / (sign * way))
    return low <= high
