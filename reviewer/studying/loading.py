"""A design as it stands loaded in a test: its quantities in cases that are made for the test."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from reviewer.deriving.cases import cases_of
from reviewer.deriving.derived import Derived
from reviewer.deriving.evaluate import evaluate
from reviewer.deriving.inputs import given_values


@dataclass(frozen=True)
class Loading:
    """What stands on a design in a test: a configuration by its number, and factors on loads.

    Its own weight is always there, once and whole.
    """

    name: str
    configuration: int
    factors: Mapping[str, float]


def loaded(derived: Derived, loadings: Sequence[Loading]) -> Derived:
    """A design in so many loadings, each of which is one case; distributed loads stand whole."""
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
    return Derived(design, made, evaluate(plan, given_values(design, plan, made), count))
