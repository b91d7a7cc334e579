"""Tubes and bars as merchants stock them: the ladder that a remedy climbs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import ClassVar

from reviewer.stock.reader import read_records
from reviewer.stock.table import UNKNOWN, StockError, StockRow, Table

SHAPES = (
    *("square tube", "rectangular tube", "round tube", "round bar", "square bar", "flat bar"),
    "equal angle",
)

_SIZE = (5e-4, 1.0)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Section(StockRow):
    """A tube, bar or angle: outside width and height, and wall, all [m]; a bar has no wall (NaN).

    The larger side of a rectangular tube is its width, that of a flat bar too.
    """

    name: str
    shape: str
    width: float
    height: float
    source: str
    aliases: tuple[str, ...] = ()
    wall: float = UNKNOWN

    plausible: ClassVar[Mapping[str, tuple[float, float]]] = dict.fromkeys(
        ("width", "height", "wall"), _SIZE
    )

    @property
    def size(self) -> tuple[float, float, float]:
        """Width, height and wall, by which a ladder is ordered; a bar's wall counts as none."""
        return self.width, self.height, self.wall if self.wall == self.wall else 0.0


@cache
def sections() -> Table[Section]:
    """The sections that come with the project.

    >>> sections().find("30x30x2 square tube").wall
    0.002
    """
    return Table("section", (Section(**record) for record in read_records("sections.tsv")))


@cache
def inch_sections() -> Table[Section]:
    """The sections in inch sizes that come with the project.

    >>> inch_sections().find("1x1x1/8 in square tube").wall
    0.003175
    """
    return Table("section", (Section(**record) for record in read_records("inch_sections.tsv")))


def sections_of(shape: str, table: Table[Section] | None = None) -> tuple[Section, ...]:
    """The sections of one shape, by width, then height, then wall.

    Raises StockError for a shape that is not one of SHAPES.
    """
    if shape not in SHAPES:
        raise StockError(f'shape "{shape}"; expected one of {", ".join(SHAPES)}')
    rows = (row for row in table or sections() if row.shape == shape)
    return tuple(sorted(rows, key=lambda row: row.size))


def diameters(shape: str = "round bar", table: Table[Section] | None = None) -> tuple[float, ...]:
    """The outside diameters or widths in which a shape is stocked [m], rising.

    >>> [round(each * 1e3) for each in diameters()][:6]
    [3, 4, 5, 6, 8, 10]
    """
    return tuple(dict.fromkeys(row.width for row in sections_of(shape, table)))
