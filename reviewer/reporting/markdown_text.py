"""Texts that are nothing but text in Markdown, and tables of them."""

import re
from collections.abc import Iterable, Sequence

from reviewer.notation.plain import plain

LONGEST = 2000
JOINER = "\u2060"  # WORD JOINER: no width, no meaning, and no part of a name or an address
MARKS = re.compile(r"([\\`*\[\]<>|~&$])")
# An underscore within a word is text (CommonMark 0.31.2, 6.2), and most of ours are.
UNDERSCORE = re.compile(r"(?<![^\W_])_|_(?![^\W_])")
# What forges turn into links to people, issues and addresses, in whatever way it is escaped.
REFERENCE = re.compile(r"[@#!](?=\w)|:(?=//)|(?<=\bwww)\.", re.IGNORECASE)
FIRST = re.compile(r"^([-+](?=[-+\s]|\Z)|[=#])|^(\d{1,9})(?=[.)](?:\s|\Z))")


def marked(text: str) -> str:
    """A text that is nothing but text in Markdown, on one line.

    >>> marked("a*b | <c>")
    'a\\\\*b \\\\| \\\\<c\\\\>'
    >>> marked("ring.hold_down.count"), marked("1. _x_")
    ('ring.hold_down.count', '1\\\\. \\\\_x\\\\_')
    """
    told = plain(text, LONGEST).strip()
    told = UNDERSCORE.sub(r"\\_", MARKS.sub(r"\\\1", told))
    told = FIRST.sub(lambda found: f"\\{found[1]}" if found[1] else f"{found[2]}\\", told)
    return REFERENCE.sub(lambda found: found[0] + JOINER, told)


def table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    """A table with its heads, the cells as the texts that they are."""
    return [
        f"| {' | '.join(heads)} |",
        f"|{' --- |' * len(heads)}",
        *(f"| {' | '.join(marked(cell) for cell in row)} |" for row in rows),
    ]


def folded(summary: str, lines: Sequence[str]) -> list[str]:
    """Lines that are folded away under a summary, where the reader can fold."""
    return ["<details>", f"<summary>{summary}</summary>", "", *lines, "", "</details>"]
