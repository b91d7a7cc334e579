"""The load path: what each part passes on to what carries it.

Every own weight and every load goes down `carried_by` to the ground. Where a part stands on several
carriers, each gets its share, and the part below where their paths meet again gets the whole once.
"""

from collections.abc import Callable, Container, Mapping
from dataclasses import dataclass
from functools import cached_property, reduce
from typing import Any

import networkx as nx
import numpy as np

from reviewer.deriving.cases import Cases
from reviewer.mechanics.placing import DIRECTIONS, placed_load
from reviewer.mechanics.resultant import Action, Resultant, of_load, of_weight
from reviewer.mechanics.sharing import Member, member_of_ring, shares_of
from reviewer.mechanics.weight import weight as weight_of
from reviewer.parts.load import stands_anywhere
from reviewer.reading.design import Design, Part

GROUND = ""
RIM, EDGE = "rim.radius", "reach.radius"
SEVERAL = 2  # carriers from which on a part has shares
Needs = dict[str, str | tuple[str, str]]
Built = tuple[Callable[..., Any], Needs]

WEIGHT_AT = {
    "weight": "weight",
    "centre_x": "centre.x",
    "centre_y": "centre.y",
    "cases": "design.cases",
}


@dataclass(frozen=True)
class Tree:
    """The parts and loads of a design on what carries them."""

    design: Design

    @cached_property
    def every(self) -> tuple[Part, ...]:
        """All parts, then all loads, in order of name."""
        parts = (part for _, part in sorted(self.design.parts.items()))
        return (*parts, *(load for _, load in sorted(self.design.loads.items())))

    @cached_property
    def graph(self) -> "nx.DiGraph[str]":
        """From the ground up."""
        graph: nx.DiGraph[str] = nx.DiGraph()
        graph.add_node(GROUND)
        for part in self.every:
            graph.add_edges_from((carrier, part.name) for carrier in part.carried_by or (GROUND,))
        return graph

    @cached_property
    def meeting(self) -> Mapping[str, str]:
        """For each part, that one in which all of its paths to the ground first meet."""
        if all(len(part.carried_by) < SEVERAL for part in self.every):
            return {part.name: (*part.carried_by, GROUND)[0] for part in self.every}
        return nx.immediate_dominators(self.graph, GROUND)

    @cached_property
    def edged(self) -> frozenset[str]:
        """The parts whose kind has an edge, and those that carry one that does."""
        own = {part.name for part in self.every if RIM in part.kind.by_path}
        below = (nx.ancestors(self.graph, name) for name in sorted(own))
        return frozenset(own.union(*below))

    def children(self, name: str) -> list[Part]:
        """The parts and loads that a part carries."""
        return [part for part in self.every if name in part.carried_by]

    def whole_children(self, name: str) -> list[Part]:
        """The parts and loads whose every path to the ground meets first in the named part."""
        return [child for child in self.every if self.meeting[child.name] == name]

    def passing_shares(self, name: str) -> list[tuple[str, str]]:
        """Pairs of a part on several carriers and the one of them that brings a share down to here.

        Only the shares that pass through: where all of them meet, the whole counts instead; and
        what is split once more further up comes with the share of the part that splits it.
        """
        several = [child for child in self.every if len(child.carried_by) >= SEVERAL]
        if not several:
            return []
        wholly = self.borne[name]
        return [
            (child.name, carrier)
            for child in several
            if child.name not in wholly
            for carrier in child.carried_by
            if carrier in wholly
        ]

    @cached_property
    def borne(self) -> Mapping[str, Container[str]]:
        """For each part, itself and those whose every path to the ground leads through it."""
        found: dict[str, set[str]] = {part.name: {part.name} for part in self.every}
        for name in found:
            below = self.meeting[name]
            while below != GROUND:
                found[below].add(name)
                below = self.meeting[below]
        return found


def built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row that only the tree of parts can give."""
    makers = {
        "whole": _whole,
        "action": _action,
        "shares": _shares,
        "member": _member,
        "reach.radius": _reach,
        "point_force": _point_force,
        "single_force": _single_force,
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


def is_load(part: Part) -> bool:
    """Whether a node of the tree is a load."""
    return part.kind.name == "load"


def _whole(owner: Part, tree: Tree) -> Built:
    """Own weight and all that comes down in full; each force counts once on its way."""
    if is_load(owner):
        return _load_action(owner)
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


def _load_action(owner: Part) -> Built:
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
        return _load_member(owner), _load_member_needs(owner)
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


def _load_member_needs(owner: Part) -> Needs:
    return {
        "size": "force",
        "radius": "radius",
        "direction": "direction",
        "count": "carrier.count",
        "cases": "design.cases",
    }


def _load_member(owner: Part) -> Callable[..., Member]:
    name = owner.name
    spread = "over" in owner.given

    def member(size: Any, radius: Any, direction: str, count: int, cases: Cases) -> Member:
        down = DIRECTIONS[direction].down
        force = down * size * cases.factors[name][None, :] / (count if spread else 1)
        return Member(force, force * radius)

    return member


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


def _single_loads(owner: Part, tree: Tree) -> list[Part]:
    """The loads that stand on a part at one place."""
    return [
        load for load in tree.children(owner.name) if is_load(load) and "over" not in load.given
    ]


def _single_force(owner: Part, tree: Tree) -> Built:
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


def _point_force(owner: Part, tree: Tree) -> Built:
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
