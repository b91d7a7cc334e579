"""The parsers of PyYAML as streams of events: libyaml's, or the pure one without it."""

import re
from collections.abc import Callable
from typing import Any, Protocol

import yaml
from yaml.events import Event
from yaml.parser import Parser
from yaml.reader import Reader
from yaml.scanner import Scanner, ScannerError
from yaml.tokens import ScalarToken

BLANKS = " \t"
BREAKS = "\r\n"
ENDS = "\0 \t\r\n"
BRACKETS = ",[]{}"


class EventSource(Protocol):
    """What is used of a parser: the next event, or a yaml.YAMLError with a mark."""

    def get_event(self) -> Event:
        """Return the next event; the last is a StreamEndEvent."""
        ...


ParserOf = Callable[[str], EventSource]


class PureParser(Reader, Scanner, Parser):
    """PyYAML's pure parser, made to agree with libyaml where the two read differently.

    They differ in where tabs may stand, in `?` and `:` inside brackets, in what may follow on the
    line that begins a block of text, in brackets that are not closed, in directives, and in
    escapes of what is no character.
    """

    def __init__(self, text: str) -> None:
        """Begin to parse a text."""
        Reader.__init__(self, text)
        Scanner.__init__(self)
        Parser.__init__(self)

    def scan_to_next_token(self) -> None:
        """Skip spaces, comments and line ends, and tabs where YAML lets a tab separate."""
        while True:
            self.skip(" " if self.allow_simple_key and not self.flow_level else BLANKS)
            if self.peek() == "#":
                self.skip_comment()
            if self.peek() not in BREAKS:
                return
            self.line_break()
            if not self.flow_level:
                self.allow_simple_key = True

    def fetch_stream_end(self) -> None:
        """End the stream, and refuse a bracket in the place of a key that is never closed."""
        for key in self.possible_simple_keys.values():
            if key.required:
                self.fail("while scanning a simple key", key.mark, "could not find expected ':'")
        super().fetch_stream_end()

    def scan_directive(self) -> Any:
        """Scan a directive, and refuse one that is neither %YAML nor %TAG."""
        if not re.match(r"%(YAML|TAG)(?![\w-])", self.prefix(6)):
            self.fail("while scanning a directive", self.get_mark(), "found unknown directive name")
        return super().scan_directive()

    def scan_tag(self) -> Any:
        """Scan a tag, and mark one that is not well formed where it begins."""
        start = self.get_mark()
        try:
            return super().scan_tag()
        except ScannerError as error:
            raise ScannerError("while scanning a tag", start, error.problem, start) from None

    def scan_plain(self) -> ScalarToken:
        """Scan a plain text over as many lines as it has."""
        chunks: list[str] = []
        start, end, spaces, broken = self.get_mark(), self.get_mark(), "", False
        indent = self.indent + 1
        while self.peek() != "#" and not self.at_document_mark():
            length = self.plain_length(start)
            if length:
                self.allow_simple_key = broken = False
                chunks += spaces, self.prefix(length)
                self.forward(length)
                end = self.get_mark()
            if self.peek() not in BLANKS + BREAKS:
                break
            spaces, broken = self.plain_space(indent, start)
            if not self.flow_level and self.column < indent:
                break
        self.allow_simple_key = broken or self.allow_simple_key
        return ScalarToken("".join(chunks), True, start, end)

    def plain_length(self, start: Any) -> int:
        """Count the characters of a plain text up to a blank or an indicator."""
        length = 0
        while (character := self.peek(length)) not in ENDS:
            after = self.peek(length + 1)
            if character == ":":
                if after in ENDS:
                    break
                if self.flow_level and after in BRACKETS + "?":
                    self.forward(length)
                    self.fail("while scanning a plain scalar", start, "found unexpected ':'")
            elif self.flow_level and character in BRACKETS:
                break
            length += 1
        return length

    def plain_space(self, indent: int, start: Any) -> tuple[str, bool]:
        """Skip the space inside a plain text; return what it stands for, and if it broke a line."""
        spaces, breaks = "", 0
        while (character := self.peek()) in BLANKS + BREAKS:
            if character in BREAKS:
                breaks += 1
                self.line_break()
            else:
                if breaks and character == "\t" and self.column < indent:
                    problem = "found a tab character that violates indentation"
                    self.fail("while scanning a plain scalar", start, problem)
                spaces += character
                self.forward()
        if not breaks:
            return spaces, False
        return "\n" * (breaks - 1) or " ", True

    def scan_block_scalar_indicators(self, start: Any) -> tuple[bool | None, int | None]:
        """Scan the signs after | or >."""
        keep, increment = None, None
        for _ in range(2):
            if keep is None and self.peek() in "+-":
                keep = self.peek() == "+"
            elif increment is None and self.peek() in "0123456789":
                increment = int(self.peek())
                if not increment:
                    problem = "found an indentation indicator equal to 0"
                    self.fail("while scanning a block scalar", start, problem)
            else:
                break
            self.forward()
        return keep, increment

    def scan_block_scalar_ignored_line(self, start: Any) -> None:
        """Skip the rest of the line that begins a block of text."""
        self.skip(BLANKS)
        if self.peek() == "#":
            self.skip_comment()
        if self.peek() not in "\0" + BREAKS:
            problem = "did not find expected comment or line break"
            self.fail("while scanning a block scalar", start, problem)
        self.line_break()

    def scan_block_scalar_indentation(self) -> Any:
        """Find the indentation of a block of text."""
        found = super().scan_block_scalar_indentation()
        self.refuse_tab(self.column + 1)
        return found

    def scan_block_scalar_breaks(self, indent: int) -> Any:
        """Skip the empty lines of a block of text, and the indentation of the next line."""
        found = super().scan_block_scalar_breaks(indent)
        self.refuse_tab(indent)
        return found

    def scan_flow_scalar(self, style: str) -> ScalarToken:
        """Scan quoted text, and refuse escapes of what is no character."""
        start = self.get_mark()
        try:
            token: ScalarToken = super().scan_flow_scalar(style)
            token.value.encode()
        except ValueError:
            problem = "found invalid Unicode character escape code"
            self.fail("while parsing a quoted scalar", start, problem)
        return token

    def skip(self, blanks: str) -> None:
        """Skip blanks on a line."""
        while self.peek() in blanks:
            self.forward()

    def skip_comment(self) -> None:
        """Skip to the end of a line."""
        while self.peek() not in "\0" + BREAKS:
            self.forward()

    def line_break(self) -> None:
        """Skip the end of a line, if there is one."""
        self.scan_line_break()  # type: ignore[no-untyped-call]

    def at_document_mark(self) -> bool:
        """Tell whether the line ends the document."""
        mark = self.column == 0 and self.prefix(3) in ("---", "...")
        return mark and self.peek(3) in ENDS

    def refuse_tab(self, indent: int) -> None:
        """Refuse a tab in the indentation of a block of text."""
        if self.peek() == "\t" and self.column < indent:
            problem = "found a tab character where an indentation space is expected"
            self.fail("while scanning a block scalar", self.get_mark(), problem)

    def fail(self, context: str, start: Any, problem: str) -> None:
        """Raise an error of the grammar at this character."""
        raise ScannerError(context, start, problem, self.get_mark())


def pure_parser(text: str) -> EventSource:
    """Parse a text with the parser that is written in Python."""
    return PureParser(text)


def choose_parser(with_libyaml: bool = yaml.__with_libyaml__) -> ParserOf:
    """Choose the C parser, or the pure one where PyYAML was built without libyaml."""
    if not with_libyaml:
        return pure_parser
    from yaml import _yaml

    return _yaml.CParser  # type: ignore[return-value]


PARSER = choose_parser()
