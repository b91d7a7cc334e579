"""The distance of two moving bodies at a position, and a guaranteed least one around it.

The assurance is not in dense sampling. Over a box of travels of half width h about a position:

    first order   d >= d(middle) - moves, with moves >= what any point of the body can come
    second order  two convex pieces are apart by at least what their supports are along any fixed
                  direction n. n is taken along the nearest points; the support of the moving piece
                  shifts by |n . v| h and at most `bends`, the rest of Taylor's series
    hollow arcs   what is in a round hole keeps r - (greatest distance from its middle), whose
                  growth is bounded in the same way

Each is a lower bound by itself, so the greatest of them holds for a pair of pieces, and the least
over all pairs for the bodies. Rims that do not meet anywhere in the box cannot come to overlap in
it, since every path to overlap leads through a meeting of the rims. Heights are bounded alike, and
the distance of two upright bodies is the root of the sum of squares of both.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.chain import (
    Chain,
    Pose,
    Reach,
    between,
    poses,
    reach,
)
from reviewer.geometry.edges import Edges
from reviewer.geometry.nearest import (
    Contact,
    Placed,
    contacts,
    overlapping,
    placed,
    unit,
)
from reviewer.geometry.sides import Shift, far_side, in_hollow, near_side, split

Array = NDArray[np.float64]
AT_ONCE = 60_000  # pairs of pieces at all poses of one batch: what fits into a cache


@dataclass(frozen=True, eq=False)
class Encounter:
    """Two upright bodies, the second moving as the first sees it.

    `chain` takes the second's outline into the frame of the first's. `above` is the height from
    the first's top to the second's bottom where the chain lifts by nothing, and `below` from the
    second's top to the first's bottom [m].
    """

    one: Edges
    other: Edges
    chain: Chain
    travels: int
    above: float = -np.inf
    below: float = -np.inf

    @cached_property
    def _still(self) -> Placed:
        """The first body's rim, where it stands."""
        return placed(self.one, np.ones(1, dtype=np.complex128), np.zeros(1, dtype=np.complex128))

    @property
    def batch(self) -> int:
        """How many positions to ask for at once."""
        return max(1, AT_ONCE // max(1, self.one.pieces * self.other.pieces))


class Mover(NamedTuple):
    """A body on its chain of steps, between two levels where nothing lifts it [m]."""

    edges: Edges
    chain: Chain
    bottom: float = 0.0
    top: float = 0.0


def meet(one: Mover, other: Mover, travels: int) -> Encounter:
    """Two bodies as one of them sees the other.

    A body of whole circles is the one that is seen to move: turning about its middle leaves it as
    it is, so that the gap beside a turning ring is known at once.
    """
    if one.edges.is_round and not other.edges.is_round:
        one, other = other, one
    return Encounter(
        one.edges,
        other.edges,
        between(one.chain, other.chain),
        travels,
        above=other.bottom - one.top,
        below=one.bottom - other.top,
    )


class Found(NamedTuple):
    """Distances at positions, and guaranteed least ones in the boxes about them [m]."""

    distance: Array
    least: Array
    moves: Array


def examine(encounter: Encounter, middles: Array, halves: Array) -> Found:
    """The distance in the middle of boxes of travels (boxes, travels), and a bound in each."""
    pieces = []
    for start in range(0, len(middles), encounter.batch):
        some = slice(start, start + encounter.batch)
        pieces.append(_examine(encounter, middles[some], halves[some]))
    return Found(*(np.concatenate(each) for each in zip(*pieces, strict=True)))


def _examine(encounter: Encounter, middles: Array, halves: Array) -> Found:
    pose = poses(encounter.chain, middles)
    rim = placed(encounter.other, pose.e, pose.c)
    contact = contacts(encounter._still, rim)
    inside = overlapping(encounter.one, encounter.other, pose.e, pose.c, contact.touch)
    far = np.where(inside, 0.0, contact.distance.min(axis=(1, 2)))
    within = reach(encounter.chain, _arms(rim, pose), middles, halves)
    least = np.where(inside, 0.0, _least(encounter, pose, rim, contact, within, halves))
    up, down = encounter.above + pose.lifted, encounter.below - pose.lifted
    apart = np.maximum(np.maximum(up, down), 0.0)
    at_least = np.maximum(np.maximum(up, down) - within.lifts, 0.0)
    moves = _greatest(within, rim) + within.lifts
    return Found(np.hypot(far, apart), np.hypot(least, at_least), moves)


def distances(encounter: Encounter, positions: Array) -> Array:
    """The distance at positions of the travels (positions, travels), and no bound [m]."""
    found = []
    for start in range(0, len(positions), encounter.batch):
        pose = poses(encounter.chain, positions[start : start + encounter.batch])
        contact = contacts(encounter._still, placed(encounter.other, pose.e, pose.c))
        inside = overlapping(encounter.one, encounter.other, pose.e, pose.c, contact.touch)
        far = np.where(inside, 0.0, contact.distance.min(axis=(1, 2)))
        up, down = encounter.above + pose.lifted, encounter.below - pose.lifted
        found.append(np.hypot(far, np.maximum(np.maximum(up, down), 0.0)))
    return np.concatenate(found)


def motion(encounter: Encounter, middles: Array, halves: Array) -> Array:
    """At most how far any point can come over boxes of travels, upward included [m]."""
    pose = poses(encounter.chain, middles)
    rim = placed(encounter.other, pose.e, pose.c)
    within = reach(encounter.chain, _arms(rim, pose), middles, halves)
    most: Array = _greatest(within, rim) + within.lifts
    return most


def _greatest(within: Reach, rim: Placed) -> Array:
    """At most how far any point of a rim comes in plan."""
    moves = split(within.moves, rim)
    greatest: Array = np.concatenate([moves.a, moves.b, moves.whole], axis=2).max(axis=(1, 2))
    return greatest


def _arms(rim: Placed, pose: Pose) -> Array:
    """Distances of the tracked points from each step's pivot, over (steps, positions, points)."""
    boxes = len(pose.e)
    points = np.concatenate([rim.a, rim.b, rim.first, rim.last, rim.centre, rim.centre], axis=1)
    beyond = np.where(rim.least > -1.0, rim.radius, 0.0)
    none = np.zeros((1, points.shape[1] - beyond.shape[1]))
    far = np.concatenate([none, beyond], axis=1)
    arms: Array = np.abs(points[None] - pose.pivots[:, :, None]) + far
    shaped: Array = arms.reshape(len(pose.pivots), boxes, points.shape[1])
    return shaped


def _least(
    encounter: Encounter, pose: Pose, rim: Placed, contact: Contact, within: Reach, halves: Array
) -> Array:
    """The guaranteed least distance of the rims over each box."""
    shift, moves = Shift(encounter.chain, encounter.travels, pose, halves), split(within.moves, rim)
    comes = np.concatenate([np.maximum(moves.a, moves.b), moves.whole], axis=2)
    first = contact.distance - comes
    n = unit(contact.on_other - contact.on_one)
    bends = split(within.bends, rim)
    second = near_side(rim, n, shift, within.turns, bends) - far_side(encounter._still, n)
    bound = np.maximum(first, np.where(contact.distance > 0.0, second, 0.0))
    bound = np.maximum(bound, in_hollow(encounter._still, rim, shift, bends))
    least: Array = np.maximum(bound.min(axis=(1, 2)), 0.0)
    return least
