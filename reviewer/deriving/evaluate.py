"""Evaluation: every quantity of a plan, in order, on numbers or arrays of them.

A number is an array that broadcasts to (samples, cases); a choice is a plain object; None is an
unknown choice or object, NaN an unknown number.
"""

from collections.abc import Container, Mapping, Sequence
from types import MappingProxyType
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.plan import MISSING, Node, Plan

UNKNOWN = np.full((1, 1), np.nan)
NOTHING: Mapping[int, Any] = MappingProxyType({})


class EvaluationFault(Exception):
    """A formula failed on its input: a fault of the program, not of the design."""


class Values:
    """What a plan's evaluation gave, by slot."""

    def __init__(
        self,
        plan: Plan,
        values: Sequence[Any],
        cases: int,
        samples: int = 1,
        overrules: Mapping[int, Any] = NOTHING,
    ) -> None:
        """Keep the values of a plan over a number of cases and samples.

        `overrules` are those that configurations give in place of what a formula says.
        """
        self.plan = plan
        self.values = values
        self.cases = cases
        self.samples = samples
        self.overrules = overrules

    def value(self, slot: int) -> Any:
        """A value: a number over (samples, cases), a choice or an object."""
        return self.values[slot]

    def number(self, slot: int) -> NDArray[np.float64]:
        """A number over (samples, cases), possibly with an axis of size 1."""
        value: NDArray[np.float64] = self.value(slot)
        return value

    def varies(self, slot: int) -> bool:
        """Whether a slot has a number, or a word, of its own for each case."""
        value = self.value(slot)
        return isinstance(value, np.ndarray) and value.shape[1] > 1

    def is_passed_on(self, slot: int) -> bool:
        """Whether a slot's number reaches a formula, known or not: what is not there does not."""
        value = self.value(slot)
        return isinstance(value, np.ndarray) and value is not UNKNOWN

    def at(self, slot: int, case: int, sample: int = 0) -> Any:
        """The value in one case: a float of a number, the object itself of a choice."""
        value = self.value(slot)
        if not isinstance(value, np.ndarray):
            return value
        picked = value[
            sample if value.shape[0] > 1 else 0,
            case if value.shape[1] > 1 else 0,
        ]
        return str(picked) if value.dtype.kind == "U" else float(picked)


def evaluate(plan: Plan, given: Mapping[int, Any], cases: int) -> Values:
    """Compute every node of the plan from the given values.

    A value given for a node that has a formula overrules it where it is known, as a configuration
    does. Raises EvaluationFault that names the quantity whose formula failed.
    """
    values: list[Any] = [None] * len(plan.nodes)
    with np.errstate(all="ignore"):
        for slot in plan.order:
            node = plan.nodes[slot]
            if node.given:
                values[slot] = given[slot]
            elif node.formula is None:
                values[slot] = given.get(slot, UNKNOWN if node.row.is_number else None)
            else:
                values[slot] = computed(node, values, given.get(slot))
    overrules = {slot: value for slot, value in given.items() if _is_overruled(plan.nodes[slot])}
    return Values(plan, values, cases, overrules=overrules)


def changed(
    before: Values,
    given: Mapping[int, Any],
    samples: int,
    wanted: Container[int] | None = None,
    overrules: Mapping[int, Any] = NOTHING,
) -> Values:
    """Values with some given ones changed: only what depends on those is computed again.

    `given` holds the new value of each changed slot, a number as an array over
    (samples, cases or 1). Where `wanted` slots are named, only those are computed, and what is
    not among them keeps the value that it had before: it has to hold all that they need.
    `overrules` are other values that configurations give in place of what a formula says.
    """
    plan = before.plan
    values = list(before.values)
    touched = plan.below(frozenset(given) | frozenset(overrules)) | frozenset(overrules)
    overrules = {**before.overrules, **overrules}
    if wanted is not None:
        touched = frozenset(slot for slot in touched if slot in wanted)
    with np.errstate(all="ignore"):
        for slot in plan.order:
            if slot in given:
                values[slot] = given[slot]
            elif slot in touched:
                values[slot] = computed(plan.nodes[slot], values, overrules.get(slot))
    return Values(plan, values, before.cases, samples, overrules)


def _is_overruled(node: Node) -> bool:
    return not node.given and node.formula is not None


def computed(node: Node, values: Sequence[Any], overruled: Any = None) -> Any:
    """What a node's formula gives, save where a known number stands in its place.

    Raises EvaluationFault where the formula fails.
    """
    answer = _answer(node, values)
    return answer if overruled is None else np.where(np.isnan(overruled), answer, overruled)


def _answer(node: Node, values: Sequence[Any]) -> Any:
    unknown = UNKNOWN if node.row.is_number else None
    arguments: dict[str, Any] = {}
    for argument, slot in node.inputs:
        value = None if slot == MISSING else values[slot]
        if argument in node.optional:
            value = None if value is UNKNOWN else value
        elif value is None:
            return unknown
        arguments[argument] = value
    try:
        assert node.formula is not None
        answer = node.formula(**arguments)
    except Exception as fault:
        raise EvaluationFault(f"the formula of {node.name} failed: {fault!r}") from fault
    if node.row.is_number:
        return unknown if answer is None else _as_matrix(answer)
    return answer


def _as_matrix(answer: Any) -> NDArray[np.float64]:
    array = np.asarray(answer, dtype=np.float64)
    return array if array.ndim == 2 else array.reshape((1, -1) if array.ndim else (1, 1))
