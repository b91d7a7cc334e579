"""The walk over the events of a YAML parser, which builds the tree and stops at the limits."""

import re
from collections.abc import Callable
from contextlib import suppress
from typing import Any

import yaml
from yaml import events as ev

from reviewer.notation.problem import Place
from reviewer.reading import words
from reviewer.reading.gathering import Enough, Gathering
from reviewer.reading.open_nodes import OpenItems, OpenTable, PlaceDraft, ScalarDraft
from reviewer.reading.parsers import ParserOf
from reviewer.reading.source import UNWELCOME, Source
from reviewer.reading.stop import NAME
from reviewer.reading.syntax import stop_at, syntax_problem
from reviewer.reading.tree import Items, Node, Scalar, Table
from reviewer.reading.words import MAX_DEPTH, MAX_NODES

GAP = re.compile(r"(?:[ \t\r\n]++|#[^\n\r]*+)*+")
DOCUMENT_MARK = re.compile(r"---|\.\.\.|%")
KINDS = {Scalar: "text", Items: "list", Table: "table"}


def past_gap(text: str, index: int) -> int:
    """Return where the next thing stands after blanks and comments."""
    gap = GAP.match(text, index)
    return gap.end() if gap else index


class Walk:
    """One reading of one text: what is open, what is wrong, how much was read."""

    def __init__(self, source: Source) -> None:
        """Make ready to walk over a text."""
        self.source = source
        self.gathered = Gathering(source)
        self.path = source.path
        self.ends = 0  # of tables and lists, which are events and no nodes
        self.finished = False
        self.base = OpenItems(Place(source.path, 1, 1, 1), flow=False)
        self.frame: OpenItems | OpenTable = self.base
        self.frames: list[OpenItems | OpenTable] = []
        self.closed: Place | None = None  # of what ended last in a bracket or a quote
        self.closed_at = -1  # and where it ended
        self.ended: int | None = None  # where the document did
        self.properties = "!" in source.text or "&" in source.text

    def run(self, parser_of: ParserOf, due: type[Table] | type[Items] | None) -> Node | None:
        """Read all of the text, or as much as the parser and the limits allow."""
        try:
            self.gathered.check()
            if self.follow(parser_of(self.source.text)):
                self.check_root(due)
        except Enough:
            pass
        while self.frames:
            unfinished, self.frame = self.frame, self.frames.pop()
            with suppress(Enough):
                self.frame.put(unfinished.closed())
        return self.base.entries[0] if self.base.entries else None

    def follow(self, parser: Any) -> bool:
        """Take every event; return whether the text ended without an error of its grammar."""
        handlers: dict[type, Callable[[Any], None]] = {
            ev.ScalarEvent: self.scalar,
            ev.MappingStartEvent: self.open_table,
            ev.SequenceStartEvent: self.open_items,
            ev.MappingEndEvent: self.close,
            ev.SequenceEndEvent: self.close,
            ev.AliasEvent: self.alias,
            ev.DocumentStartEvent: self.start_document,
            ev.DocumentEndEvent: self.end_document,
            ev.StreamStartEvent: self.start_stream,
            ev.StreamEndEvent: self.end_stream,
        }
        try:
            for count, event in enumerate(iter(parser.get_event, None)):
                if count > MAX_NODES:
                    self.limit_nodes(count, event)
                handlers[type(event)](event)
        except yaml.YAMLError as error:
            self.stop(error)
        return self.finished

    def limit_nodes(self, events: int, event: Any) -> None:
        """Stop where there are too many nodes; `events` came before, two of them the beginnings."""
        if events - 2 - self.ends >= MAX_NODES and isinstance(event, ev.NodeEvent):
            mark: Any = event.start_mark
            columns = (mark.column + 1, mark.column + 2)
            self.gathered.refuse(Place(self.path, mark.line + 1, *columns), words.TOO_MANY_NODES)
            raise Enough

    def scalar(self, event: Any) -> None:
        """Put a text into what is open."""
        start, end, text = event.start_mark, event.end_mark, event.value
        line, column = start.line, start.column
        end_column = end.column + 1 if end.line == line else self.end_of(line, column)
        place = PlaceDraft(self.path, line + 1, column + 1, end_column)
        place.__class__ = Place
        if not text and end.index == start.index:
            place = self.place_of_nothing(start)
        if self.properties and end.index > start.index:
            self.refuse_properties(start.index)
        if event.style:
            self.closed, self.closed_at = place, end.index
            if not text.isprintable() and UNWELCOME.search(text):
                self.gathered.refuse(
                    place, words.with_found(words.ESCAPED_CONTROL, self.written(place))
                )
            node = ScalarDraft(text, True, place)
        else:
            node = ScalarDraft(text, False, place)
        node.__class__ = Scalar
        self.frame.put(node)

    def open_table(self, event: Any) -> None:
        """Begin a mapping."""
        place = self.begin(event, "table")
        self.frames.append(self.frame)
        self.frame = OpenTable(place, event.flow_style, self.gathered)

    def open_items(self, event: Any) -> None:
        """Begin a sequence."""
        place = self.begin(event, "list")
        self.frames.append(self.frame)
        self.frame = OpenItems(place, event.flow_style)

    def begin(self, event: Any, kind: str) -> Place:
        """Hold the limits of size and depth, and return where a table or a list begins."""
        start = event.start_mark
        place = PlaceDraft(self.path, start.line + 1, start.column + 1, start.column + 2)
        place.__class__ = Place
        if len(self.frames) >= MAX_DEPTH:
            self.gathered.refuse(place, words.TOO_DEEP)
            raise Enough
        if event.tag is not None or event.anchor is not None:
            self.refuse_properties(start.index)
        if self.frame.awaits_key:
            self.gathered.refuse(place, words.key_of_kind(kind))
        return place  # type: ignore[no-any-return]

    def close(self, event: Any) -> None:
        """End a table or a list, and put it into what it stands in."""
        frame = self.frame
        self.frame = self.frames.pop()
        self.closed, self.closed_at = frame.place, event.end_mark.index
        self.ends += 1
        self.frame.put(frame.closed())

    def alias(self, event: Any) -> None:
        """Refuse a reference to another node, and leave its entry out."""
        start, end = event.start_mark, event.end_mark
        place = Place(self.source.path, start.line + 1, start.column + 1, end.column + 1)
        self.gathered.refuse(place, words.with_found(words.ALIAS, f"*{event.anchor}"))
        self.closed, self.closed_at = None, end.index
        self.frame.skip()

    def start_stream(self, _: Any) -> None:
        """Begin: this event says nothing."""

    def end_stream(self, _: Any) -> None:
        """Note that the text was read to its end."""
        self.finished = True

    def start_document(self, _: Any) -> None:
        """Refuse a second document, like anything else that follows the first."""
        if self.ended is not None:
            raise yaml.YAMLError

    def end_document(self, event: Any) -> None:
        """Note where the document ends, for the case that something follows."""
        self.ended = event.end_mark.index

    def refuse_properties(self, index: int) -> None:
        """Refuse each tag and anchor that stands in front of a node."""
        text = self.source.text
        while text[index : index + 1] in ("!", "&") and (found := NAME.match(text, index)):
            said = words.ANCHOR if text[index] == "&" else words.TAG
            place = self.source.place(index, len(found.group()))
            self.gathered.refuse(place, words.with_found(said, found.group()))
            index = past_gap(text, found.end())

    def stop(self, error: yaml.YAMLError) -> None:
        """Report what the parser could not read, unless it is the rest of a refused alias."""
        text = self.source.text
        mark = getattr(error, "problem_mark", None)
        before = text[: mark.index].rstrip(" \t") if mark else ""
        follows = len(before) == self.closed_at and before[-1:] not in ("", "\n", "\r")
        frames = [self.frame, *reversed(self.frames)]
        opened = next((each.place for each in frames if self.is_bracketed(each)), None)
        ended = self.ended
        if "directive" in (getattr(error, "context", None) or "") and opened is None:
            ended = error.context_mark.index  # type: ignore[attr-defined]
        if ended is not None and not follows:
            self.refuse_more(ended)
        elif not follows or self.closed is not None:
            closed = self.closed if follows else None
            problem = syntax_problem(stop_at(self.source, error, opened, closed))
            self.gathered.report_new(problem)

    def is_bracketed(self, frame: OpenItems | OpenTable) -> bool:
        """Tell a table or list in brackets from one without, and from the pair in [a: b]."""
        return frame.flow and self.written(frame.place) in ("[", "{")

    def refuse_more(self, end: int) -> None:
        """Refuse what follows the end of the document."""
        index = past_gap(self.source.text, end)
        row = self.source.rest(index)
        ended = self.source.text[max(0, end - 3) : end] == "..."
        said = words.SECOND_DOCUMENT if ended or DOCUMENT_MARK.match(row) else words.NO_FIT
        self.gathered.refuse(self.source.place(index, 1), words.with_found(said, row))

    def check_root(self, due: type[Table] | type[Items] | None) -> None:
        """Refuse a file that says nothing, or that is not what is due as a whole."""
        root = self.base.entries[0] if self.base.entries else None
        if root is None or (isinstance(root, Scalar) and not root.text and not root.quoted):
            if not self.gathered.problems:
                self.gathered.refuse(self.base.place, words.EMPTY)
        elif due is not None and not isinstance(root, due):
            self.gathered.refuse(root.place, words.wrong_root(KINDS[type(root)], KINDS[due]))

    def place_of_nothing(self, mark: Any) -> Place:
        """Return the place of an absent node: the character before it, a dash for example.

        The parsers mark it at different ends of the space around it.
        """
        text, lines = self.source.text, self.source.lines
        space = (text[mark.index : past_gap(text, mark.index)] + "|").splitlines()
        line = mark.line + len(space) - 1
        column = len(space[-1]) - 1 + (mark.column if len(space) == 1 else 0)
        row = lines[line][:column].rstrip() if line < len(lines) else ""
        while not row and line > 0:
            line -= 1
            row = lines[line].rstrip() if line < len(lines) else ""
        return Place(self.source.path, line + 1, max(1, len(row)), max(1, len(row)) + 1)

    def end_of(self, line: int, column: int) -> int:
        """Return the column after the text of a line, for what goes on below it."""
        if line >= len(self.source.lines):
            return column + 1
        return len(self.source.lines[line].rstrip()) + 1

    def written(self, place: Place) -> str:
        """Return what stands at a place."""
        return self.source.lines[place.line - 1][place.column - 1 : place.end_column - 1]
