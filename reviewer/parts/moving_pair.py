"""Two parts that move against each other: a kind that follows from the moves of a design."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.geometry.intervals import gap_curve, within
from reviewer.parts.kind import Kind
from reviewer.parts.lazily import Lazily
from reviewer.parts.meeting import Closest, Meeting, closest
from reviewer.parts.row import Row

TOUCH = 1e-5  # what is nearer cannot be told from touching: the clearance is exact to as much [m]


class Nearest(NamedTuple):
    """Over samples and cases: how near two parts come, where, and how near they are at the ends.

    Lengths in m, travels from 0 to 1. `first` and `last` bound the travel in which they overlap;
    NaN where they do not. `ends` is the lesser of the gaps at both ends of the travel.
    """

    clearance: Any
    travel: Any
    place: Any
    first: Any
    last: Any
    ends: Any
    copies: Any


UNKNOWN = (np.nan, np.nan, "", np.nan, np.nan, np.nan, "")


def nearest(meeting: Lazily) -> Nearest:
    """The least clearance of two parts over all travels, and where it is.

    Geometry; exact to 0.01 mm, by bounds on the motion (reviewer/geometry/bounds.py).
    """
    samples, cases = meeting.shape()
    rows = [
        [_nearest(meeting.at(sample, case)) for case in range(cases)] for sample in range(samples)
    ]
    columns = zip(*(zip(*row, strict=True) for row in rows), strict=True)
    return Nearest(*(np.array(column) for column in columns))


def _nearest(meeting: Meeting | None) -> tuple[Any, ...]:
    """All of it in one case; unknown where a body is, or where the search gave up."""
    try:
        found = closest(meeting) if meeting is not None else None
    except ValueError:
        found = None
    if meeting is None or found is None:
        return UNKNOWN
    path = found.paths[0]
    curve = gap_curve(found.encounter, path, 3)
    overlap = within(found.encounter, path, 0.0) if found.least.clearance <= TOUCH else ()
    first, last = (overlap[0].start, overlap[-1].end) if overlap else (np.nan, np.nan)
    ends = float(min(curve.gap[0], curve.gap[-1]))
    where, copies = place_of(meeting, found), copies_of(meeting, found.copies)
    at = found.least.at[path.travel]
    return (found.least.clearance, at, where, first, last, ends, copies)


def place_of(meeting: Meeting, found: Closest) -> str:
    """Where the travels stand at the least clearance, as a reader reads it: open at 0.43."""
    used = {path.travel for path in found.paths}
    return ", ".join(
        f"{name} at {found.least.at[index]:.2f}"
        for index, name in enumerate(meeting.masters)
        if index in used
    )


def copies_of(meeting: Meeting, copies: tuple[int, int]) -> str:
    """Which of several like parts: the first is 1."""
    said = [
        f"{side.name} {copy + 1}" if side.count > 1 else side.name
        for side, copy in zip((meeting.one, meeting.other), copies, strict=True)
    ]
    return " and ".join(said)


def _taken(path: str, unit: str, says: str, take: str, **more: Any) -> Row:
    return Row(path, unit, says, needs={"solution": "nearest"}, take=take, **more)


NOT_KNOWN = "needs the outline and the heights of both parts, and how far they move"
MOVING_PAIR = Kind(
    name="moving_pair",
    says="two parts that move against each other",
    carries_load=False,
    implied=True,
    of=("one", "other"),
    rows=(
        Row("touches", "truth", "whether they are meant to touch", built=True),
        Row("meeting", "", "both parts with their bodies and motions", built=True),
        Row(
            "nearest",
            "",
            "how near they come",
            formula=nearest,
            needs={"meeting": "meeting"},
            searches=True,
        ),
        _taken(
            "clearance",
            "m",
            "least clearance over the whole travel",
            "clearance",
            governs="least",
            because=NOT_KNOWN,
        ),
        _taken("travel", "1", "where the travel stands there", "travel", because=NOT_KNOWN),
        _taken("place", "text", "where the travels stand there", "place"),
        _taken("copies", "text", "which of several like parts come nearest", "copies"),
        _taken("overlap.from", "1", "where in the travel they begin to overlap", "first"),
        _taken("overlap.to", "1", "where in the travel they cease to", "last"),
        _taken(
            "ends", "m", "clearance at the ends of that travel, the lesser", "ends",
            because=NOT_KNOWN, governs="least",
        ),
    ),
)  # fmt: skip
