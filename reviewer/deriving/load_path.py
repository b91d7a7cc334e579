"""The load path: what each part passes on to what carries it.

Every own weight and every load goes down `carried_by` to the ground. Where a part stands on several
carriers, each gets its share, and the part below where their paths meet again gets the whole once.
"""

from functools import reduce
from typing import Any

import numpy as np

from reviewer.deriving.cases import Cases
from reviewer.deriving.placed_loads import (
    load_action,
    load_member,
    load_member_needs,
    point_force,
    single_force,
)
from reviewer.deriving.tree import RIM, SEVERAL, Built, Needs, Tree, is_load
from reviewer.mechanics.resultant import Action, Resultant, of_weight
from reviewer.mechanics.sharing import Member, member_of_ring, shares_of
from reviewer.mechanics.weight import weight as weight_of
from reviewer.reading.design import Part

EDGE = "reach.radius"
WEIGHT_AT = {
    "weight": "weight",
    "centre_x": "centre.x",
    "centre_y": "centre.y",
    "cases": "design.cases",
}


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row that only the tree of parts can give."""
    makers = {
        "whole": _whole,
        "action": _action,
        "shares": _shares,
        "member": _member,
        "reach.radius": _reach,
        "point_force": point_force,
        "single_force": single_force,
    }
    if path in ("below.x", "below.y"):
        return _below(owner, f"place.{path[-1]}")
    return makers[path](owner, tree)


def _below(owner: Part, place: str) -> Built:
    """The middle of all that carries a part; the axis of the design under the first one."""
    needs: Needs = {f"of_{index}": (name, place) for index, name in enumerate(owner.carried_by)}

    def below(**places: Any) -> Any:
        total: Any = sum(places.values())
        return total / len(places) if places else 0.0

    return below, needs


def _whole(owner: Part, tree: Tree) -> Built:
    """Own weight and all that comes down in full; each force counts once on its way."""
    if is_load(owner):
        return load_action(owner)
    above = tree.whole_children(owner.name)
    needs: Needs = dict(WEIGHT_AT)
    for index, child in enumerate(above):
        needs[f"whole_{index}"] = (child.name, "whole")
    needs.update(_axis_of(owner))

    def whole(
        weight: Any,
        centre_x: Any,
        centre_y: Any,
        cases: Cases,
        axis_x: Any = None,
        axis_y: Any = None,
        **carried: Action,
    ) -> Action:
        own = weight * cases.own_weight[None, :]
        total = of_weight(Resultant(own, own * centre_x, own * centre_y))
        for action in carried.values():
            total = total.plus(action)
        return total if axis_x is None else total.turned_freely(axis_x, axis_y)

    return whole, needs


def _axis_of(owner: Part) -> Needs:
    """Where a part that turns has its axis."""
    return {"axis_x": "place.x", "axis_y": "place.y"} if owner.kind.turns else {}


def _action(owner: Part, tree: Tree) -> Built:
    """What a part has to bear and pass on: the whole, and the shares that pass through it."""
    pairs = [] if is_load(owner) else tree.passing_shares(owner.name)
    needs: Needs = {"whole": "whole"}
    for index, (child, _) in enumerate(pairs):
        needs[f"share_{index}"] = (child, "shares")
    needs.update(_axis_of(owner) if pairs else {})

    def action(whole: Action, axis_x: Any = None, axis_y: Any = None, **shares: Any) -> Action:
        """Own weight and all that comes down, through what turns in any direction.

        Statics.
        """
        total = whole
        for index, (_, carrier) in enumerate(pairs):
            share = shares[f"share_{index}"][carrier]
            total = total.plus(share if axis_x is None else share.turned_freely(axis_x, axis_y))
        return total

    return action, needs


def _shares(owner: Part, tree: Tree) -> Built:
    """What each of several carriers gets of a part and all that it carries."""
    if len(owner.carried_by) < 2:
        return (dict), {}
    needs: Needs = {"action": "action"}
    for index, carrier in enumerate(owner.carried_by):
        needs[f"x_{index}"] = (carrier, "place.x")
        needs[f"y_{index}"] = (carrier, "place.y")
    carriers = owner.carried_by

    def shares(action: Action, **places: Any) -> dict[str, Action]:
        x = [places[f"x_{index}"] for index in range(len(carriers))]
        y = [places[f"y_{index}"] for index in range(len(carriers))]
        return dict(zip(carriers, shares_of(action, x, y), strict=True))

    return shares, needs


def _member(owner: Part, tree: Tree) -> Built:
    """The greatest force on one of several like parts, with its moment about the axis."""
    if is_load(owner):
        return load_member(owner), load_member_needs(owner)
    above = tree.children(owner.name)
    needs: Needs = {
        "mass": "mass",
        "centre_radius": "centre.radius",
        "count": "count",
        "support_radius": "support.radius",
        "cases": "design.cases",
    }
    for index, child in enumerate(above):
        shared = len(child.carried_by) >= SEVERAL
        needs[f"member_{index}"] = (child.name, "member?")
        needs[f"action_{index}"] = (child.name, "shares" if shared else "action")
        needs[f"count_{index}"] = (child.name, "count?")

    def member(
        mass: Any,
        centre_radius: Any,
        count: int,
        support_radius: Any,
        cases: Cases,
        **carried: Any,
    ) -> Member:
        """Own weight of the busiest one, its share of what lies on all, the whole of single loads.

        Statics.
        """
        own = weight_of(mass) * cases.own_weight[None, :]
        total = Member(own, own * centre_radius)
        for index, child in enumerate(above):
            action, alike = carried[f"action_{index}"], carried[f"count_{index}"]
            if len(child.carried_by) >= SEVERAL:
                borne = member_of_ring(action[owner.name].total, count, support_radius)
            elif is_load(child) or (alike == count and carried[f"member_{index}"] is not None):
                borne = carried[f"member_{index}"]
            elif alike == 1:
                borne = member_of_ring(action.total, count, support_radius)
            else:
                borne = Member(np.nan, np.nan)
            total = total.plus(borne)
        return total

    return member, needs


def _reach(owner: Part, tree: Tree) -> Built:
    """How far a part, or anything that it carries, reaches from the axis."""
    above = [child for child in tree.children(owner.name) if child.name in tree.edged]
    needs: Needs = {f"reach_{index}": (child.name, EDGE) for index, child in enumerate(above)}
    if RIM in owner.kind.by_path:
        needs.update(own=RIM, x="place.x", y="place.y")

    def reach(own: Any = None, x: Any = 0.0, y: Any = 0.0, **radii: Any) -> Any:
        mine = () if own is None else (own + np.hypot(x, y),)
        return reduce(np.maximum, (*mine, *radii.values()), np.nan if not (mine or radii) else 0.0)

    return reach, needs
