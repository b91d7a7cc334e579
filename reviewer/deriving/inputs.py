"""The given values of a plan: what the file gives, the defaults, and what configurations change."""

from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.cases import Cases
from reviewer.deriving.plan import DESIGN, Node, Plan
from reviewer.notation.quantity import read_quantity
from reviewer.notation.units import parse_unit
from reviewer.parts.row import Choice, Choices, Count, Flag, Measure
from reviewer.reading.design import Design, GivenValue, Part


def given_values(design: Design, plan: Plan, cases: Cases) -> dict[int, Any]:
    """The values of all given and defaulted slots, numbers as arrays over (1, cases)."""
    owners = {DESIGN: design.facts, **design.parts, **design.loads}
    found: dict[int, Any] = {}
    for node in plan.nodes:
        value = _value(node, owners[node.part])
        if value is not None:
            found[node.slot] = np.full((1, 1), value) if node.row.is_number else value
    _override(found, design, plan, cases)
    cases_slot = plan.slots[DESIGN, "cases"]
    found[cases_slot] = cases
    return found


def _value(node: Node, owner: Part) -> Any:
    given = owner.given.get(node.row.path)
    if given is not None:
        return given.value
    if node.formula is not None:
        return None
    return default_value(node)


def default_value(node: Node) -> Any:
    """The default of a field that the file leaves out, in SI; None where there is none."""
    entry = node.row.given
    if isinstance(entry, Measure):
        if entry.default is None:
            return None
        return _default(entry.default, node.row.unit)
    if isinstance(entry, Choice | Choices | Count | Flag):
        return entry.default
    return None


@cache
def _default(text: str, unit: str) -> float:
    return read_quantity(text, expected=parse_unit(unit).dimension).value


def _override(found: dict[int, Any], design: Design, plan: Plan, cases: Cases) -> None:
    """Spread the numbers that configurations change over the cases of each configuration."""
    changed: dict[int, dict[int, GivenValue]] = {}
    for index, configuration in enumerate(design.configurations):
        for (part, path), value in configuration.overrides.items():
            changed.setdefault(plan.slots[part, path], {})[index] = value
    for slot, by_configuration in changed.items():
        base: NDArray[np.float64] = found.get(slot, np.full((1, 1), np.nan))
        spread = np.broadcast_to(base, (1, len(cases.names))).copy()
        for index, value in by_configuration.items():
            spread[0, cases.configuration == index] = value.value
        found[slot] = spread
