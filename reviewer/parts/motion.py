"""How a part stands and moves on what carries it, made from the values of its rows."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import cos, pi, sin
from typing import Any

import numpy as np

from reviewer.geometry.course import Course, Crank, StraightSlot, Table
from reviewer.parts.courses import Lead
from reviewer.parts.move_rows import MOVES, WAYS


@dataclass(frozen=True)
class Move:
    """One way in which a part moves: by which travel, and how far at each place of it.

    `table` gives the amount over the travel, or what its law is led by. `place` is the pivot of a
    turn or of a swing [m], `azimuth` the direction of a slide [rad]. A `whole` turn takes all of
    several like parts round together.
    """

    way: str
    by: str
    table: Table
    law: Crank | StraightSlot | None = None
    place: tuple[float, float] = (0.0, 0.0)
    azimuth: float = 0.0
    whole: bool = False
    beyond: float = 0.0  # how far it is driven on beyond a stop

    def course(self, leads: Mapping[str, Lead], masters: tuple[str, ...]) -> Course:
        """Its course over the travels that lead in the end."""
        lead = leads[self.by]
        return Course(masters.index(lead.master), self.table.after(lead.table), self.law)

    def amount(self, travel: Any) -> Any:
        """How far it has moved where its travel stands [m or rad]."""
        lead = self.table.at(travel)
        return lead if self.law is None else self.law.at(lead)

    @property
    def reach(self) -> float:
        """From the least to the greatest amount: at a break or an end, or where a law turns."""
        places = [place for place, _ in self.table.points] + [0.0, 1.0]
        leads = self.table.at(np.clip(np.array(places), 0.0, 1.0))
        if self.law is None:
            return float(np.ptp(leads))
        dead = [
            angle
            for angle in self.law.turning_points
            if float(leads.min()) < angle < float(leads.max())
        ]
        return float(np.ptp(self.law.at(np.concatenate([leads, dead]))))


@dataclass(frozen=True)
class Motion:
    """Where a part stands on its carrier [m], how many there are, and how it moves, outer first."""

    x: float
    y: float
    count: int
    moves: tuple[Move, ...]


def motion_of(x: float, y: float, count: int, first: float, **given: Any) -> Motion:
    """The motion of a part from what its rows give; names of arguments are paths with _ for `.`."""
    moves = []
    for way in ("lift", "turn", "slide", "swing"):
        own = {
            name.removeprefix(f"{way}_"): value
            for name, value in given.items()
            if name.startswith(f"{way}_") and value is not None
        }
        if "by" in own:
            moves.append(_move(way, own, first))
    return Motion(x, y, count, tuple(moves))


def _move(way: str, own: Mapping[str, Any], first: float) -> Move:
    table, law = _table(way, own)
    by, beyond = own["by"], 0.0
    if law is None and ("least" in own or "most" in own):
        low, high = own.get("least", -1e3), own.get("most", 1e3)
        amounts = [amount for _, amount in table.points]
        beyond = max(0.0, low - min(amounts), max(amounts) - high)
        table = Table(((low, low), (high, high))).after(table)
    if way == "turn":
        place = (own.get("about_x", 0.0), own.get("about_y", 0.0))
        whole = "about_x" not in own and "about_y" not in own
        return Move(way, by, table, law, place, whole=whole, beyond=beyond)
    if way == "swing":
        pivot = (own.get("about_out", 0.0), own.get("about_height", 0.0))
        return Move(way, by, table, law, pivot, beyond=beyond)
    azimuth = first + own.get("azimuth", 0.0)
    if way == "slide" and "radius" in own:
        radius = own["radius"]  # along an arc: a turn about its middle, to the left
        left = azimuth + pi / 2
        place = (radius * float(np.cos(left)), radius * float(np.sin(left)))
        arc = Table(tuple((at, amount / radius) for at, amount in table.points))
        return Move("turn", by, arc, None, place, beyond=beyond)
    return Move(way, by, table, law, azimuth=azimuth, beyond=beyond)


def _table(way: str, own: Mapping[str, Any]) -> tuple[Table, Crank | StraightSlot | None]:
    """The amounts of a move over its travel, and the law behind them."""
    if "profile" in own:
        return Table(own["profile"]), None
    if "ramp" in own:
        points = own["ramp"]
        start, run = points[0][0], points[-1][0] - points[0][0]
        return Table(tuple(((at - start) / run, rise - points[0][1]) for at, rise in points)), None
    if "slot_turn" in own:
        law = StraightSlot(own["slot_inner"], own["slot_outer"], own["slot_turn"])
        return Table(((0.0, 0.0), (1.0, own["slot_turn"]))), law
    if "crank_turn" in own:
        start = own.get("crank_from", 0.0)
        turned = Table(((0.0, start), (1.0, start + own["crank_turn"])))
        return turned, Crank(own["crank_radius"], start)
    return Table(((0.0, 0.0), (1.0, own[WAYS[way].amount]))), None


def place_of(motions: Sequence[Motion], now: Mapping[str, float]) -> complex:
    """Where the origin of the last of some parts stands in plan, each carried by the one before.

    `now` tells where each travel stands. What each of several like parts does by itself leaves
    their common origin in place.
    """
    e, c = 1.0 + 0.0j, 0.0 + 0.0j
    for motion in motions:
        c += e * complex(motion.x, motion.y)
        for move in motion.moves:
            alone = motion.count > 1 and not move.whole
            if move.way in ("lift", "swing") or alone:
                continue
            amount = float(move.amount(now[move.by]))
            if move.way == "slide":
                c += e * amount * complex(cos(move.azimuth), sin(move.azimuth))
            else:
                turned, pivot = complex(cos(amount), sin(amount)), complex(*move.place)
                c, e = c + e * (pivot - turned * pivot), e * turned
    return c


def argument(path: str) -> str:
    """moves.slide.slot.inner as the name of an argument."""
    return path.removeprefix(MOVES).replace(".", "_")
