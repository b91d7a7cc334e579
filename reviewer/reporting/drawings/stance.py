"""Where a part and its copies stand in one configuration, moved by the travels that drive them."""

from cmath import exp, phase, pi
from dataclasses import replace
from typing import Any, NamedTuple

import numpy as np

from reviewer.deriving.derived import Derived
from reviewer.geometry.outline import Body, Polygon, Rectangle, corners
from reviewer.parts.figures import Place, lifted

MOTION, LEAD = "motion", "lead"


class Pose(NamedTuple):
    """A place in the part's own frame, turned by `turned`, set at `at` in plan [m], and raised."""

    turned: complex
    at: complex
    raised: float

    def place(self, place: Place) -> Place:
        """Where a place of the part is in the design."""
        there = self.turned * complex(*place[:2]) + self.at
        return (there.real, there.imag, place[2] + self.raised)

    def body(self, body: Body) -> Body:
        """A body of the part, one copy of it, where it is in the design."""
        there = self.turned * complex(body.x, body.y) + self.at
        azimuth = body.azimuth + phase(self.turned)
        moved = replace(body, x=there.real, y=there.imag, azimuth=azimuth, count=1)
        return lifted(moved, self.raised)


class Stance(NamedTuple):
    """Poses of a part: as a whole, of each of its copies, and of what stays with its carrier.

    `swung` is how far it has swung about a level axis [rad], which stands `axis` out and up from
    the place of the part [m].
    """

    whole: Pose
    each: tuple[Pose, ...]
    stays: Pose
    swung: float = 0.0
    axis: tuple[float, float] = (0.0, 0.0)

    def bodies(self, body: Body, *, stays: bool) -> list[Body]:
        """Every copy of a body where it stands."""
        swung = self._swung(body)
        if body.count == len(self.each) and not stays:
            return [pose.body(swung) for pose in self.each]
        pose = self.stays if stays else self.whole
        turns = [exp(2j * pi * number / body.count) for number in range(body.count)]
        return [Pose(pose.turned * turn, pose.at, pose.raised).body(swung) for turn in turns]

    def _swung(self, body: Body) -> Body:
        """A body turned in its upright plane; what lies flat is first seen from its side."""
        if not self.swung:
            return body
        if not body.standing:
            if not isinstance(body.outline, Rectangle):
                return body  # how it looks from its side is not told by its outline
            body = _on_its_side(body)
        axis = complex(*self.axis)
        turn = exp(1j * self.swung)
        moved = (turn * (complex(*corner) - axis) + axis for corner in corners(body.outline))
        return replace(body, outline=Polygon(tuple((each.real, each.imag) for each in moved)))


def _on_its_side(body: Body) -> Body:
    """A flat rectangle as the same body drawn from its side."""
    assert isinstance(body.outline, Rectangle)
    half, side = body.outline.length / 2, body.outline.width / 2
    outline = Polygon(
        ((-half, body.bottom), (half, body.bottom), (half, body.top), (-half, body.top))
    )
    return replace(body, outline=outline, bottom=-side, top=side, standing=True)


def stance_of(derived: Derived, part: str, case: int, place: Place) -> Stance:
    """Where a part stands: at its place, and from there as far as its travels have taken it."""
    x, y, level = place
    still = Pose(1 + 0j, complex(x, y), level)
    count = _at(derived, part, "count", case) or 1
    turns = [exp(2j * pi * number / count) for number in range(count)]
    each = tuple(Pose(turn, still.at, level) for turn in turns)
    moved = _moved(derived, part, case, level) if _moves(derived, part) else None
    return moved or Stance(still, each, still)


def _at(derived: Derived, part: str, path: str, case: int) -> Any:
    slot = derived.values.plan.slot(part, path)
    return None if slot is None else derived.values.at(slot, case)


def _path(derived: Derived, part: str) -> list[str]:
    """The parts from the ground to one, by the first of what carries each."""
    found = [part]
    while carriers := derived.design.parts[found[0]].carried_by:
        found.insert(0, carriers[0])
    return found


def _moves(derived: Derived, part: str) -> bool:
    """Whether anything moves the part, or what carries it."""
    parts = (derived.design.parts[name] for name in _path(derived, part))
    return any(path.startswith("moves.") for each in parts for path in each.given)


def _moved(derived: Derived, part: str, case: int, level: float) -> Stance | None:
    """Its poses where the travels stand; None where a number of its motion is unknown."""
    from reviewer.geometry.chain import poses
    from reviewer.parts.meeting import Meeting, Side

    made = [_at(derived, name, MOTION, case) for name in _path(derived, part)]
    motions = [found for each in made if each is not None and (found := each.at(0, case))]
    if len(motions) < len(made):
        return None
    leads = tuple(
        (name, lead.at(0, case))
        for name in sorted(derived.design.parts)
        if (lead := _at(derived, name, LEAD, case)) is not None
    )
    level_moves = tuple(
        replace(each, moves=tuple(move for move in each.moves if move.way != "swing"))
        for each in motions
    )
    stays = (*level_moves[:-1], replace(level_moves[-1], moves=()))
    sides = [Side(part, (), motions) for motions in (level_moves, stays)]
    meeting = Meeting(sides[0], sides[0], leads)
    positions = np.array([[_at(derived, name, "now", case) for name in meeting.masters]])
    if np.isnan(positions).any():
        return None

    def pose(chain: Any) -> Pose:
        found = poses(chain, positions)
        return Pose(complex(found.e[0]), complex(found.c[0]), float(found.lifted[0]) + level)

    stands = [meeting.stand(sides[0], copy) for copy in range(sides[0].count)]
    each = tuple(pose(stand.chain) for stand in stands)
    swung = _at(derived, part, "moves.swing.now", case) or 0.0
    swings = [move for move in motions[-1].moves if move.way == "swing"]
    axis = (swings[0].place[0], swings[0].place[1] - level) if swings else (0.0, 0.0)
    own = pose(meeting.stand(sides[1], 0).shared)
    return Stance(pose(stands[0].shared), each, own, swung, axis)
