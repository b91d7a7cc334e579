"""What stands in the text of a quantity, before anybody asks what it means."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from reviewer.notation.units import Unit

Spread = Literal["normal", "uniform"]


@dataclass(frozen=True, slots=True)
class Number:
    """An exact number without a sign, and where it ends in the text."""

    value: Fraction
    end: int
    is_whole: bool


@dataclass(frozen=True, slots=True)
class Amount:
    """A signed number in a unit, or without one, and where it stands in the text."""

    value: Fraction
    unit: Unit | None
    start: int
    number_end: int
    end: int


Band = tuple[Amount, Amount]  # how far it may lie above, and below, both without sign


@dataclass(frozen=True, slots=True)
class Written:
    """The nominal amount, its tolerance, and how samples lie in it."""

    nominal: Amount
    band: Band | None
    spread: Spread
