"""What holds of every load path: nothing is lost, order does not matter, batches agree."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.deriving.cases import cases_of
from reviewer.deriving.evaluate import evaluate
from reviewer.deriving.inputs import given_values
from reviewer.deriving.plan import build_plan
from reviewer.parts.registry import KINDS
from reviewer.reading.read_design import read_design

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2

PARTS = {
    "clamp": "kind: clamp",
    "box": "kind: top, diameter: 600",
    "ring": "kind: slewing_ring, carry: {bearing: '6001', count: 6, circle: 460}",
    "arms": "kind: arm, count: 3, root: {radius: 100}, reach: 300",
    "trays": "kind: tray, count: 5, inner: 200, depth: 200, width: 100",
}
COUNTS = {"arms": 3, "trays": 5}
DOWN = {"down": 1.0, "up": -1.0, "outward": 0.0}


@dataclass(frozen=True)
class Sketch:
    """A design in short: masses with their counts, loads with their factors, and the lines."""

    weights: tuple[tuple[float, int], ...]
    loads: tuple[tuple[str, float, str, bool], ...]  # name, size, direction, spread
    combinations: dict[str, dict[str, float]]
    parts: tuple[str, ...]
    load_lines: tuple[str, ...]

    def text(self, order: Callable[[list[str]], list[str]] = list) -> str:
        """The sections of the design, each in an order of one's own."""
        combinations = [
            f"  {name}: {{{', '.join(order([f'{key}: {value}' for key, value in each.items()]))}}}"
            for name, each in self.combinations.items()
        ]
        sections = {"parts": self.parts, "loads": self.load_lines, "combinations": combinations}
        blocks = ["\n".join([f"{key}:", *order(list(it))]) for key, it in sections.items() if it]
        return "\n".join([*order(blocks), ""])


@st.composite
def sketches(draw: st.DrawFn) -> Sketch:
    """A tree of up to eight parts on one base, a few of them on two or three others."""
    mass, place = st.integers(0, 40), st.integers(-30, 30)
    weights, lines, names = [(draw(mass), 1)], [], ["base"]
    lines.append(f"  base: {{kind: base, height: 500, mass: {weights[0][0]} kg}}")
    for number in range(draw(st.integers(0, 8))):
        kind = draw(st.sampled_from(sorted(PARTS)))
        on = draw(st.lists(st.sampled_from(names), min_size=1, max_size=3, unique=True))
        weights.append((draw(mass), COUNTS.get(kind, 1)))
        names.append(f"{kind}{number}")
        carriers = on[0] if len(on) == 1 or kind == "arms" else f"[{', '.join(on)}]"
        lines.append(
            f"  {names[-1]}: {{{PARTS[kind]}, carried_by: {carriers}, mass: {weights[-1][0]} kg, "
            f"level: 600, at: {{x: {draw(place)}, y: {draw(place)}}}}}"
        )
    loads, load_lines = [], []
    for number in range(draw(st.integers(0, 3))):
        size, on_part = draw(st.integers(0, 900)), draw(st.sampled_from(names))
        direction = draw(st.sampled_from(sorted(DOWN)))
        spread = on_part.startswith(("box", "trays")) and draw(st.booleans())
        loads.append((f"load{number}", float(size), direction, spread))
        where = (
            f"over: {on_part}" if spread else f"on: {on_part}, at: {{radius: {draw(place) + 30}}}"
        )
        around = draw(st.sampled_from(["true", "false"]))
        load_lines.append(
            f"  load{number}: {{force: {size} N, {where}, direction: {direction}, "
            f"all_round: {around}}}"
        )
    factor = st.sampled_from([0.0, 0.5, 0.9, 1.0, 1.35, 1.5])
    combinations = {
        name: {key: draw(factor) for key in ["own_weight", *(load[0] for load in loads)]}
        for name in ("one", "two")
    }
    return Sketch(tuple(weights), tuple(loads), combinations, tuple(lines), tuple(load_lines))


@settings(max_examples=60, deadline=None)
@given(sketches())
def test_the_base_bears_every_weight_and_every_load_once(answers, sketch: Sketch) -> None:
    found = answers(sketch.text())
    for case in found.cases:
        factors = sketch.combinations[case.removesuffix(" on one half")]
        half = case.endswith(" on one half")
        expected = factors["own_weight"] * sum(mass * count * G for mass, count in sketch.weights)
        for name, size, direction, spread in sketch.loads:
            share = 0.5 if half and spread else 1.0
            expected += factors[name] * size * DOWN[direction] * share
        assert found("base.bears.force", case) == pytest.approx(expected, rel=1e-12, abs=1e-9)


@settings(max_examples=40, deadline=None)
@given(sketches(), st.randoms(use_true_random=False))
def test_the_order_of_keys_changes_no_number(answers, sketch: Sketch, random: Any) -> None:
    def shuffled(lines: list[str]) -> list[str]:
        return random.sample(lines, len(lines))

    first, second = answers(sketch.text()), answers(sketch.text(shuffled))
    assert first.cases == second.cases
    plan = first.derived.values.plan
    for node in plan.nodes:
        if node.row.is_number:
            one = first.derived.values.number(node.slot)
            other = second.derived.values.number(second.slot(node.name))
            np.testing.assert_array_equal(one, other, err_msg=node.name)


@pytest.mark.parametrize("samples", [1, 2, 7])
def test_one_sample_at_a_time_and_batched_agree_to_the_bit(specimen: str, samples: int) -> None:
    """Every number of a design varied by up to 5 %, each by itself and in each sample."""
    design, _ = read_design(specimen, "bench.yaml", KINDS)
    assert design is not None
    cases, plan = cases_of(design), build_plan(design)
    nominal = given_values(design, plan, cases)
    varied = [node.slot for node in plan.nodes if node.given and node.row.is_number]
    assert len(varied) > 5
    factors = np.random.default_rng(5).uniform(0.95, 1.05, (len(varied), samples, 1))
    batch = {slot: nominal[slot] * factors[row] for row, slot in enumerate(varied)}
    together = evaluate(plan, {**nominal, **batch}, len(cases.names))
    for sample in range(samples):
        alone = {slot: value[sample : sample + 1] for slot, value in batch.items()}
        single = evaluate(plan, {**nominal, **alone}, len(cases.names))
        for node in plan.nodes:
            if node.row.is_number:
                whole = together.number(node.slot)
                one = whole[sample : sample + 1] if len(whole) > 1 else whole
                np.testing.assert_array_equal(one, single.number(node.slot), err_msg=node.name)
