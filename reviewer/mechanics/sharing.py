"""How one body's weight and loads are shared among several that carry it."""

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action, Resultant
from reviewer.mechanics.supports import Supports, circle
from reviewer.mechanics.worst_direction import worst_direction

ANY_STIFFNESS = 1e6  # N/m: where all supports are alike, their shares do not depend on it


class Member(NamedTuple):
    """Greatest force [N] on one of several like parts, and its moment about their axis [N m]."""

    force: Number
    moment: Number

    def plus(self, other: "Member") -> "Member":
        """Both together."""
        return Member(self.force + other.force, self.moment + other.moment)


def member_of_ring(total: Resultant, count: int, radius: Any) -> Member:
    """The busiest of like supports evenly spaced on a circle under one body; one bears all of it.

    The body is rigid and the supports push one way; the worst direction is searched where a load
    comes from all round. NaN where the body tips off them.
    """
    if count == 1:
        fixed = np.hypot(total.moment_x, total.moment_y)
        return Member(total.force, fixed + total.moment_round)
    x, y = circle(count, radius)
    found = worst_direction(
        Supports(x, y, ANY_STIFFNESS),
        total.force,
        total.moment_x,
        total.moment_y,
        total.moment_round,
    )
    return Member(found.peak[0], found.peak[0] * radius)


def shares_of(action: Action, x: Sequence[Number], y: Sequence[Number]) -> tuple[Action, ...]:
    """What each of several carriers at (x, y) [m] gets of an action.

    On two carriers by the lever rule along the line between them, the moment across it in equal
    parts; on more, the most that a rigid body on equal one-way supports gives each of them. Level
    forces in equal parts. Of a moment from all round two carriers get half each, as if it stood
    across, and the total also the force that it adds on one of them along the line: an upper bound.
    Loads and own weight alone go without that force, because it would hold a carrier down. On more
    than two, what lies there for good is shared as the total is.
    """
    if len(x) == 2:
        parts = [_on_two(part, x, y, most=part is action.total) for part in action]
    else:
        parts = [_on_many(part, x, y) for part in action[:-1]]
        parts.append([share.times(_kept(action)) for share in parts[-1]])
    return tuple(Action(*(part[index] for part in parts)) for index in range(len(x)))


def _kept(action: Action) -> Number:
    """Share of the total that lies there for good."""
    total = action.total.force
    loaded = np.not_equal(total, 0.0)
    kept: Number = np.where(loaded, action.lasting.force / np.where(loaded, total, 1.0), 0.0)
    return kept


def _on_two(
    total: Resultant, x: Sequence[Number], y: Sequence[Number], *, most: bool
) -> list[Resultant]:
    along_x, along_y = x[1] - x[0], y[1] - y[0]
    span = np.hypot(along_x, along_y)
    along_x, along_y = along_x / span, along_y / span
    middle_x, middle_y = (x[0] + x[1]) / 2, (y[0] + y[1]) / 2
    about_x = total.moment_x - total.force * middle_x
    about_y = total.moment_y - total.force * middle_y
    tilting = about_x * along_x + about_y * along_y
    across_x, across_y = about_x - tilting * along_x, about_y - tilting * along_y
    added = total.moment_round / span if most else 0.0
    found = []
    for index, sign in enumerate((-1.0, 1.0)):
        force = total.force / 2 + sign * tilting / span + added
        found.append(
            Resultant(
                force=force,
                moment_x=force * x[index] + across_x / 2,
                moment_y=force * y[index] + across_y / 2,
                moment_round=total.moment_round / 2,
            ).plus(_level(total).times(1 / 2))
        )
    return found


def _level(total: Resultant) -> Resultant:
    """The level forces of a resultant alone, with their moments about the floor."""
    return total._replace(force=0.0, moment_x=0.0, moment_y=0.0, moment_round=0.0)


def _on_many(total: Resultant, x: Sequence[Number], y: Sequence[Number]) -> list[Resultant]:
    places = [np.stack(np.broadcast_arrays(*axis), axis=-1) for axis in (x, y)]
    supports = Supports(places[0], places[1], ANY_STIFFNESS)
    found = worst_direction(
        supports,
        total.force,
        total.moment_x,
        total.moment_y,
        total.moment_round,
        groups=[[index] for index in range(len(x))],
    )
    level = _level(total).times(1 / len(x))
    return [
        Resultant(force=peak, moment_x=peak * x[index], moment_y=peak * y[index]).plus(level)
        for index, peak in enumerate(found.peak)
    ]
