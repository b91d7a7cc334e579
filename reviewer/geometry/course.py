"""Courses: how far a motion has gone at each position of a travel, which runs from 0 to 1.

A course is a law of a lead. The lead is a table of straight pieces over the travel, in which flat
pieces are a dwell; the law is nothing (the lead is the amount), a crank or a straight slot. Between
two of the travel's `breaks` every course is smooth, and tells the largest size of its first and
second derivative there: on these rest the bounds of the search for the least clearance.
"""

from dataclasses import dataclass
from functools import cached_property
from math import atan2, cos, hypot, pi, sin

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Table:
    """Straight pieces between points (travel, amount); constant before and after them.

    >>> float(Table(((0.0, 0.0), (0.5, 0.1), (1.0, 0.1))).at(np.array(0.25)))
    0.05
    """

    points: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        """Refuse what does not run forward."""
        steps = zip(self.points, self.points[1:], strict=False)
        if not self.points or not all(one[0] < other[0] for one, other in steps):
            raise ValueError("the travel of a course grows from point to point")

    @cached_property
    def _columns(self) -> tuple[Array, Array]:
        columns = np.array(self.points, dtype=np.float64)
        return columns[:, 0], columns[:, 1]

    def at(self, travel: Array) -> Array:
        """The amount at each position."""
        found: Array = np.interp(travel, *self._columns)
        return found

    def slope(self, travel: Array) -> Array:
        """How fast the amount grows there; at a break, as after it."""
        places, amounts = self._columns
        steep = np.concatenate(([0.0], np.diff(amounts) / np.diff(places), [0.0]))
        found: Array = steep[np.searchsorted(places, travel, side="right")]
        return found

    def after(self, lead: "Table") -> "Table":
        """The course of this amount where another table leads its travel."""
        breaks = set(lead.breaks)
        for one, other in zip(lead.points, lead.points[1:], strict=False):
            rise = other[1] - one[1]
            for place, _ in self.points:
                share = (place - one[1]) / rise if rise else -1.0
                if 0.0 < share < 1.0:
                    breaks.add(one[0] + share * (other[0] - one[0]))
        places = sorted({0.0, 1.0, *breaks})
        amounts = self.at(lead.at(np.array(places)))
        return Table(tuple(zip(places, map(float, amounts), strict=True)))

    @property
    def breaks(self) -> tuple[float, ...]:
        """The positions, within the travel, at which the slope changes."""
        return tuple(place for place, _ in self.points if 0.0 < place < 1.0)


@dataclass(frozen=True)
class Crank:
    """A pin that turns on a crank and moves a slide along: radius (cos(start) - cos(turn)).

    Amounts of the lead are the turn [rad], from `start` on; radius [m].
    """

    radius: float
    start: float = 0.0

    @property
    def turning_points(self) -> tuple[float, ...]:
        """The turns at which the slide goes back: the dead points of ten turns each way."""
        return tuple(pi * number for number in range(-20, 21))

    def at(self, turn: Array) -> Array:
        """How far the slide has come."""
        found: Array = self.radius * (cos(self.start) - np.cos(turn))
        return found

    def slope(self, turn: Array) -> Array:
        """How fast it comes."""
        found: Array = self.radius * np.sin(turn)
        return found

    def most(self, low: Array, high: Array) -> tuple[Array, Array]:
        """Largest size of the first and the second derivative between two turns."""
        most = np.full(np.broadcast_shapes(np.shape(low), np.shape(high)), abs(self.radius))
        return most, most


@dataclass(frozen=True)
class StraightSlot:
    """A straight slot in a turning plate, which moves a pin along its radius.

    The slot runs from radius `inner` [m] to `outer` at an azimuth that is `turn` [rad] further
    on; turning the plate by phi takes the pin from one to the other. Amounts of the lead are phi.
    """

    inner: float
    outer: float
    turn: float

    def __post_init__(self) -> None:
        """Refuse a slot through the axis, where the pin would not follow."""
        if not (self.inner > 0.0 and self.outer > 0.0 and 0.0 < abs(self.turn) < pi):
            raise ValueError("a slot keeps off the axis, and turns by less than half a turn")
        if self._distance <= 1e-3 * self.inner:
            raise ValueError("a slot keeps off the axis")

    @cached_property
    def _foot(self) -> complex:
        """The point of the slot's line that is nearest to the axis."""
        one = complex(self.inner, 0.0)
        along = self.outer * complex(cos(self.turn), sin(self.turn)) - one
        share = -(one.real * along.real + one.imag * along.imag) / abs(along) ** 2
        return one + share * along

    @property
    def _distance(self) -> float:
        return hypot(self._foot.real, self._foot.imag)

    def _from_foot(self, turn: Array) -> Array:
        found: Array = np.asarray(turn, dtype=np.float64) - atan2(self._foot.imag, self._foot.real)
        return found

    @property
    def turning_points(self) -> tuple[float, ...]:
        """The turn at which the pin is nearest to the axis."""
        return (atan2(self._foot.imag, self._foot.real),)

    def at(self, turn: Array) -> Array:
        """How far out the pin has come: p / cos(phi - phi0) less the inner radius."""
        found: Array = self._distance / np.cos(self._from_foot(turn)) - self.inner
        return found

    def slope(self, turn: Array) -> Array:
        """How fast it comes: p sin / cos^2."""
        psi = self._from_foot(turn)
        found: Array = self._distance * np.sin(psi) / np.cos(psi) ** 2
        return found

    def most(self, low: Array, high: Array) -> tuple[Array, Array]:
        """Largest size of the first and the second derivative: both grow away from the foot."""
        far = np.maximum(np.abs(self._from_foot(low)), np.abs(self._from_foot(high)))
        sine, cosine = np.sin(far), np.cos(far)
        most = self._distance * sine / cosine**2
        return most, self._distance * (1 + sine**2) / cosine**3


@dataclass(frozen=True)
class Course:
    """The amount of a motion over the travel of a number: a law of a lead."""

    travel: int
    lead: Table
    law: Crank | StraightSlot | None = None

    @property
    def breaks(self) -> tuple[float, ...]:
        """Positions of the travel between which the course is smooth."""
        return self.lead.breaks

    def at(self, travel: Array) -> Array:
        """The amount at each position [m or rad]."""
        lead = self.lead.at(travel)
        return lead if self.law is None else self.law.at(lead)

    def slope(self, travel: Array) -> Array:
        """The amount for each unit of travel there."""
        steep = self.lead.slope(travel)
        return steep if self.law is None else steep * self.law.slope(self.lead.at(travel))

    def most(self, middle: Array, half: Array) -> tuple[Array, Array]:
        """Largest size of first and second derivative within half of a width of a position.

        Guaranteed where no break lies inside.
        """
        steep = np.abs(self.lead.slope(middle))
        if self.law is None:
            return steep, np.zeros_like(steep)
        low, high = (self.lead.at(middle + side * half) for side in (-1.0, 1.0))
        first, second = self.law.most(low, high)
        return steep * first, steep**2 * second


def breaks_of(courses: tuple[Course, ...], travel: int) -> tuple[float, ...]:
    """The ends of a travel and all breaks of courses on it, in order."""
    found = {0.0, 1.0}
    for course in courses:
        if course.travel == travel:
            found.update(course.breaks)
    ordered = sorted(found)
    kept = [ordered[0]]
    for place in ordered[1:]:
        if place - kept[-1] > 1e-9 or place in (0.0, 1.0):
            kept.append(place)
    return tuple(kept)
