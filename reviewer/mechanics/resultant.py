"""Forces on their way down: resultants of weights and loads, and what turning joints make of them.

A vertical force V at (x, y) has the moments V x and V y about the axis. A load that may stand at
any azimuth has a moment of known size and free direction, its round moment. A level force H at
height h tilts by H h about the floor, and by H (h - z) about a joint at level z.
"""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number


class Resultant(NamedTuple):
    """Sum of forces and moments about the vertical axis through the origin, at floor level.

    force [N] down; moment_x, moment_y [N m] of fixed direction; moment_round [N m] of any
    direction; push_x, push_y, push_round [N] level forces; tilt_x, tilt_y, tilt_round [N m] their
    moments about the floor.
    """

    force: Number = 0.0
    moment_x: Number = 0.0
    moment_y: Number = 0.0
    moment_round: Number = 0.0
    push_x: Number = 0.0
    push_y: Number = 0.0
    push_round: Number = 0.0
    tilt_x: Number = 0.0
    tilt_y: Number = 0.0
    tilt_round: Number = 0.0

    def plus(self, other: "Resultant") -> "Resultant":
        """Both together."""
        return Resultant(*(a + b for a, b in zip(self, other, strict=True)))

    def times(self, factor: Number) -> "Resultant":
        """Scaled, as by a factor of a combination."""
        return Resultant(*(value * factor for value in self))

    def turned_freely(self, x: Number = 0.0, y: Number = 0.0) -> "Resultant":
        """What a joint that turns freely about (x, y) [m] passes on: any direction for a fixed one.

        The table may stand at any angle to what is below it, so only the sizes about its own axis
        remain. That level forces and weights may point against each other is left out: where both
        act, an upper bound.
        """
        about_x, about_y = self.moment_x - self.force * x, self.moment_y - self.force * y
        return Resultant(
            force=self.force,
            moment_x=self.force * x,
            moment_y=self.force * y,
            moment_round=self.moment_round + np.hypot(about_x, about_y),
            push_round=self.push_round + np.hypot(self.push_x, self.push_y),
            tilt_round=self.tilt_round + np.hypot(self.tilt_x, self.tilt_y),
        )

    def about(self, x: Number, y: Number, level: Number) -> "Overturning":
        """Force and moments about a joint at (x, y) and a level above the floor [m]."""
        return Overturning(
            force=self.force,
            moment_x=self.moment_x - self.force * x + _tilt(self.tilt_x, self.push_x, level),
            moment_y=self.moment_y - self.force * y + _tilt(self.tilt_y, self.push_y, level),
            moment_round=self.moment_round + _tilt(self.tilt_round, self.push_round, level),
        )


class Overturning(NamedTuple):
    """Force and moments at a joint: force [N], fixed moment_x and moment_y, moment_round [N m]."""

    force: Number
    moment_x: Number
    moment_y: Number
    moment_round: Number


class Action(NamedTuple):
    """Resultants of own weight, of loads, of both, and of what of both lies there for good.

    The total is kept beside its parts, because past a turning joint sizes no longer add up.
    """

    weight: Resultant = Resultant()
    loads: Resultant = Resultant()
    total: Resultant = Resultant()
    lasting: Resultant = Resultant()

    def plus(self, other: "Action") -> "Action":
        """Both together."""
        return Action(*(a.plus(b) for a, b in zip(self, other, strict=True)))

    def turned_freely(self, x: Number = 0.0, y: Number = 0.0) -> "Action":
        """What a joint that turns freely about (x, y) [m] passes on."""
        return Action(*(each.turned_freely(x, y) for each in self))


def of_weight(weight: Resultant) -> Action:
    """An action of own weight alone."""
    return Action(weight, Resultant(), weight, weight)


def of_load(load: Resultant, lasting: Number = 0.0) -> Action:
    """An action of a load alone, of which a share lies there for good."""
    return Action(Resultant(), load, load, load.times(lasting))


def _tilt(about_floor: Number, push: Number, level: Number) -> Number:
    """Move the moment of a level force up to a joint; where nothing pushes, no level is needed."""
    return np.where(np.equal(push, 0.0), about_floor, about_floor - push * level)
