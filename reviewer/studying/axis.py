"""An axis: one given value with all that it may become, in order of size."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from reviewer.deriving.derived import Derived
from reviewer.judging.remedies import Change
from reviewer.notation.dimension import LENGTH
from reviewer.notation.quantity import QuantityError
from reviewer.parts.row import Measure, Shape
from reviewer.reading.due import is_within
from reviewer.reading.shop_stock import Tables
from reviewer.studying.given import Given, shape_row_of
from reviewer.studying.ladders import PROJECT, SPAN, Rung, rungs_of, sections_like
from reviewer.studying.rewriting import change, text_of, unit_of, value_of
from reviewer.studying.steps import on_step
from reviewer.studying.study import Field, Point

SCANNED = 33  # values of a size that are looked at first
FROM_NOTHING = (1e-4, 1.0)  # m, where a length is zero now
SAME = 1e-9  # relative: sizes closer than this are one
MOST_RUNGS = 40  # on either side of what it is now


@dataclass(frozen=True, slots=True)
class Option:
    """What the value may become: the point of a study, its size, and what the file would say."""

    point: Point
    size: float
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True)
class Axis:
    """A given value that may be changed.

    `now` is its size. `rungs` are all that can be had where it comes off a ladder; where there are
    none it is a number that may have any value within its bounds.
    """

    given: Given
    now: float
    rungs: tuple[Option, ...]
    lines: tuple[str, ...]
    lengths: str | None

    @property
    def field(self) -> Field:
        """The field that is changed; of several, the one that gives the axis its name."""
        return self.given.field

    @property
    def key(self) -> tuple[Field, str]:
        """What tells one axis from another."""
        return self.field, self.given.row.path

    def distance(self, option: Option) -> float:
        """How far an option is from the present value: the logarithm of their ratio."""
        return abs(math.log(option.size / self.now)) if self.now else 1.0

    def first_look(self) -> tuple[Option, ...]:
        """Options over the whole range, in rising order of size, the present one left out."""
        if self.rungs:
            return self.rungs
        low, high = (self.now / SPAN, self.now * SPAN) if self.now else FROM_NOTHING
        sizes = np.geomspace(low, high, SCANNED)
        apart = [size for size in sizes if abs(size - self.now) > SAME * self.now]
        return tuple(each for size in apart for each in self.at(float(size)))

    def at(self, size: float) -> Iterator[Option]:
        """The option of any size, as a study takes it, if it is within bounds."""
        value = math.copysign(size, self.given.value.value)
        entry = self.given.row.given
        if isinstance(entry, Measure) and is_within(entry, value):
            yield Option({self.field: value}, size)

    def towards(self, size: float, further: int = 0) -> Iterator[Option]:
        """The option that a maker would choose from a size on, away from the present one."""
        quantity = self.given.value.quantity
        assert quantity is not None
        up = size > self.now
        value = math.copysign(size, self.given.value.value)
        text = text_of(self.given, on_step(value, unit_of(quantity), up=up, further=further))
        try:
            value = value_of(text, self.given, self.lengths)
        except QuantityError:
            return
        if (abs(value) > self.now) == up and abs(value) != self.now:
            made = (change(self.given, text, self.lines),)
            yield from (replace(each, changes=made) for each in self.at(abs(value)))


def axes_of(derived: Derived, found: Sequence[Given], tables: Tables = PROJECT) -> tuple[Axis, ...]:
    """The axes of some given values; the measures of one bought section are one axis."""
    axes: dict[tuple[Field, str], Axis] = {}
    for given in found:
        axis = _axis(derived, given, tables)
        if axis is not None:
            axes.setdefault(axis.key, axis)
    return tuple(axes.values())


def _axis(derived: Derived, given: Given, tables: Tables) -> Axis | None:
    design = derived.design
    lines, lengths = design.lines_of(given.value.place), design.lengths_of(given.value.place)
    shape = shape_row_of(given)
    if shape is not None:
        rungs, now = _sections(given, shape.path, lines)
        if rungs:
            first = Given((given.owner.name, shape.path), given.owner, shape, given.value)
            return Axis(first, now, rungs, lines, lengths)
    value = given.value.value
    options = ladder_of(given, lines, tables)
    if options:
        now = next((each.size for each in options if each.point[given.field] == value), math.nan)
        now = float(value) if isinstance(value, float | int) else now
        near = _near(options, now)
        return Axis(given, now, near, lines, lengths) if near else None
    if not isinstance(value, float) or (value == 0.0 and given.row.dimension != LENGTH):
        return None
    return Axis(given, abs(value), (), lines, lengths)


def ladder_of(given: Given, lines: Sequence[str], tables: Tables = PROJECT) -> list[Option]:
    """All that a value may become where it comes off a ladder, in order of size."""
    return [_option(given, rung, lines) for rung in rungs_of(given, tables)]


def _near(options: Sequence[Option], now: float) -> tuple[Option, ...]:
    """The options other than the present one, as many as are worth looking at."""
    others = [each for each in options if each.changes]
    less = [each for each in others if each.size < now * (1 - SAME)]
    more = [each for each in others if each.size >= now * (1 - SAME)]
    return (*less[-MOST_RUNGS:], *more[:MOST_RUNGS])


def _option(given: Given, rung: Rung, lines: Sequence[str]) -> Option:
    """A rung as a change of the file."""
    point, changes = {}, []
    for path, value in rung.values.items():
        field: Field = given.field if path == given.field[1] else (given.owner.name, path)
        each = replace(
            given,
            field=field,
            row=given.owner.kind.by_path[path],
            value=given.value if field == given.field else given.owner.given[path],
        )
        point[field] = value
        if value != each.value.value:
            changes.append(change(each, text_of(each, value), lines))
    return Option(point, rung.size, tuple(changes))


def _sections(given: Given, path: str, lines: Sequence[str]) -> tuple[tuple[Option, ...], float]:
    """The sections that can be had in place of the present one, and its area."""
    options, now = sections_of_part(given, path, lines)
    return _near(options, now), now


def sections_of_part(given: Given, path: str, lines: Sequence[str]) -> tuple[list[Option], float]:
    """The sections of a part's shape that are sold, in order of area, and the present area."""
    owner = given.owner
    shape = owner.kind.by_path[path].given
    assert isinstance(shape, Shape)
    word = str(owner.given[path].value)
    paths = dict(shape.alternatives)[word]
    first = Given(
        (owner.name, paths[0]), owner, owner.kind.by_path[paths[0]], owner.given[paths[0]]
    )
    options = [_option(first, rung, lines) for rung in sections_like(first, word, paths)]
    sides = [float(owner.given[each].value) for each in paths]
    return options, _area(word, sides)


def _area(word: str, sides: Sequence[float]) -> float:
    """Area by which sections of one shape are put in order [m2]."""
    if word == "round":
        return sides[0] * sides[0]
    if word == "pipe":
        return sides[0] * sides[0] - (sides[0] - 2 * sides[1]) * (sides[0] - 2 * sides[1])
    wall = sides[2] if word == "tube" else 0.0
    hollow = (sides[0] - 2 * wall) * (sides[1] - 2 * wall) if wall else 0.0
    return sides[0] * sides[1] - hollow
