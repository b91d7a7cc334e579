"""What stands over a bolt when it goes in, or before a roller that is to come out."""

from collections.abc import Callable, Iterable, Mapping
from collections.abc import Set as AbstractSet
from typing import Any

import numpy as np

from reviewer.deriving.tree import Built, Needs, Tree
from reviewer.parts.assembling import IN_THE_WAY, NAMED, TAKEN_OFF
from reviewer.parts.replacing import GROUPS, behind
from reviewer.reading.design import Part

BEHIND = {behind(group): group for group in GROUPS}
PATHS = frozenset(
    f"{path}{end}" for path in (IN_THE_WAY, TAKEN_OFF, *BEHIND) for end in ("", NAMED)
)
OUTER = "rim.radius"
# The row that has a flat part's hole, the first that its kind has, and what makes it a radius.
INNER = (("opening", 0.5), ("plate.opening", 0.5), ("inner", 1.0))
SHEET, RING = "blank.length", "glued_ring"  # what is cut from a sheet covers what is below it
ABOVE, BELOW = "above", "below"


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and needs of a row that counts, or names, what stands in the way."""
    stem = path.removesuffix(NAMED)
    group = BEHIND.get(stem)
    side, circle = (
        (f"{group}.taken_out", f"{group}.circle") if group else ("bolts.from", "bolts.circle")
    )
    if side not in owner.given:
        return _unsaid, {}
    if group:
        others = _at_rollers(owner, tree, group)
    else:
        others = _at_bolts(owner, tree, joined_only=stem == IN_THE_WAY)
    standing = _flat(others.get(str(owner.given[side].value), ()), tree)
    beside = () if group else _flat(_beside(owner, tree, stem == IN_THE_WAY, side), tree)
    needs: Needs = {"circle": circle, "own": "level?"}
    for index, part in enumerate((*standing, *beside)):
        needs[f"outer_{index}"] = (part.name, f"{OUTER}?")
        if (row := _hole_of(part)[0]) is not None:
            needs[f"inner_{index}"] = (part.name, f"{row}?")
        if part in beside:
            needs[f"level_{index}"] = (part.name, "level?")
    return _covering((*standing, *beside), named=path.endswith(NAMED)), needs


def _unsaid() -> None:
    """Nothing is said of the side."""


def _covering(standing: tuple[Part, ...], *, named: bool) -> Callable[..., Any]:
    def covering(circle: Any, own: Any, **edges: Any) -> Any:
        """How many of the parts on that side reach over the circle, by their edges in plan.

        Geometry. Of parts that stand beside it, those whose underside is above its own.
        """
        covers = _covers(standing, circle, own, edges)
        if named:
            return ", ".join(name for name, there in covers.items() if np.any(there)) or "nothing"
        total = 0.0 * circle
        for there in covers.values():
            total = total + np.where(there, 1.0, 0.0)
        return total

    return covering


def _hole_of(part: Part) -> tuple[str | None, float]:
    found = ((row, factor) for row, factor in INNER if row in part.kind.by_path)
    return next(found, (None, 0.0))


def _covers(
    standing: Iterable[Part], circle: Any, own: Any, edges: Mapping[str, Any]
) -> dict[str, Any]:
    """Whether each part reaches over the circle, by its name; one of unknown size is left out."""
    found = {}
    for index, part in enumerate(standing):
        outer, inner = edges.get(f"outer_{index}"), edges.get(f"inner_{index}")
        if outer is not None:
            hole = 0.0 if inner is None else inner * _hole_of(part)[1]
            found[part.name] = (outer > circle / 2) & (hole < circle / 2)
            if f"level_{index}" in edges:
                level = edges[f"level_{index}"]
                above = False if level is None or own is None else level > own
                found[part.name] = found[part.name] & above
    return found


def _at_bolts(owner: Part, tree: Tree, *, joined_only: bool) -> dict[str, list[str]]:
    """What could stand over a part's bolts: the parts on it, and those below what it is bolted to.

    With `joined_only` as far as they are joined at that step, else once all are.
    """
    order = tree.steps
    joined = set(order[: order.index(owner.name)] if joined_only else order)
    return {ABOVE: standing_on(owner.name, tree, joined), BELOW: _downward(owner, tree, joined)}


def _beside(owner: Part, tree: Tree, joined_only: bool, side: str) -> list[str]:
    """What else stands on a part's carriers, and so may reach over its bolts from above."""
    if str(owner.given[side].value) != ABOVE:
        return []
    order = tree.steps
    joined = set(order[: order.index(owner.name)] if joined_only else order)
    own = {owner.name, *standing_on(owner.name, tree, set(order))}
    found = (each for below in owner.carried_by for each in standing_on(below, tree, joined - own))
    return list(dict.fromkeys(found))


def _at_rollers(owner: Part, tree: Tree, group: str) -> dict[str, list[str]]:
    """What stands before rollers once all is joined; its plate is over those that carry."""
    everything = set(tree.steps)
    above = standing_on(owner.name, tree, everything)
    below = [*owner.carried_by, *_downward(owner, tree, everything)]
    if group == "carry":
        return {ABOVE: [owner.name, *above], BELOW: below}
    return {ABOVE: above, BELOW: [owner.name, *below]}


def standing_on(name: str, tree: Tree, joined: AbstractSet[str]) -> list[str]:
    """The parts that a part carries, directly or through others, as far as they are joined."""
    found, waiting = dict[str, None](), [name]
    while waiting:
        for child in tree.carried.get(waiting.pop(), ()):
            if child in joined and child not in found:
                found[child] = None
                waiting.append(child)
    return list(found)


def _downward(owner: Part, tree: Tree, joined: set[str]) -> list[str]:
    """What carries a part's carriers, and so on, as far as these are joined to it."""
    found, waiting = dict[str, None](), list(owner.carried_by)
    while waiting:
        name = waiting.pop()
        for below in tree.design.parts[name].carried_by if name in joined else ():
            if below not in found:
                found[below] = None
                waiting.append(below)
    return list(found)


def _flat(names: Iterable[str], tree: Tree) -> tuple[Part, ...]:
    """Those that cover what is below or above them: sheets and rings; bars leave room beside."""
    parts = (tree.design.parts[name] for name in names)
    return tuple(each for each in parts if SHEET in each.kind.by_path or each.kind.name == RING)
