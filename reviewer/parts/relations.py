"""The relations of two parts: which copies are compared, and how the one sees the other."""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import product
from math import cos, gcd, pi, sin
from typing import NamedTuple

from reviewer.geometry.bounds import Encounter, Mover, meet
from reviewer.geometry.chain import Chain, Fixed, Lift, Turn, between, courses_of
from reviewer.geometry.edges import Edges, edges_of
from reviewer.geometry.outline import Body, Outline, vertical_extent
from reviewer.parts.meeting import KEPT, Meeting, Side, Stand

MOST_RELATIONS = 400


class Relation(NamedTuple):
    """One copy of each part, and how the one sees the other."""

    copies: tuple[int, int]
    encounter: Encounter


@lru_cache(maxsize=KEPT)
def _edges(outline: Outline) -> Edges:
    return edges_of(outline)


@lru_cache(maxsize=KEPT)
def relations_of(meeting: Meeting) -> tuple[Relation, ...]:
    """Each relation of copies once; kept for meetings that are asked for again."""
    return tuple(_encounters(meeting))


def _encounters(meeting: Meeting) -> Iterator[Relation]:
    stands = [
        [meeting.stand(side, copy) for copy in range(side.count)]
        for side in (meeting.one, meeting.other)
    ]
    pairs = list(_pairs(meeting, stands[0][0], stands[1][0]))
    if len(pairs) > MOST_RELATIONS:
        raise ValueError("there are too many copies")
    swings = [_swing_of(meeting, side) for side in (meeting.one, meeting.other)]
    for one, other in pairs:
        if any(swings):
            found = _upright(meeting, swings, stands[0][one].chain, stands[1][other].chain, other)
        else:
            found = _level(meeting, (one, other), stands[0][one], stands[1][other])
        yield from (Relation((one, other), each) for each in found)


def _level(
    meeting: Meeting, copies: tuple[int, int], one: Stand, other: Stand
) -> Iterator[Encounter]:
    """The encounters of two copies that move in plan and upward."""
    if not courses_of(between(one.chain, other.chain)):
        return
    movers = [
        _holed(meeting, side, stand, copies[1 - which]) or _movers(side, stand)
        for which, (side, stand) in enumerate(((meeting.one, one), (meeting.other, other)))
    ]
    for mine, theirs in product(*movers):
        yield meet(mine, theirs, len(meeting.masters))


def _holed(meeting: Meeting, side: Side, stand: Stand, passing: int) -> list[Mover]:
    """The rim of the opening through which a copy of the other part passes; nothing without."""
    if side.name != meeting.plate or not side.bodies:
        return []
    hole = hole_for(meeting.holes, passing)
    place = (*stand.chain, Fixed(hole.x, hole.y, hole.azimuth))
    low, high = vertical_extent(side.bodies[0])
    return [Mover(edges_of(hole.outline, inverse=True), place, low, high)]


def hole_for(holes: tuple[Body, ...], copy: int) -> Body:
    """The opening through which a copy passes: the one of its number, or the only one."""
    every = [turned for hole in holes for turned in copies_in_place(hole)]
    if len(every) > 1 and copy >= len(every):
        raise ValueError("there are fewer openings than parts that pass through them")
    return every[copy if len(every) > 1 else 0]


def copies_in_place(body: Body) -> list[Body]:
    """Each copy of a body as a body of its own."""
    found = []
    for number in range(body.count):
        turn = 2 * pi * number / body.count
        place = complex(body.x, body.y) * complex(cos(turn), sin(turn))
        azimuth = body.azimuth + turn
        found.append(replace(body, x=place.real, y=place.imag, azimuth=azimuth, count=1))
    return found


def _swing_of(meeting: Meeting, side: Side) -> Turn | None:
    """The swing of a part about a level axis; ValueError where what carries it swings."""
    if any(move.way == "swing" for motion in side.motions[:-1] for move in motion.moves):
        raise ValueError("it is carried by what swings")
    for move in side.motions[-1].moves:
        if move.way == "swing":
            return Turn(move.course(dict(meeting.leads), meeting.masters), *move.place)
    return None


def _upright(
    meeting: Meeting, swings: list[Turn | None], one: Chain, other: Chain, passing: int
) -> Iterator[Encounter]:
    """The encounters of two copies of which one swings about a level axis."""
    from reviewer.parts.upright import encounters_of

    if all(swings):
        raise ValueError("both swing about a level axis")
    second = swings[0] is None
    mover, still = (meeting.other, meeting.one) if second else (meeting.one, meeting.other)
    relative = between(one, other) if second else between(other, one)
    swing = swings[1] if second else swings[0]
    assert swing is not None
    hole = hole_for(meeting.holes, passing) if still.name == meeting.plate else None
    for body, target in product(mover.bodies, still.bodies):
        yield from encounters_of(target, hole, body, relative, swing, len(meeting.masters))


def _movers(side: Side, stand: Stand) -> list[Mover]:
    """The bodies of one copy of a part, each on its chain."""
    return [
        Mover(
            _edges(body.outline),
            (*stand.chain, Fixed(body.x, body.y, body.azimuth)),
            body.bottom,
            body.top,
        )
        for body in side.bodies
    ]


def _pairs(meeting: Meeting, one: Stand, other: Stand) -> Iterator[tuple[int, int]]:
    """The copies of one and of the other that are to be compared."""
    n, m = meeting.one.count, meeting.other.count
    if meeting.one.name == meeting.other.name:
        yield from ((0, copy) for copy in range(1, n // 2 + 1))
        return
    first = n // gcd(n, m) if _about_one_axis(one.shared, other.shared) else n
    for mine in range(first):
        for theirs in range(m):
            if not (meeting.slides_along and n == m and mine == theirs):
                yield mine, theirs


def _about_one_axis(one: Chain, other: Chain) -> bool:
    """Whether two groups keep a common axis, so that turning both by a part changes nothing."""
    return all(
        isinstance(step, Lift)
        or (isinstance(step, Turn | Fixed) and step.x == 0.0 and step.y == 0.0)
        for step in between(one, other)
    )
