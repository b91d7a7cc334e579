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

from reviewer.notation.dimension import LENGTH, Dimension
from reviewer.notation.number import read_number
from reviewer.notation.plain import plain
from reviewer.notation.refusal import QuantityError, due, unknown_unit
from reviewer.notation.units import UNITS, Unit, UnknownUnit, exact_factor, parse_unit
from reviewer.notation.written import Amount, Band, Number, Spread, Written

# A second part is only read where the trade writes one, so that a slip does not add up.
PARTS = {"ft": "in", "lb": "oz", "h": "min", "min": "s"}

_SPACES = re.compile(r"\s*")
_UNIFORM = re.compile(r"\s+uniform\s*$")
_BOTH_WAYS = re.compile(r"±|\+/-")
_SIGN = re.compile(r"[+-]")
_WORD = r"[^\s\d+\-±()/*^·⋅.,;:'\"=<>]+(?:(?:\^|\*\*)-?\d+|\d+)?"
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
            span = (self.at, self.at + 2)
            mend = 'write " for inches'
            self._refuse("two marks of feet stand together", "one mark, ' or \"", mend, span)
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
        begin = self.at
        second = self._number()
        number_end = self.at
        other = self._unit()
        span = (start, self.at)
        so_far = plain(self.text[start : self.at])
        if other is None:
            smaller = PARTS.get(unit.symbol)
            mend = f"write {so_far} {smaller}" if smaller else None
            what = "the second number has no unit"
            self._refuse(what, "a unit after each number", mend, (begin, number_end))
        if PARTS.get(unit.symbol) != other.symbol:
            what = f"{unit.symbol} and {other.symbol} do not make one quantity"
            self._refuse(what, "one number and unit, or feet and inches", None, span)
        part = second.value * exact_factor(other) / exact_factor(unit)
        if not first.is_whole or part >= 1:
            what = f"the parts in {unit.symbol} and {other.symbol} do not add up as written"
            expected = f"a whole number of {unit.symbol} and less than one in {other.symbol}"
            self._refuse(what, expected, None, span)
        return part

    def _tolerance(self) -> Band | None:
        """Read ± 0.3 mm or +0.2/-0.5 mm, if one stands here."""
        before = self.at
        self._skip()
        if match := _BOTH_WAYS.match(self.text, self.at):
            self.at = match.end()
            self._skip()
            if _SIGN.match(self.text, self.at):
                self._refuse_signed("a number without a sign after ±")
            both = self._amount()
            return both, both
        if not _SIGN.match(self.text, self.at):
            self.at = before
            return None
        return self._two_limits()

    def _two_limits(self) -> Band:
        due_here = "an upper and a lower limit, as +0.2/-0.5 mm"
        if not self._take("+"):
            self._refuse_signed(due_here)
        self._skip()
        if _SIGN.match(self.text, self.at):
            self._refuse_signed(due_here)
        above = self._amount()
        self._skip()
        slash = self._take("/")
        self._skip()
        if not slash or not self.text.startswith("-", self.at):
            what = "the lower limit of the tolerance is missing"
            self._refuse(what, due_here, "write -0 if there is none", (above.start, len(self.text)))
        self._take("-")
        self._skip()
        if _SIGN.match(self.text, self.at):
            self._refuse_signed(due_here)
        below = self._amount()
        if above.unit is None:  # +0.2/-0.5 mm: one unit for both
            above = replace(above, unit=below.unit)
        return above, below

    def _closed(self, nominal: Amount, band: Band | None) -> tuple[Amount, Band]:
        """Read the end of (18 ± 0.3) mm, and give its unit to the numbers in the brackets."""
        self._skip()
        closed = self._take(")")
        inside = [nominal, *(band or ())]
        unit = self._unit() if closed else None
        if not closed or band is None or any(each.unit is not None for each in inside):
            what = "brackets hold a value and its tolerance, and their unit follows"
            self._refuse(what, "for example (18 ± 0.3) mm", None, (0, len(self.text)))
        last = replace(band[1], unit=unit, end=self.at)
        return replace(nominal, unit=unit), (replace(band[0], unit=unit), last)

    def _skip(self) -> None:
        match = _SPACES.match(self.text, self.at)
        self.at = match.end() if match else self.at

    def _take(self, mark: str) -> bool:
        taken = self.text.startswith(mark, self.at)
        self.at += len(mark) if taken else 0
        return taken

    def _refuse_signed(self, expected: str) -> NoReturn:
        what = "a tolerance has a + limit, then a - limit, or ± and one number"
        self._refuse(what, expected, None, (self.at, len(self.text)))

    def _trailing(self) -> NoReturn:
        what = "text follows the quantity"
        self._refuse(what, due(self.expected or LENGTH), None, (self.at, len(self.text)))

    def _refuse(
        self, what: str, expected: str, mend: str | None, span: tuple[int, int]
    ) -> NoReturn:
        found = plain(self.whole[slice(*span)].strip())
        raise QuantityError(what, found, expected, mend, span)
