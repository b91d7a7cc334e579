"""The plan: which quantity is computed from which, in what order; a function of structure alone."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Any

from reviewer.deriving import (
    assembly,
    gap_sides,
    load_path,
    moving,
    plate_entry,
    seam_entry,
    sheet_entry,
)
from reviewer.deriving.tree import Built, Tree
from reviewer.notation.ordering import Circle, ordered
from reviewer.parts.facts import WITHIN_DESIGN
from reviewer.parts.row import Row
from reviewer.reading.design import Design, Part

if TYPE_CHECKING:
    import networkx as nx

DESIGN = "design"
OF = "of"  # the field that names the part of which a part tells more
MISSING = -1


class PlanError(Exception):
    """The kinds' rows do not make a graph without circles."""


@dataclass(frozen=True, slots=True)
class Node:
    """One quantity of one part: its row, and the slots that its formula reads.

    A negative slot in `inputs` stands for a thing that the design does not have;
    `absent` then says what.
    """

    slot: int
    part: str
    row: Row
    given: bool
    formula: Callable[..., Any] | None = None
    inputs: tuple[tuple[str, int], ...] = ()
    optional: frozenset[str] = frozenset()
    absent: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The name by which a person asks for it: ring.carry.peak_load, limit.dent."""
        path = self.row.path
        return path if path.partition(".")[0] in WITHIN_DESIGN else f"{self.part}.{path}"


@dataclass(frozen=True)
class Plan:
    """Nodes by slot, the order of computation, and the slot of each part's quantity."""

    nodes: tuple[Node, ...]
    order: tuple[int, ...]
    slots: Mapping[tuple[str, str], int] = field(repr=False)

    def slot(self, part: str, path: str) -> int | None:
        """Where a part's quantity is kept, or None; limits and the shop's are the design's."""
        if part in WITHIN_DESIGN:
            return self.slots.get((DESIGN, f"{part}.{path}"))
        return self.slots.get((part, path))

    def below(self, slots: frozenset[int]) -> frozenset[int]:
        """The slots that depend on any of the given ones; kept, since searches ask again."""
        found = self._below.get(slots)
        if found is None:
            graph = self.graph
            import networkx as nx

            found = frozenset().union(*(nx.descendants(graph, slot) for slot in slots))
            self._below[slots] = found
        return found

    @cached_property
    def _below(self) -> dict[frozenset[int], frozenset[int]]:
        return {}

    @cached_property
    def graph(self) -> "nx.DiGraph[int]":
        """The slots as a directed graph, from what is needed to what needs it."""
        import networkx as nx  # a plain review asks for an order alone

        graph: nx.DiGraph[int] = nx.DiGraph()
        graph.add_nodes_from(range(len(self.nodes)))
        graph.add_edges_from(_edges(self.nodes))
        return graph


def build_plan(design: Design) -> Plan:
    """Join every row of every part into one graph, checked for circles.

    Raises PlanError that names the members of a circle.
    """
    owners = list(_owners(design))
    tree = Tree(design)
    slots: dict[tuple[str, str], int] = {}
    for owner in owners:
        for row in owner.kind.rows:
            slots[owner.name, row.path] = len(slots)
    nodes = []
    for owner in owners:
        for row in owner.kind.rows:
            nodes.append(_node(owner, row, tree, slots))
    return Plan(tuple(nodes), _order(nodes), slots)


def _owners(design: Design) -> Iterator[Part]:
    yield design.facts
    for name in sorted(design.parts):
        yield design.parts[name]
    for name in sorted(design.loads):
        yield design.loads[name]


def _node(owner: Part, row: Row, tree: Tree, slots: Mapping[tuple[str, str], int]) -> Node:
    slot = slots[owner.name, row.path]
    if row.path in owner.given:
        return Node(slot, owner.name, row, given=True)
    source = tree.design.source(owner.name, row.path)
    if source != (owner.name, row.path):
        return _joined(slot, owner, row, _of_board, {"value": source}, slots)
    if row.built:
        formula, wanted = _built(row.path, owner, tree)
        return _joined(slot, owner, row, formula, wanted, slots)
    if row.take is not None:
        wanted = {"solution": row.needs["solution"]}
        return _joined(slot, owner, row, _taker(row.take), wanted, slots)
    return _joined(slot, owner, row, row.formula, row.needs, slots)


def _built(path: str, owner: Part, tree: Tree) -> Built:
    """The formula and the needs of a row that only the tree of parts can give."""
    if gap_sides.makes(path, owner):
        return gap_sides.built(path, owner, tree)
    if path in assembly.PATHS:
        return assembly.built(path, owner, tree)
    if path == plate_entry.PATH:
        return plate_entry.entry(owner, tree)
    if path == seam_entry.PATH:
        return seam_entry.entry(owner, tree)
    if path.rpartition(".")[2] == sheet_entry.SHEET:
        return sheet_entry.entry(path, owner, tree)
    if moving.makes(path):
        return moving.built(path, owner, tree)
    return load_path.built(path, owner, tree)


def _joined(
    slot: int,
    owner: Part,
    row: Row,
    formula: Callable[..., Any] | None,
    wanted: Mapping[str, str | tuple[str, str]],
    slots: Mapping[tuple[str, str], int],
) -> Node:
    inputs, optional, absent = [], set(), []
    for argument, need in wanted.items():
        found, text, lenient = _resolve(need, owner, slots)
        if lenient:
            optional.add(argument)
        elif found == MISSING:
            absent.append(text)
        inputs.append((argument, found))
    return Node(
        slot, owner.name, row, False, formula, tuple(inputs), frozenset(optional), tuple(absent)
    )


def _resolve(
    need: str | tuple[str, str], owner: Part, slots: Mapping[tuple[str, str], int]
) -> tuple[int, str, bool]:
    """The slot of a need, what it is called where it is missing, and whether it may be missing."""
    if isinstance(need, tuple):
        part, path = need[0], need[1].removesuffix("?")
        return slots.get((part, path), MISSING), f"{part}.{path}", need[1].endswith("?")
    lenient = need.endswith("?")
    name = need.removesuffix("?")
    scope, _, rest = name.partition(".")
    if scope == "carrier":
        carrier = owner.carried_by[0] if owner.carried_by else ""
        text = f"{carrier}.{rest}" if carrier else f"a part that carries {owner.name}"
        return slots.get((carrier, rest), MISSING), text, lenient
    if scope == OF:
        other = owner.given.get(OF)
        text = f"{other.value}.{rest}" if other else f"{owner.name}.{OF}"
        return slots.get((other.value if other else "", rest), MISSING), text, lenient
    if scope in (DESIGN, *WITHIN_DESIGN):
        path = rest if scope == DESIGN else name
        return slots.get((DESIGN, path), MISSING), name, lenient
    return slots.get((owner.name, name), MISSING), f"{owner.name}.{name}", lenient


def _of_board(value: Any) -> Any:
    """As the board that the part is cut from."""
    return value


def _taker(attribute: str) -> Callable[..., Any]:
    def take(solution: Any) -> Any:
        return getattr(solution, attribute)

    return take


def _edges(nodes: tuple[Node, ...] | list[Node]) -> Iterator[tuple[int, int]]:
    for node in nodes:
        for _, slot in node.inputs:
            if slot != MISSING:
                yield slot, node.slot


def _order(nodes: list[Node]) -> tuple[int, ...]:
    """The slots so that each comes after all that it needs; the same on every run."""
    try:
        return ordered(range(len(nodes)), _edges(nodes))
    except Circle:
        import networkx as nx

        graph: nx.DiGraph[int] = nx.DiGraph()
        graph.add_nodes_from(range(len(nodes)))
        graph.add_edges_from(_edges(nodes))
        circle = [nodes[slot].name for slot, _ in nx.find_cycle(graph)]
        chain = " needs ".join([*reversed(circle), circle[-1]])
        raise PlanError(f"quantities need each other in a circle: {chain}") from None
