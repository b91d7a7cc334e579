"""Where a parser stopped, and the text around it."""

import re
from dataclasses import dataclass

from reviewer.notation.problem import Place, Problem
from reviewer.reading.source import Source
from reviewer.reading.words import Words, shown

NAME = re.compile(r"!<[^>\s]*>?|[!&*][^\s,\[\]{}]*")


@dataclass(frozen=True, slots=True)
class Stop:
    """Where the parser stopped, what it said, and what it had read until there.

    `index` counts characters of the text; at `begun_at` stands the beginning of what the parser
    could not finish. `opened` is the innermost bracket that is open; `closed` is where the value
    began that ended just before, in a bracket or a quote.
    """

    source: Source
    told: str
    index: int
    begun_at: int
    opened: Place | None
    closed: Place | None

    @property
    def text(self) -> str:
        """The text that was parsed."""
        return self.source.text

    @property
    def row(self) -> str:
        """The line on which the parser stopped."""
        line = self.source.place(self.index, 1).line
        return self.source.lines[line - 1] if line <= len(self.source.lines) else ""

    @property
    def before(self) -> str:
        """The line up to where the parser stopped."""
        return self.row[: self.source.place(self.index, 1).column - 1]

    @property
    def rest(self) -> str:
        """The line from where the parser stopped."""
        return self.source.rest(self.index)

    @property
    def begun(self) -> str:
        """The line from where the unfinished thing begins."""
        return self.source.rest(self.begun_at)

    @property
    def before_begun(self) -> str:
        """The text up to where the unfinished thing begins."""
        return self.text[max(0, self.begun_at - 1) : self.begun_at]

    @property
    def at_end(self) -> bool:
        """Whether nothing follows."""
        return not self.text[self.index :].strip()

    @property
    def found(self) -> str:
        """What stands where the parser stopped, as it is told."""
        return "the end of the file" if self.at_end else shown(self.rest)

    def name_at(self, index: int) -> str:
        """The anchor, alias or tag that stands at a character of the text."""
        match = NAME.match(self.text, index)
        return match.group() if match else ""

    def problem(self, index: int, width: int, said: Words) -> Problem:
        """A problem at a character of the text."""
        place = self.source.place(index, width)
        return self.source.problem(place.line, (place.column, place.end_column), said)

    def here(self, said: Words, width: int = 1) -> Problem:
        """A problem where the parser stopped; at the end of the file, after the last text."""
        index = len(self.text.rstrip()) if self.at_end else self.index
        return self.problem(index, width, said)

    def where_begun(self, said: Words, width: int = 1) -> Problem:
        """A problem where the thing begins that the parser could not finish."""
        return self.problem(self.begun_at, width, said)
