"""Where loads come into a plate that turns: at one place, or alike all round.

A person who leans on a table presses on one arm; what lies on it presses on all of them. The first
bends the plate where that arm is fixed, the second bends it to a dish.
"""

from collections.abc import Iterator
from typing import Any, NamedTuple

import numpy as np

from reviewer.deriving.cases import Cases
from reviewer.deriving.placed_loads import goes_all_round
from reviewer.deriving.tree import Built, Needs, Tree, is_load
from reviewer.mechanics.placing import DIRECTIONS
from reviewer.parts.ring_plate import Entry
from reviewer.reading.design import Part

PATH = "plate.entry"
SEAT, ROOT, SUPPORT = "seat", "root.radius", "support.radius"


class Landing(NamedTuple):
    """A load or a part, and the arm through which it comes into the plate, if through one."""

    what: Part
    arm: str


def entry(owner: Part, tree: Tree) -> Built:
    """How loads enter the plate of a ring: single ones at one place, the weight on arms all round.

    Of single loads with an azimuth of their own, the one with the greatest moment enters at one
    place, and the others all round.
    """
    landings = {each.what.name: each for each in _landings(owner.name, tree)}.values()
    singles = [each for each in landings if _is_single(each.what)]
    alike = [each for each in landings if each.arm and not _is_single(each.what)]
    arms = sorted({each.arm for each in landings if each.arm})
    needs: Needs = {"plate": "plate.radius", "cases": "design.cases"}
    for arm in arms:
        for key, path in (("root", ROOT), ("seat", SEAT), ("support", SUPPORT)):
            needs[f"{key}_{arm}"] = (arm, path)
    for index, single in enumerate(singles):
        needs[f"force_{index}"] = (single.what.name, "force")
        needs[f"radius_{index}"] = (single.what.name, "radius")
    for index, (what, _) in enumerate(alike):
        needs.update(_needs_of(index, what))

    def entering(plate: Any, cases: Cases, **values: Any) -> Entry:
        points = _points(singles, plate, cases, values)
        rings = _rings(alike, cases, values)
        if not arms:
            return Entry(points, rings, 2 * plate / 3, plate, None)
        roots = [values[f"root_{arm}"] for arm in arms]
        outer = np.maximum.reduce(np.broadcast_arrays(*roots))
        seats = [values[f"seat_{arm}"] for arm in arms]
        inner = outer - np.maximum.reduce(np.broadcast_arrays(*seats))
        return Entry(points, rings, outer, outer, inner)

    return entering, needs


def _landings(name: str, tree: Tree) -> Iterator[Landing]:
    """All that comes down on a part, through arms or lying on it."""
    for child in tree.children(name):
        if SEAT in child.kind.by_path:
            above = {child.name} | tree.above(child.name)
            yield from (Landing(part, child.name) for part in tree.every if part.name in above)
        elif is_load(child):
            yield Landing(child, "")
        else:
            yield from _landings(child.name, tree)


def _is_single(part: Part) -> bool:
    """Whether it is a load that presses down at one place."""
    direction = part.given.get("direction")
    down = direction is None or DIRECTIONS[direction.value].down > 0
    return is_load(part) and "over" not in part.given and down


def _needs_of(index: int, what: Part) -> Needs:
    """Of weights and loads that come down on all arms alike: how much, and how far out."""
    if is_load(what):
        if "over" not in what.given:
            return {}
        return {
            f"spread_{index}": (what.name, "force"),
            f"at_{index}": (what.name, "radius"),
            f"count_{index}": (what.carried_by[0], "count?"),
        }
    return {
        f"weight_{index}": (what.name, "weight"),
        f"at_{index}": (what.name, "centre.radius"),
        f"count_{index}": (what.name, "count?"),
    }


def _points(
    singles: list[Landing], plate: Any, cases: Cases, values: dict[str, Any]
) -> tuple[tuple[Any, Any], ...]:
    """Radius and force of each single load where it enters, in the direction of the load."""
    forces = []
    for index, (load, _) in enumerate(singles):
        forces.append(values[f"force_{index}"] * cases.factors[load.name][None, :])
    _keep_greatest(singles, forces, values)
    found = []
    for index, (force, (_, arm)) in enumerate(zip(forces, singles, strict=True)):
        radius = values[f"radius_{index}"]
        if not arm:
            found.append((np.minimum(radius, plate), force))
            continue
        root, seat = values[f"root_{arm}"], values[f"seat_{arm}"]
        couple = force * (radius - root) / seat
        found += [(root, force + couple), (root - seat, -couple)]
    return tuple(found)


def _keep_greatest(singles: list[Landing], forces: list[Any], values: dict[str, Any]) -> None:
    """Of loads that stand at azimuths of their own, keep the one with the greatest moment."""
    fixed = [index for index, each in enumerate(singles) if not goes_all_round(each.what)]
    moments = [forces[index] * values[f"radius_{index}"] for index in fixed]
    if len(fixed) < 2:
        return
    greatest = np.argmax(np.stack(np.broadcast_arrays(*moments)), axis=0)
    for number, index in enumerate(fixed):
        forces[index] = np.where(greatest == number, forces[index], 0.0 * forces[index])


def _rings(
    alike: list[Landing], cases: Cases, values: dict[str, Any]
) -> tuple[tuple[Any, Any], ...]:
    """Couples of what lies on the arms alike: a pair of ring loads for each kind of arm."""
    couples: dict[str, Any] = {}
    for index, (what, arm) in enumerate(alike):
        if f"spread_{index}" in values:
            share = np.where(cases.on_half, 0.5, 1.0) * cases.factors[what.name]
            force = values[f"spread_{index}"] * share[None, :]
        elif f"weight_{index}" in values:
            force = values[f"weight_{index}"] * cases.own_weight[None, :]
        else:
            continue
        several = (values[f"count_{index}"] or 1) > 1 or what.name == arm
        radius = values[f"at_{index}"] if several else values[f"support_{arm}"]
        couple = force * (radius - values[f"root_{arm}"])
        couples[arm] = couples.get(arm, 0.0) + couple
    found = []
    for arm, couple in sorted(couples.items()):
        root, seat = values[f"root_{arm}"], values[f"seat_{arm}"]
        found += [(root, couple / seat), (root - seat, -couple / seat)]
    return tuple(found)
