"""Why a character is none of the language's, and what was probably meant."""

import re
import unicodedata

from reviewer.judging.expression import Span
from reviewer.judging.language_error import LanguageError
from reviewer.notation.plain import visible
from reviewer.notation.units import UnknownUnit, parse_unit

_MEANT = {
    "=": "==",
    "≤": "<=",
    "≥": ">=",
    "≠": "!=",
    "−": "-",
    "–": "-",
    "×": "*",
    "·": "*",
    "⋅": "*",
    "÷": "/",
    "&": "and",
    "∧": "and",
    "|": "or",
    "∨": "or",
    "!": "not",
    "¬": "not",
    "∈": "in",
    "²": "^2",
    "³": "^3",
    "“": '"',
    "”": '"',
    "„": '"',
    "‘": "'",
    "’": "'",
}
_REVERSED = {"=<": "<=", "=>": ">="}
_QUOTES = "\"'"


def refuse_character(text: str, span: Span, before: str) -> LanguageError:
    """Return the error for the character at `span`, which follows a token of the kind `before`."""
    start = span[0]
    character = text[start]
    digit = text[start + 1 : start + 2]
    if character == "." and (before == "number" or digit.isdigit()) and before != "name":
        return _point(text, start, before)
    if before == "number" and character not in _MEANT and not character.isspace():
        return _unit(text, start)
    pair = text[start : start + 2]
    if pair in _REVERSED:
        return _operator((start, start + 2), pair, _REVERSED[pair])
    if character in _MEANT:
        width = 2 if pair in {"&&", "||"} else 1
        return _operator((start, start + width), pair[:width], _MEANT[character])
    if character in _QUOTES:
        return _open_text(text, start)
    if character in "._":
        return LanguageError(
            span,
            f"a name cannot have {character!r} here",
            _word(text, start),
            "words of letters, digits and _ that begin with a letter, joined by dots",
        )
    if character.isalnum():
        return _look_alike(text, start)
    return LanguageError(
        span,
        "the character is none of the language's",
        _described(character),
        "names, numbers with units, texts in quotes, and the signs + - * / ^ < > = ! ( ) [ ] , :",
        "use a plain blank" if character.isspace() else None,
    )


def _operator(span: Span, found: str, meant: str) -> LanguageError:
    return LanguageError(
        span, "the sign is none of the language's", found, "one of its signs", f"write {meant}"
    )


def _open_text(text: str, start: int) -> LanguageError:
    end = text.find("\n", start)
    rest = text[start : end if end >= 0 else len(text)]
    return LanguageError(
        (start, start + len(rest)),
        "the text has no end",
        rest,
        "the same quote again before the end of the line",
        f"put {text[start]} behind the text",
    )


def _point(text: str, start: int, before: str) -> LanguageError:
    """Return the error for `.5` and `5.`, which are easily read as something else."""
    leading = before != "number"
    return LanguageError(
        (start, start + 1),
        "the number begins with a point" if leading else "the number ends in a point",
        _word(text, start),
        "digits on both sides of the point",
        f"write 0{_word(text, start)}" if leading else "write the digits behind it, or no point",
    )


def _unit(text: str, start: int) -> LanguageError:
    """Return the error for what stands where a unit could: `60°`, `5 µm`, `3/4"`."""
    found = _word(text, start)
    nearest = {'"': "in", "'": "ft"}.get(found[0])
    if nearest is None:
        try:
            parse_unit(found)
        except UnknownUnit as unknown:
            nearest = unknown.nearest
    return LanguageError(
        (start, start + len(found)),
        "the unit is not known",
        found,
        "a unit, as in 18 mm",
        f"write {nearest}" if nearest else None,
    )


def _look_alike(text: str, start: int) -> LanguageError:
    return LanguageError(
        (start, start + 1),
        "the letter is not a plain one, though it may look like it",
        _described(text[start]),
        "names in the letters a to z and A to Z",
        "type the name again in plain letters",
    )


def _described(character: str) -> str:
    name = unicodedata.name(character, "a control character")
    shown = f"{character} " if character.isprintable() and not character.isspace() else ""
    return f"{shown}(U+{ord(character):04X}, {name.lower()})"


def _word(text: str, start: int) -> str:
    """Return the run of characters from a place to the next blank or sign, a short one."""
    match = re.compile(r"[^\s()\[\],:<>=!+*^-]{1,30}").match(text, start)
    return match[0] if match else visible(text[start])
