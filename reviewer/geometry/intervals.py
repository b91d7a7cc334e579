"""Where along a travel two bodies are within a distance, and the gap between them as a curve.

An interval of travel is out where the guaranteed least distance (bounds.py) is beyond the level,
and in where even the greatest motion cannot take the bodies out of it; what is neither is halved.
So no place within the level is missed. Two ways of erring are kept on the side of caution: a place
that is nearer than `FINE` to one within the level counts as within, and an opening that is shorter
than `SHORT` between two places within the level is not told apart from them.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.bounds import Encounter, distances, examine
from reviewer.geometry.chain import courses_of
from reviewer.geometry.course import breaks_of

Array = NDArray[np.float64]
FINE = 2.0**-14
SHORT = 2.0**-6


class Interval(NamedTuple):
    """A stretch of travel, from one position to another."""

    start: float
    end: float


class Path(NamedTuple):
    """One travel from 0 to 1, with the others held where `at` has them."""

    travel: int
    at: tuple[float, ...]

    def positions(self, along: Array) -> Array:
        """Positions of all travels along the path."""
        found = np.tile(np.array(self.at, dtype=np.float64), (len(along), 1))
        found[:, self.travel] = along
        return found


class Curve(NamedTuple):
    """The gap [m] along a travel, exact at each position."""

    travel: Array
    gap: Array


def gap_curve(encounter: Encounter, path: Path, count: int = 201) -> Curve:
    """The gap at evenly spaced positions, and at the breaks of the motion between them."""
    breaks = breaks_of(courses_of(encounter.chain), path.travel)
    along = np.unique(np.concatenate([np.linspace(0.0, 1.0, count), breaks]))
    return Curve(along, _gap(encounter, path, along))


def within(encounter: Encounter, path: Path, level: float) -> tuple[Interval, ...]:
    """The stretches of a travel in which the bodies are no further apart than a level [m]."""
    ends = np.array(breaks_of(courses_of(encounter.chain), path.travel))
    low, high = ends[:-1], ends[1:]
    at_low, at_high = (_gap(encounter, path, each) <= level for each in (low, high))
    found: list[Interval] = []
    while len(low):
        middle, half = (low + high) / 2, (high - low) / 2
        boxes = path.positions(middle), _alone(path, half)
        seen = examine(encounter, *boxes)
        near = seen.distance <= level
        out = seen.least > level
        sure = seen.distance + seen.moves <= level
        sure |= near & at_low & at_high & (half <= SHORT / 2)
        last = ~out & ~sure & (half <= FINE)
        sure |= last & (near | at_low | at_high)
        found += [Interval(*each) for each in zip(low[sure], high[sure], strict=True)]
        more = ~out & ~sure & ~last
        low, high = (
            np.concatenate([low[more], middle[more]]),
            np.concatenate([middle[more], high[more]]),
        )
        at_low = np.concatenate([at_low[more], near[more]])
        at_high = np.concatenate([near[more], at_high[more]])
    return joined(found)


def joined(found: list[Interval]) -> tuple[Interval, ...]:
    """Intervals that meet made into one, in order."""
    whole: list[Interval] = []
    for each in sorted(found):
        if whole and each.start <= whole[-1].end + FINE:
            whole[-1] = Interval(whole[-1].start, max(whole[-1].end, each.end))
        else:
            whole.append(Interval(float(each.start), float(each.end)))
    return tuple(whole)


def without(found: tuple[Interval, ...], taken: tuple[Interval, ...]) -> tuple[Interval, ...]:
    """What is left of intervals when others are taken out of them."""
    left = list(found)
    for hole in taken:
        pieces = []
        for each in left:
            pieces.append(Interval(each.start, min(each.end, hole.start)))
            pieces.append(Interval(max(each.start, hole.end), each.end))
        left = [each for each in pieces if each.end > each.start]
    return tuple(left)


def in_band(encounter: Encounter, path: Path, low: float, high: float) -> tuple[Interval, ...]:
    """The stretches of a travel in which the gap lies in a band, low < gap <= high [m]."""
    return without(within(encounter, path, high), within(encounter, path, low))


def _gap(encounter: Encounter, path: Path, along: Array) -> Array:
    return distances(encounter, path.positions(along))


def _alone(path: Path, half: Array) -> Array:
    halves = np.zeros((len(half), len(path.at)))
    halves[:, path.travel] = half
    return halves
