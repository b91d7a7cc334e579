"""Pairs of parts that move against each other: what each of them is made of."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from math import nan
from typing import Any

from reviewer.deriving.moving import named, path_to
from reviewer.deriving.tree import Built, Needs, Tree
from reviewer.parts.lazily import Lazily, shape_of
from reviewer.parts.meeting import Meeting, Side
from reviewer.parts.moving_pair import MOVING_PAIR
from reviewer.parts.travel import TRAVEL
from reviewer.reading.design import Part


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row of a pair, or of what is told of all of them."""
    makers: dict[str, Callable[[Part, Tree], Built]] = {
        "meeting": meeting,
        "touches": touches,
        "known": known,
        "unseen": unseen,
        "room.swept": room,
    }
    return makers[path](owner, tree)


def room(owner: Part, tree: Tree) -> Built:
    """What the part that passes through an opening keeps clear of it, over the whole travel."""
    on, passing = named(owner, "on"), named(owner, "passes.part")
    for name, part in sorted(tree.design.parts.items()):
        if part.kind is MOVING_PAIR and {on, passing} == set(part.of):
            return (lambda room: room), {"room": (name, "clearance")}
    return (lambda: nan), {}


def _openings(owner: Part, tree: Tree) -> tuple[list[str], str]:
    """The openings in one of two parts through which the other passes, and which one has them."""
    found, plate = [], ""
    for name, part in sorted(tree.design.parts.items()):
        on, passing = named(part, "on"), named(part, "passes.part")
        if part.kind.name == "opening" and on and passing and {on, passing} == set(owner.of):
            found.append(name)
            plate = on
    return found, plate


def known(owner: Part, tree: Tree) -> Built:
    """Whether both parts of a pair have a shape."""
    needs: Needs = {f"body_{name}": (name, "body?") for name in owner.of}
    return (lambda **bodies: all(_has_shape(each) for each in bodies.values())), needs


def _has_shape(bodies: Any) -> bool:
    return bodies is not None and bodies.all() != ()


def unseen(owner: Part, tree: Tree) -> Built:
    """The parts that cannot be compared, told once: of the first travel that leads itself."""
    travels = sorted(name for name, part in tree.design.parts.items() if part.kind is TRAVEL)
    first = next(name for name in travels if not named(tree.design.parts[name], "follows"))
    if owner.name != first:
        return (lambda: ""), {}
    pairs = [part for part in tree.design.parts.values() if part.kind is MOVING_PAIR]
    names = sorted({name for pair in pairs for name in pair.of})
    needs: Needs = {f"body_{name}": (name, "body?") for name in names}

    def unseen(**bodies: Any) -> str:
        missing = [name for name in names if not _has_shape(bodies[f"body_{name}"])]
        return ", ".join(missing)

    return unseen, needs


def touches(owner: Part, tree: Tree) -> Built:
    """Whether two parts are meant to touch: one carries the other, or says so."""
    one, other = (tree.design.parts[name] for name in owner.of)
    told = {*_several(one, "touches"), *one.carried_by}
    back = {*_several(other, "touches"), *other.carried_by}
    touch = other.name in told or one.name in back
    return (lambda: touch), {}


def _several(owner: Part, path: str) -> Iterable[str]:
    given = owner.given.get(path)
    return () if given is None else given.value


def meeting(owner: Part, tree: Tree) -> Built:
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
