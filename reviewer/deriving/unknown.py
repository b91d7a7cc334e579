"""Why a quantity is unknown: found by walking back from it, not stored on the way."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import numpy as np

from reviewer.deriving.evaluate import Values
from reviewer.deriving.plan import MISSING, Node
from reviewer.parts.documented import signature_of
from reviewer.stock.table import Choice


@dataclass(frozen=True, slots=True, order=True)
class Cause:
    """What is missing or out of range: the quantity's name, and why it has no value."""

    name: str
    reason: str


Causes = dict[int, frozenset[Cause]]


def why_open(values: Values, slots: list[int], case: int) -> tuple[Cause, ...]:
    """The root causes for which some of the given slots are unknown in a case, in order of name."""
    known: Causes = {}
    waiting = list(reversed(slots))
    while waiting:  # with a list of its own, since parts may stand on each other by the thousand
        slot = waiting[-1]
        inputs = [] if slot in known else _inputs(values, slot, case)
        pending = [each for _, each in inputs if each not in known]
        waiting.extend(reversed(pending))
        if not pending:
            waiting.pop()
            if slot not in known:
                known[slot] = _causes(values, slot, case, inputs, known)
    return tuple(sorted(frozenset().union(*(known[slot] for slot in slots))))


def is_unknown(value: Any) -> bool:
    """Whether a value as `Values.at` gives it is unknown."""
    return value is None or (isinstance(value, float) and bool(np.isnan(value)))


def _inputs(values: Values, slot: int, case: int) -> list[tuple[str, int]]:
    """What may be to blame for a slot: of an unknown one its inputs, of an object also its own."""
    node = values.plan.nodes[slot]
    unknown = is_unknown(values.at(slot, case))
    says_something = node.row.is_number or node.row.unit == "text" or node.given
    if (unknown and node.absent) or (says_something and not unknown):
        return []
    return [(argument, each) for argument, each in node.inputs if each != MISSING]


def _causes(
    values: Values, slot: int, case: int, inputs: list[tuple[str, int]], known: Causes
) -> frozenset[Cause]:
    """The causes of one slot, from those of its inputs.

    What a formula could do without counts only where nothing else is to blame: a number that was
    computed and reached it unknown, or fields of which one or the other would have been enough.
    """
    node = values.plan.nodes[slot]
    loose = [each for argument, each in inputs if argument in node.optional]
    firm = _joined(known[each] for argument, each in inputs if argument not in node.optional)
    passed = _joined(known[each] for each in loose if values.is_passed_on(each))
    if firm or not is_unknown(values.at(slot, case)):
        return firm | passed
    if node.formula is None:
        return _cause(node, f"is not given: {node.row.says}")
    if node.absent:
        return _cause(node, f"needs {' and '.join(node.absent)}, which the design does not have")
    reason = _out_of_range(values, node, case) or node.row.because
    if reason:
        return passed or _cause(node, reason)
    left_out = _joined(known[each] for each in loose)
    return left_out or _cause(node, _not_in_stock(values, node, case))


def _not_in_stock(values: Values, node: Node, case: int) -> str:
    """That a row of stock lacks the number, where the formula reads one; else that it is lost."""
    read = [values.at(each, case) for _, each in node.inputs if each != MISSING]
    for each in read:
        if isinstance(each, Choice):
            name = getattr(each, "name", "it")
            return f"is not in the table of stock for {name}: give it, or choose another"
    return "is outside the range in which its formula holds"


def _joined(causes: Iterable[frozenset[Cause]]) -> frozenset[Cause]:
    return frozenset().union(*causes)


def _cause(node: Node, reason: str) -> frozenset[Cause]:
    return frozenset([Cause(node.name, reason)])


def _out_of_range(values: Values, node: Node, case: int) -> str:
    """Which condition of the formula the inputs leave; nothing where it has none."""
    inputs = {
        argument: values.at(slot, case)
        for argument, slot in node.inputs
        if slot != MISSING and not is_unknown(values.at(slot, case))
    }
    for holds, reason in getattr(node.formula, "validities", ()):
        names = signature_of(holds).required
        if names <= inputs.keys() and not np.all(holds(**{name: inputs[name] for name in names})):
            return str(reason)
    return ""
