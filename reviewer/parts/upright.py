"""A part that swings about a level axis, against one that does not: compared in an upright plane.

The plane is the one in which the part swings: u level along its azimuth, z up; its thickness goes
from v to v sideways. Of the other part everything that lies within that thickness is projected on
the plane, which makes it no smaller; so what passes an opening in a plate is compared with all of
the rim that it could touch. What lies beside the thickness is compared in plan with all that the
part sweeps at the heights of the other.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import cos, pi, sin
from typing import Any, NamedTuple

import numpy as np

from reviewer.geometry.bounds import Encounter, Mover, meet
from reviewer.geometry.chain import Chain, Fixed, Lift, Slide, Step, Turn, poses
from reviewer.geometry.course import Course
from reviewer.geometry.edges import edges_of
from reviewer.geometry.outline import (
    Body,
    Disc,
    Outline,
    Rectangle,
    extent,
    footprint,
    polygon,
    vertical_extent,
)

CHORD = 2e-6
STEPS = 20_000  # positions at which what is swept is looked at; what is between them is added
STEPS_OF_TWO = 200
FAR = 3.0  # around an opening there is material as far as this [m]
SMALL = 1e-9
ALONG = 1e-6  # of a slide, how far it may be off the plane [rad]


class Swinging(NamedTuple):
    """A body that swings: its outline in the plane, where it stands there, and its thickness."""

    outline: Outline
    stands: Fixed
    near: float
    far: float


def swinging(body: Body) -> Swinging:
    """A body as seen along its swing's axis; one that lies is taken as the box around it."""
    cosine, sine = cos(body.azimuth), sin(body.azimuth)
    u, v = body.x * cosine + body.y * sine, body.y * cosine - body.x * sine
    if body.standing:
        return Swinging(body.outline, Fixed(u, 0.0), v + body.bottom, v + body.top)
    west, south, east, north = polygon(body.outline, CHORD).bounds
    side = Rectangle(east - west, body.top - body.bottom)
    middle = Fixed(u + (west + east) / 2, (body.bottom + body.top) / 2)
    return Swinging(side, middle, v + south, v + north)


def encounters_of(
    still: Body, hole: Body | None, mover: Body, relative: Chain, swing: Turn, travels: int
) -> Iterator[Encounter]:
    """The encounters of a swinging body with another one.

    `relative` takes the mover's frame into that of the other body, without the swing; `swing` has
    its pivot at (out, height). With a `hole` the other body is what is around it. Raises ValueError
    where they move against each other in another way than upward and along the plane.
    """
    seen = swinging(mover)
    steps = (*_in_plane(relative, mover.azimuth), swing)
    chain = (*steps, seen.stands)
    shape = _in_frame(still, hole, relative, mover.azimuth)
    low, high = vertical_extent(still)
    moving = Mover(edges_of(seen.outline), chain)
    for start, end in _within(shape, seen.near, seen.far):
        block = Rectangle(end - start, high - low)
        there = (Fixed((start + end) / 2, (low + high) / 2),)
        yield meet(Mover(edges_of(block), there), moving, travels)
    beside = _beside(shape, seen, chain, (low, high), travels)
    if beside is not None:  # as two points that are so far apart
        point = edges_of(Disc(SMALL / 2))
        apart = (Turn(swing.course, beside + SMALL, 0.0), Fixed(beside + SMALL))
        yield Encounter(point, point, apart, travels)


def _in_plane(relative: Chain, azimuth: float) -> tuple[Step, ...]:
    """What moves in a chain as moves in the plane."""
    found: list[Step] = []
    for step in relative:
        if isinstance(step, Lift):
            found.append(Slide(step.course, pi / 2, step.back))
        elif isinstance(step, Slide):
            off = (step.azimuth - azimuth) % pi
            if step.back or min(off, pi - off) > ALONG:
                raise ValueError("it slides across the plane in which it swings")
            found.append(Slide(step.course, step.azimuth - azimuth))
        elif isinstance(step, Turn):
            raise ValueError("it turns out of the plane in which it swings")
    return tuple(found)


def _in_frame(still: Body, hole: Body | None, relative: Chain, azimuth: float) -> Any:
    """The other body in plan, in the frame of the one that swings: u and v."""
    from shapely import affinity, box

    if hole is None:
        shape = footprint(replace(still, count=1), CHORD)
    else:
        shape = box(-FAR, -FAR, FAR, FAR) - footprint(replace(hole, count=1), CHORD)
    placed = tuple(step for step in relative if isinstance(step, Fixed))
    pose = poses((*placed, Fixed(azimuth=azimuth)), np.zeros((1, 1)))
    back = np.conj(pose.e[0])
    shift = -back * pose.c[0]
    return affinity.affine_transform(
        shape, [back.real, -back.imag, back.imag, back.real, shift.real, shift.imag]
    )


def _within(shape: Any, near: float, far: float) -> list[tuple[float, float]]:
    """The stretches along u that a shape has within a strip."""
    from shapely import box

    west, _, east, _ = shape.bounds
    inside = shape & box(west - 1.0, near + SMALL, east + 1.0, far - SMALL)
    found: list[tuple[float, float]] = []
    parts = [each for each in getattr(inside, "geoms", [inside]) if each.area > 0.0]
    for start, end in sorted((part.bounds[0], part.bounds[2]) for part in parts):
        if found and start <= found[-1][1] + SMALL:
            found[-1] = (found[-1][0], max(found[-1][1], end))
        else:
            found.append((start, end))
    return [(start, end) for start, end in found if end - start > SMALL]


def _beside(
    shape: Any, seen: Swinging, chain: Chain, levels: tuple[float, float], travels: int
) -> float | None:
    """How near a shape comes, outside the thickness, to what is swept at its levels."""
    from shapely import box

    swept = _swept(seen, chain, levels, travels)
    if swept is None:
        return None
    west, south, east, north = shape.bounds
    strip = box(west - 1.0, seen.near, east + 1.0, seen.far)
    outside = shape - strip
    if outside.is_empty or (south >= seen.near and north <= seen.far):
        return None
    return float(outside.distance(box(swept[0], seen.near, swept[1], seen.far)))


def _swept(
    seen: Swinging, chain: Chain, levels: tuple[float, float], travels: int
) -> tuple[float, float] | None:
    """From where to where along u a body comes between two levels; None where it never does."""
    used = {step.course.travel for step in chain if not isinstance(step, Fixed)}
    count = STEPS if len(used) == 1 else STEPS_OF_TWO
    axes = [np.linspace(0.0, 1.0, count + 1) if k in used else np.zeros(1) for k in range(travels)]
    travel = np.stack([each.ravel() for each in np.meshgrid(*axes, indexing="ij")], axis=1)
    pose = poses(chain, travel)
    rim = np.array(polygon(seen.outline, CHORD * 50).exterior.coords)[:-1]
    points = pose.e[:, None] * (rim[:, 0] + 1j * rim[:, 1]) + pose.c[:, None]
    margin = _margin(chain, extent(seen.outline), count)
    found = _between(points, levels[0] - margin, levels[1] + margin)
    return None if found is None else (found[0] - margin, found[1] + margin)


def _margin(chain: Chain, size: float, count: int) -> float:
    """At most how far a point comes between two positions that are looked at."""
    arm, margin = size, CHORD * 50
    for step in reversed(chain):
        if isinstance(step, Fixed):
            arm += abs(complex(step.x, step.y))
            continue
        steep = _steepest(step.course) / (2 * count)
        reach = arm + abs(complex(step.x, step.y)) if isinstance(step, Turn) else 1.0
        margin += reach * steep
        arm = arm + reach * _steepest(step.course)
    return margin


def _steepest(course: Course) -> float:
    places = np.array([0.0, *course.breaks, 1.0])
    middles, halves = (places[1:] + places[:-1]) / 2, (places[1:] - places[:-1]) / 2
    return float(course.most(middles, halves)[0].max())


def _between(points: Any, low: float, high: float) -> tuple[float, float] | None:
    """From where to where along u rims have anything between two levels."""
    after = np.roll(points, -1, axis=1)
    found = [points.real[(points.imag >= low) & (points.imag <= high)]]
    for level in (low, high):
        crosses = (points.imag < level) != (after.imag < level)
        one, other = points[crosses], after[crosses]
        share = (level - one.imag) / (other.imag - one.imag)
        found.append(one.real + share * (other.real - one.real))
    along = np.concatenate(found)
    return None if not len(along) else (float(along.min()), float(along.max()))
