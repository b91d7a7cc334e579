"""Rectangles on sheets, cut out by cuts from edge to edge, as a saw makes them.

Of the packing libraries in reach the one that is used most was last released in 2021, and none
knows kerf and margins; so this is the usual guillotine method: a piece goes into the corner of the
free rectangle that it fits best, and one cut from edge to edge splits what is left of it. Several
orders and ways of splitting are tried, and the one that takes the fewest sheets is kept. It is no
proof that fewer would not do: `fewest` says how many cannot be undercut.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from typing import NamedTuple

NEARLY = 1e-9  # m
MOST_PIECES = 300


class Piece(NamedTuple):
    """A rectangle to be cut: length and width [m], and whether it may be turned."""

    name: str
    length: float
    width: float
    turns: bool = True


class Placed(NamedTuple):
    """A piece on its sheet: the corner nearest to the origin, and the sides along x and y [m]."""

    name: str
    x: float
    y: float
    length: float
    width: float


class Blank(NamedTuple):
    """A sheet [m], what is cut off along each edge of it, and what each cut takes away."""

    length: float
    width: float
    trim: float = 0.0
    kerf: float = 0.0

    @property
    def inside(self) -> tuple[float, float]:
        """The sides of what is left within the margins."""
        return self.length - 2 * self.trim, self.width - 2 * self.trim


@dataclass(frozen=True, slots=True)
class Layout:
    """Pieces on sheets of one size; `fewest` is the number that no layout undercuts."""

    blank: Blank
    sheets: tuple[tuple[Placed, ...], ...]
    fewest: int

    @property
    def used(self) -> float:
        """The share of the sheets that becomes pieces [1]."""
        area = sum(each.length * each.width for sheet in self.sheets for each in sheet)
        return area / (len(self.sheets) * self.blank.length * self.blank.width)


class TooMany(ValueError):
    """More pieces than are laid out."""


class _Free(NamedTuple):
    x: float
    y: float
    length: float
    width: float


Order = Callable[[Piece], tuple[float, ...]]
ORDERS: tuple[Order, ...] = (
    lambda piece: (-piece.length * piece.width,),
    lambda piece: (-max(piece.length, piece.width), -min(piece.length, piece.width)),
    lambda piece: (-min(piece.length, piece.width), -max(piece.length, piece.width)),
    lambda piece: (-piece.width, -piece.length),
)


def pack(pieces: Sequence[Piece], blank: Blank) -> Layout | None:
    """The layout that takes the fewest sheets of those tried; None where a piece fits on none.

    Ties go to the one whose last sheet keeps the largest piece whole. Raises TooMany.
    """
    if len(pieces) > MOST_PIECES:
        raise TooMany(f"{len(pieces)} pieces, and at most {MOST_PIECES} are laid out")
    if not all(_fits(piece, blank) for piece in pieces):
        return None
    best: tuple[tuple[int, float], Layout] | None = None
    for order, along in product(ORDERS, (True, False)):
        ranked = sorted(pieces, key=lambda piece: (*order(piece), piece.name))
        sheets, left = _packed(ranked, blank, along)
        rank = (len(sheets), -left)
        if best is None or rank < best[0]:
            best = rank, Layout(blank, sheets, fewest(pieces, blank))
    return best[1] if best else None


def fewest(pieces: Sequence[Piece], blank: Blank) -> int:
    """How many sheets are needed at the least, by area, and by pieces that lie in one row.

    Each piece takes its kerf along two sides, and the sheet is a kerf larger for it. Pieces whose
    lesser side is more than half of the sheet's width all cross its middle line, so that they lie
    behind each other along its length; of those longer than half of that, each takes a sheet.
    """
    sides = sorted(side + blank.kerf for side in blank.inside)
    lesser = [min(each.length, each.width) + blank.kerf for each in pieces]
    area = sum((each.length + blank.kerf) * (each.width + blank.kerf) for each in pieces)
    row = [each for each in lesser if 2 * each > sides[0] + NEARLY]
    return max(
        _whole(area / (sides[0] * sides[1])),
        _whole(sum(row) / sides[1]),
        sum(2 * each > sides[1] + NEARLY for each in lesser),
    )


def _whole(sheets: float) -> int:
    return math.ceil(sheets - NEARLY)


def _fits(piece: Piece, blank: Blank) -> bool:
    return any(True for _ in _ways(piece, *blank.inside))


def _ways(piece: Piece, length: float, width: float) -> Iterator[tuple[float, float]]:
    """The sides of a piece, as it lies and turned, where it fits."""
    sides = ((piece.length, piece.width), (piece.width, piece.length))
    for along, across in sides if piece.turns else sides[:1]:
        if along <= length + NEARLY and across <= width + NEARLY:
            yield along, across


def _packed(
    pieces: Sequence[Piece], blank: Blank, along: bool
) -> tuple[tuple[tuple[Placed, ...], ...], float]:
    """The sheets of one way of going about it, and the largest free area of the last of them."""
    sheets: list[list[Placed]] = []
    free: list[list[_Free]] = []
    for piece in pieces:
        found = _place_for(piece, free)
        if found is None:
            sheets.append([])
            free.append([_Free(blank.trim, blank.trim, *blank.inside)])
            found = _place_for(piece, free[-1:])
            assert found is not None
            found = (len(sheets) - 1, *found[1:])
        sheet, index, sides = found
        room = free[sheet].pop(index)
        sheets[sheet].append(Placed(piece.name, room.x, room.y, *sides))
        free[sheet] += _split(room, sides, blank.kerf, along)
    left = max((each.length * each.width for each in free[-1]), default=0.0) if free else 0.0
    return tuple(tuple(sheet) for sheet in sheets), left


def _place_for(
    piece: Piece, free: Sequence[Sequence[_Free]]
) -> tuple[int, int, tuple[float, float]] | None:
    """The sheet and the free rectangle that a piece fills best, and how it lies there."""
    best: tuple[tuple[float, ...], tuple[int, int, tuple[float, float]]] | None = None
    for sheet, rooms in enumerate(free):
        for index, room in enumerate(rooms):
            for sides in _ways(piece, room.length, room.width):
                spare = room.length - sides[0], room.width - sides[1]
                rank = (sheet, round(min(spare), 9), round(max(spare), 9), index)
                if best is None or rank < best[0]:
                    best = rank, (sheet, index, sides)
    return best[1] if best else None


def _split(room: _Free, sides: tuple[float, float], kerf: float, along: bool) -> Iterator[_Free]:
    """What one cut from edge to edge leaves of a free rectangle, beside and above the piece."""
    length, width = sides[0] + kerf, sides[1] + kerf
    beside = room.width if along else min(sides[1], room.width)
    above = min(sides[0], room.length) if along else room.length
    rests = (
        _Free(room.x + length, room.y, room.length - length, beside),
        _Free(room.x, room.y + width, above, room.width - width),
    )
    return (each for each in rests if each.length > NEARLY and each.width > NEARLY)
