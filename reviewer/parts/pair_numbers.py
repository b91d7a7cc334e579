"""What is told of two parts that move against each other: how near they come, where they meet."""

from collections.abc import Callable
from typing import Any, NamedTuple

import numpy as np

from reviewer.geometry.intervals import gap_curve, joined, within
from reviewer.parts.lazily import Lazily
from reviewer.parts.meeting import Closest, Meeting, closest, resting

TOUCH = 1e-5  # what is nearer cannot be told from touching: the clearance is exact to as much [m]


class Nearest(NamedTuple):
    """Over samples and cases: how near two parts come [m], where, and which of several copies.

    `travel` is where the first of the travels stands, from 0 to 1; `place` tells all of them.
    """

    clearance: Any
    travel: Any
    place: Any
    copies: Any


class Overlap(NamedTuple):
    """Over samples and cases: where they overlap, and how near they are at the ends [m].

    `first` and `last` bound the travel in which they overlap, NaN where they do not. `ends` is the
    lesser of the gaps at both ends of the travel, the others standing where they come nearest.
    """

    first: Any
    last: Any
    ends: Any


def nearest_of(meeting: Lazily) -> Nearest:
    """The least clearance of two parts over all travels, and where it is.

    Geometry; exact to 0.01 mm, by bounds on the motion (reviewer/geometry/bounds.py).
    """
    return Nearest(*_over(meeting, _nearest, (np.nan, np.nan, "", "")))


def overlap_of(meeting: Lazily) -> Overlap:
    """Where in the travel two parts overlap, and their gap at its ends.

    Geometry; no overlap is missed, by bounds on the motion (reviewer/geometry/intervals.py).
    """
    return Overlap(*_over(meeting, _overlap, (np.nan, np.nan, np.nan)))


def rest_of(meeting: Lazily) -> Nearest:
    """How far the middle of what slides keeps inside the edge of what carries it.

    Geometry, over the whole travel as the clearance is: the middle has to stay within the convex
    hull of what carries it, or it tips off.
    """
    return Nearest(*_over(meeting, _rest, (np.nan, np.nan, "", ""), of=resting))


Told = tuple[Any, ...]


def _over(
    meeting: Lazily,
    tell: Callable[[Meeting, Closest], Told],
    unknown: Told,
    of: Callable[[Meeting], Closest | None] = closest,
) -> list[Any]:
    """What is told of each sample and case, as arrays; unknown where a body or the search is."""
    samples, cases = meeting.shape()
    found = [
        [_told(meeting.at(s, c), tell, unknown, of) for c in range(cases)] for s in range(samples)
    ]
    return [
        np.array([[told[column] for told in row] for row in found])
        for column in range(len(unknown))
    ]


def _told(
    meeting: Meeting | None,
    tell: Callable[[Meeting, Closest], Told],
    unknown: Told,
    of: Callable[[Meeting], Closest | None],
) -> Told:
    if meeting is None:
        return unknown
    try:
        found = of(meeting)
    except ValueError:  # too many copies, a move that is not in plan, or a search that gave up
        return unknown
    return unknown if found is None else tell(meeting, found)


def _nearest(meeting: Meeting, found: Closest) -> Told:
    at = found.least.at[found.paths[0].travel]
    where, copies = place_of(meeting, found), copies_of(meeting, found.copies)
    return found.least.clearance, at, where, copies


def _rest(meeting: Meeting, found: Closest) -> Told:
    at = found.least.at[found.paths[0].travel]
    return found.least.clearance, at, place_of(meeting, found), meeting.other.name


def _overlap(meeting: Meeting, found: Closest) -> Told:
    path = found.paths[0]
    gap = gap_curve(found.encounter, path, 2).gap
    meets = found.least.clearance <= TOUCH
    every = [each for copies, each in meeting.encounters if meets and copies == found.copies]
    where = joined([one for each in every for one in within(each, path, 0.0)])
    ends = float(min(gap[0], gap[-1]))
    return (where[0].start, where[-1].end, ends) if where else (np.nan, np.nan, ends)


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
