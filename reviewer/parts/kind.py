"""A kind of part: its rows, and what it does in the load path."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from reviewer.parts.row import Row


@dataclass(frozen=True, eq=False)
class Kind:
    """A named kind of part with its fields and quantities.

    `turns`: what it carries turns on it freely, so that a load off its axis can stand at any
    azimuth towards whatever is below. `carries_load` is off for kinds that only describe a place
    (a gap) and pass no force on. `shape` is the row with the body that a kind knows from its own
    measures (parts/body.py). Parts of an `implied` kind follow from others, and no file gives any;
    `of` are the names by which their rules call the parts that they are of.
    """

    name: str
    says: str
    rows: tuple[Row, ...]
    turns: bool = False
    carries_load: bool = True
    shape: Row | None = None
    implied: bool = False
    of: tuple[str, ...] = ()

    @cached_property
    def by_path(self) -> dict[str, Row]:
        """The rows by their path."""
        return {row.path: row for row in self.rows}

    @cached_property
    def keys(self) -> "Keys":
        """The given rows as the tree of keys that a file may use."""
        root = Keys()
        for row in self.rows:
            if row.given is None or row.only:
                continue
            node = root
            for key in row.path.split("."):
                node = node.children.setdefault(key, Keys())
            node.row = row
        return root

    def given_rows(self) -> Iterator[Row]:
        """The rows that a file may give, in the order of their declaration."""
        return (row for row in self.rows if row.given is not None)


class Keys:
    """A key of the file: the row that its value fills, and the keys below it."""

    def __init__(self) -> None:
        """Make a key with nothing below it."""
        self.children: dict[str, Keys] = {}
        self.row: Row | None = None
