"""Why a quantity is unknown: found by walking back from it, not stored on the way."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from reviewer.deriving.evaluate import Values
from reviewer.deriving.plan import MISSING, Node


@dataclass(frozen=True, slots=True, order=True)
class Cause:
    """What is missing or out of range: the quantity's name, and why it has no value."""

    name: str
    reason: str


def why_open(values: Values, slots: list[int], case: int) -> tuple[Cause, ...]:
    """The root causes for which some of the given slots are unknown in a case, in order of name."""
    found: set[Cause] = set()
    seen: set[int] = set()
    for slot in slots:
        found.update(_causes(values, slot, case, seen))
    return tuple(sorted(found))


def is_unknown(value: Any) -> bool:
    """Whether a value as `Values.at` gives it is unknown."""
    return value is None or (isinstance(value, float) and bool(np.isnan(value)))


def _causes(values: Values, slot: int, case: int, seen: set[int]) -> Iterator[Cause]:
    if slot in seen:
        return
    seen.add(slot)
    node = values.plan.nodes[slot]
    if not is_unknown(values.at(slot, case)):
        if node.row.is_number or node.row.unit == "text":
            return
        if node.given or node.formula is None:
            return
    elif node.formula is None:
        yield Cause(node.name, _missing(node))
        return
    elif node.absent:
        yield Cause(node.name, f"there is no {' and no '.join(node.absent)}")
        return
    below = [
        cause
        for argument, source in node.inputs
        if source != MISSING and argument not in node.optional
        for cause in _causes(values, source, case, seen)
    ]
    yield from below
    if not below and is_unknown(values.at(slot, case)):
        yield Cause(node.name, _out_of_range(values, node, case))


def _missing(node: Node) -> str:
    return f"is not given: {node.row.says}"


def _out_of_range(values: Values, node: Node, case: int) -> str:
    """Which condition of the formula the inputs leave, or the row's own words for it."""
    inputs = {
        argument: None if slot == MISSING else values.at(slot, case)
        for argument, slot in node.inputs
    }
    for holds, reason in getattr(node.formula, "validities", ()):
        names = holds.__code__.co_varnames[: holds.__code__.co_argcount]
        if all(name in inputs for name in names) and not np.all(
            holds(**{name: inputs[name] for name in names})
        ):
            return str(reason)
    return node.row.because or "is outside the range in which its formula holds"
