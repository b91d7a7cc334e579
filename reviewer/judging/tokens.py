"""The words and signs of an expression, each with its place in the text."""

import re
from typing import NamedTuple

from reviewer.judging.expression import Quantity, Span, Text
from reviewer.judging.language_error import LanguageError
from reviewer.judging.literals import (
    FRACTION,
    NUMBER,
    WHOLE_MINUS_FRACTION,
    read_fraction,
    read_number,
)
from reviewer.judging.strange import refuse_character

LONGEST = 2000
KEYWORDS = frozenset({"and", "or", "not", "in", "every"})


class Token(NamedTuple):
    """A word or sign; its kind is `number`, `text`, `name`, `end`, or the sign itself."""

    kind: str
    text: str
    start: int
    end: int
    literal: Quantity | Text | None = None

    @property
    def span(self) -> Span:
        """Where it is in the text."""
        return (self.start, self.end)


_TOKEN = re.compile(
    rf"""[ \t\r\n]*(?:
    (?P<name>[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*)
    |(?P<sign><=|>=|==|!=|[-+*/^<>()\[\],:])
    |(?P<between>{WHOLE_MINUS_FRACTION})
    |(?P<fraction>{FRACTION})
    |(?P<number>{NUMBER})
    |(?P<text>"[^"\r\n]*"|'[^'\r\n]*')
    |(?P<end>\Z)
    |(?P<strange>.)
    )""",
    re.VERBOSE | re.DOTALL,
)


def tokens(text: str) -> list[Token]:
    """Cut a text into tokens, the last of them of kind `end`.

    Raises LanguageError at the first character that is none of the language's, at a number that
    cannot be held, and at a text of more than 2,000 characters.
    """
    if len(text) > LONGEST:
        raise LanguageError(
            (LONGEST, LONGEST + 1),
            "the expression is too long",
            f"{len(text)} characters",
            f"at most {LONGEST}",
            "split it into rules of its own",
        )
    found: list[Token] = []
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup or ""
        word, end = match[kind], match.end()
        start = end - len(word)
        if kind == "name":
            found.append(Token(word if word in KEYWORDS else kind, word, start, end))
        elif kind == "sign":
            found.append(Token(word, word, start, end))
        elif kind == "end":
            found.append(Token(kind, word, start, end))
            break
        else:
            found.append(_literal(kind, word, (start, end), text, found))
    return found


def _literal(kind: str, word: str, span: Span, text: str, before: list[Token]) -> Token:
    """Read a token that carries a value, or refuse what is no token."""
    if kind == "number":
        return Token(kind, word, *span, read_number(word, span))
    if kind == "text":
        return Token(kind, word, *span, _text(word, span))
    if kind == "fraction":
        previous = before[-1].kind if before else ""
        return Token("number", word, *span, read_fraction(word, span, previous))
    if kind == "between":
        whole, part = word.split("-", 1)
        raise LanguageError(
            span,
            "the text could be a difference or a mixed number",
            word,
            "one or the other",
            f"write {whole} {part} for a mixed number",
        )
    raise refuse_character(text, span, before[-1].kind if before else "")


def _text(word: str, span: Span) -> Text:
    if not word.isprintable():
        raise LanguageError(
            span,
            "the text holds a character that does not print",
            word,
            "letters, digits, signs and blanks",
            "take the character out",
        )
    return Text(word[1:-1], span)
