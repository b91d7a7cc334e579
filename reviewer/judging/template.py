"""The text of a rule, with places for names: `The ring lifts under {case}; {demand} of {capacity}`.

A place is a dotted name in braces, and nothing else; `{{` and `}}` stand for the braces themselves.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass

from reviewer.judging.expression import Span
from reviewer.judging.kinds import Vocabulary
from reviewer.judging.language_error import LanguageError
from reviewer.notation.nearest import nearest

SPECIAL = frozenset({"demand", "capacity", "utilisation", "case", "part", "direction"})
"""The places that the finding itself fills, not a quantity."""

LONGEST = 2000
MOST_PLACES = 50

_NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*")
_PIECE = re.compile(r"\{\{|\}\}|\{[^{}]*\}|[{}]|[^{}]+")


@dataclass(frozen=True, slots=True)
class Template:
    """A text in pieces: what stands as it is, and the names between, each with its place.

    There is one more text than there are names.
    """

    texts: tuple[str, ...]
    names: tuple[tuple[str, Span], ...]

    def render(self, fill: Callable[[str], str]) -> str:
        """Write the text, with what `fill` returns in the place of each name.

        >>> parse_template("{part} of {{1}}").render(str.upper)
        'PART of {1}'
        """
        filled = [fill(name) for name, _ in self.names]
        pairs = zip(self.texts[1:], filled, strict=True)
        return self.texts[0] + "".join(value + text for text, value in pairs)


def parse_template(text: str) -> Template:
    """Read a text with places. Raises LanguageError, with the span of what is wrong.

    >>> parse_template("{hold_down.peak_load} N").names
    (('hold_down.peak_load', (0, 21)),)
    """
    if len(text) > LONGEST:
        raise LanguageError(
            (LONGEST, LONGEST + 1),
            "the text is too long",
            f"{len(text)} characters",
            f"at most {LONGEST}",
            "say it shorter",
        )
    texts, names = [""], []
    for match in _PIECE.finditer(text):
        piece = match[0]
        if piece in ("{{", "}}"):
            texts[-1] += piece[0]
        elif piece[0] in "{}":
            names.append((_name(piece, match.span()), match.span()))
            texts.append("")
        else:
            texts[-1] += piece
    if len(names) > MOST_PLACES:
        raise LanguageError(
            names[MOST_PLACES][1], "the text has too many places", str(len(names)), f"{MOST_PLACES}"
        )
    return Template(tuple(texts), tuple(names))


def check_names(template: Template, lookup: Vocabulary) -> None:
    """Refuse a name that is neither special nor known. Raises LanguageError."""
    for name, span in template.names:
        if name in SPECIAL or lookup(name) is not None:
            continue
        meant = nearest(name, [*lookup.known(), *SPECIAL])
        raise LanguageError(
            span,
            "the name is not known",
            name,
            f"the name of a quantity, or one of {', '.join(sorted(SPECIAL))}",
            f"write {{{meant}}}" if meant else None,
        )


def _name(piece: str, span: Span) -> str:
    """Return the name in braces, or refuse what stands in them."""
    name = piece[1:-1].strip(" ")
    if len(piece) > 1 and _NAME.fullmatch(name):
        return name
    if len(piece) == 1:
        what = "the brace has no end" if piece == "{" else "the brace has no beginning"
        mend = f"write {piece}{piece} for the brace itself"
    else:
        what, mend = "a place holds one dotted name", "write the name of one quantity, as {demand}"
    raise LanguageError(span, what, piece, "a name in braces, such as {demand}", mend)
