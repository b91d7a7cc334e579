"""What a sheet consists of, as plain data: sections of texts, tables, boxes and figures.

    Sheet        title, design, revision, path, sections, cautions
      Section    a heading and blocks, in the order in which they are read
        str      a paragraph
        Table    columns with headings and units, rows of cells; a BLANK cell is to write in
        Checks   boxes to tick, each with room for a value where it has a unit
        Caution  a warning that belongs to this place and no other
        Verbatim lines to copy as they are, into a file
        Figure   a drawing as SVG, with what it shows in words for those who get text

Cells and texts are plain text: renderers make them safe. The SVG of a figure is trusted, so make it
with `reporting/drawing.py`, which makes its texts safe.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

BLANK = "\u2423"  # a cell that is left free to write in


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: its heading, the unit of its numbers, and to which side cells keep.

    `fill` leaves room to write by hand, for which its cells are BLANK.
    """

    heading: str
    unit: str = ""
    side: Literal["left", "right"] = "left"
    fill: bool = False

    @property
    def told(self) -> str:
        """The heading with its unit."""
        return f"{self.heading}, {self.unit}" if self.unit else self.heading


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of cells under columns; `caption` says what they are."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Check:
    """A box to tick; where it has a unit, a value in that unit is written beside it."""

    text: str
    unit: str | None = None


@dataclass(frozen=True, slots=True)
class Checks:
    """Boxes to tick, in the order of work."""

    items: tuple[Check, ...]


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning where it is needed: the hazard in a word, and what to do about it."""

    hazard: str
    text: str


@dataclass(frozen=True, slots=True)
class Verbatim:
    """Lines to copy as they are: a piece of a file, with gaps to fill."""

    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing: its title, what it shows in words, and the SVG text."""

    title: str
    says: str
    svg: str


Block = str | Table | Checks | Caution | Verbatim | Figure


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and what stands below it."""

    heading: str
    blocks: tuple[Block, ...]


def section_of(heading: str, blocks: Iterable[Block]) -> tuple[Section, ...]:
    """A section of some blocks; none where there are no blocks."""
    told = tuple(blocks)
    return (Section(heading, told),) if told else ()


@dataclass(frozen=True, slots=True)
class NoSheet:
    """Why a design has no sheet of some sort, or what it lacks for one."""

    reason: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet of one revision of a design.

    `standing` is what every sheet says first (verdict, concessions, what was not reviewed),
    `sections` what this one is for, `cautions` those that belong to it as a whole.
    """

    name: str
    title: str
    design: str
    revision: str | None
    path: str
    standing: tuple[Section, ...] = ()
    sections: tuple[Section, ...] = ()
    cautions: tuple[Caution, ...] = field(default=())

    @property
    def named(self) -> str:
        """The design with its revision."""
        return f"{self.design}, revision {self.revision}" if self.revision else self.design

    @property
    def every(self) -> tuple[Section, ...]:
        """All sections in the order of reading: what stands first, cautions, then the work."""
        cautions = (Section("cautions", self.cautions),) if self.cautions else ()
        return (*self.standing, *cautions, *self.sections)


@dataclass(frozen=True, slots=True)
class Body:
    """What a maker of a sheet gives: its sections, and the cautions of the sheet as a whole."""

    sections: tuple[Section, ...]
    cautions: tuple[Caution, ...] = ()
