"""Numbers as the trade writes them, read exactly: 18, 0.15, 1e3, 3/4, 1 1/2, 1-1/2."""

import re
from fractions import Fraction
from typing import NoReturn

from reviewer.notation.dimension import Dimension
from reviewer.notation.plain import plain
from reviewer.notation.refusal import QuantityError, due
from reviewer.notation.written import Number

MOST_DIGITS = 40
LARGEST_EXPONENT = 100

_DECIMAL = re.compile(r"(\d+(?:\.\d*)?|\.\d+)(?:[eE]([+-]?\d+))?", re.ASCII)
_FRACTION = re.compile(r"/(\d+)", re.ASCII)
_MIXED = re.compile(r"(?:\s+|-)(\d+)/(\d+)", re.ASCII)
_NOT_FINITE = re.compile(r"\.?(?:inf(?:inity)?|nan)\b", re.IGNORECASE)
_COMMA = re.compile(r",\d", re.ASCII)
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+(?![\d,.])", re.ASCII)
_DIGITS_ON = re.compile(r"[\d,.]*", re.ASCII)
_SPACED = re.compile(r"\s+(?!1\s*/\s*[^\W\d])(?=\d)", re.ASCII)
_GROUPS = re.compile(r"\d{1,3}(?:\s\d{3})+(?![\d,/])", re.ASCII)
_MORE = re.compile(r"[.\d_]|/\d", re.ASCII)


def read_number(text: str, at: int, expected: Dimension | None) -> Number:
    """Read the number that starts at `at`.

    Raises QuantityError; `expected` is for its message.

    >>> read_number("1-1/2 in", 0, None).value
    Fraction(3, 2)
    """
    match = _DECIMAL.match(text, at)
    if match is None:
        _refuse_no_number(text, at, expected)
    end, parts = match.end(), None
    whole = match[1].isdigit() and match[2] is None
    if whole:
        parts = _FRACTION.match(text, end) or _MIXED.match(text, end)
        end = parts.end() if parts else end
    elif mixed := _MIXED.match(text, end):
        what = "a fraction stands after a number that is not whole"
        _refuse(text, (at, mixed.end()), what, "a whole number, then a fraction")
    _check_size(text, at, end, match[2])
    _check_what_follows(text, at, end)
    value = Fraction(match[0])
    if parts:
        value = _with_fraction(text, (at, end), value, [int(each) for each in parts.groups()])
    return Number(value, end, whole and parts is None)


def _with_fraction(text: str, span: tuple[int, int], first: Fraction, rest: list[int]) -> Fraction:
    """Join the parts of 3/4 (first 3, rest 4) or of 1 1/2 (first 1, rest 1 and 2)."""
    if rest[-1] == 0:
        mend = "write another number than 0 after the /"
        _refuse(text, span, "the fraction divides by zero", "a fraction such as 3/4", mend)
    if len(rest) == 1:
        return first / rest[0]
    if rest[0] >= rest[1]:
        what = "the fraction after a whole number is not less than one"
        _refuse(text, span, what, "a whole number and a fraction, such as 1 1/2")
    return first + Fraction(rest[0], rest[1])


def _check_size(text: str, at: int, end: int, exponent: str | None) -> None:
    """Refuse numbers that cost more to compute with than any design needs."""
    if end - at > MOST_DIGITS:
        what, expected = "the number is too long", f"at most {MOST_DIGITS} characters"
        _refuse(text, (at, end), what, expected, "round it")
    if exponent and abs(int(exponent)) > LARGEST_EXPONENT:
        expected = f"an exponent from -{LARGEST_EXPONENT} to {LARGEST_EXPONENT}"
        _refuse(text, (at, end), "the number is too large or too small", expected)


def _check_what_follows(text: str, at: int, end: int) -> None:
    """Refuse marks that would cut a number in two in silence."""
    if _COMMA.match(text, end):
        _refuse_comma(text, at, end)
    if _SPACED.match(text, end):
        groups = _GROUPS.match(text, at)
        stop = groups.end() if groups else len(text)
        joined = re.sub(r"\s", "", groups[0]) if groups else None
        mend = f"write {plain(text[:at] + joined + text[stop:]).strip()}" if joined else None
        _refuse(text, (at, stop), "spaces stand between digits", "digits without spaces", mend)
    if _MORE.match(text, end):
        expected = "digits with at most one point, or one fraction"
        _refuse(text, (at, len(text)), "the number is not written as one number", expected)


def _refuse_comma(text: str, at: int, end: int) -> NoReturn:
    """Propose a point; where the comma may part thousands, propose both readings."""
    pointed = text[:end] + "." + text[end + 1 :]
    mend: str | None = f"write {plain(pointed).strip()}"
    if thousands := _THOUSANDS.match(text, at):
        joined = text[:at] + thousands[0].replace(",", "") + text[thousands.end() :]
        mend = f"write {plain(joined).strip()}"
        if thousands[0].count(",") == 1:
            mend += f" or {plain(pointed).strip()}"
    elif "." in text[at:end] or text.count(",", end) > 1:
        mend = None
    on = _DIGITS_ON.match(text, end)
    span = (at, on.end() if on else end)
    _refuse(text, span, "a comma stands in the number", "a point as the decimal mark", mend)


def _refuse_no_number(text: str, at: int, expected: Dimension | None) -> NoReturn:
    match = _NOT_FINITE.match(text, at)
    if match:
        mend = "write the number, or leave the key out"
        _refuse(text, match.span(), "the number is not finite", due(expected), mend)
    _refuse(text, (at, len(text)), "a number is missing here", due(expected))


def _refuse(
    text: str, span: tuple[int, int], what: str, expected: str, mend: str | None = None
) -> NoReturn:
    found = plain(text[slice(*span)].strip()) or "nothing"
    raise QuantityError(what, found, expected, mend, span)
