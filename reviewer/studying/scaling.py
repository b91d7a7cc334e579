"""A whole design at other sizes: its lengths scaled, what is bought kept at sizes that are sold."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from reviewer.deriving.derived import Derived
from reviewer.judging.rule import Rule
from reviewer.notation.dimension import LENGTH
from reviewer.parts.row import Measure
from reviewer.reading.due import is_within
from reviewer.reading.shop_stock import Tables
from reviewer.studying.given import Given, places_of
from reviewer.studying.governing import study_whole
from reviewer.studying.ladders import PROJECT, rungs_of
from reviewer.studying.study import Course, Field, Key, Point
from reviewer.studying.sweep import LEVELS, governing_at, moved_by

FITS = ("gap", "preload", "sags")  # set by adjustment or measured, not drawn
MOST_LAYERS = 4
NEARLY = 1e-6
KEPT, SCALED, SNAPPED = "kept", "scaled", "snapped"


@dataclass(frozen=True)
class Scaling:
    """Every finding of a design over some factors on its lengths.

    `moved` are the findings that depend on any length. `kept` names the lengths that stay as they
    are, `snapped` those that go to what is sold.
    """

    derived: Derived
    factors: tuple[float, ...]
    points: tuple[Point, ...]
    courses: tuple[Course, ...]
    moved: frozenset[Key]
    kept: tuple[str, ...]
    snapped: tuple[Given, ...]

    @property
    def concerned(self) -> tuple[Course, ...]:
        """The courses of rules that must or should hold."""
        return tuple(each for each in self.courses if each.rule.level in LEVELS)

    def governing(self, index: int) -> Course | None:
        """Of what depends on the size, the finding that is used most at one factor."""
        moved = [each for each in self.concerned if each.key in self.moved]
        return governing_at(moved, index)


def scaling(
    derived: Derived, rules: Sequence[Rule], factors: Sequence[float], tables: Tables = PROJECT
) -> Scaling:
    """Judge a design at some factors on its lengths."""
    found = list(_lengths(derived, tables))
    changing = [(given, way) for given, way in found if way != KEPT]
    points = tuple(
        {given.field: size_at(given, factor, way, tables) for given, way in changing}
        for factor in factors
    )
    courses = study_whole(derived, points, rules)
    return Scaling(
        derived,
        tuple(factors),
        points,
        tuple(courses.values()),
        frozenset(moved_by(derived, courses, points[:1])),
        tuple(given.name for given, way in found if way == KEPT),
        tuple(given for given, way in changing if way == SNAPPED),
    )


def _lengths(derived: Derived, tables: Tables) -> Iterator[tuple[Given, str]]:
    """Every length that the file gives, and what a scaling makes of it."""
    design = derived.design
    seen: set[Field] = set()
    for owner in (*design.parts.values(), *design.loads.values()):
        for row in owner.kind.rows:
            if isinstance(row.given, Measure) and row.dimension == LENGTH:
                for given in places_of(design, owner, row):
                    if given.field not in seen:
                        seen.add(given.field)
                        yield given, _way(given, tables)


def _way(given: Given, tables: Tables) -> str:
    path = given.field[1]
    name = path.rpartition(".")[2]
    if name in FITS or "allowed" in path or path.startswith("bench_test."):
        return KEPT
    if given.row.only:
        material = given.owner.given.get("material")
        return SCALED if material is not None and material.value.family == "wood" else KEPT
    return SNAPPED if rungs_of(given, tables) else SCALED


def size_at(given: Given, factor: float, way: str = SNAPPED, tables: Tables = PROJECT) -> float:
    """The value at a factor; what is bought goes to the nearest size, the larger of two as near.

    A panel of several layers has each of them at a size that is sold.
    """
    value = float(given.value.value)
    entry = given.row.given
    assert isinstance(entry, Measure)
    sold = [rung.size for rung in rungs_of(given, tables)] if way == SNAPPED else []
    if not sold:
        return value * factor if is_within(entry, value * factor) else value
    layers = _layers(value, sold)
    return layers * min(
        sorted(sold, reverse=True),
        key=lambda size: round(abs(math.log(size / (value * factor / layers))), 9),
    )


def _layers(value: float, sold: Sequence[float]) -> int:
    """How many layers of what is sold make the present value: one, where none do."""
    for layers in range(1, MOST_LAYERS + 1):
        if any(abs(size * layers - value) < NEARLY for size in sold):
            return layers
    return 1
