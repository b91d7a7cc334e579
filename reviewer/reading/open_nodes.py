"""Tables and lists that are still being read, and what a table asks of its keys."""

import re
from collections.abc import Callable
from dataclasses import fields, make_dataclass, replace
from typing import Any

from reviewer.notation.problem import Place, Problem
from reviewer.reading import words
from reviewer.reading.gathering import Gathering
from reviewer.reading.scalars import NULLS
from reviewer.reading.tree import Items, Node, Scalar, Table

REST_OF_NUMBER = re.compile(r"[0-9]+(?:[^0-9:].*)?")
ENDS_IN_DIGIT = re.compile(r".*[0-9]")


def draft_of(frozen: type) -> Any:
    """Return a twin of a frozen dataclass that is quick to fill; then it becomes the class.

    A frozen dataclass sets each field through object.__setattr__, and for the places and scalars of
    a file this would cost more than parsing it. The twin has the same slots and is not frozen:
    `thing = Draft(...); thing.__class__ = Frozen`.
    """
    return make_dataclass("Draft", [field.name for field in fields(frozen)], slots=True)


PlaceDraft = draft_of(Place)
ScalarDraft = draft_of(Scalar)
TableDraft = draft_of(Table)
DOUBTFUL = NULLS | {"<<"}
REFUSED = Scalar("", True, Place("", 1, 1, 1))  # stands for a key that was refused


class OpenItems:
    """A list that is being read."""

    __slots__ = ("entries", "flow", "place", "put")
    awaits_key = False

    def __init__(self, place: Place, flow: bool) -> None:
        """Begin a list; `flow` tells one in brackets."""
        self.place = place
        self.flow = flow
        self.entries: list[Node] = []
        self.put: Callable[[Node], None] = self.entries.append

    def skip(self) -> None:
        """Leave a refused entry out."""

    def closed(self) -> Node:
        """Return the list as it was read."""
        return Items(tuple(self.entries), self.place)


class OpenTable:
    """A table that is being read: keys and values arrive in turn."""

    __slots__ = ("comma", "entries", "first", "flow", "gathered", "key", "place")

    def __init__(self, place: Place, flow: bool, gathered: Gathering) -> None:
        """Begin a table; `flow` tells one in braces, `gathered` takes what is wrong with it."""
        self.place = place
        self.flow = flow
        self.gathered = gathered
        self.entries: list[tuple[Scalar, Node]] = []
        self.first: dict[str, Scalar] = {}
        self.key: Scalar | None = None
        self.comma: Problem | None = None  # held back while its value may have a second one

    @property
    def awaits_key(self) -> bool:
        """Whether what comes next is a key."""
        return self.key is None

    def put(self, node: Node) -> None:
        """Take a key, or the value of the key before."""
        key = self.key
        if key is None:
            self.key = self.checked_key(node)
            return
        self.key = None
        if key is REFUSED:
            return
        if type(node) is Scalar and not node.text and not node.quoted:
            node = Scalar("", False, key.place)
            if self.flow and self.mends_decimal_comma(key):
                return
        first = self.first.setdefault(key.text, key)
        if first is key:
            self.entries.append((key, node))
        else:
            place = first.place
            self.gathered.refuse(key.place, words.duplicate_key(key.text, place.line, place.column))

    def skip(self) -> None:
        """Leave a refused key or value out, with what belongs to it."""
        self.key = REFUSED if self.key is None else None

    def closed(self) -> Node:
        """Return the table as it was read."""
        if self.comma is not None:
            self.gathered.report(self.comma)
        table = TableDraft(tuple(self.entries), self.place)
        table.__class__ = Table
        return table  # type: ignore[no-any-return]

    def checked_key(self, node: Node) -> Scalar:
        """Return a key that is plain text, or refuse it."""
        if type(node) is not Scalar:
            return REFUSED  # reported where it began
        text = node.text
        if text not in DOUBTFUL and "\n" not in text:
            return node
        if not text or (text in NULLS and not node.quoted):
            self.gathered.refuse(
                node.place, words.with_found(words.NULL_KEY, text or "an empty key")
            )
        elif text == "<<" and not node.quoted:
            self.gathered.refuse(node.place, words.MERGE)
        elif "\n" in text:
            self.gathered.refuse(node.place, words.with_found(words.LONG_KEY, text))
        else:
            return node
        return REFUSED

    def mends_decimal_comma(self, key: Scalar) -> bool:
        """Recognise `{d: 1,5 mm}`: a key without a value that is the rest of a number.

        The value is put together, so that the tree says what was meant and a second comma in the
        same value is recognised too.
        """
        if not self.entries or key.quoted or not REST_OF_NUMBER.fullmatch(key.text):
            return False
        name, value = self.entries[-1]
        if not isinstance(value, Scalar) or value.quoted or not ENDS_IN_DIGIT.fullmatch(value.text):
            return False
        start, end = value.place, key.place
        row = self.gathered.source.lines[end.line - 1]
        between = row[start.end_column - 1 : end.column - 1]
        if (
            start.line != end.line
            or between.strip() != ","
            or row[end.end_column - 1 : end.end_column] == ":"
        ):
            return False
        place = replace(start, end_column=end.end_column)
        written = row[start.column - 1 : end.end_column - 1]
        self.entries[-1] = (name, Scalar(f"{value.text}.{key.text}", False, place))
        if self.comma is not None and self.comma.place.column != start.column:
            self.gathered.report(self.comma)
        said = words.decimal_comma(value.text, key.text, written)
        self.comma = self.gathered.source.problem(
            place.line, (place.column, place.end_column), said
        )
        return True
