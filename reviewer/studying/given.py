"""The given values that a study may change: each with its row, its text and its place."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import networkx as nx

from reviewer.deriving.derived import Derived
from reviewer.deriving.plan import Node
from reviewer.judging.binding import Bound, bind
from reviewer.judging.rule import Rule
from reviewer.notation.dimension import LENGTH, MASS
from reviewer.parts.row import Choice, Count, Measure, Points, Row, Shape, Stock
from reviewer.reading.design import Design, GivenValue, Part
from reviewer.studying.study import Field, Key

CHANGED = (Measure, Count, Choice, Stock)
SIZES = (LENGTH, MASS)
NOT_A_SIZE = ("allowed", "bench_test")  # limits and measurements are no sizes to choose


@dataclass(frozen=True, slots=True)
class Given:
    """A given value: whose it is, its row, and what the file says."""

    field: Field
    owner: Part
    row: Row
    value: GivenValue

    @property
    def name(self) -> str:
        """The name by which a person asks for it."""
        return f"{self.field[0]}.{self.field[1]}"


def bound_of(derived: Derived, rule: Rule, key: Key) -> Bound:
    """The binding of one finding of a rule."""
    return next(
        bound
        for bound in bind(rule, derived.design, derived.values)
        if (rule.name, bound.part, bound.others) == key
    )


def changeable(derived: Derived, rule: Rule, key: Key) -> tuple[Given, ...]:
    """The given values that may be changed to mend a finding.

    Those that the rule's `change` list names; where it names none that the file gives, every size,
    mass and count that the rule depends on. Never a load, and nothing that its part calls `fixed`.
    What was measured on the workpiece is no value to choose: where the list names it, no other is.
    """
    bound = bound_of(derived, rule, key)
    plan = derived.values.plan
    listed = [plan.nodes[slot] for slot in bound.all_slots(rule.change)]
    found = _given(derived.design, listed)
    if not found and not any(is_listed(derived.design, node) for node in listed):
        slots = bound.all_slots(rule.names)
        graph = plan.graph
        above = sorted(set(slots).union(*(nx.ancestors(graph, slot) for slot in slots)))
        nodes = [plan.nodes[slot] for slot in above]
        found = _given(derived.design, [node for node in nodes if _is_size(node.row)])
    return tuple(each for each in found if not is_fixed(each))


def is_listed(design: Design, node: Node) -> bool:
    """Whether the file gives a list of points there, of which no single number is changed."""
    owner = design.parts.get(node.part)
    return owner is not None and isinstance(node.row.given, Points) and node.row.path in owner.given


def not_given(derived: Derived, rule: Rule, key: Key) -> tuple[str, ...]:
    """The names on a rule's `change` list that the file could give and does not."""
    plan = derived.values.plan
    nodes = [plan.nodes[slot] for slot in bound_of(derived, rule, key).all_slots(rule.change)]
    return tuple(
        node.name
        for node in nodes
        if isinstance(node.row.given, CHANGED)
        and not node.row.only
        and node.part in derived.design.parts
        and derived.design.source(node.part, node.row.path) == (node.part, node.row.path)
        and not list(places_of(derived.design, derived.design.parts[node.part], node.row))
    )


def _is_size(row: Row) -> bool:
    if isinstance(row.given, Count):
        return True
    measured = isinstance(row.given, Measure) and row.dimension in SIZES
    return measured and not any(word in row.path for word in NOT_A_SIZE)


def _given(design: Design, nodes: Iterable[Node]) -> list[Given]:
    """The values given for some nodes, by their parts and in configurations."""
    found: dict[Field, Given] = {}
    for node in nodes:
        part, path = design.source(node.part, node.row.path)
        owner = design.parts.get(part)
        if owner is not None and isinstance(node.row.given, CHANGED):
            for each in places_of(design, owner, owner.kind.by_path[path]):
                found[each.field] = each
    return list(found.values())


def places_of(design: Design, owner: Part, row: Row) -> Iterator[Given]:
    """Where a file gives a value: on the part, and in configurations that override it.

    A material that only the name of a sheet says is not one of them.
    """
    own = owner.given.get(row.path)
    if own is not None and not (own.sheet and isinstance(row.given, Stock)):
        yield Given((owner.name, row.path), owner, row, own)
    for index, configuration in enumerate(design.configurations):
        other = configuration.overrides.get((owner.name, row.path))
        if other is not None:
            yield Given((owner.name, row.path, index), owner, row, other)


def is_fixed(given: Given) -> bool:
    """Whether a remedy must leave it as it is: its part says so, or a measurement settles it."""
    if given.value.calibrated_by:
        return True
    fixed = given.owner.given.get("fixed")
    names = re.split(r"[,;\s]+", str(fixed.value)) if fixed else []
    path = given.field[1]
    return any(name and (path == name or path.startswith(f"{name}.")) for name in names)


def shape_row_of(given: Given) -> Row | None:
    """The row of the shape whose list the value stands in: of section.height, section."""
    if not given.row.only:
        return None
    for row in given.owner.kind.rows:
        if isinstance(row.given, Shape) and any(
            given.row.path in paths for _, paths in row.given.alternatives
        ):
            return row
    return None
