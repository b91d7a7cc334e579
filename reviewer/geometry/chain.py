"""Chains: how a body moves against another one, as steps from the frame of the other outward.

Points are complex numbers, x + iy [m]; a pose takes z to e z + c. A chain is a tuple of steps, the
outermost first: what carries a part moves it whole, then the part moves on it. Seen from another
body the chain begins with that body's own steps undone.
"""

from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.course import Course

Array = NDArray[np.float64]
Complex = NDArray[np.complex128]


@dataclass(frozen=True)
class Fixed:
    """A pose that does not change: turned by azimuth [rad], then set at (x, y) [m]."""

    x: float = 0.0
    y: float = 0.0
    azimuth: float = 0.0

    def undone(self) -> "Fixed":
        """The pose that takes this one back."""
        back = np.exp(-1j * self.azimuth)
        place = -back * complex(self.x, self.y)
        return Fixed(float(place.real), float(place.imag), -self.azimuth)


@dataclass(frozen=True)
class Turn:
    """A turn about the point (x, y) by what the course says [rad]."""

    course: Course
    x: float = 0.0
    y: float = 0.0
    back: bool = False

    def undone(self) -> "Turn":
        """The same turn the other way."""
        return replace(self, back=not self.back)


@dataclass(frozen=True)
class Slide:
    """A slide in the direction of an azimuth [rad] by what the course says [m]."""

    course: Course
    azimuth: float = 0.0
    back: bool = False

    def undone(self) -> "Slide":
        """The same slide the other way."""
        return replace(self, back=not self.back)


@dataclass(frozen=True)
class Lift:
    """A move upward by what the course says [m]; it changes nothing in plan."""

    course: Course
    back: bool = False

    def undone(self) -> "Lift":
        """The same lift the other way."""
        return replace(self, back=not self.back)


Step = Fixed | Turn | Slide | Lift
Chain = tuple[Step, ...]


def between(one: Chain, other: Chain) -> Chain:
    """The chain of the other body as seen from the first: what both share is left out."""
    shared = 0
    while shared < min(len(one), len(other)) and one[shared] == other[shared]:
        shared += 1
    return (*(step.undone() for step in reversed(one[shared:])), *other[shared:])


def courses_of(chain: Chain) -> tuple[Course, ...]:
    """The courses of the steps that move."""
    return tuple(step.course for step in chain if not isinstance(step, Fixed))


class Pose(NamedTuple):
    """Poses at several positions: turned by e, set at c, and each moving step's pivot and rate.

    `lifted` [m]. For each moving step in plan, over (steps, positions): `pivots`, where a turn's
    pivot stands; `rates`, the direction of a slide times its slope, or a turn's slope.
    """

    e: Complex
    c: Complex
    lifted: Array
    pivots: Complex
    rates: Complex


def poses(chain: Chain, travels: Array) -> Pose:
    """The pose of a chain at positions (positions, travels)."""
    count = len(travels)
    e, c = np.ones(count, dtype=np.complex128), np.zeros(count, dtype=np.complex128)
    lifted = np.zeros(count)
    pivots, rates = [], []
    for step in chain:
        if isinstance(step, Fixed):
            c = c + e * complex(step.x, step.y)
            e = e * np.exp(1j * step.azimuth)
            continue
        sign = -1.0 if step.back else 1.0
        along = travels[:, step.course.travel]
        amount, slope = sign * step.course.at(along), sign * step.course.slope(along)
        if isinstance(step, Lift):
            lifted = lifted + amount
        elif isinstance(step, Slide):
            direction = e * np.exp(1j * step.azimuth)
            pivots.append(np.zeros(count, dtype=np.complex128))
            rates.append(direction * slope)
            c = c + direction * amount
        else:
            pivot, turned = complex(step.x, step.y), np.exp(1j * amount)
            pivots.append(e * pivot + c)
            rates.append(slope.astype(np.complex128))
            c = c + e * (pivot - turned * pivot)
            e = e * turned
    empty = np.zeros((0, count), dtype=np.complex128)
    return Pose(
        e, c, lifted, np.array(pivots) if pivots else empty, np.array(rates) if rates else empty
    )


def twists(chain: Chain, pose: Pose, travels: int) -> tuple[Array, Complex]:
    """How each travel moves points at the moment: z goes at i W z + U; over (travels, positions).

    Turns of several steps add up as vectors, so that two parts on one axis that turn together
    do not move against each other at all.
    """
    count = pose.e.shape[0]
    turning = np.zeros((travels, count))
    going = np.zeros((travels, count), dtype=np.complex128)
    moving = [step for step in chain if isinstance(step, Turn | Slide)]
    for step, pivot, rate in zip(moving, pose.pivots, pose.rates, strict=True):
        if isinstance(step, Turn):
            turning[step.course.travel] += rate.real
            going[step.course.travel] -= 1j * rate.real * pivot
        else:
            going[step.course.travel] += rate
    return turning, going


class Reach(NamedTuple):
    """Guaranteed over a box of travels, for each of some points of a body [m, rad].

    Over (boxes, points): `moves` is how far a point can come from where it is in the middle;
    `bends` how far from the straight line along its velocity there. Over (boxes,): `turns` is how
    far the body can turn; `lifts` how far it can rise or sink.
    """

    moves: Array
    bends: Array
    turns: Array
    lifts: Array


def reach(chain: Chain, arms: Array, middles: Array, halves: Array) -> Reach:
    """Bounds on the motion over boxes of travels, from the speed and the bend of each step.

    `arms` are the distances of the points from each turn's pivot in the middle of the box, over
    (steps, boxes, points). A step j with |dq/dt| <= s and arm r moves a point by at most r s h over
    half a width h, where r is the arm in the middle and what the steps further in can add to it.
    Of the second derivatives, d2z/dqi dqj is as large as dz/dqj where the outer step i turns, and
    nothing where it slides; from these and from d2q/dt2 Taylor's remainder follows.
    """
    moves, bends = np.zeros(arms.shape[1:]), np.zeros(arms.shape[1:])
    turns, lifts = np.zeros(len(middles)), np.zeros(len(middles))
    moving = [step for step in chain if isinstance(step, Turn | Slide)]
    for index in range(len(moving) - 1, -1, -1):
        step = moving[index]
        travel = step.course.travel
        half = halves[:, travel]
        steep, bent = step.course.most(middles[:, travel], half)
        span, bend = (steep * half)[:, None], (bent * half * half)[:, None]
        arm = arms[index] + moves if isinstance(step, Turn) else np.ones_like(moves)
        own = arm * span
        if isinstance(step, Turn):
            bends = bends + span * moves + span * own / 2  # with every step further in, and itself
            turns = turns + span[:, 0]
        bends = bends + arm * bend / 2
        moves = moves + own
    for course in (step.course for step in chain if isinstance(step, Lift)):
        half = halves[:, course.travel]
        lifts = lifts + course.most(middles[:, course.travel], half)[0] * half
    return Reach(moves, bends, turns, lifts)
