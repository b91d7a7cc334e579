"""What reading a field needs to know of its file, and how it says what is wrong."""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import islice
from typing import Any

from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem
from reviewer.notation.quantity import Quantity
from reviewer.notation.units import Unit
from reviewer.reading.scalars import is_null
from reviewer.reading.tree import Items, Node, Scalar
from reviewer.reading.words import MAX_PROBLEMS, shown
from reviewer.stock.bearings import read_bearing
from reviewer.stock.fasteners import read_fastener
from reviewer.stock.materials import materials
from reviewer.stock.sheets import read_sheet

MOST_LISTED = 20
MOST_COMPARED = 300

Find = Callable[[str], Any]


def find_material(name: str) -> Any:
    """Find a material of the tables that come with the project."""
    return materials().find(name)


STOCK: Mapping[str, Find] = {
    "materials": find_material,
    "bearings": read_bearing,
    "fasteners": read_fastener,
    "sheets": read_sheet,
}


@dataclass(slots=True)
class Context:
    """One file that is being read: what it declares, and the problems found in it so far.

    `lengths` is the declared unit of bare numbers; `families` are the lines and the declared unit
    of each file that the design is merged from, where it is based on another. `stock` finds a row
    by its name and raises UnknownStock or StockError. `parts` are the names of the design's parts,
    `travels` those of its travels.
    `lost` are keys that stand in the text, but perhaps not in the tree: what is refused as YAML is
    left out there.
    """

    path: str
    lines: Sequence[str]
    lengths: Unit | None = None
    stock: Mapping[str, Find] = field(default_factory=lambda: STOCK)
    parts: Collection[str] = ()
    travels: Collection[str] = ()
    lost: Collection[str] = frozenset()
    problems: list[Problem] = field(default_factory=list)
    quantities: list[tuple[Place, Quantity]] = field(default_factory=list)
    families: Mapping[str, tuple[Sequence[str], Unit | None]] = field(default_factory=dict)

    @property
    def is_full(self) -> bool:
        """Whether there are more problems than a reader can use, so that reading may stop."""
        return len(self.problems) > MAX_PROBLEMS

    def line_at(self, place: Place) -> str | None:
        """The line of the file on which a place is, if there is one."""
        lines = self.families[place.path][0] if place.path in self.families else self.lines
        return lines[place.line - 1] if 0 < place.line <= len(lines) else None

    def lengths_at(self, place: Place) -> Unit | None:
        """The unit of bare numbers in the file in which a place is."""
        return self.families[place.path][1] if place.path in self.families else self.lengths

    def refuse(
        self, place: Place, what: str, found: str, expected: str, mend: str | None = None
    ) -> None:
        """Note a problem, with the line on which it stands."""
        self.problems.append(Problem(place, what, found, expected, mend, self.line_at(place)))

    def part_of(self, scalar: Scalar, span: tuple[int, int]) -> Place:
        """Find the place of a run of characters of a scalar; all of it where it is escaped."""
        place = scalar.place
        line = self.line_at(place) or ""
        at = line[place.column - 1 : place.end_column - 1].find(scalar.text)
        if at < 0:
            return place
        first, last = (place.column + at + each for each in span)
        return Place(place.path, place.line, first, max(last, first + 1))


def article(name: str) -> str:
    """Put the article in front of a name.

    >>> article("arm"), article("slewing_ring")
    ('an arm', 'a slewing_ring')
    """
    return f"{'an' if name[:1] in 'aeiou' else 'a'} {name}"


def listed(names: Iterable[str], last: str = "and") -> str:
    """List names as a sentence does, the first twenty of them.

    >>> listed(["mm", "cm", "in"], "or"), listed([])
    ('mm, cm or in', 'none')
    """
    known = list(names)
    more = len(known) - MOST_LISTED
    if more > 1:
        return f"{', '.join(known[:MOST_LISTED])} and {more} more"
    if len(known) < 2:
        return known[0] if known else "none"
    return f"{', '.join(known[:-1])} {last} {known[-1]}"


def kind_of(node: Node) -> str:
    """Say what stands there: the text itself, or that it is a table, a list or nothing."""
    if isinstance(node, Scalar):
        return "nothing" if is_null(node) else shown(node.text)
    if isinstance(node, Items):
        return "a list" if node.items else "an empty list"
    return "a table" if node.entries else "an empty table"


def nearest_name(word: str, names: Iterable[str]) -> str | None:
    """The name of this file that was probably meant.

    Only the first of very many names are compared, so that a file cannot keep a reader waiting.
    """
    return nearest(word, islice(names, MOST_COMPARED))


def write(word: str | None) -> str | None:
    """The mend that writes one word in place of another, if there is such a word."""
    return f"write {word}" if word else None
