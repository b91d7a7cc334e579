"""How the gap between two moving parts goes over their travel: least, most, and its curve."""

from functools import lru_cache
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.lazily import Lazily

if TYPE_CHECKING:
    from reviewer.parts.meeting import Closest, Meeting

SAME = 2e-5  # m: clearances are exact to half of that


class Swept(NamedTuple):
    """Over samples and cases: the least and the largest gap of two parts over their travel [m].

    Of the copies that come nearest, along each travel through that place. `passes` is 1 where one
    edge passes over the other with this gap between them, in which nothing else closes; else 0.
    `meeting` is what it follows from.
    """

    least: Any
    most: Any
    passes: Any
    meeting: Any


def swept(meeting: Lazily, touches: bool = False, clear: Number = np.inf) -> Swept:
    """Between what limits the gap goes, and whether it is that of edges that pass each other.

    Geometry; the least exact to 0.01 mm, the largest to 0.1 mm, of a wide gap to 2 %.

    Notes
    -----
    Of parts that are meant to touch, and of a gap that never closes below `clear`, the largest is
    not looked for, and told as the least: nothing can be caught there.
    """
    samples, cases = meeting.shape()
    enough = 0.0 if touches else float(np.min(clear))
    rows = [
        [_swept(meeting.at(sample, case), enough) for case in range(cases)]
        for sample in range(samples)
    ]
    least, most, passes = (np.array([[each[k] for each in row] for row in rows]) for k in range(3))
    return Swept(least, most, passes, meeting)


def _swept(meeting: "Meeting | None", clear: float) -> tuple[float, float, float]:
    from reviewer.geometry.largest import largest_gap

    found = closest_of(meeting)
    if found is None:
        return (np.nan, np.nan, np.nan)
    least = found.least.clearance
    if least >= clear:
        return (least, least, 0.0)
    most = max(largest_gap(found.encounter, path) for path in found.paths)
    return (least, max(most, least), float(_passes(found, least, most)))


def _passes(found: "Closest", least: float, most: float) -> bool:
    """Whether the least gap is upright between two edges that are side by side elsewhere."""
    from reviewer.geometry.chain import Lift

    encounter = found.encounter
    apart = max(encounter.above, encounter.below)
    lifts = any(isinstance(step, Lift) for step in encounter.chain)
    return not lifts and apart >= 0 and least <= apart + SAME and most > least + SAME


@lru_cache(maxsize=4096)
def closest_of(meeting: "Meeting | None") -> "Closest | None":
    """Where two parts come nearest; None where it is unknown, or nothing moves."""
    from reviewer.parts.meeting import closest

    try:
        return None if meeting is None else closest(meeting)
    except ValueError:  # an outline that is none, or a search that gave up
        return None


class Curve(NamedTuple):
    """A gap [m] at places of a travel from 0 to 1, in order; which travel, and of which copies."""

    travel: tuple[float, ...]
    gap: tuple[float, ...]
    by: str
    copies: str


def curve_of(meeting: "Meeting | None", count: int = 201) -> Curve | None:
    """The curve of a gap along the travel through its least place; of several, the first."""
    from reviewer.geometry.intervals import gap_curve
    from reviewer.parts.pair_numbers import copies_of

    found = closest_of(meeting)
    if meeting is None or found is None or not found.paths:
        return None
    path = found.paths[0]
    travel, gap = gap_curve(found.encounter, path, count)
    by = meeting.masters[path.travel]
    copies = copies_of(meeting, found.copies)
    return Curve(tuple(map(float, travel)), tuple(map(float, gap)), by, copies)
