"""The structure of a design: what its plan depends on, and no number of it.

Designs of one structure have the same plan and cases; a plan is kept by structure, so that the next
revision, and the next of a thousand designs, need not build it again.
"""

from collections import OrderedDict
from collections.abc import Callable, Hashable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from reviewer.deriving.cases import Cases, cases_of
from reviewer.deriving.inputs import default_value
from reviewer.deriving.plan import DESIGN, Plan, build_plan
from reviewer.deriving.seam_entry import bands
from reviewer.reading.design import Combination, Design, GivenValue, Part

MOST = 256  # plans that are kept

_KEPT: "OrderedDict[Hashable, Structure]" = OrderedDict()


@dataclass(frozen=True, eq=False)
class Structure:
    """Plan and cases of all designs of one structure."""

    plan: Plan
    cases: Cases

    @cached_property
    def defaults(self) -> Mapping[int, Any]:
        """The values of the fields that no design of this structure gives, by slot."""
        found = {}
        for node in self.plan.nodes:
            if not node.given and node.formula is None:
                value = default_value(node)
                if value is not None:
                    found[node.slot] = np.full((1, 1), value) if node.row.is_number else value
        found[self.plan.slots[DESIGN, "cases"]] = self.cases
        return found

    @cached_property
    def _notes(self) -> dict[Hashable, Any]:
        return {}

    def noted(self, what: Hashable, make: Callable[[], Any]) -> Any:
        """Whatever else follows from the structure alone: made once, and kept with it."""
        if what not in self._notes:
            self._notes[what] = make()
        return self._notes[what]


def structure_of(design: Design) -> Structure:
    """Plan and cases of a design, built once for all designs of its structure.

    Raises PlanError as `build_plan` does.
    """
    key = signature(design)
    known = _KEPT.pop(key, None)
    if known is None:
        known = Structure(build_plan(design), cases_of(design))
    _KEPT[key] = known
    if len(_KEPT) > MOST:
        _KEPT.popitem(last=False)
    return known


def signature(design: Design) -> Hashable:
    """What plan and cases of a design depend on: kinds, keys, carriers, words and cases.

    Words are whatever names another part, or says how a load stands; and whether a sheet of stock
    is called in inches; of the sides of a seam how far their thickness may be off. Parts come in
    the order of the file, in which they are joined.
    """
    return (
        design.facts.kind,
        frozenset(design.facts.given),
        tuple(_shape(part) for part in design.parts.values()),
        tuple(_shape(load) for _, load in sorted(design.loads.items())),
        tuple((each.name, frozenset(each.overrides)) for each in design.configurations),
        None if design.combinations is None else tuple(map(_factors, design.combinations)),
        bands(design),
    )


def _shape(part: Part) -> Hashable:
    words = frozenset((path, *_words(given)) for path, given in part.given.items())
    return part.name, part.kind, part.carried_by, words


def _words(given: GivenValue) -> tuple[Hashable, ...]:
    """What a field says in words, and how it calls a sheet; of a number nothing."""
    value, sheet = given.value, given.sheet
    is_words = isinstance(value, str | bool) or (
        isinstance(value, tuple) and all(isinstance(each, str) for each in value)
    )
    return (value if is_words else None, sheet is not None and sheet.is_inch)


def _factors(combination: Combination) -> Hashable:
    return combination.name, combination.own_weight, tuple(combination.factors.items())
