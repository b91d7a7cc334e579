"""Courses of travels, motions of parts, and how far each has moved in every configuration."""

from collections.abc import Callable, Mapping, Sequence
from math import nan
from typing import Any

import numpy as np

from reviewer.deriving.moving import moves_on, named, path_to
from reviewer.deriving.tree import Built, Needs, Tree
from reviewer.parts.courses import Lead, lead_of, position_now
from reviewer.parts.lazily import Lazily, picked_of, shape_of
from reviewer.parts.motion import Motion, argument, motion_of, place_of
from reviewer.parts.move_rows import GIVEN, MOVES, WAYS
from reviewer.parts.travel import TRAVEL
from reviewer.reading.design import Part

COURSE = {"start": "from", "end": "to", "profile": "profile?"}


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row of a travel or of what it moves."""
    if path.startswith(MOVES):
        _, way, what = path.split(".")
        return amount(owner, way) if what == "now" else range_of(way, what)
    makers: dict[str, Callable[[Part, Tree], Built]] = {
        "lead": lead,
        "now": now,
        "motion": motion,
        "slid": slid,
        "lifted": lifted,
        "moved.x": lambda owner, tree: moved(owner, tree, "x"),
        "moved.y": lambda owner, tree: moved(owner, tree, "y"),
        "reach": lambda owner, tree: of_move(owner, "reach"),
        "wanted": lambda owner, tree: of_move(owner, "wanted?"),
        "beyond": lambda owner, tree: of_move(owner, "beyond"),
    }
    return makers[path](owner, tree)


def lead(owner: Part, tree: Tree) -> Built:
    """The course of a travel over the one that leads it in the end."""
    turns = turns_of(owner, tree)
    follows = named(owner, "follows")
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
    later = {named(part, "after"): name for name, part in sorted(travels.items())}
    first = owner.name
    while (before := named(travels[first], "after")) is not None:
        first = before
    found = [first]
    while found[-1] in later:
        found.append(later[found[-1]])
    return tuple(found)


def now(owner: Part, tree: Tree) -> Built:
    """Where a travel stands in each configuration."""
    follows = named(owner, "follows")
    needs: Needs = {"position": "position", "leader": "?", **COURSE}
    needs["leader"] = (follows, "now") if follows is not None else (owner.name, "none?")
    return position_now, needs


def motion(owner: Part, tree: Tree) -> Built:
    """How a part stands and moves on what carries it."""
    needs: Needs = {argument(row.path): f"{row.path}?" for row in GIVEN if row.path != "touches"}
    needs |= {"x": "at.x", "y": "at.y", "count": "count"}
    if "from" in owner.kind.by_path:
        needs["first"] = "from"

    def motion(**measures: Any) -> Lazily:
        return Lazily(motion_of, {"first": 0.0, **measures})

    return motion, needs


def amount(owner: Part, way: str) -> Built:
    """How far a part has moved in each configuration; nothing where it does not move so."""
    by = named(owner, f"{MOVES}{way}.by")
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


def range_of(way: str, what: str) -> Built:
    """How far a part moves over the whole travel, or would go on beyond its stops."""

    def told(motion: Lazily) -> Any:
        samples, cases = motion.shape()
        found = np.full((samples, cases), nan)
        for at in np.ndindex(samples, cases):
            move = _move(motion.at(*at), way)
            found[at] = nan if move is None else getattr(move, what)
        return found

    return told, {"motion": "motion"}


def of_move(owner: Part, what: str) -> Built:
    """What a part says of one of its moves, which the move's own rules ask for."""
    way = owner.name.rpartition("_")[2]
    return (lambda value: value), {"value": (owner.of[0], f"{MOVES}{way}.{what}")}


def slid(owner: Part, tree: Tree) -> Built:
    """How far a travel has slid a part."""
    if named(owner, f"{MOVES}slide.by") is None:
        return (lambda: 0.0), {}
    return (lambda now: now), {"now": f"{MOVES}slide.now"}


def lifted(owner: Part, tree: Tree) -> Built:
    """How far travels have lifted a part with all that carries it."""
    if not moves_on(owner.name, tree):
        return (lambda: 0.0), {}
    needs: Needs = {"own": f"{MOVES}lift.now"}
    if owner.carried_by:
        needs["below"] = (owner.carried_by[0], "lifted")
    return (lambda own, below=0.0: own + below), needs


def moved(owner: Part, tree: Tree, axis: str) -> Built:
    """How much further than its own position a part stands from what carries it, in plan."""
    if not moves_on(owner.name, tree):
        return (lambda: 0.0), {}
    path = path_to(owner.name, tree)
    needs: Needs = {f"motion_{name}": (name, "motion") for name in path}
    by = {named(tree.design.parts[name], f"{MOVES}{way}.by") for name in path for way in WAYS}
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


def _move(motion: Motion | None, way: str) -> Any:
    moves = motion.moves if motion is not None else ()
    return next((move for move in moves if move.way == way), None)
