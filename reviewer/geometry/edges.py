"""Edges: the rim of an outline as straight pieces and true arcs, and what is inside it.

Arcs are kept as centre, radius and range, never as chords: shapely knows no arcs, and chords short
enough for a hundredth of a millimetre are thousands a part. Points are complex numbers [m].
"""

from dataclasses import dataclass
from math import cos, pi, sin

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.outline import Disc, Outline, Ring, Sector, Slot, corners

Complex = NDArray[np.complex128]
Array = NDArray[np.float64]
Truth = NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class Edges:
    """The rim of an outline.

    Straight pieces run from `a` to `b`. Arcs have a `centre`, a `radius`, the unit direction
    `middle` of their middle and the cosine `least` of half their angle: -1 of a whole circle.
    `hollow` arcs have the outline on their outside. `samples` holds a point of each closed line of
    the rim. `inverse` is all the plane but the outline: a plate as seen from its opening.
    """

    outline: Outline
    a: Complex
    b: Complex
    centre: Complex
    radius: Array
    middle: Complex
    least: Array
    hollow: Truth
    samples: Complex
    inverse: bool = False

    @property
    def ends(self) -> tuple[Complex, Complex]:
        """Both ends of each arc; of a whole circle, a point of it."""
        half = np.arccos(np.clip(self.least, -1.0, 1.0))
        out = self.radius * self.middle
        return self.centre + out * np.exp(-1j * half), self.centre + out * np.exp(1j * half)

    @property
    def is_round(self) -> bool:
        """Whether the rim is whole circles alone, which turning about their middle leaves alone."""
        return not len(self.a) and bool(np.all(self.least <= -1.0))

    @property
    def tracked(self) -> tuple[Complex, Array]:
        """Points that tell where the rim is, and how far beyond each of them the rim can go."""
        part = self.least > -1.0
        points = np.concatenate([self.a, self.b, self.centre])
        beyond = np.concatenate([0.0 * self.a.real, 0.0 * self.b.real, self.radius * part])
        return points, beyond

    @property
    def pieces(self) -> int:
        """How many straight pieces and arcs there are."""
        return len(self.a) + len(self.centre)


def edges_of(outline: Outline, inverse: bool = False) -> Edges:
    """The rim of an outline; `inverse` of an opening, around which there is material."""
    straight: list[complex] = []
    arcs: list[tuple[complex, float, float, float, bool]] = []  # centre, r, middle, half, hollow
    match outline:
        case Disc(radius):
            arcs = [(0j, radius, 0.0, pi, False)]
        case Ring(outer, inner):
            arcs = [(0j, outer, 0.0, pi, False), (0j, inner, 0.0, pi, True)]
        case Sector(outer, inner, angle):
            half = angle / 2
            arcs = [(0j, outer, 0.0, half, False)]
            if inner:
                arcs.append((0j, inner, 0.0, half, True))
            for side in (-half, half):
                direction = complex(cos(side), sin(side))
                straight += [inner * direction, outer * direction]
        case Slot(length, width):
            middle, r = (length - width) / 2, width / 2
            arcs = [(middle + 0j, r, 0.0, pi / 2, False), (-middle + 0j, r, pi, pi / 2, False)]
            straight = [complex(x, y) for y in (-r, r) for x in (-middle, middle)]
        case _:
            around = [complex(*point) for point in corners(outline)]
            for one, other in zip(around, around[1:] + around[:1], strict=True):
                straight += [one, other]
    return _built(outline, straight, arcs, inverse)


def _built(
    outline: Outline,
    straight: list[complex],
    arcs: list[tuple[complex, float, float, float, bool]],
    inverse: bool,
) -> Edges:
    """Put pieces and arcs into arrays."""
    line = np.array(straight, dtype=np.complex128)
    centre = np.array([arc[0] for arc in arcs], dtype=np.complex128)
    radius = np.array([arc[1] for arc in arcs], dtype=np.float64)
    turn = np.array([arc[2] for arc in arcs], dtype=np.float64)
    least = np.array([-1.0 if arc[3] >= pi else cos(arc[3]) for arc in arcs], dtype=np.float64)
    hollow = np.array([arc[4] for arc in arcs], dtype=np.bool_)
    middle = np.exp(1j * turn)
    samples = (centre + radius * middle) if isinstance(outline, Disc | Ring) else line[:1]
    if isinstance(outline, Slot | Sector):
        samples = (centre + radius * middle)[:1]
    return Edges(
        outline, line[0::2], line[1::2], centre, radius, middle, least, hollow ^ inverse,
        samples, inverse,
    )  # fmt: skip


def is_inside(edges: Edges, points: Complex) -> Truth:
    """Whether points are inside an outline, in its own frame."""
    match edges.outline:
        case Disc(radius):
            found = np.abs(points) < radius
        case Ring(outer, inner):
            found = (np.abs(points) < outer) & (np.abs(points) > inner)
        case Sector(outer, inner, angle):
            off = np.abs(np.angle(points))
            found = (np.abs(points) < outer) & (np.abs(points) > inner) & (off < angle / 2)
        case Slot(length, width):
            along = np.clip(points.real, -(length - width) / 2, (length - width) / 2)
            found = np.abs(points - along) < width / 2
        case _:
            found = _within(edges.a, edges.b, points)
    return ~found if edges.inverse else found


def _within(a: Complex, b: Complex, points: Complex) -> Truth:
    """Whether a line from each point to the right crosses the sides an odd number of times."""
    y = points[..., None].imag
    spans = (a.imag > y) != (b.imag > y)
    rise = np.where(spans, b.imag - a.imag, 1.0)
    at = a.real + (y - a.imag) / rise * (b.real - a.real)
    crossed = spans & (points[..., None].real < at)
    odd: Truth = np.count_nonzero(crossed, axis=-1) % 2 == 1
    return odd
