"""Loads in the load path: what each puts on its part, and single forces among them."""

from collections.abc import Callable
from typing import Any

import numpy as np

from reviewer.deriving.cases import Cases
from reviewer.deriving.tree import RIM, Built, Needs, Tree, is_load
from reviewer.mechanics.placing import DIRECTIONS, placed_load
from reviewer.mechanics.resultant import Action, of_load
from reviewer.mechanics.sharing import Member
from reviewer.parts.load import stands_anywhere
from reviewer.reading.design import Part


def load_action(owner: Part) -> Built:
    """A load at its place; of its fields only those that matter for this one."""
    name = owner.name
    spread = "over" in owner.given
    middle = spread and not any(path.startswith("at") for path in owner.given)
    needs: Needs = {
        "size": "force",
        "place_x": "place.x",
        "place_y": "place.y",
        "direction": "direction",
        "all_round": "all_round",
        "lasting": "lasting",
        "cases": "design.cases",
    }
    if not middle:
        needs["radius"] = "radius"
    if spread:
        needs["half_radius"] = "half_radius"
    if _is_level(owner):
        needs["level"] = "level"
    if not goes_all_round(owner):
        needs["azimuth"] = "azimuth"

    def action(size: Any, cases: Cases, direction: str, lasting: Any, **where: Any) -> Action:
        force = size * cases.factors[name][None, :]
        on_half = cases.on_half[None, :] if spread else np.zeros((1, 1), dtype=bool)
        return of_load(placed_load(force, on_half, DIRECTIONS[direction], **where), lasting)

    return action, needs


def _is_level(load: Part) -> bool:
    given = load.given.get("direction")
    return given is not None and DIRECTIONS[given.value].out != 0.0


def goes_all_round(load: Part) -> bool:
    """Whether a load can stand at any azimuth, by what its file says."""
    given = load.given.get("all_round")
    if given is not None:
        return bool(given.value)
    word = load.given.get("at")
    return word is not None and stands_anywhere(word.value)


def load_member_needs(owner: Part) -> Needs:
    return {
        "size": "force",
        "radius": "radius",
        "direction": "direction",
        "count": "carrier.count",
        "cases": "design.cases",
    }


def load_member(owner: Part) -> Callable[..., Member]:
    name = owner.name
    spread = "over" in owner.given

    def member(size: Any, radius: Any, direction: str, count: int, cases: Cases) -> Member:
        down = DIRECTIONS[direction].down
        force = down * size * cases.factors[name][None, :] / (count if spread else 1)
        return Member(force, force * radius)

    return member


def _single_loads(owner: Part, tree: Tree) -> list[Part]:
    """The loads that stand on a part at one place."""
    return [
        load for load in tree.children(owner.name) if is_load(load) and "over" not in load.given
    ]


def single_force(owner: Part, tree: Tree) -> Built:
    """The greatest single force that a load puts on a part, wherever it stands, in each case."""
    single = _single_loads(owner, tree)
    needs: Needs = {"cases": "design.cases"}
    for index, load in enumerate(single):
        needs[f"size_{index}"] = (load.name, "force")
        needs[f"direction_{index}"] = (load.name, "direction")

    def single_force(cases: Cases, **each: Any) -> Any:
        """The greatest single force on it.

        Statics.
        """
        greatest: Any = np.zeros((1, len(cases.names)))
        for index, load in enumerate(single):
            down = DIRECTIONS[each[f"direction_{index}"]].down
            force = down * each[f"size_{index}"] * cases.factors[load.name][None, :]
            greatest = np.maximum(greatest, force)
        return greatest

    return single_force, needs


def point_force(owner: Part, tree: Tree) -> Built:
    """The greatest single force that a load puts on the overhang of a part, in each case."""
    single = _single_loads(owner, tree)
    needs: Needs = {"cases": "design.cases"}
    if single:
        needs.update(rim=RIM, overhang="overhang")
    for index, load in enumerate(single):
        needs[f"size_{index}"] = (load.name, "force")
        needs[f"direction_{index}"] = (load.name, "direction")
        needs[f"radius_{index}"] = (load.name, "radius")

    def point_force(cases: Cases, rim: Any = 0.0, overhang: Any = 0.0, **each: Any) -> Any:
        greatest: Any = np.zeros((1, len(cases.names)))
        for index, load in enumerate(single):
            down = DIRECTIONS[each[f"direction_{index}"]].down
            force = down * each[f"size_{index}"] * cases.factors[load.name][None, :]
            beyond = each[f"radius_{index}"] > rim - overhang
            greatest = np.maximum(greatest, np.where(beyond, force, 0.0))
        return greatest

    return point_force, needs
