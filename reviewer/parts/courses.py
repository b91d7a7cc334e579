"""Courses of travels: the table of each over the one that leads it in the end."""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.course import Table

Path = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Lead:
    """A travel as a table over the one that leads it in the end: its `master`."""

    master: str
    table: Table


def lead_of(
    master: str,
    leader: Lead | None,
    start: float,
    end: float,
    profile: Path | None,
    before: int = 0,
    of: int = 1,
) -> Lead:
    """The table of a travel over its master.

    One that follows rests before `start` and after `end` of its leader, or has a `profile` over it.
    One that follows nothing is led by itself; where it takes turns with `of` others, one after the
    other, they are led by the first of them, and it runs in its share after those `before` it.
    """
    if leader is None:
        return Lead(master, _ramp(before / of, (before + 1) / of))
    own = Table(profile) if profile is not None else _ramp(start, end)
    return Lead(leader.master, own.after(leader.table))


def _ramp(start: float, end: float) -> Table:
    """From 0 at the start to 1 at the end, flat before and after."""
    points = [(start, 0.0), (end, 1.0)]
    if start > 0.0:
        points.insert(0, (0.0, 0.0))
    if end < 1.0:
        points.append((1.0, 1.0))
    return Table(tuple(points))


def position_now(
    position: Any, leader: Any, start: Any, end: Any, profile: Path | None
) -> NDArray[np.float64]:
    """Where a travel stands: where it is put, or where its leader takes it."""
    if leader is None:
        return np.asarray(position, dtype=np.float64)
    if profile is not None:
        return Table(profile).at(leader)
    run: NDArray[np.float64] = np.clip((leader - start) / (end - start), 0.0, 1.0)
    return run
