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
    Slide,
    Turn,
    between,
    poses,
    reach,
    twists,
)
from reviewer.geometry.edges import Edges
from reviewer.geometry.nearest import (
    Complex,
    Contact,
    Placed,
    contacts,
    dot,
    in_range,
    overlapping,
    placed,
    unit,
)

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
    within = reach(encounter.chain, pose, _farthest(encounter, pose), middles, halves)
    least = np.where(inside, 0.0, _least(encounter, pose, rim, contact, within, halves))
    up, down = encounter.above + pose.lifted, encounter.below - pose.lifted
    apart = np.maximum(np.maximum(up, down), 0.0)
    at_least = np.maximum(np.maximum(up, down) - within.lifts, 0.0)
    return Found(np.hypot(far, apart), np.hypot(least, at_least), within.moves + within.lifts)


def motion(encounter: Encounter, middles: Array, halves: Array) -> Array:
    """At most how far any point can come over boxes of travels, upward included [m]."""
    pose = poses(encounter.chain, middles)
    within = reach(encounter.chain, pose, _farthest(encounter, pose), middles, halves)
    return within.moves + within.lifts


def _farthest(encounter: Encounter, pose: Pose) -> Array:
    """Distance of the farthest tracked point from each step's pivot, over (steps, positions)."""
    points, beyond = encounter.other.tracked
    at = pose.e[:, None] * points + pose.c[:, None]
    steps = [step for step in encounter.chain if isinstance(step, Turn | Slide)]
    arms = [(np.abs(at - pivot[:, None]) + beyond).max(axis=1) for pivot in pose.pivots]
    return np.array(arms).reshape(len(steps), len(pose.e))


class _Shift:
    """How far points of the moving rim can shift along a direction over a box."""

    def __init__(self, encounter: Encounter, pose: Pose, within: Reach, halves: Array) -> None:
        self.turning, self.going = twists(encounter.chain, pose, encounter.travels)
        self.bends = within.bends[:, None, None]
        self.halves = halves

    def velocity(self, points: Complex) -> list[Complex]:
        """What each travel moves points (boxes, 1, pieces) by, over half a width."""
        return [
            (1j * turning[:, None, None] * points + going[:, None, None]) * half[:, None, None]
            for turning, going, half in zip(self.turning, self.going, self.halves.T, strict=True)
        ]

    def along(self, points: Complex, direction: Complex) -> Array:
        """At most how far they shift along a direction (boxes, one, other), bends included."""
        total = self.bends
        for step in self.velocity(points):
            total = total + np.abs(dot(direction, step))
        return total

    def farther(self, points: Complex, middle: Complex) -> Array:
        """At most how far points come from a middle, over the box."""
        arm = points - middle
        direction, far = unit(arm), np.abs(arm)
        out, speed = np.zeros_like(far), np.zeros_like(far)
        for step in self.velocity(points):
            out = out + np.abs(dot(direction, step))
            speed = speed + np.abs(step)
        farthest: Array = np.sqrt(far * far + 2 * far * out + speed * speed) + self.bends
        return farthest


def _least(
    encounter: Encounter, pose: Pose, rim: Placed, contact: Contact, within: Reach, halves: Array
) -> Array:
    """The guaranteed least distance of the rims over each box."""
    first = contact.distance - within.moves[:, None, None]
    shift = _Shift(encounter, pose, within, halves)
    n = unit(contact.on_other - contact.on_one)
    second = _near_side(rim, n, shift, within.turns) - _far_side(encounter._still, n)
    bound = np.maximum(first, np.where(contact.distance > 0.0, second, 0.0))
    bound = np.maximum(bound, _in_hollow(encounter._still, rim, shift))
    least: Array = np.maximum(bound.min(axis=(1, 2)), 0.0)
    return least


def _far_side(still: Placed, n: Complex) -> Array:
    """How far each piece of the still rim reaches along n, over (boxes, one, other)."""
    lines = len(still.a[0])
    straight, round_ = n[:, :lines], n[:, lines:]
    a, b = still.a[:, :, None], still.b[:, :, None]
    reach_of_lines = np.maximum(dot(straight, a), dot(straight, b))
    first, last, centre, middle = (
        each[:, :, None] for each in (still.first, still.last, still.centre, still.middle)
    )
    ends = np.maximum(dot(round_, first), dot(round_, last))
    bulge = dot(round_, centre) + still.radius[:, :, None]
    turned = in_range(round_, middle, still.least[:, :, None])
    return np.concatenate([reach_of_lines, np.where(turned, bulge, ends)], axis=1)


def _near_side(rim: Placed, n: Complex, shift: _Shift, turns: Array) -> Array:
    """How near each piece of the moving rim can come along n over the box."""
    lines = rim.a.shape[1]
    straight, round_ = n[:, :, :lines], n[:, :, lines:]

    def near(points: Complex, direction: Complex) -> Array:
        return dot(direction, points) - shift.along(points, direction)

    of_lines = np.minimum(near(rim.a[:, None], straight), near(rim.b[:, None], straight))
    ends = np.minimum(near(rim.first[:, None], round_), near(rim.last[:, None], round_))
    bulge = near(rim.centre[:, None], round_) - rim.radius[:, None]
    half = np.arccos(np.clip(rim.least[:, None], -1.0, 1.0)) + turns[:, None, None]
    turned = in_range(-round_, rim.middle[:, None], np.cos(np.minimum(half, np.pi)))
    return np.concatenate([of_lines, np.where(turned, np.minimum(bulge, ends), ends)], axis=2)


def _in_hollow(still: Placed, rim: Placed, shift: _Shift) -> Array:
    """What is left in a hollow arc beside each piece of the other rim; else nothing known."""
    lines, arcs = still.a.shape[1], still.centre.shape[1]
    others, rounds = rim.a.shape[1], rim.centre.shape[1]
    bound = np.full((rim.a.shape[0], lines + arcs, others + rounds), -np.inf)
    for index in np.flatnonzero(still.hollow):
        middle, radius = still.centre[:, index, None, None], still.radius[0, index]
        ends = [shift.farther(each[:, None], middle) for each in (rim.a, rim.b)]
        far = shift.farther(rim.centre[:, None], middle) + rim.radius[:, None]
        row = np.concatenate([np.maximum(*ends), far], axis=2)
        bound[:, lines + index] = radius - row[:, 0]
    for index in np.flatnonzero(rim.hollow):
        middle, radius = rim.centre[:, index, None, None], rim.radius[0, index]
        ends = [shift.farther(middle, each[:, :, None]) for each in (still.a, still.b)]
        far = shift.farther(middle, still.centre[:, :, None]) + still.radius[:, :, None]
        column = np.concatenate([np.maximum(*ends), far], axis=1)[:, :, 0]
        bound[:, :, others + index] = np.maximum(bound[:, :, others + index], radius - column)
    return bound
