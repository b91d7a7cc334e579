"""The grammar of a written quantity: from a text to exact numbers, units and a tolerance.

    quantity  = (banded | "(" banded ")" unit) ["uniform"]
    banded    = amount [tolerance]
    tolerance = ("±" | "+/-") amount | "+" amount "/" "-" amount
    amount    = [sign] number [unit [["-"] number unit]]
    number    = decimal | whole "/" whole | whole (" " | "-") whole "/" whole
    unit      = symbols of the closed table | "'" | '"'

What a bare number means is not decided here.
"""

import re
from dataclasses import replace
from fractions import Fraction
from typing import NoReturn

from reviewer.notation.dimension import Dimension
from reviewer.notation.number import read_number
from reviewer.notation.plain import plain
from reviewer.notation.refusal import (
    QuantityError,
    no_second_unit,
    no_tolerance,
    not_one_quantity,
    unknown_unit,
    unlike_parts,
)
from reviewer.notation.units import UNITS, Unit, UnknownUnit, exact_factor, parse_unit
from reviewer.notation.written import Amount, Band, Number, Spread, Written

# A second part is only read where the trade writes one, so that a slip does not add up.
PARTS = {"ft": "in", "lb": "oz", "h": "min", "min": "s"}

_SPACES = re.compile(r"\s*")
_UNIFORM = re.compile(r"\s+uniform\s*$")
_BOTH_WAYS = re.compile(r"±|\+/-")
_SIGN = re.compile(r"[+-]")
_WORD = r"[^\s\d+\-±()/*^·⋅.,;:'\"=<>]+(?:(?:\^|\*\*)-?\d+|[2-4](?![\w'\".]))?"
_UNIT = re.compile(rf"(?:1?\s*/\s*)?{_WORD}(?:(?:\s*(?:/|\*|·|⋅)\s*|\s+){_WORD})*")
_PART_FOLLOWS = re.compile(r"\s*[.\d]")
_PART_AFTER_FEET = re.compile(r"\s*-?\s*(?=[.\d])")


class Scanner:
    """Reads one quantity from left to right; `text` is the tidied text, place by place as given."""

    def __init__(self, text: str, expected: Dimension | None) -> None:
        uniform = _UNIFORM.search(text)
        self.whole = text
        self.text = text[: uniform.start()] if uniform else text.rstrip()
        self.spread: Spread = "uniform" if uniform else "normal"
        self.expected = expected
        self.at = 0

    def quantity(self) -> Written:
        """Read the whole text."""
        self._skip()
        bracketed = self._take("(")
        self._skip()
        nominal = self._amount()
        band = self._tolerance()
        if bracketed:
            nominal, band = self._closed(nominal, band)
        self._skip()
        if self.at < len(self.text):
            self._trailing()
        if self.spread == "uniform" and band is None:
            span = (len(self.text), len(self.whole))
            mend = f"write {plain(self.text.strip())} ± its limit uniform, or drop the word"
            self._refuse("uniform says how a tolerance is spread", "a tolerance", mend, span)
        return Written(nominal, band, self.spread)

    def _amount(self) -> Amount:
        start = self.at
        sign = -1 if self.text.startswith("-", self.at) else 1
        if match := _SIGN.match(self.text, self.at):
            self.at = match.end()
        number = self._number()
        value, unit = number.value, self._unit()
        if unit is not None and self._part_follows(unit):
            value += self._second_part(start, number, unit)
        return Amount(sign * value, unit, start, number.end, self.at)

    def _number(self) -> Number:
        number = read_number(self.text, self.at, self.expected)
        self.at = number.end
        return number

    def _unit(self) -> Unit | None:
        """Read the unit that stands here, if one does."""
        before = self.at
        self._skip()
        if self.text.startswith("''", self.at):
            what, mend = "two marks of feet stand together", 'write " for inches'
            self._refuse(what, "one mark, ' or \"", mend, (self.at, self.at + 2))
        if self._take('"'):
            return UNITS["in"]
        if self._take("'"):
            return UNITS["ft"]
        match = _UNIT.match(self.text, self.at)
        if match is None:
            self.at = before
            return None
        self.at = match.end()
        try:
            return parse_unit(match[0])
        except UnknownUnit as error:
            raise unknown_unit(error, self.text, match.span(), self.expected) from None

    def _part_follows(self, unit: Unit) -> bool:
        """Tell whether a second number follows a unit: 5 ft 6 in, 5'-6"."""
        if self.text[self.at - 1] == "'" and (gap := _PART_AFTER_FEET.match(self.text, self.at)):
            self.at = gap.end()
            return True
        if _PART_FOLLOWS.match(self.text, self.at):
            self._skip()
            return True
        return False

    def _second_part(self, start: int, first: Number, unit: Unit) -> Fraction:
        """Read the inches after feet; return them in the first unit."""
        second = self._number()
        other = self._unit()
        span = (start, self.at)
        if other is None:
            raise no_second_unit(self.text, span, PARTS.get(unit.symbol))
        if PARTS.get(unit.symbol) != other.symbol:
            raise not_one_quantity(self.text, span, unit, other)
        part = second.value * exact_factor(other) / exact_factor(unit)
        if not first.is_whole or part >= 1:
            total = (first.value + part) * exact_factor(unit) / exact_factor(other)
            raise unlike_parts(self.text, span, unit, f"{float(total):.10g} {other.symbol}")
        return part

    def _tolerance(self) -> Band | None:
        """Read ± 0.3 mm or +0.2/-0.5 mm, if one stands here."""
        before = self.at
        self._skip()
        start = self.at
        if match := _BOTH_WAYS.match(self.text, self.at):
            self.at = match.end()
            both = self._limit(start)
            return both, both
        if not _SIGN.match(self.text, self.at):
            self.at = before
            return None
        self._take_or_refuse("+", start)
        above = self._limit(start)
        self._skip()
        self._take_or_refuse("/", start)
        self._skip()
        self._take_or_refuse("-", start)
        below = self._limit(start)
        if above.unit is None:  # +0.2/-0.5 mm: one unit for both
            above = replace(above, unit=below.unit)
        return above, below

    def _limit(self, start: int) -> Amount:
        """Read a limit of the tolerance that starts at `start`, after its sign."""
        self._skip()
        if _SIGN.match(self.text, self.at):
            raise no_tolerance(self.text, start)
        return self._amount()

    def _take_or_refuse(self, mark: str, start: int) -> None:
        if not self._take(mark):
            raise no_tolerance(self.text, start)

    def _closed(self, nominal: Amount, band: Band | None) -> tuple[Amount, Band]:
        """Read the end of (18 ± 0.3) mm, and give its unit to the numbers in the brackets."""
        self._skip()
        closed = self._take(")")
        inside = [nominal, *(band or ())]
        unit = self._unit() if closed else None
        if not closed or band is None or any(each.unit is not None for each in inside):
            what = "brackets hold a value and its tolerance, and their unit follows"
            mend = "write it as (18 ± 0.3) mm, or without brackets"
            self._refuse(what, "one unit, after the brackets", mend, (0, len(self.text)))
        last = replace(band[1], unit=unit, end=self.at)
        return replace(nominal, unit=unit), (replace(band[0], unit=unit), last)

    def _skip(self) -> None:
        match = _SPACES.match(self.text, self.at)
        self.at = match.end() if match else self.at

    def _take(self, mark: str) -> bool:
        taken = self.text.startswith(mark, self.at)
        self.at += len(mark) if taken else 0
        return taken

    def _trailing(self) -> NoReturn:
        what = "text follows the quantity"
        mend = f"write {plain(self.text[: self.at].strip())} alone"
        expected = "nothing after the unit, but a tolerance"
        self._refuse(what, expected, mend, (self.at, len(self.text)))

    def _refuse(
        self, what: str, expected: str, mend: str | None, span: tuple[int, int]
    ) -> NoReturn:
        found = plain(self.whole[slice(*span)].strip())
        raise QuantityError(what, found, expected, mend, span)
