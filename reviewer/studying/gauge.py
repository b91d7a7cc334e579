"""A gauge: what a measurement would read on a design, for any of the values that it gives."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from math import nan

import networkx as nx
import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.parts.facts import LIMIT
from reviewer.parts.measurement import OWN_WEIGHT
from reviewer.reading.design import Design, Measured
from reviewer.studying.bands import Band, bands_of
from reviewer.studying.governing import on_cases
from reviewer.studying.loading import Loading, loaded
from reviewer.studying.study import Field, vary

PROOF = "proof_load"
SCATTER = "prediction_scatter"
MOST_CORNERS = 6  # bands of which all combinations of ends are tried

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Gauge:
    """A quantity of a design, loaded as it was measured; `zero` is the case it is read from."""

    derived: Derived
    slot: int
    case: int
    zero: int | None
    wanted: frozenset[int]

    def reads(self, numbers: Mapping[Field, Array]) -> Array:
        """What it reads for values along the sample axis."""
        values = vary(self.derived, numbers, {}, self.wanted)
        return self._of(values.number(self.slot), values.samples)

    @property
    def nominal(self) -> float:
        """What it reads on the design as it is."""
        return float(self._of(self.derived.values.number(self.slot), 1)[0])

    def _of(self, found: Array, samples: int) -> Array:
        whole = np.broadcast_to(found, (samples, self.derived.values.cases))
        return whole[:, self.case] - (0.0 if self.zero is None else whole[:, self.zero])

    def band(self, bands: Sequence[Band] | None = None) -> tuple[float, float]:
        """The least and the most that it reads at the corners of the tolerances."""
        every = bands_of(self.derived) if bands is None else bands
        slots = self.derived.values.plan.slots
        touching = [each for each in every if slots[each.given.field[:2]] in self.wanted]
        if not touching:
            return self.nominal, self.nominal
        read = self.reads(_corners(self, touching))
        return (nan, nan) if np.isnan(read).any() else (float(read.min()), float(read.max()))


def _corners(gauge: Gauge, bands: Sequence[Band]) -> dict[Field, Array]:
    """All corners of few bands; of more the two to which the bands move the reading one by one."""
    count = len(bands)
    if count <= MOST_CORNERS:
        upper = np.array(list(product((False, True), repeat=count)))
    else:
        columns = {}
        for index, band in enumerate(bands):
            column = np.full(2 * count, band.nominal)
            column[index], column[count + index] = band.high, band.low
            columns[band.given.field] = column
        read = gauge.reads(columns)
        rises = read[:count] >= read[count:]
        upper = np.stack([rises, ~rises])
    return {
        band.given.field: np.where(upper[:, index], band.high, band.low)
        for index, band in enumerate(bands)
    }


def limit(design: Design, name: str) -> float:
    """A named limit that holds for a design; unknown where there is none."""
    row = design.facts.kind.by_path.get(f"{LIMIT}.{name}")
    return float(row.formula()) if row is not None and row.formula is not None else nan


def factors_of(design: Design, test: Measured) -> dict[str, float]:
    """The loads of a measurement, each with the factor that stood on it."""
    step = limit(design, PROOF) if test.factor is None else test.factor
    combinations = {each.name: each for each in design.combinations or ()}
    if len(test.under) == 1 and test.under[0] in combinations:
        whole = combinations[test.under[0]].factors
    else:
        whole = dict.fromkeys(test.under, 1.0)
    return {load: step * factor for load, factor in whole.items() if factor}


def gauges(derived: Derived, tests: Iterable[Measured]) -> list[Gauge]:
    """The gauge of each measurement of a design."""
    design = derived.design
    every = list(tests)
    loadings: list[Loading] = []
    for test in every:
        loadings.append(Loading(test.name, test.configuration, factors_of(design, test)))
        loadings.append(Loading(OWN_WEIGHT, test.configuration, {}))
    if not every:
        return []
    whole = loaded(derived, loadings)
    return [_gauge(whole, test, index) for index, test in enumerate(every)]


def _gauge(whole: Derived, test: Measured, index: int) -> Gauge:
    plan = whole.values.plan
    slot = plan.slots[test.part, test.path]
    case = 2 * index
    some = on_cases(whole, [case, case + 1] if test.zeroed else [case])
    zero = 1 if test.zeroed else None
    return Gauge(some, slot, 0, zero, frozenset(nx.ancestors(plan.graph, slot) | {slot}))
