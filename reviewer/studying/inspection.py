"""What to measure on what is built, and between which limits: the rules turned round."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import networkx as nx
import numpy as np

from reviewer.deriving.derived import Derived
from reviewer.deriving.plan import DESIGN, Node
from reviewer.judging.finding import STAGES, Stage
from reviewer.judging.rule import Rule
from reviewer.notation.dimension import ANGLE, ENERGY, LENGTH
from reviewer.parts.row import Measure, Row
from reviewer.reading.design import GivenValue, Part
from reviewer.studying.inverting import Side, limit_of, move_out
from reviewer.studying.search import Search

MEASURED = (LENGTH, ANGLE, ENERGY)  # a torque is of the dimension of an energy
# What follows from other sizes, is a limit itself, or stands nowhere on the thing.
LEFT_OUT = ("allowed", "bench_test", "least_", "at.x", "at.y", "level")


@dataclass(frozen=True, slots=True)
class End:
    """One end of what a size may be, in SI, and the finding that sets it."""

    value: float
    name: str
    stage: Stage

    def times(self, factor: float) -> "End":
        """The same end of a size that goes with this one."""
        return replace(self, value=factor * self.value)


@dataclass(frozen=True, slots=True)
class Line:
    """A size to measure: what it is, where, what it should be, and between which ends.

    An end that no rule sets near the value is None. `given` is what the file says, if it does.
    """

    part: str
    path: str
    row: Row
    now: float
    low: End | None
    high: End | None
    given: GivenValue | None

    @property
    def name(self) -> str:
        """The name of the size."""
        return f"{self.part}.{self.path}"

    @property
    def stage(self) -> Stage:
        """When it is measured: as early as a rule that sets an end asks, and as it is there."""
        asked = min((each.stage for each in (self.low, self.high) if each), key=STAGES.index)
        put_together = self.row.dimension == ENERGY or bool(self.row.read) or _is_gap(self.path)
        return max(asked, "assembling" if put_together else "cutting", key=STAGES.index)


def _is_gap(path: str) -> bool:
    """Whether a size is one between parts, which is there once they are put together."""
    return "gap" in path or path in ("least", "most", "clearance")


def inspected(derived: Derived, rules: Sequence[Rule]) -> tuple[Line, ...]:
    """The sizes of a design that some rule keeps near to what they are, in order of name."""
    nodes = [node for node in derived.values.plan.nodes if is_measured(node, derived)]
    sides = [Side(node, _now(node, derived), sign) for node in nodes for sign in (-1.0, 1.0)]
    if not sides:
        return ()
    search = Search(derived, rules)
    move_out(search, sides)
    return tuple(_lines(derived, nodes, sides))


def is_measured(node: Node, derived: Derived) -> bool:
    """Whether a node is a size that the file gives or takes by default, or that a gauge reads."""
    design = derived.design
    if node.part not in design.parts or node.row.unit == "1" or not node.row.is_number:
        return False
    if node.row.dimension not in MEASURED:
        return False
    if any(word in node.row.path for word in LEFT_OUT):
        return False
    if node.row.read and not node.given:
        return _is_read_unloaded(node, derived)
    entry = node.row.given
    told = isinstance(entry, Measure) and (node.given or entry.default is not None)
    return told and not derived.values.varies(node.slot) and np.isfinite(_now(node, derived))


def _is_read_unloaded(node: Node, derived: Derived) -> bool:
    """Whether a gauge reads it with nothing on: it differs from configuration to configuration."""
    values = np.broadcast_to(derived.values.number(node.slot)[:1], (1, derived.values.cases))[0]
    configuration = derived.cases.configuration
    alike = all(len(set(values[configuration == each])) == 1 for each in set(configuration))
    plan = derived.values.plan
    under_load = plan.slots[DESIGN, "cases"] in nx.ancestors(plan.graph, node.slot)
    return bool(alike and np.isfinite(values).all() and (values.any() or not under_load))


def _now(node: Node, derived: Derived) -> float:
    """A size as it is; of one that a gauge reads, where it matters most."""
    values = derived.values.number(node.slot)[0]
    return float(values.min() if node.row.governs == "least" else values.max())


def _lines(derived: Derived, nodes: Sequence[Node], sides: Sequence[Side]) -> Iterator[Line]:
    for index, node in enumerate(nodes):
        low, high = (_end(each) for each in sides[2 * index : 2 * index + 2])
        if low is None and high is None:
            continue
        owner: Part = derived.design.parts[node.part]
        given = owner.given.get(node.row.path)
        now = _now(node, derived)
        yield Line(node.part, node.row.path, node.row, now, low, high, given)


def _end(side: Side) -> End | None:
    if side.target is None:
        return None
    value = side.now + side.sign * limit_of(side)
    if not math.isfinite(value):  # beyond what the stock tables or a formula know
        return None
    return End(value, side.target.name, side.target.rule.stage)
