"""The largest gap of two moving bodies along a travel.

Stretches of travel are halved while they could hold a larger gap than any that was found: no point
of a body comes farther than `moves` from where it is in the middle of a stretch (bounds.py), so
that the gap in it is at most the middle's and that. The answer is below the largest gap by no more
than the tolerance; of gaps that are wider than a foot or an arm, by no more than a fiftieth.
"""

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.bounds import Encounter, examine
from reviewer.geometry.chain import courses_of
from reviewer.geometry.course import breaks_of
from reviewer.geometry.intervals import Path

Array = NDArray[np.float64]
TOLERANCE = 1e-4  # m: where a gap is widest decides no more than who gets in
WIDE, SHARE = 0.12, 0.02  # m: a gap of which it no longer matters how wide it is
SHORTEST = 2.0**-16


def largest_gap(encounter: Encounter, path: Path, tolerance: float = TOLERANCE) -> float:
    """The largest gap along a travel [m], to within the tolerance."""
    ends = np.array(breaks_of(courses_of(encounter.chain), path.travel))
    best = float(_seen(encounter, path, ends, np.zeros_like(ends))[0].max())
    low, high = ends[:-1], ends[1:]
    while len(low):
        middle, half = (low + high) / 2, (high - low) / 2
        distance, moves = _seen(encounter, path, middle, half)
        best = max(best, float(distance.max()))
        slack = max(tolerance, SHARE * best) if best > WIDE else tolerance
        more = (distance + moves > best + slack) & (half > SHORTEST)
        low, high = (
            np.concatenate([low[more], middle[more]]),
            np.concatenate([middle[more], high[more]]),
        )
    return best


def _seen(encounter: Encounter, path: Path, along: Array, half: Array) -> tuple[Array, Array]:
    """Distances along the path, and how far anything comes in the stretches about them."""
    halves = np.zeros((len(half), len(path.at)))
    halves[:, path.travel] = half
    found = examine(encounter, path.positions(along), halves)
    return found.distance, found.moves
