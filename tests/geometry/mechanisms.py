"""Random mechanisms, and their clearance by brute force: another way than the library's.

Here positions follow from plain trigonometry, and distances from cores: a disc is a point and a
slot a line that a radius is put round; polygons are compared corner by side; sectors are shapely's,
with chords two micrometres off at most. Nothing of reviewer.geometry is used but the outlines and
the chains that are handed to it.
"""

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.random import Generator
from numpy.typing import NDArray

from reviewer.geometry import chain as chains
from reviewer.geometry.bounds import Encounter
from reviewer.geometry.course import Course, Crank, StraightSlot, Table
from reviewer.geometry.edges import edges_of
from reviewer.geometry.outline import (
    Disc,
    Outline,
    Polygon,
    Rectangle,
    RegularPolygon,
    Ring,
    Sector,
    Slot,
    extent,
    polygon,
)

CHORD = 2e-6
SLOT = (0.15, 0.3, 0.9)


@dataclass(frozen=True)
class Move:
    """A turn about a place or a slide along a direction, and what drives it."""

    turns: bool
    place: complex
    azimuth: float
    law: str  # table, crank or slot
    lead: tuple[tuple[float, float], ...]
    radius: float = 0.0


@dataclass(frozen=True)
class Mechanism:
    """Two outlines, each on its moves, inner moves last, and where it stands on them."""

    outlines: tuple[Outline, Outline]
    moves: tuple[tuple[Move, ...], tuple[Move, ...]]
    stands: tuple[tuple[complex, float], tuple[complex, float]]


def any_mechanism(random: Generator) -> Mechanism:
    """One mechanism; the second outline is straight or round in a way that a core describes."""
    first = any_outline(random, 6 if random.random() < 0.95 else 7)
    second = any_outline(random, 5)
    moves = tuple(
        tuple(any_move(random) for _ in range(int(random.integers(0, 3)))) for _ in range(2)
    )
    stands = tuple((_place(random, 0.4), _within(random, -3, 3)) for _ in range(2))
    return Mechanism((first, second), moves, stands)


def _within(random: Generator, low: float, high: float) -> float:
    return float(random.uniform(low, high))


def _place(random: Generator, size: float) -> complex:
    return complex(_within(random, -size, size), _within(random, -size, size))


def any_outline(random: Generator, kinds: int) -> Outline:
    """An outline of one of the first kinds; sectors, the last, are slow by brute force."""
    size = _within(random, 0.05, 0.3)
    match 6 if kinds == 7 else int(random.integers(kinds)):
        case 0:
            return Disc(size / 2)
        case 1:
            return Slot(size, size * _within(random, 0.1, 0.9))
        case 2:
            return Rectangle(size, _within(random, 0.02, 0.2))
        case 3:
            return RegularPolygon(int(random.integers(3, 7)), size / 2)
        case 4:
            turns = np.sort(random.uniform(0, 2 * np.pi, 5))
            corners = size * random.uniform(0.3, 1, 5) * np.exp(1j * turns)
            return Polygon(tuple((float(z.real), float(z.imag)) for z in corners))
        case 5:
            return Ring(size + 0.15, (size + 0.15) * _within(random, 0.5, 0.95))
    return Sector(size + 0.15, size, _within(random, 0.3, 4.0))


def any_move(random: Generator) -> Move:
    """A move that a table, a crank or a slot drives, with a dwell now and then."""
    turns = random.random() < 0.6
    amount = _within(random, -2, 2) if turns else _within(random, -0.4, 0.4)
    start, end = sorted((_within(random, 0, 1), _within(random, 0, 1)))
    lead: tuple[tuple[float, float], ...] = ((0.0, 0.0), (1.0, amount))
    law, radius, drawn = "table", 0.0, random.random()
    if drawn < 0.3:
        lead = ((0.0, 0.0), (start, 0.0), (end, amount), (1.0, amount / 2))
    elif drawn < 0.5 and not turns:
        law, radius = "crank", _within(random, 0.05, 0.2)
        lead = ((0.0, 0.0), (1.0, _within(random, 1, 6)))
    elif drawn < 0.7 and not turns:
        law, lead = "slot", ((0.0, 0.0), (1.0, SLOT[2]))
    return Move(turns, _place(random, 0.1), _within(random, -3, 3), law, lead, radius)


def encounter_of(mechanism: Mechanism) -> Encounter:
    """The mechanism as the library takes it."""
    made = []
    for moves, (place, azimuth) in zip(mechanism.moves, mechanism.stands, strict=True):
        steps: list[chains.Step] = []
        for move in moves:
            law = Crank(move.radius) if move.law == "crank" else None
            course = Course(0, Table(move.lead), StraightSlot(*SLOT) if move.law == "slot" else law)
            if move.turns:
                steps.append(chains.Turn(course, move.place.real, move.place.imag))
            else:
                steps.append(chains.Slide(course, move.azimuth))
        made.append((*steps, chains.Fixed(place.real, place.imag, azimuth)))
    first, second = (edges_of(outline) for outline in mechanism.outlines)
    return Encounter(first, second, chains.between(*made), 1)


def brute_force(mechanism: Mechanism, steps: int = 20_000) -> NDArray[np.float64]:
    """The distance at each of evenly spaced positions of the travel."""
    travel = np.linspace(0.0, 1.0, steps + 1)
    (e1, c1), (e2, c2) = (
        _frame(moves, stands, travel)
        for moves, stands in zip(mechanism.moves, mechanism.stands, strict=True)
    )
    e, c = e2 / e1, (c2 - c1) / e1  # the second as the first sees it
    circles = np.abs(c) - sum(extent(outline) for outline in mechanism.outlines)
    some = slice(None, None, 100)
    found = np.full(len(travel), np.inf)
    found[some] = _distances(mechanism, e[some], c[some])
    near = circles <= found.min()  # no other step can be nearer than the nearest of these
    found[near] = _distances(mechanism, e[near], c[near])
    return found


def _distances(mechanism: Mechanism, e, c):  # type: ignore[no-untyped-def]
    """The distance at each pose of the second outline."""
    first, second = mechanism.outlines
    core, round_ = _core(second)
    moved = e[:, None] * core + c[:, None]
    if isinstance(first, Ring):
        return _from_ring(first, moved, round_)
    if isinstance(first, Sector):
        found = _shapely(polygon(first, CHORD), moved)
        return np.maximum(found - round_, 0.0)
    still, too = _core(first)
    return np.maximum(_cores(still, moved) - round_ - too, 0.0)


def _frame(moves: tuple[Move, ...], stands: tuple[complex, float], travel):  # type: ignore[no-untyped-def]
    """Where a body's own frame is turned and set at each position."""
    e, c = np.full(len(travel), np.exp(1j * stands[1])), np.full(len(travel), stands[0])
    for move in reversed(moves):
        lead = np.interp(travel, *zip(*move.lead, strict=True))
        if move.law == "crank":
            amount = move.radius - move.radius * np.cos(lead)
        elif move.law == "slot":  # the polar line through two points
            inner, outer, turn = SLOT
            amount = np.sin(turn) / (np.sin(turn - lead) / inner + np.sin(lead) / outer) - inner
        else:
            amount = lead
        if move.turns:
            e, c = e * np.exp(1j * amount), move.place + (c - move.place) * np.exp(1j * amount)
        else:
            c = c + amount * np.exp(1j * move.azimuth)
    return e, c


def _core(outline: Outline) -> tuple[NDArray[np.complex128], float]:
    """Corners of a core, and the radius that is put round it."""
    if isinstance(outline, Disc):
        return np.array([0j]), outline.radius
    if isinstance(outline, Slot):
        half = (outline.length - outline.width) / 2
        return np.array([-half + 0j, half + 0j]), outline.width / 2
    corners = np.array(shapely.get_coordinates(polygon(outline))[:-1])
    return corners[:, 0] + 1j * corners[:, 1], 0.0


def _from_ring(ring: Ring, moved, round_):  # type: ignore[no-untyped-def]
    """Distance of a core from a ring: beyond its rim, or within its hole; else they overlap."""
    near, far = _cores(np.array([0j]), moved), np.abs(moved).max(axis=1)
    outside, inside = near - round_ - ring.outer, ring.inner - far - round_
    return np.maximum(np.maximum(outside, inside), 0.0)


def _shapely(shape, cores):  # type: ignore[no-untyped-def]
    """Distance of a shape from points, lines or polygons, each given by its corners."""
    shapely.prepare(shape)
    flat = np.stack([cores.real, cores.imag], axis=2)
    if cores.shape[1] == 1:
        moved = shapely.points(flat[:, 0])
    else:
        moved = shapely.linestrings(flat) if cores.shape[1] == 2 else shapely.polygons(flat)
    return shapely.distance(shape, moved)


def _cores(still, moved):  # type: ignore[no-untyped-def]
    """Distance of a core from another one at many positions: corners against sides."""
    moved = np.asarray(moved)
    least = np.full(len(moved), np.inf)
    for a, b in _sides(still[None, :]):
        for k in range(moved.shape[1]):
            least = np.minimum(least, _to_side(a, b, moved[:, k]))
    for a, b in _sides(moved):
        for corner in still:
            least = np.minimum(least, _to_side(a, b, corner))
    crossing = np.zeros(len(moved), dtype=bool)
    for a, b in _sides(still[None, :]):
        for c, d in _sides(moved):
            crossing |= _cross(a, b, c, d)
    inside = _holds(still[None, :], moved[:, 0]) | _holds(moved, still[0])
    return np.where(crossing | inside, 0.0, least)


def _sides(corners):  # type: ignore[no-untyped-def]
    count = corners.shape[1]
    pairs = [(0, 0)] if count == 1 else [(k, (k + 1) % count) for k in range(count)]
    return [
        (corners[:, one], corners[:, other]) for one, other in pairs[: 1 if count == 2 else None]
    ]


def _to_side(a, b, point):  # type: ignore[no-untyped-def]
    along = b - a
    size = np.maximum(np.abs(along) ** 2, 1e-300)
    share = np.clip(((point - a) * np.conj(along)).real / size, 0.0, 1.0)
    return np.abs(point - a - share * along)


def _cross(a, b, c, d):  # type: ignore[no-untyped-def]
    def side(one, other, point):  # type: ignore[no-untyped-def]
        return (np.conj(other - one) * (point - one)).imag

    return (side(a, b, c) * side(a, b, d) < 0) & (side(c, d, a) * side(c, d, b) < 0)


def _holds(corners, point):  # type: ignore[no-untyped-def]
    """Whether a polygon holds a point, by the turn of its corners round it."""
    if corners.shape[1] < 3:
        return np.zeros(np.broadcast_shapes((len(corners),), np.shape(point)), dtype=bool)
    rays = corners - np.reshape(point, (-1, 1))
    turned = np.angle(np.roll(rays, -1, axis=1) / rays).sum(axis=1)
    return np.abs(turned) > 3.0
