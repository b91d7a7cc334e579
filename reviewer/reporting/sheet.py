"""A sheet of text: lines wrapped to the width of a terminal, with colour where it is wanted."""

import re
from dataclasses import dataclass
from unicodedata import combining, east_asian_width

from reviewer.notation.plain import plain
from reviewer.notation.unit_table import UNITS

LONGEST = 2000  # characters of one text; the longest that a pack may say
LOOKS = {"strong": "1", "must": "1;31", "should": "1;35", "note": "1"}
HARD_SPACE = "\u00a0"
_SYMBOLS = "|".join(re.escape(each) for each in sorted(UNITS, key=len, reverse=True) if each != "1")
_WITHIN = re.compile(rf"(?<=\d) (?=(?:{_SYMBOLS})(?![A-Za-z]))|(?<=\d N) (?=m\b)")
LEAST_ROOM = 16  # columns that are left for text however deep it is indented


@dataclass(frozen=True, slots=True)
class Style:
    """How wide lines may be, and whether they may have colour."""

    width: int = 80
    colour: bool = False

    def look(self, text: str, look: str) -> str:
        """A text in one of the looks, where colour is wanted."""
        if not self.colour or not look or not text:
            return text
        return f"\x1b[{LOOKS[look]}m{text}\x1b[0m"


def columns(text: str) -> int:
    """How many columns of a terminal a text takes (UAX 11: wide characters take two).

    >>> columns("18 mm"), columns("\u6728")
    (5, 2)
    """
    if text.isascii():
        return len(text)
    return sum(
        0 if combining(each) else 2 if east_asian_width(each) in "WF" else 1 for each in text
    )


def wrapped(text: str, room: int) -> list[str]:
    """A text in lines of at most so many columns.

    It breaks at spaces, but not between a number and its unit; a word that is longer than a line
    stands alone on one.

    >>> wrapped("the far side of the rim sinks by 12 mm", 12)
    ['the far side', 'of the rim', 'sinks by', '12 mm']
    """
    lines: list[str] = []
    used = 0
    for piece in _WITHIN.sub(HARD_SPACE, text).split(" "):
        word = piece.replace(HARD_SPACE, " ")
        wide = columns(word)
        if not word:
            continue
        if lines and used + 1 + wide <= room:
            lines[-1] = f"{lines[-1]} {word}"
            used += 1 + wide
        else:
            lines.append(word)
            used = wide
    return lines


class Sheet:
    """The lines of a report under way. Whatever is put on it is made safe for a terminal."""

    def __init__(self, style: Style) -> None:
        """Begin an empty sheet."""
        self.style = style
        self.lines: list[str] = []

    def put(self, text: str, indent: int = 0, lead: str = "", look: str = "") -> None:
        """Put a text at an indent; behind `lead` on its first line, below its end on the others."""
        lead = plain(lead, LONGEST)
        deepest = max(0, self.style.width - columns(lead) - LEAST_ROOM)
        before = " " * min(indent, deepest)
        room = self.style.width - len(before) - columns(lead)
        lines = wrapped(plain(text, LONGEST), room) or [""]
        for number, line in enumerate(lines):
            start = lead if number == 0 else " " * columns(lead)
            told = self.style.look(line, look)
            self.lines.append(f"{before}{start}{told}".rstrip())

    def gap(self) -> None:
        """Leave a line free, if the one above is not free already."""
        if self.lines and self.lines[-1]:
            self.lines.append("")

    def heading(self, text: str) -> None:
        """Begin a section."""
        self.gap()
        title = plain(text).upper()
        line = "-" * max(0, self.style.width - columns(title) - 1)
        self.lines.append(f"{self.style.look(title, 'strong')} {line}".rstrip())
        self.lines.append("")

    def text(self) -> str:
        """The whole sheet, with a line end behind every line."""
        return "".join(f"{line}\n" for line in self.lines)
