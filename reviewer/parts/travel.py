"""A travel: a named movement from 0 to 1 that drives what moves by it, or follows another one."""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.course import Table
from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure, PartName, Points, Row

WHOLE = Measure(at_least=0.0, at_most=1.0)
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


TRAVEL = Kind(
    name="travel",
    says="a movement from 0 to 1 that drives parts",
    carries_load=False,
    implied=True,
    rows=(
        Row("follows", "", "the travel that takes it along", PartName(of="travel")),
        Row("after", "", "the travel that has to be at its end first", PartName(of="travel")),
        Row(
            "from",
            "1",
            "where it begins, of the travel that it follows",
            Measure(at_least=0.0, below=1.0, default="0"),
        ),
        Row(
            "to",
            "1",
            "where it ends, of the travel that it follows",
            Measure(above=0.0, at_most=1.0, default="1"),
        ),
        Row(
            "profile",
            "",
            "where it stands at places of the travel that it follows",
            Points(
                (
                    Row("leader", "1", "place of its leader", WHOLE),
                    Row("own", "1", "its own", WHOLE),
                )
            ),
        ),
        Row(
            "position",
            "1",
            "where it stands, from 0 to 1; a configuration may set it",
            Measure(at_least=0.0, at_most=1.0, default="0"),
        ),
        Row("now", "1", "where it stands in a configuration", built=True),
        Row("unseen", "text", "parts that move against others and have no shape", built=True),
        Row("lead", "", "its course over the travel that leads it in the end", built=True),
    ),
)
