"""What a gap takes from the parts on its two sides: its height, how it goes, what closes it.

A gap is a part that a design gives, or the one between two parts that move against each other.
"""

from typing import Any

import numpy as np

from reviewer.deriving.tree import Built, Needs, Tree
from reviewer.parts.gap_course import swept
from reviewer.reading.design import Part

GAP, PAIR = "gap", "moving_pair"
CLOSES = "closes_with"
MAKES = ("level", "closing_force", "swept", "declared")


def makes(path: str, owner: Part) -> bool:
    """Whether a built row is one of a gap."""
    return path in MAKES and owner.kind.name in (GAP, PAIR)


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row of a gap that its sides give."""
    makers = {
        "level": _level,
        "closing_force": _closing_force,
        "swept": _swept,
        "declared": _declared,
    }
    return makers[path](owner, tree)


def _sides(owner: Part, tree: Tree) -> list[str]:
    """The parts on its two sides."""
    if owner.of:
        return list(owner.of)
    given = owner.given.get("between")
    named = () if given is None else given.value
    names = (named,) if isinstance(named, str) else tuple(named)
    return [name for name in names if name in tree.design.parts]


def _level(owner: Part, tree: Tree) -> Built:
    """The height of the higher of its sides: what can get between them comes from there."""
    needs: Needs = {f"of_{k}": (name, "level?") for k, name in enumerate(_sides(owner, tree))}

    def level(**levels: Any) -> Any:
        known = [each for each in levels.values() if each is not None]
        return np.nan if not known else np.maximum.reduce(np.broadcast_arrays(*known))

    return level, needs


def _swept(owner: Part, tree: Tree) -> Built:
    """How it goes over the travel, where its two sides move against each other."""
    sides = {*_sides(owner, tree)}
    pairs = (part for part in tree.design.parts.values() if part.kind.name == PAIR)
    pair = next((part.name for part in pairs if {*part.of} == sides), None)
    if pair is None:
        return (lambda: None), {}
    return swept, {"meeting": (pair, "meeting")}


def _declared(owner: Part, tree: Tree) -> Built:
    """Whether the design gives a gap between the two, which is then held against the rules."""
    gaps = (part for part in tree.design.parts.values() if part.kind.name == GAP)
    told = any({*_sides(gap, tree)} == {*owner.of} for gap in gaps)
    return (lambda: told), {}


def _closing_force(owner: Part, tree: Tree) -> Built:
    """What drives it: the part that is named, or the nearest one that drives one of its sides."""
    given = owner.given.get("driven_by")
    drives = [given.value] if given else _drives(owner, tree)
    needs: Needs = {f"of_{k}": (name, CLOSES) for k, name in enumerate(drives)}

    def closing_force(**forces: Any) -> Any:
        return np.nan if not forces else np.maximum.reduce(np.broadcast_arrays(*forces.values()))

    return closing_force, needs


def _drives(owner: Part, tree: Tree) -> list[str]:
    """The first part, from each side down to the ground, that closes with a force of its own."""
    found: list[str] = []
    for name in _sides(owner, tree):
        below = [name]
        while below:
            here = tree.design.parts.get(below.pop(0))
            if here is None:
                continue
            if CLOSES in here.kind.by_path:
                found.append(here.name)
                break
            below += here.carried_by
    return list(dict.fromkeys(found))
