"""The tree of parts and loads on what carries them, from the ground up."""

from collections.abc import Callable, Container, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any

from reviewer.deriving.joining import joining_order
from reviewer.reading.design import Design, Part

if TYPE_CHECKING:
    import networkx as nx

GROUND = ""
SEVERAL = 2  # carriers from which on a part has shares
RIM = "rim.radius"

Needs = dict[str, str | tuple[str, str]]
Built = tuple[Callable[..., Any], Needs]


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
    def steps(self) -> tuple[str, ...]:
        """The parts in the order in which each is joined to what carries it."""
        return joining_order(self.design)

    @cached_property
    def carried(self) -> Mapping[str, list[str]]:
        """The parts that each part carries itself, in the order of the file."""
        found: dict[str, list[str]] = {}
        for name, part in self.design.parts.items():
            for below in part.carried_by:
                found.setdefault(below, []).append(name)
        return found

    @cached_property
    def graph(self) -> "nx.DiGraph[str]":
        """From the ground up."""
        import networkx as nx

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
        import networkx as nx

        return nx.immediate_dominators(self.graph, GROUND)

    @cached_property
    def edged(self) -> frozenset[str]:
        """The parts whose kind has an edge, and those that carry one that does."""
        own = {part.name for part in self.every if RIM in part.kind.by_path}
        return frozenset(own.union(*(self.below(name) for name in sorted(own))))

    def below(self, name: str) -> frozenset[str]:
        """The parts that carry a part, down to the ground."""
        return self._reached(name, lambda each: self._by_name[each].carried_by)

    def above(self, name: str) -> frozenset[str]:
        """The parts and loads that stand on a part, up to the top."""
        return self._reached(name, lambda each: [child.name for child in self.children(each)])

    def _reached(self, name: str, following: Callable[[str], Iterable[str]]) -> frozenset[str]:
        found: set[str] = set()
        waiting = list(following(name))
        while waiting:
            each = waiting.pop()
            if each not in found:
                found.add(each)
                waiting.extend(following(each))
        return frozenset(found)

    @cached_property
    def _by_name(self) -> Mapping[str, Part]:
        return {part.name: part for part in self.every}

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


def is_load(part: Part) -> bool:
    """Whether a node of the tree is a load."""
    return part.kind.name == "load"
