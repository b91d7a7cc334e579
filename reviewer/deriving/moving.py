"""What only the tree of parts can give of motion: courses of travels, motions, meetings."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import nan
from typing import Any

import numpy as np

from reviewer.deriving.tree import Built, Needs, Tree
from reviewer.parts.lazily import Lazily, picked_of, shape_of
from reviewer.parts.meeting import Meeting, Side
from reviewer.parts.motion import Motion, argument, motion_of, place_of
from reviewer.parts.move_rows import GIVEN, MOVES, WAYS
from reviewer.parts.moving_pair import MOVING_PAIR
from reviewer.parts.travel import TRAVEL, Lead, lead_of, position_now
from reviewer.reading.design import Part

MAKES = (
    *("lead", "now", "motion", "meeting", "touches", "known", "slid", "lifted"),
    *("moved.x", "moved.y", "room.swept", "unseen", "reach", "wanted", "beyond"),
)
COURSE = {"start": "from", "end": "to", "profile": "profile?"}


def makes(path: str) -> bool:
    """Whether a built row is one of motion."""
    return path in MAKES or path.startswith(MOVES)


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row of motion."""
    if path.startswith(MOVES):
        _, way, what = path.split(".")
        return _amount(owner, way) if what == "now" else _range(way, what)
    makers: dict[str, Callable[[Part, Tree], Built]] = {
        "lead": _lead,
        "now": _now,
        "motion": _motion,
        "meeting": _meeting,
        "touches": _touches,
        "known": _known,
        "unseen": _unseen,
        "room.swept": _room,
        "reach": lambda owner, tree: _of_move(owner, "reach"),
        "wanted": lambda owner, tree: _of_move(owner, "wanted?"),
        "beyond": lambda owner, tree: _of_move(owner, "beyond"),
        "slid": _slid,
        "lifted": _lifted,
        "moved.x": lambda owner, tree: _moved(owner, tree, "x"),
        "moved.y": lambda owner, tree: _moved(owner, tree, "y"),
    }
    return makers[path](owner, tree)


def _named(owner: Part, path: str) -> str | None:
    given = owner.given.get(path)
    return None if given is None else str(given.value)


def _lead(owner: Part, tree: Tree) -> Built:
    """The course of a travel over the one that leads it in the end."""
    turns = turns_of(owner, tree)
    follows = _named(owner, "follows")
    needs: Needs = dict(COURSE)
    if follows is not None:
        needs["leader"] = (follows, "lead")
    before, of, master = turns.index(owner.name), len(turns), turns[0]

    def make(start: float, end: float, profile: Any = None, leader: Lead | None = None) -> Lead:
        return lead_of(master, leader, start, end, profile, before, of)

    return (lambda **measures: Lazily(make, measures)), needs


def turns_of(owner: Part, tree: Tree) -> tuple[str, ...]:
    """The travels that take turns with one, in order, itself among them: each after the last."""
    travels = {name: part for name, part in tree.design.parts.items() if part.kind is TRAVEL}
    later = {_named(part, "after"): name for name, part in sorted(travels.items())}
    first = owner.name
    while (before := _named(travels[first], "after")) is not None:
        first = before
    found = [first]
    while found[-1] in later:
        found.append(later[found[-1]])
    return tuple(found)


def _now(owner: Part, tree: Tree) -> Built:
    """Where a travel stands in each configuration."""
    follows = _named(owner, "follows")
    needs: Needs = {"position": "position", "leader": "?", **COURSE}
    needs["leader"] = (follows, "now") if follows is not None else (owner.name, "none?")
    return position_now, needs


def _motion(owner: Part, tree: Tree) -> Built:
    """How a part stands and moves on what carries it."""
    needs: Needs = {argument(row.path): f"{row.path}?" for row in GIVEN if row.path != "touches"}
    needs |= {"x": "at.x", "y": "at.y", "count": "count"}
    if "from" in owner.kind.by_path:
        needs["first"] = "from"

    def motion(**measures: Any) -> Lazily:
        return Lazily(motion_of, {"first": 0.0, **measures})

    return motion, needs


def _amount(owner: Part, way: str) -> Built:
    """How far a part has moved in each configuration; nothing where it does not move so."""
    by = _named(owner, f"{MOVES}{way}.by")
    if by is None:
        return (lambda: 0.0), {}

    def amount(motion: Lazily, now: Any) -> Any:
        samples, cases = shape_of((motion, now))
        found = np.full((samples, cases), nan)
        places = np.broadcast_to(now, (samples, cases))
        if motion.shape()[1] == 1:  # one course for all cases
            for sample in range(samples):
                move = _move(motion.at(sample), way)
                found[sample] = nan if move is None else move.amount(places[sample])
            return found
        for at in np.ndindex(samples, cases):
            move = _move(motion.at(*at), way)
            found[at] = nan if move is None else float(move.amount(places[at]))
        return found

    return amount, {"motion": "motion", "now": (by, "now")}


def _range(way: str, what: str) -> Built:
    """How far a part moves over the whole travel, or would go on beyond its stops."""

    def told(motion: Lazily) -> Any:
        samples, cases = motion.shape()
        found = np.full((samples, cases), nan)
        for at in np.ndindex(samples, cases):
            move = _move(motion.at(*at), way)
            found[at] = nan if move is None else getattr(move, what)
        return found

    return told, {"motion": "motion"}


def _of_move(owner: Part, what: str) -> Built:
    """What a part says of one of its moves, which the move's own rules ask for."""
    way = owner.name.rpartition("_")[2]
    return (lambda value: value), {"value": (owner.of[0], f"{MOVES}{way}.{what}")}


def _slid(owner: Part, tree: Tree) -> Built:
    """How far a travel has slid a part."""
    if _named(owner, f"{MOVES}slide.by") is None:
        return (lambda: 0.0), {}
    return (lambda now: now), {"now": f"{MOVES}slide.now"}


def _lifted(owner: Part, tree: Tree) -> Built:
    """How far travels have lifted a part with all that carries it."""
    if not _moves_on(owner.name, tree):
        return (lambda: 0.0), {}
    needs: Needs = {"own": f"{MOVES}lift.now"}
    if owner.carried_by:
        needs["below"] = (owner.carried_by[0], "lifted")
    return (lambda own, below=0.0: own + below), needs


def _moved(owner: Part, tree: Tree, axis: str) -> Built:
    """How much further than its own position a part stands from what carries it, in plan."""
    if not _moves_on(owner.name, tree):
        return (lambda: 0.0), {}
    path = path_to(owner.name, tree)
    needs: Needs = {f"motion_{name}": (name, "motion") for name in path}
    by = {_named(tree.design.parts[name], f"{MOVES}{way}.by") for name in path for way in WAYS}
    needs |= {f"now_{name}": (name, "now") for name in sorted(each for each in by if each)}

    leads, part = sorted(each for each in by if each), "real" if axis == "x" else "imag"

    def moved(**values: Any) -> Any:
        """What is asked for in each case; once for cases in which all travels stand alike."""
        samples, cases = shape_of(values.values())
        alike = shape_of(values[f"motion_{name}"] for name in path)[1] == 1
        found, known = np.full((samples, cases), nan), dict[Any, float]()
        for sample, case in np.ndindex(samples, cases):
            now = {name: picked_of(values[f"now_{name}"], sample, case) for name in leads}
            key = (sample, 0 if alike else case, *now.values())
            if key not in known:
                motions = [values[f"motion_{name}"].at(sample, case) for name in path]
                known[key] = getattr(_shift(motions, now), part) if all(motions) else nan
            found[sample, case] = known[key]
        return found

    return moved, needs


def _shift(motions: Sequence[Motion], now: Mapping[str, float]) -> complex:
    """How much further the last part stands from the one before than where it is put."""
    whole = place_of(motions, now) - place_of(motions[:-1], now)
    return whole - complex(motions[-1].x, motions[-1].y)


def _moves_on(name: str, tree: Tree) -> bool:
    """Whether a part, or anything that carries it, moves."""
    parts = (tree.design.parts[each] for each in path_to(name, tree))
    return any(_named(part, f"{MOVES}{way}.by") for part in parts for way in WAYS)


def _move(motion: Motion | None, way: str) -> Any:
    moves = motion.moves if motion is not None else ()
    return next((move for move in moves if move.way == way), None)


def _room(owner: Part, tree: Tree) -> Built:
    """What the part that passes through an opening keeps clear of it, over the whole travel."""
    on, passing = _named(owner, "on"), _named(owner, "passes.part")
    for name, part in sorted(tree.design.parts.items()):
        if part.kind is MOVING_PAIR and {on, passing} == set(part.of):
            return (lambda room: room), {"room": (name, "clearance")}
    return (lambda: nan), {}


def _openings(owner: Part, tree: Tree) -> tuple[list[str], str]:
    """The openings in one of two parts through which the other passes, and which one has them."""
    found, plate = [], ""
    for name, part in sorted(tree.design.parts.items()):
        on, passing = _named(part, "on"), _named(part, "passes.part")
        if part.kind.name == "opening" and on and passing and {on, passing} == set(owner.of):
            found.append(name)
            plate = on
    return found, plate


def _known(owner: Part, tree: Tree) -> Built:
    """Whether both parts of a pair have a shape."""
    needs: Needs = {f"body_{name}": (name, "body?") for name in owner.of}
    return (lambda **bodies: all(_has_shape(each) for each in bodies.values())), needs


def _has_shape(bodies: Any) -> bool:
    return bodies is not None and bodies.all() != ()


def _unseen(owner: Part, tree: Tree) -> Built:
    """The parts that cannot be compared, told once: of the first travel that leads itself."""
    travels = sorted(name for name, part in tree.design.parts.items() if part.kind is TRAVEL)
    first = next(name for name in travels if not _named(tree.design.parts[name], "follows"))
    if owner.name != first:
        return (lambda: ""), {}
    pairs = [part for part in tree.design.parts.values() if part.kind is MOVING_PAIR]
    names = sorted({name for pair in pairs for name in pair.of})
    needs: Needs = {f"body_{name}": (name, "body?") for name in names}

    def unseen(**bodies: Any) -> str:
        missing = [name for name in names if not _has_shape(bodies[f"body_{name}"])]
        return ", ".join(missing)

    return unseen, needs


def _touches(owner: Part, tree: Tree) -> Built:
    """Whether two parts are meant to touch: one carries the other, or says so."""
    one, other = (tree.design.parts[name] for name in owner.of)
    told = {*_several(one, "touches"), *one.carried_by}
    back = {*_several(other, "touches"), *other.carried_by}
    touch = other.name in told or one.name in back
    return (lambda: touch), {}


def _several(owner: Part, path: str) -> Iterable[str]:
    given = owner.given.get(path)
    return () if given is None else given.value


def path_to(name: str, tree: Tree) -> tuple[str, ...]:
    """The parts from the ground to one, by the first of what carries each."""
    found = [name]
    while carriers := tree.design.parts[found[-1]].carried_by:
        found.append(carriers[0])
    return tuple(reversed(found))


def _meeting(owner: Part, tree: Tree) -> Built:
    """Two parts with all that carries and drives them."""
    one, other = owner.of
    paths = {name: path_to(name, tree) for name in owner.of}
    travels = sorted(name for name, part in tree.design.parts.items() if part.kind is TRAVEL)
    needs: Needs = {f"motion_{name}": (name, "motion") for name in {*paths[one], *paths[other]}}
    needs |= {f"body_{name}": (name, "body") for name in owner.of}
    needs |= {f"lead_{name}": (name, "lead") for name in travels}
    rides = one in paths[other]
    rests = one in tree.design.parts[other].carried_by
    openings, plate = _openings(owner, tree)
    needs |= {f"hole_{name}": (name, "hole") for name in openings}

    def make(**made: Any) -> Meeting | None:
        if any(each is None or each == () for each in made.values()):
            return None
        sides = [
            Side(name, made[f"body_{name}"], tuple(made[f"motion_{each}"] for each in paths[name]))
            for name in owner.of
        ]
        leads = tuple((name, made[f"lead_{name}"]) for name in travels)
        holes = tuple(hole for name in openings for hole in made[f"hole_{name}"])
        return Meeting(sides[0], sides[1], leads, rides, rests, plate if holes else "", holes)

    def meeting(**measures: Any) -> Lazily:
        shapes = [f"body_{name}" for name in owner.of] + [f"hole_{name}" for name in openings]
        bodies = {name: Whole(measures[name]) for name in shapes}
        return Lazily(make, {**measures, **bodies})

    return meeting, needs


@dataclass(frozen=True, slots=True, eq=False)
class Whole:
    """All bodies of a part, over samples and cases."""

    of: Any

    def shape(self) -> tuple[int, int]:
        """Over how many samples and cases they differ."""
        return shape_of((self.of,))

    def at(self, sample: int = 0, case: int = 0) -> Any:
        """The bodies of one sample in one case."""
        return () if self.of is None else self.of.all(sample, case)
