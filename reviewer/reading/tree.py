"""The marked tree: what a YAML text says, with the place of every piece of it."""

from __future__ import annotations

from dataclasses import dataclass

from reviewer.notation.problem import Place, Problem


@dataclass(frozen=True, slots=True)
class Scalar:
    """A text as it stands in the file; `quoted` tells a quoted or block text from a plain one.

    The value that a table's key does not have (`offset:`) is a plain empty scalar at the key's
    place. A text of several lines has the place of its first.
    """

    text: str
    quoted: bool
    place: Place


@dataclass(frozen=True, slots=True)
class Table:
    """A mapping: keys and their values, in the order of the file, each key once."""

    entries: tuple[tuple[Scalar, Node], ...]
    place: Place

    def get(self, key: str) -> Node | None:
        """Find the value of a key."""
        for name, value in self.entries:
            if name.text == key:
                return value
        return None

    def key(self, key: str) -> Scalar | None:
        """Find a key as it stands in the file, with its place."""
        for name, _ in self.entries:
            if name.text == key:
                return name
        return None


@dataclass(frozen=True, slots=True)
class Items:
    """A sequence: nodes in the order of the file."""

    items: tuple[Node, ...]
    place: Place


Node = Scalar | Table | Items


@dataclass(frozen=True, slots=True)
class Document:
    """A text that was read: its tree, everything that is wrong with it as YAML, and its lines.

    With problems, `root` holds what could be read: a refused entry is left out, and the root is
    None where nothing could be read. `lines` are the lines of the text without their ends.
    """

    root: Node | None
    problems: tuple[Problem, ...]
    lines: tuple[str, ...]
    path: str
