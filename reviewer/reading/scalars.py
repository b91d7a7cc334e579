"""What a plain scalar means: the core schema of YAML 1.2, and nothing of YAML 1.1."""

import re
from math import inf, nan

from reviewer.reading.tree import Scalar

NULLS = frozenset({"", "~", "null", "Null", "NULL"})
BOOLEANS = {
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
}
NUMBER = re.compile(
    r"(?P<decimal>[-+]?[0-9]+)"
    r"|0o(?P<octal>[0-7]+)"
    r"|0x(?P<hexadecimal>[0-9a-fA-F]+)"
    r"|(?P<real>[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?)"
    r"|(?P<infinity>[-+]?\.(?:inf|Inf|INF))"
    r"|(?P<nan>\.(?:nan|NaN|NAN))"
)
# The most digits of a number that a float still holds, and that Python turns back into text.
LONGEST = {10: 308, 8: 341, 16: 255}


def resolve(scalar: Scalar) -> bool | int | float | str | None:
    """Give a scalar the value that the core schema of YAML 1.2 gives it.

    Quoted text is text. `on`, `off`, `yes`, `no`, `1:30` and `1_000` are text too, and `012` is
    twelve. Infinity and not-a-number are returned as floats, so that a caller can refuse them; an
    integer beyond the range of a float is an infinity for the same reason.

    YAML 1.2.2 (2021), 10.3.2.

    >>> from reviewer.notation.problem import Place
    >>> here = Place("bench.yaml", 1, 1, 4)
    >>> [resolve(Scalar(text, False, here)) for text in ("012", "on", "~", "1.5e3", "0x1F")]
    [12, 'on', None, 1500.0, 31]
    >>> resolve(Scalar("012", True, here))
    '012'
    """
    text = scalar.text
    if scalar.quoted:
        return text
    if text in NULLS:
        return None
    if text in BOOLEANS:
        return BOOLEANS[text]
    match = NUMBER.fullmatch(text)
    return text if match is None else _number(match)


def is_null(scalar: Scalar) -> bool:
    """Tell whether a scalar is the null of the core schema."""
    return not scalar.quoted and scalar.text in NULLS


def _number(match: re.Match[str]) -> int | float:
    """Read a number out of the alternative that matched."""
    text = match.group()
    match match.lastgroup:
        case "decimal":
            return _integer(text, 10)
        case "octal":
            return _integer(text[2:], 8)
        case "hexadecimal":
            return _integer(text[2:], 16)
        case "real":
            return float(text)
        case "infinity":
            return -inf if text.startswith("-") else inf
        case _:
            return nan


def _integer(digits: str, base: int) -> int | float:
    """Read an integer, or an infinity where it is longer than any number that we can hold."""
    if len(digits.lstrip("+-0")) <= LONGEST[base]:
        return int(digits.lstrip("+-").lstrip("0") or "0", base) * (
            -1 if digits.startswith("-") else 1
        )
    return -inf if digits.startswith("-") else inf
