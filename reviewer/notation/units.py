"""Units read from text: the symbols of the closed table, and compounds of them."""

import re
from fractions import Fraction
from functools import lru_cache

from reviewer.notation.dimension import NUMBER, Dimension, si_symbol
from reviewer.notation.nearest import nearest
from reviewer.notation.spellings import SPELLINGS, TRAPS
from reviewer.notation.unit_table import EXACT, OFFSETS, UNITS, Unit

__all__ = [
    "UNITS",
    "Unit",
    "UnknownUnit",
    "exact_factor",
    "exact_offset",
    "nearest_unit",
    "parse_unit",
    "plain_superscripts",
    "si_unit",
]

MOST_FACTORS = 4
LARGEST_POWER = 6
LONGEST = 60

_SUPERSCRIPT = re.compile(r"(?<=[A-Za-z])[²³⁴]")
_WORD = re.compile(r"([^\s\d/*·⋅^]+)(?:(?:\^|\*\*)(-?[0-9]+)|([2-4]))?")
_BETWEEN = re.compile(r"\s*(?:(/)|\*|·|⋅)\s*|\s+")
_PER = re.compile(r"\s*((?:1\s*)?/)?\s*")


class UnknownUnit(ValueError):
    """A text that is no unit: the symbol at fault, its span, the nearest known, and why."""

    def __init__(self, symbol: str, span: tuple[int, int], nearest: str | None, why: str) -> None:
        super().__init__(symbol, span, nearest, why)
        self.symbol = symbol
        self.span = span
        self.nearest = nearest
        self.why = why

    def __str__(self) -> str:
        mend = f"; write {self.nearest}" if self.nearest else ""
        return f"{self.symbol!r}: {self.why}{mend}"


def plain_superscripts(text: str) -> str:
    """Return the text with `m²` as `m2`, every character in its place."""
    return _SUPERSCRIPT.sub(lambda match: {"²": "2", "³": "3", "⁴": "4"}[match[0]], text)


def parse_unit(text: str) -> Unit:
    """Read a unit, simple or compound, from the table's symbols.

    Raises UnknownUnit with the symbol at fault and its span in `text`.

    >>> parse_unit("kN/m^2").factor, parse_unit("N·m").symbol, parse_unit("kg/m3").symbol
    (1000.0, 'N m', 'kg/m^3')
    """
    return _reading(text)[0]


def exact_factor(unit: Unit) -> Fraction:
    """Return a unit's factor before it is rounded to a float."""
    return _reading(unit.symbol)[1]


def exact_offset(unit: Unit) -> Fraction:
    """Return what is added after the factor: 273.15 for degC."""
    return OFFSETS.get(unit.symbol, Fraction(0))


def nearest_unit(word: str, dimension: Dimension | None = None) -> str | None:
    """Return the unit probably meant by a word; of one dimension, if that is asked for.

    A symbol of two letters with one of them wrong could be too many: then nothing is proposed.

    >>> nearest_unit("inches"), nearest_unit("Mpa"), nearest_unit("mn")
    ('in', 'MPa', None)
    >>> nearest_unit("lbs"), nearest_unit("lbs", UNITS["N"].dimension)
    ('lb', 'lbf')
    """
    if word.casefold() in TRAPS:
        return None
    allowed = {
        symbol
        for symbol, unit in UNITS.items()
        if symbol != "1" and dimension in (None, unit.dimension)
    }
    spelt = {
        spelling: unit
        for spelling, unit in SPELLINGS.items()
        if dimension in (None, parse_unit(unit).dimension)
    }
    if word in spelt:
        return spelt[word]
    close = nearest(word, [*allowed, *spelt])
    if close is None or (len(word) <= 2 and close.casefold() != word.casefold()):
        return None
    return spelt.get(close, close)


def si_unit(dimension: Dimension) -> Unit:
    """Return the coherent SI unit of a dimension."""
    return Unit(si_symbol(dimension), 1.0, 0.0, dimension)


@lru_cache(maxsize=1024)
def _reading(text: str) -> tuple[Unit, Fraction]:
    """Read a unit, with its exact factor."""
    if len(text) > LONGEST:
        raise UnknownUnit(text[:LONGEST], (0, len(text)), None, "the unit is too long")
    if text.strip() in ("", "1"):
        return UNITS["1"], Fraction(1)
    factors = _factors(plain_superscripts(text).rstrip())
    if factors[0][1:] == (1,) and len(factors) == 1:
        return UNITS[factors[0][0]], EXACT[factors[0][0]][0]
    exact, dimension = Fraction(1), NUMBER
    for symbol, power in factors:
        factor, kind = EXACT[symbol]
        exact *= factor**power
        dimension *= kind**power
    return Unit(_symbol(factors), float(exact), 0.0, dimension), exact


def _factors(text: str) -> list[tuple[str, int]]:
    """Split a compound unit into symbols and powers.

    compound = ["1"] ["/"] factor {("/" | "*" | "·" | " ") factor}
    factor = symbol [["^" | "**"] power]
    """
    start = _PER.match(text)
    assert start is not None  # it matches the empty text
    sign, at = -1 if start[1] else 1, start.end()
    factors: list[tuple[str, int]] = []
    while True:
        word = _WORD.match(text, at)
        if word is None:
            raise UnknownUnit(text[at:], (at, len(text)), None, "a unit is missing here")
        factors.append((word[1], sign * _power_of(word)))
        _check_compound(factors, word, text)
        at = word.end()
        if at == len(text):
            return factors
        between = _BETWEEN.match(text, at)
        if between is None:
            raise UnknownUnit(
                text[at:], (at, len(text)), None, "the unit goes on with what is no unit"
            )
        if sign < 0 and not between[1]:
            raise UnknownUnit(
                *(text, (0, len(text)), None),
                "a product after / can be read in two ways; write / before each unit divided by",
            )
        sign, at = -1 if between[1] else sign, between.end()


def _power_of(word: re.Match[str]) -> int:
    """Return the power written after a symbol that stands in the table."""
    symbol, span = word[1], word.span(1)
    if symbol not in UNITS:
        why = TRAPS.get(symbol.casefold(), "the unit is not known")
        raise UnknownUnit(symbol, span, nearest_unit(symbol), why)
    digits = word[2] or word[3] or "1"
    power = int(digits) if len(digits) <= 2 else 0
    if not 1 <= abs(power) <= LARGEST_POWER:
        why = f"a power must be from 1 to {LARGEST_POWER}, or from -1 to -{LARGEST_POWER}"
        raise UnknownUnit(word[0], word.span(), None, why)
    return power


def _check_compound(factors: list[tuple[str, int]], word: re.Match[str], text: str) -> None:
    """Refuse what stands only alone, and units without end."""
    if len(factors) > MOST_FACTORS:
        why = f"a unit has at most {MOST_FACTORS} factors"
        raise UnknownUnit(text, (0, len(text)), None, why)
    compound = len(factors) > 1 or factors[0][1] != 1 or word.end() < len(text)
    if word[1] in OFFSETS and compound:
        why = "the unit has a zero of its own and cannot be multiplied or divided"
        raise UnknownUnit(word[1], word.span(1), "K", why)


def _symbol(factors: list[tuple[str, int]]) -> str:
    """Write a compound unit the one way that it is printed."""
    texts = [(symbol if abs(n) == 1 else f"{symbol}^{abs(n)}", n > 0) for symbol, n in factors]
    over = " ".join(text for text, above in texts if above)
    return "/".join([over or "1", *(text for text, above in texts if not above)])
