"""Load tests of a design: what to load in which steps, and what to expect on each gauge."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import isfinite, nan

import networkx as nx

from reviewer.deriving.derived import Derived
from reviewer.deriving.plan import Node
from reviewer.notation.dimension import LENGTH
from reviewer.notation.problem import Place
from reviewer.parts.measurement import OWN_WEIGHT
from reviewer.reading.design import Design, GivenValue, Measured
from reviewer.studying.gauge import PROOF, SCATTER, Gauge, limit
from reviewer.studying.governing import on_cases
from reviewer.studying.loading import Loading, loaded
from reviewer.studying.staleness import fingerprint

MOST_GAUGES = 5  # of one test: no shop has more hands
LEAST_MOVE = 0.02e-3  # m; a dial gauge and its stand read no finer
NOWHERE = Place("", 1, 1, 2)


@dataclass(frozen=True, slots=True)
class Expected:
    """What a gauge should read at a step, in SI, and the ends between which it may lie.

    By the tolerances, by what formulas leave out, and by how finely a gauge reads.
    """

    value: float
    least: float
    most: float


@dataclass(frozen=True, slots=True)
class Reading:
    """A gauge of a test: the quantity that it reads, where it is put, and what to expect.

    `expected` has an entry for each step; `marks` are the fingerprint of what is behind it.
    """

    part: str
    path: str
    says: str
    where: str
    expected: tuple[Expected, ...]
    marks: Mapping[str, str]

    @property
    def quantity(self) -> str:
        """The name of what is read."""
        return f"{self.part}.{self.path}"


@dataclass(frozen=True, slots=True)
class Step:
    """A step of a test: its name and the factor on the loads."""

    name: str
    factor: float


@dataclass(frozen=True, slots=True)
class LoadTest:
    """One test: what stands on the design in which configuration, its steps and its gauges.

    `under` are loads, or one combination, as `measured` names them; `factors` each load's at the
    full step. `direction` is the azimuth of the load that is worst, unknown where none is.
    `foot_lifts` tells for each step whether a foot may come off the floor; None where no base
    stands on feet.
    """

    under: tuple[str, ...]
    configuration: str
    factors: Mapping[str, float]
    steps: tuple[Step, ...]
    readings: tuple[Reading, ...]
    direction: float
    foot_lifts: tuple[bool, ...] | None


def load_tests(derived: Derived) -> tuple[LoadTest, ...]:
    """The load tests of a design: each load, and all together; or the combinations that it names.

    Each in the configuration in which its gauges move most. One that moves no gauge is left out.
    """
    design = derived.design
    steps = (Step("half", 0.5), Step("full", 1.0), Step("proof", limit(design, PROOF)))
    trials = list(_trials(design, steps))
    if not trials:
        return ()
    whole = loaded(derived, [loading for trial in trials for loading in trial.loadings])
    chosen: dict[tuple[str, ...], tuple[float, int]] = {}
    moves = [_moves(whole, index, len(steps)) for index in range(len(trials))]
    for index, trial in enumerate(trials):
        peers = [moves[each] for each, other in enumerate(trials) if other.under == trial.under]
        most = {slot: max(each.get(slot, 0.0) for each in peers) for slot in moves[index]}
        score = sum(moved / most[slot] for slot, moved in moves[index].items())
        if moves[index] and score > chosen.get(trial.under, (0.0, 0))[0] + 1e-9:
            chosen[trial.under] = score, index
    return tuple(
        _load_test(whole, trials[index], index, steps, moves[index]) for _, index in chosen.values()
    )


@dataclass(frozen=True, slots=True)
class _Trial:
    """What could be tested: loads in a configuration, with the loadings of its steps."""

    under: tuple[str, ...]
    configuration: int
    factors: Mapping[str, float]
    loadings: tuple[Loading, ...]


def _trials(design: Design, steps: Sequence[Step]) -> Iterator[_Trial]:
    loads = tuple(design.loads)
    found: list[tuple[tuple[str, ...], Mapping[str, float]]] = [
        ((each.name,), {load: factor for load, factor in each.factors.items() if factor})
        for each in design.combinations or ()
    ]
    if design.combinations is None:
        found = [((load,), {load: 1.0}) for load in loads]
        if len(loads) > 1:
            found.append((loads, dict.fromkeys(loads, 1.0)))
    seen: list[Mapping[str, float]] = []
    for under, factors in found:
        if (
            factors in seen
        ):  # own weight stands there as it is: what differs in it alone is one test
            continue
        seen.append(factors)
        for index in range(len(design.configurations)):
            loadings = [Loading(OWN_WEIGHT, index, {})]
            for step in steps:
                on = {load: step.factor * factor for load, factor in factors.items()}
                loadings.append(Loading(step.name, index, on))
            if factors:
                yield _Trial(under, index, factors, tuple(loadings))


def _moves(whole: Derived, trial: int, steps: int) -> dict[int, float]:
    """How far each gauge of a design moves from own weight to the full load, if it does at all."""
    first = trial * (steps + 1)
    full = first + 2
    found = {}
    for node in whole.values.plan.nodes:
        if is_gauge(node, whole.design):
            moved = whole.values.at(node.slot, full) - whole.values.at(node.slot, first)
            if isfinite(moved) and moved > LEAST_MOVE:
                found[node.slot] = moved
    return found


def is_gauge(node: Node, design: Design) -> bool:
    """Whether a shop can read a quantity with a gauge."""
    return bool(node.row.read) and node.row.dimension == LENGTH and node.part in design.parts


def _load_test(
    whole: Derived, trial: _Trial, index: int, steps: tuple[Step, ...], moves: Mapping[int, float]
) -> LoadTest:
    design, plan = whole.design, whole.values.plan
    first = index * (len(steps) + 1)
    cases = [first + 1 + step for step in range(len(steps))]
    slots = sorted(moves, key=lambda slot: (-round(moves[slot], 9), plan.nodes[slot].name))
    readings = tuple(_reading(whole, trial, slot, first, cases) for slot in slots[:MOST_GAUGES])
    return LoadTest(
        under=trial.under,
        configuration=design.configurations[trial.configuration].name,
        factors=trial.factors,
        steps=steps,
        readings=readings,
        direction=_direction(whole, cases[1]),
        foot_lifts=_feet(whole, cases),
    )


def _reading(whole: Derived, trial: _Trial, slot: int, first: int, cases: Sequence[int]) -> Reading:
    """A gauge with what it should read at each step, in proportion to its band at the full load."""
    plan = whole.values.plan
    node = plan.nodes[slot]
    wanted = frozenset(nx.ancestors(plan.graph, slot) | {slot})
    full = cases[1]
    gauge = Gauge(on_cases(whole, [first, full]), slot, 1, 0, wanted)
    least, most = gauge.band()
    scatter = limit(whole.design, SCATTER)
    below, above = least / gauge.nominal - scatter, most / gauge.nominal + scatter
    zero = whole.values.at(slot, first)
    values = [whole.values.at(slot, case) - zero for case in cases]
    expected = tuple(
        Expected(each, max(0.0, each * below - LEAST_MOVE), each * above + LEAST_MOVE)
        for each in values
    )
    record = _record(trial, node)
    marks = fingerprint(whole, record)
    return Reading(node.part, node.row.path, node.row.says, node.row.read, expected, marks)


def _direction(whole: Derived, case: int) -> float:
    """The azimuth of the load at which a ring's busiest roller is busiest."""
    for (part, path), slot in sorted(whole.values.plan.slots.items()):
        if path == "carry.peak_direction" and part in whole.design.parts:
            return float(whole.values.at(slot, case))
    return nan


def _feet(whole: Derived, cases: Sequence[int]) -> tuple[bool, ...] | None:
    slots = [
        slot
        for (part, path), slot in whole.values.plan.slots.items()
        if path == "feet.least_load" and part in whole.design.parts
    ]
    if not slots:
        return None
    return tuple(any(whole.values.at(slot, case) <= 0.0 for slot in slots) for case in cases)


def _record(trial: _Trial, node: Node) -> Measured:
    """The record that a reading would make, without what was read."""
    nothing = GivenValue(nan, "", NOWHERE)
    return Measured(
        name="",
        part=node.part,
        path=node.row.path,
        under=trial.under,
        configuration=trial.configuration,
        step="full",
        factor=1.0,
        zeroed=True,
        value=nothing,
        by="",
        on="",
        revision=None,
        of=None,
        fingerprint={},
        proven=False,
        calibrates=None,
        place=NOWHERE,
    )
