"""A meeting: two parts that move against each other, all copies of both, over all their travels.

What a rule or a drawing can ask of it:

    meeting.encounters      each relation of a copy of one to a copy of the other, once (relations
                            that a symmetry makes alike are left out)
    meeting.masters         the travels that lead, in the order of `at`
    closest(meeting)        the relation with the least clearance, and a path along each
                            travel through that place:
                            `.encounter`, `.paths`, `.least`, `.copies`.
                            With these ask geometry.intervals: `gap_curve` for a curve, `within`
                            and `in_band` for the stretches of travel in which the gap lies in a
                            band; the gap closes where the curve falls.

All are pure, and kept for bodies and courses that are asked for again, as a search for a remedy
does.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import pi
from typing import TYPE_CHECKING, NamedTuple

from reviewer.geometry.bounds import Encounter, Mover, meet
from reviewer.geometry.chain import Chain, Fixed, Lift, Slide, Step, Turn, courses_of
from reviewer.geometry.clearance import Least, least_clearance
from reviewer.geometry.course import Course
from reviewer.geometry.edges import edges_of
from reviewer.geometry.intervals import Path
from reviewer.geometry.outline import (
    Body,
    Disc,
    Polygon,
    footprint,
    middle_of,
)
from reviewer.parts.courses import Lead
from reviewer.parts.motion import Motion, Move

if TYPE_CHECKING:
    from reviewer.parts.relations import Relation

KEPT = 4096
NO_SIZE = 1e-9  # of a point [m]
CHORD = 5e-6  # a round edge is taken as so much smaller at most, which is safe [m]
Leads = tuple[tuple[str, Lead], ...]


@dataclass(frozen=True)
class Side:
    """One of two parts: its bodies, and the motions from the ground to it, its own the last."""

    name: str
    bodies: tuple[Body, ...]
    motions: tuple[Motion, ...]

    @property
    def count(self) -> int:
        """How many there are."""
        return self.motions[-1].count


class Stand(NamedTuple):
    """How a copy stands: the steps of all copies together, then those of its own."""

    shared: Chain
    own: Chain

    @property
    def chain(self) -> Chain:
        """All steps."""
        return (*self.shared, *self.own)


@dataclass(frozen=True)
class Meeting:
    """Two parts and the travels that drive them.

    `rides` where the first carries the second, `rests` where nothing is between them. `holes` are
    openings in the part named `plate` through which the other one passes.
    """

    one: Side
    other: Side
    leads: Leads
    rides: bool = False
    rests: bool = False
    plate: str = ""
    holes: tuple[Body, ...] = ()

    @property
    def masters(self) -> tuple[str, ...]:
        """The travels that lead those by which the two move against each other."""
        by = {
            move.by
            for side in (self.one, self.other)
            for motion in side.motions
            for move in motion.moves
        }
        return tuple(sorted({lead.master for name, lead in self.leads if name in by}))

    @property
    def slides_along(self) -> bool:
        """Whether the second part keeps lying on the first, and so on its own copy of it."""
        ways = [move.way for move in self.other.motions[-1].moves]
        return self.rides and bool(ways) and all(way in ("slide", "turn") for way in ways)

    def stand(self, side: Side, copy: int) -> Stand:
        """The steps from the ground to one copy of a part."""
        leads, masters = dict(self.leads), self.masters
        shared: list[Step] = []
        own: list[Step] = []
        for index, motion in enumerate(side.motions):
            into = own if own else shared
            into.append(Fixed(motion.x, motion.y))
            courses = [(move, move.course(leads, masters)) for move in motion.moves]
            into += [_step(move, course) for move, course in courses if _moves_all(move)]
            if motion.count > 1 and not _goes_on(side.motions, index):
                continue  # what follows stands on all copies together
            if motion.count > 1 and not own:
                own.append(Fixed(azimuth=2 * pi * copy / motion.count))
            alone = [
                _step(move, course)
                for move, course in courses
                if not _moves_all(move) and move.way != "swing"
            ]
            (own if own else shared).extend(alone)
        return Stand(tuple(shared), tuple(own))

    @property
    def encounters(self) -> "tuple[Relation, ...]":
        """Each relation of copies that no symmetry makes like another one. ValueError: too many."""
        from reviewer.parts.relations import relations_of  # which knows what a meeting is

        return relations_of(self)


def _moves_all(move: Move) -> bool:
    """Whether a move takes all of several like parts together."""
    return move.way == "lift" or move.whole


def _goes_on(motions: tuple[Motion, ...], index: int) -> bool:
    """Whether the copies of a part are told apart: it is the last, or carries as many on it."""
    last = index == len(motions) - 1
    return last or motions[index + 1].count == motions[index].count


def _step(move: Move, course: Course) -> Step:
    if move.way == "lift":
        return Lift(course)
    if move.way == "slide":
        return Slide(course, move.azimuth)
    return Turn(course, *move.place)


class Closest(NamedTuple):
    """Where two parts come nearest: which copies, how near, and a path through that place."""

    copies: tuple[int, int]
    encounter: Encounter
    least: Least
    paths: tuple[Path, ...]


@lru_cache(maxsize=KEPT)
def closest(meeting: Meeting) -> Closest | None:
    """The relation with the least clearance of all; None where nothing moves.

    Where a search gave up, ValueError: no clearance is told that is not sure.
    """
    found: Closest | None = None
    for copies, encounter in meeting.encounters:
        beyond = found.least.clearance if found else float("inf")
        least = least_clearance(encounter, beyond=beyond)
        if not least.settled:
            raise ValueError("the search for the least clearance gave up")
        if found is None or least.clearance < found.least.clearance:
            used = {course.travel for course in courses_of(encounter.chain)}
            paths = tuple(Path(travel, least.at) for travel in sorted(used))
            found = Closest(copies, encounter, least, paths)
    return found


@lru_cache(maxsize=KEPT)
def resting(meeting: Meeting) -> Closest | None:
    """Where the middle of what slides on the first part comes nearest to that part's edge.

    None where the second does not slide on the first. ValueError where the search gave up.
    """
    if not (meeting.rests and meeting.slides_along) or len(meeting.other.bodies) != 1:
        return None
    if all(move.way == "turn" for move in meeting.other.motions[-1].moves):
        return None
    one, other = meeting.stand(meeting.one, 0), meeting.stand(meeting.other, 0)
    alone = meeting.one.count == meeting.other.count
    hull = _hull(meeting.one, alone=alone)
    shared = one.chain if alone else one.shared
    x, y = middle_of(meeting.other.bodies[0])
    point = Mover(edges_of(Disc(NO_SIZE)), (*other.chain, Fixed(x, y)))
    encounter = meet(Mover(edges_of(hull, inverse=True), shared), point, len(meeting.masters))
    least = least_clearance(encounter)
    if not least.settled:
        raise ValueError("the search for the least clearance gave up")
    used = {course.travel for course in courses_of(encounter.chain)}
    paths = tuple(Path(travel, least.at) for travel in sorted(used))
    return Closest((0, 0), encounter, least, paths) if paths else None


def _hull(side: Side, *, alone: bool) -> Polygon:
    """The convex hull of a part in its own frame: of one copy, or of all of them."""
    from shapely import union_all

    bodies = [replace(body, count=1 if alone else side.count) for body in side.bodies]
    hull = union_all([footprint(body, CHORD) for body in bodies]).convex_hull
    return Polygon(tuple((float(x), float(y)) for x, y in hull.exterior.coords[:-1]))
