"""The constant power behind `^`."""

from fractions import Fraction

from reviewer.judging.expression import Quantity, Span
from reviewer.judging.language_error import LanguageError
from reviewer.judging.tokens import Token

LARGEST = 4
FINEST = 1000


def read_exponent(found: list[Token], at: int) -> tuple[Fraction, int]:
    """Read `2`, `-1`, `0.5` or `(1/3)` from a position, and return it with the position behind it.

    Raises LanguageError for anything else: a power is a number that stands in the text, from -4
    to 4, so that no expression can compute an unbounded one and its dimension is known.
    """
    start = at
    bracketed = found[at].kind == "("
    at += bracketed
    negative = found[at].kind == "-"
    at += negative
    value = _part(found, start, at)
    at += 1
    if bracketed:
        if found[at].kind == "/":
            below = _part(found, start, at + 1)
            if below == 0:
                raise _refused(found, start, at + 1)
            value, at = value / below, at + 2
        if found[at].kind != ")":
            raise _refused(found, start, at)
        at += 1
    if abs(value) > LARGEST or found[at].kind == "^":
        raise _refused(found, start, at if found[at].kind == "^" else at - 1)
    return (-value if negative else value), at


def _part(found: list[Token], start: int, at: int) -> Fraction:
    """Read a plain number of the exponent, exactly."""
    literal = found[at].literal
    if not isinstance(literal, Quantity) or literal.unit or literal.number > FINEST:
        raise _refused(found, start, at)
    exact = Fraction(literal.number).limit_denominator(FINEST)
    if float(exact) != literal.number:
        raise _refused(found, start, at)
    return exact


def _refused(found: list[Token], start: int, at: int) -> LanguageError:
    span: Span = (found[start].start, max(found[at].end, found[start].start + 1))
    text = "".join(token.text for token in found[start : at + 1])
    return LanguageError(
        span,
        "a power must be a small constant number",
        text or "the end",
        f"a number from -{LARGEST} to {LARGEST} with at most three decimals, such as 2 or (1/3)",
        "multiply, or use sqrt or a table" if text else None,
    )
