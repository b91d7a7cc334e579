"""Reading a design's values for a sheet: numbers in SI, and words in the units of the file."""

from math import isnan
from typing import Any

from reviewer.judging.reviewed import Review
from reviewer.notation.dimension import LENGTH
from reviewer.notation.preferred import preferred_units
from reviewer.notation.show import show, unit_for
from reviewer.notation.units import Unit, parse_unit
from reviewer.parts.shop_facts import Stocked
from reviewer.reading.design import Design
from reviewer.stock.materials import Material
from reviewer.stock.sheets import Sheet, sheets_of

SAME = 1e-6  # m


class Quantities:
    """The values of a reviewed design, nominal and in its first case.

    Raises ValueError where the design could not be read.
    """

    def __init__(self, review: Review) -> None:
        """Read from a review."""
        if review.derived is None:
            raise ValueError("the design could not be read")
        self.design: Design = review.derived.design
        self._values = review.derived.values
        self._units = preferred_units(self.design.units)

    @property
    def parts(self) -> tuple[str, ...]:
        """The names of the parts, in the order of the file."""
        return tuple(self.design.parts)

    @property
    def length(self) -> Unit:
        """The unit of lengths."""
        return unit_for(LENGTH, self._units)

    def kind(self, part: str) -> str:
        """The name of a part's kind."""
        return self.design.parts[part].kind.name

    def number(self, part: str, path: str) -> float:
        """A number in SI; NaN where it is unknown, or where the part has no such quantity."""
        slot = self._values.plan.slot(part, path)
        if slot is None or not self._values.plan.nodes[slot].row.is_number:
            return float("nan")
        return float(self._values.at(slot, 0))

    def choice(self, part: str, path: str) -> Any:
        """A choice (a material, a bearing, a count, a word); None where there is none."""
        slot = self._values.plan.slot(part, path)
        if slot is None or self._values.plan.nodes[slot].row.is_number:
            return None
        return self._values.at(slot, 0)

    def named(self, part: str, path: str) -> str:
        """The name of a choice, as the stock tables have it; nothing where there is none."""
        found = self.choice(part, path)
        return "" if found is None else str(getattr(found, "name", found))

    def is_given(self, part: str, path: str) -> bool:
        """Whether the file gives a value."""
        return path in self.design.parts[part].given

    def count(self, part: str) -> int:
        """How many there are of a part."""
        found = self.choice(part, "count")
        return found if isinstance(found, int) else 1

    def shop(self, name: str, otherwise: float = float("nan")) -> float:
        """A number that the shop allows; `otherwise` where it does not say."""
        found = self.number("shop", name)
        return otherwise if isnan(found) else found

    def sheets_of(self, material: Material) -> tuple[Sheet, ...]:
        """The sheets of a material that can be had, the shop's own among them."""
        stocked = self.choice("shop", "sheets")
        return sheets_of(material, stocked.sheets if isinstance(stocked, Stocked) else None)

    def sheet_of(self, material: Material, thickness: float) -> Sheet | None:
        """The sheet that is called so, else one that measures so; in the unit of the file."""
        inches = self.length.symbol in ("in", "ft")
        rows = sorted(self.sheets_of(material), key=lambda row: row.is_inch != inches)
        named = [row for row in rows if abs(row.nominal - thickness) < SAME]
        near = [row for row in rows if row.low - SAME < thickness < row.high + SAME]
        near.sort(key=lambda row: abs(row.actual - thickness))
        return next(iter((*named, *near)), None)

    def told(self, part: str, path: str, digits: int = 3) -> str:
        """A number as it is printed, in the unit that the file uses; nothing where unknown."""
        slot = self._values.plan.slot(part, path)
        value = self.number(part, path)
        if slot is None or isnan(value):
            return ""
        dimension = self._values.plan.nodes[slot].row.dimension
        return show(value, unit_for(dimension, self._units), digits)

    def shown(self, value: float, unit: str, digits: int = 3) -> str:
        """An SI value of the dimension of a unit, as the file would write it; nothing if NaN."""
        if isnan(value):
            return ""
        return show(value, unit_for(parse_unit(unit).dimension, self._units), digits)

    def bare(self, value: float, unit: str, digits: int = 3) -> str:
        """The same without its unit, for a column whose heading has it."""
        if isnan(value):
            return ""
        into = self.unit(unit)
        text = show(value, into, digits)
        return text.removesuffix(f" {into.symbol}")

    def unit(self, unit: str) -> Unit:
        """The unit in which values of the dimension of a unit are printed."""
        return unit_for(parse_unit(unit).dimension, self._units)
