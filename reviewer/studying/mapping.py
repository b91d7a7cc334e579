"""A map: two given values swept together, and what governs at each pair of sizes."""

from collections.abc import Sequence
from dataclasses import dataclass

from reviewer.deriving.derived import Derived
from reviewer.judging.rule import Rule
from reviewer.studying.given import Given
from reviewer.studying.governing import study_whole
from reviewer.studying.study import Course, Key
from reviewer.studying.sweep import (
    LEVELS,
    STANDING,
    Stop,
    applies,
    governing_at,
    moved_by,
    never_passes,
)

MOST_ACROSS, MOST_DOWN = 9, 13


@dataclass(frozen=True)
class Map:
    """What depends on two given values, over all pairs of their sizes, the first one's rising down.

    Sample `row * len(across) + column` belongs to the sizes of that row and column.
    """

    derived: Derived
    given: tuple[Given, Given]
    down: tuple[Stop, ...]
    across: tuple[Stop, ...]
    concerned: tuple[Course, ...]
    standing: tuple[Course, ...]

    def governing(self, row: int, column: int) -> Course | None:
        """The finding that is used most at a pair of sizes."""
        return governing_at(self.concerned, row * len(self.across) + column)

    def passes(self, row: int, column: int) -> bool:
        """Whether all passes that ever does."""
        index = row * len(self.across) + column
        return all(each.verdict[index] not in STANDING for each in self.concerned)


def mapping(
    derived: Derived,
    rules: Sequence[Rule],
    given: tuple[Given, Given],
    stops: tuple[Sequence[Stop], Sequence[Stop]],
) -> Map:
    """Judge a design at every pair of sizes of two given values."""
    down, across = thinned(stops[0], given[0], MOST_DOWN), thinned(stops[1], given[1], MOST_ACROSS)
    points = [{**one.point, **other.point} for one in down for other in across]
    found = study_whole(derived, points, rules)
    moved: set[Key] = set(moved_by(derived, found, points[:1]))
    concerned = [
        each
        for each in found.values()
        if each.key in moved and each.rule.level in LEVELS and applies(each)
    ]
    return Map(
        derived,
        given,
        down,
        across,
        tuple(each for each in concerned if not never_passes(each)),
        tuple(each for each in concerned if never_passes(each)),
    )


def thinned(stops: Sequence[Stop], given: Given, most: int) -> tuple[Stop, ...]:
    """At most so many sizes, evenly spread: the ends, and of three or more the present one."""
    if len(stops) <= most:
        return tuple(stops)
    last = len(stops) - 1
    kept = {round(index * last / (most - 1)) for index in range(most)}
    now = [i for i, stop in enumerate(stops) if stop.point.get(given.field) == given.value.value]
    between = kept - {0, last}
    if now and now[0] not in kept and between:
        kept.remove(min(between, key=lambda index: abs(index - now[0])))
        kept.add(now[0])
    return tuple(stops[index] for index in sorted(kept))
