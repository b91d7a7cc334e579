"""What to say of a word or sign that cannot stand where it does."""

from reviewer.judging.language_error import LanguageError
from reviewer.judging.tokens import KEYWORDS, Token
from reviewer.notation.units import UnknownUnit, parse_unit

VALUE = "a number with its unit, a name, a text in quotes or a parenthesis"
REST = "an operator, or the end of the expression"

_DOUBLED = {("*", "*"): "^", ("<", ">"): "!=", ("/", "/"): "/", ("=", ">"): ">="}
_WORDS = {
    "is": "write ==",
    "equals": "write ==",
    "if": "join conditions by and, or and not",
    "else": "join conditions by and, or and not",
    "xor": "join conditions by and, or and not",
    "true": "write the condition itself",
    "false": "write not before the condition",
}


def unexpected(found: list[Token], at: int, expected: str) -> LanguageError:
    """Return the error for the token at a position, where something else is due."""
    token = found[at]
    before = found[at - 1] if at else None
    if before is not None and before.literal is not None and token.kind == "name":
        error = _no_unit(before, token)
        if error is not None:
            return error
    if token.kind == "end":
        return LanguageError(
            token.span, "the expression ends too early", "its end", expected, _unclosed(found)
        )
    return LanguageError(
        token.span,
        f"{token.text!r} cannot stand here",
        token.text,
        expected,
        _mend(token, before, found, at),
    )


def _no_unit(before: Token, token: Token) -> LanguageError | None:
    """Return the error for a name right behind a number, which can only be meant as a unit."""
    if before.kind != "number" or not before.text[-1].isdigit():
        return None
    mend = f"write {before.text} * {token.text} to multiply by a quantity of that name"
    try:
        parse_unit(token.text)
    except UnknownUnit as unknown:
        if unknown.nearest:
            mend = f"write {before.text} {unknown.nearest}"
    return LanguageError(
        token.span, "the unit is not known", token.text, "a unit, as in 18 mm", mend
    )


def _unclosed(found: list[Token]) -> str | None:
    """Say which parenthesis or bracket is still open, if one is."""
    open_signs: list[str] = []
    for token in found:
        if token.kind in {"(", "["}:
            open_signs.append(")" if token.kind == "(" else "]")
        elif token.kind in {")", "]"} and open_signs:
            open_signs.pop()
    return f"close with {open_signs[-1]}" if open_signs else None


def _mend(token: Token, before: Token | None, found: list[Token], at: int) -> str | None:
    pair = (before.kind if before else "", token.kind)
    if pair in _DOUBLED:
        return f"write {_DOUBLED[pair]}"
    if token.kind == ")" or token.kind == "]":
        return f"take {token.kind} out, or open it before"
    if token.kind == "," and before is not None and found[at + 1].kind == "number":
        return f"write {before.text}.{found[at + 1].text} if that is one number"
    if token.kind == "number" and before is not None and before.kind == "number":
        joined = "" if before.text[-1].isdigit() else " + "
        return f"write {before.text}{joined}{token.text}"
    if token.kind == "name":
        lower = token.text.lower()
        return f"write {lower}" if lower in KEYWORDS else _WORDS.get(lower)
    if token.kind == "not" and found[at + 1].kind == "in":
        return 'write not before the condition: not material in ["beech"]'
    if token.kind in {"not", "every"}:
        return f"put {token.kind} and its condition in parentheses"
    if before is not None and before.kind == "in":
        return 'write the texts in brackets: in ["beech", "ash"]'
    return None
