"""How far pieces of a rim reach along a direction, and how far they can come over a box of travels.

Arrays are over (boxes, pieces of the still rim, pieces of the moving rim).
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.chain import Chain, Pose, twists
from reviewer.geometry.nearest import Complex, Placed, dot, in_range, unit

Array = NDArray[np.float64]


class Split(NamedTuple):
    """What belongs to the points of lines and arcs, each over (boxes, 1, pieces).

    `whole` is of an arc as a whole: of a circle its middle, since turning about that changes
    nothing, of another arc its farthest point.
    """

    a: Array
    b: Array
    first: Array
    last: Array
    centre: Array
    whole: Array


def split(values: Array, rim: Placed) -> Split:
    """Values over (boxes, points) by what the points are."""
    lines, arcs = rim.a.shape[1], rim.centre.shape[1]
    sizes = [lines, lines, arcs, arcs, arcs]
    pieces = np.split(values, np.cumsum(sizes), axis=1)
    return Split(*(each[:, None, :] for each in pieces))


class Shift:
    """How far points of the moving rim can shift along a direction over a box."""

    def __init__(self, chain: Chain, travels: int, pose: Pose, halves: Array) -> None:
        """Take the motion in the middle of each box, and half their widths."""
        self.turning, self.going = twists(chain, pose, travels)
        self.halves = halves

    def velocity(self, points: Complex) -> list[Complex]:
        """What each travel moves points (boxes, 1, pieces) by, over half a width."""
        return [
            (1j * turning[:, None, None] * points + going[:, None, None]) * half[:, None, None]
            for turning, going, half in zip(self.turning, self.going, self.halves.T, strict=True)
        ]

    def along(self, points: Complex, direction: Complex, bends: Array) -> Array:
        """At most how far they shift along a direction (boxes, one, other), bends included."""
        total = bends
        for step in self.velocity(points):
            total = total + np.abs(dot(direction, step))
        return total

    def farther(self, points: Complex, middle: Complex, bends: Array) -> Array:
        """At most how far points come from a middle, over the box; the points or it move."""
        arm = points - middle
        direction, far = unit(arm), np.abs(arm)
        out, speed = np.zeros_like(far), np.zeros_like(far)
        for step in self.velocity(points):
            out = out + np.abs(dot(direction, step))
            speed = speed + np.abs(step)
        farthest: Array = np.sqrt(far * far + 2 * far * out + speed * speed) + bends
        return farthest


def far_side(still: Placed, n: Complex) -> Array:
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


def near_side(rim: Placed, n: Complex, shift: Shift, turns: Array, bends: Split) -> Array:
    """How near each piece of the moving rim can come along n over the box."""
    lines = rim.a.shape[1]
    straight, round_ = n[:, :, :lines], n[:, :, lines:]

    def near(points: Complex, direction: Complex, bend: Array) -> Array:
        at = points[:, None]
        return dot(direction, at) - shift.along(at, direction, bend)

    of_lines = np.minimum(near(rim.a, straight, bends.a), near(rim.b, straight, bends.b))
    ends = np.minimum(near(rim.first, round_, bends.first), near(rim.last, round_, bends.last))
    bulge = near(rim.centre, round_, bends.centre) - rim.radius[:, None]
    half = np.arccos(np.clip(rim.least[:, None], -1.0, 1.0)) + turns[:, None, None]
    turned = in_range(-round_, rim.middle[:, None], np.cos(np.minimum(half, np.pi)))
    is_whole = rim.least[:, None] <= -1.0
    of_arcs = np.where(turned, np.where(is_whole, bulge, np.minimum(bulge, ends)), ends)
    return np.concatenate([of_lines, of_arcs], axis=2)


def in_hollow(still: Placed, rim: Placed, shift: Shift, bends: Split) -> Array:
    """What is left in a hollow arc beside each piece of the other rim; else nothing known."""
    lines, arcs = still.a.shape[1], still.centre.shape[1]
    others, rounds = rim.a.shape[1], rim.centre.shape[1]
    bound = np.full((rim.a.shape[0], lines + arcs, others + rounds), -np.inf)
    for index in np.flatnonzero(still.hollow):
        middle, radius = still.centre[:, index, None, None], still.radius[0, index]
        a, b = (
            shift.farther(at[:, None], middle, bend)
            for at, bend in ((rim.a, bends.a), (rim.b, bends.b))
        )
        far = shift.farther(rim.centre[:, None], middle, bends.centre) + rim.radius[:, None]
        row = np.concatenate([np.maximum(a, b), far], axis=2)
        bound[:, lines + index] = radius - row[:, 0]
    for index in np.flatnonzero(rim.hollow):
        middle, radius = rim.centre[:, index, None, None], rim.radius[0, index]
        bend = bends.centre[:, :, index, None]
        a, b = (shift.farther(middle, each[:, :, None], bend) for each in (still.a, still.b))
        far = shift.farther(middle, still.centre[:, :, None], bend) + still.radius[:, :, None]
        column = np.concatenate([np.maximum(a, b), far], axis=1)[:, :, 0]
        bound[:, :, others + index] = np.maximum(bound[:, :, others + index], radius - column)
    return bound
