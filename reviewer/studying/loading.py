"""A design as it stands loaded in a test: its quantities in cases that are made for the test."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from reviewer.deriving.cases import cases_of
from reviewer.deriving.derived import Derived
from reviewer.deriving.evaluate import Values, evaluate
from reviewer.deriving.inputs import given_values
from reviewer.deriving.plan import MISSING


@dataclass(frozen=True)
class Loading:
    """What stands on a design in a test: a configuration by its number, and factors on loads.

    Its own weight is always there, once and whole.
    """

    name: str
    configuration: int
    factors: Mapping[str, float]


def loaded(derived: Derived, loadings: Sequence[Loading]) -> Derived:
    """A design in so many loadings, each of which is one case; distributed loads stand whole.

    What a design takes from the heaviest of its own cases (the load at which a roller's stiffness
    is taken) stays as it is, so that a prediction does not hang on what else is tested.
    """
    design, plan = derived.design, derived.values.plan
    count = len(loadings)
    cases = cases_of(design)
    made = type(cases)(
        names=tuple(each.name for each in loadings),
        configuration=np.array([each.configuration for each in loadings], dtype=np.intp),
        own_weight=np.ones(count),
        factors={
            load: np.array([each.factors.get(load, 0.0) for each in loadings])
            for load in cases.factors
        },
        on_half=np.zeros(count, dtype=bool),
        durations=cases.durations,
    )
    given = {**given_values(design, plan, made), **_from_all_cases(derived.values)}
    return Derived(design, made, evaluate(plan, given, count))


def _from_all_cases(values: Values) -> dict[int, Any]:
    """The numbers that are one for all cases although what they are computed from differs."""
    found = {}
    for node in values.plan.nodes:
        one = node.row.is_number and node.formula is not None and not values.varies(node.slot)
        if one and any(slot != MISSING and values.varies(slot) for _, slot in node.inputs):
            found[node.slot] = values.number(node.slot)
    return found
