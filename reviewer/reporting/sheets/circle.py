"""A divided circle as the setting-out sheet sees it: its measures, its marks, how lengths look."""

from math import isnan, pi

import numpy as np

from reviewer.parts.facts import LIMIT
from reviewer.reporting.sheets.on_a_rule import on_a_rule
from reviewer.reporting.sheets.quantities import Quantities

LEAST_MARKS = 3
SET_WITHIN = 0.3e-3  # m, where no divided_circle says it: common practice


class Circle:
    """One circle of a design to divide: a divided_circle, or a group of what stands on a circle."""

    def __init__(self, values: Quantities, part: str, group: str = "") -> None:
        """Take the circle from the design's values."""
        self.values, self.part, self.group = values, part, group
        self.name = f"{part}, {group}".replace("_", " ") if group else part.replace("_", " ")
        self.unit = values.length
        self.count = _count(values, part, group)
        self.diameter = self.number("circle")
        start = self.number("from")
        self.start = 0.0 if isnan(start) else start
        self.step = 2 * pi / max(self.count, 1)

    @property
    def is_known(self) -> bool:
        """Whether there is a circle to divide."""
        return self.count >= LEAST_MARKS and not isnan(self.diameter)

    @property
    def angles(self) -> list[float]:
        """Azimuths of the marks."""
        return [self.start + self.step * mark for mark in range(self.count)]

    @property
    def has_opposite(self) -> bool:
        """Whether a mark stands across from the first."""
        return self.count % 2 == 0

    @property
    def across(self) -> str:
        """What stands across from mark 1: a mark, or a point that is only scribed."""
        return f"mark {self.count // 2 + 1}" if self.has_opposite else "point A"

    @property
    def found(self) -> dict[tuple[int, int], float]:
        """The lengths that the design gives as measured, by their marks counted from 0."""
        measured = self.values.choice(self.part, "measured.lengths")
        if measured is None:
            return {}
        ends = [(int(first), int(second)) for first, second in np.asarray(measured.ends)]
        return dict(zip(ends, (float(each) for each in measured.lengths), strict=True))

    def number(self, path: str) -> float:
        """One of its quantities in SI; of a group what it has itself, else what is usual."""
        if not self.group:
            return self.values.number(self.part, path)
        permitted = self.values.number(LIMIT, "mark_position")
        usual = {"permitted": permitted, "chord_within": 2 * permitted, "set_within": SET_WITHIN}
        return usual.get(path, self.values.number(self.part, f"{self.group}.{path}"))

    def length(self, value: float) -> str:
        """A length as a rule shows it, without its unit."""
        return on_a_rule(value, self.unit)

    def with_unit(self, value: float) -> str:
        """A length as a rule shows it."""
        return f"{self.length(value)} {self.unit.symbol}"

    def fine(self, value: float) -> str:
        """A small length, such as an error, by its digits."""
        return self.values.shown(round(value, 7), "m", 2)


def _count(values: Quantities, part: str, group: str) -> int:
    if not group:
        return values.count(part)
    found = values.choice(part, f"{group}.count")
    return found if isinstance(found, int) else 0
