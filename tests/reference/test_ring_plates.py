"""A ring's plate on its rollers against finite elements (scikit-fem, Argyris triangles)."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

from reviewer import review

skfem = pytest.importorskip("skfem")

from scipy.sparse.linalg import splu  # noqa: E402  (behind importorskip)

_spec = importlib.util.spec_from_file_location("discs", Path(__file__).with_name("test_discs.py"))
discs = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(discs)

RADIUS, RIGIDITY, LOAD = 0.32, 3000.0, 600.0  # m, N m, N
TEXT = """
design: ring on springs
lengths: mm
parts:
  ring:
    kind: slewing_ring
    mass: 0 kg
    plate: {{thickness: 18, diameter: 640, opening: {opening}, rigidity: 3000 N m}}
    carry: {{bearing: "6001", count: {count}, circle: 480, stiffness: {stiffness} kN/mm}}
loads: {{stone: {{force: 600 N, on: ring, at: {{radius: {at}}}, all_round: true}}}}
"""


def by_finite_elements(hole, rings, count, stiffness, at):
    """Busiest of springs at 0.75 of the radius and the sink of the rim, over and between them."""
    triangles, matrix, _, dofs = discs.plate(hole, rings, 60)
    turns = 2 * np.pi * np.arange(count) / count
    rollers = [discs.node_at(triangles, 0.75, each)[0] for each in turns]
    scaled = stiffness * RADIUS**2 / RIGIDITY
    matrix = matrix.tolil()
    for node in rollers:
        matrix[dofs[node], dofs[node]] += scaled
    solve = splu(matrix.tocsc()).solve
    found = []
    for turn in (0.0, np.pi / count):
        load = np.zeros(matrix.shape[0])
        load[dofs[discs.node_at(triangles, at, turn)[0]]] = LOAD
        bent = solve(load)
        forces = scaled * bent[dofs[rollers]]
        assert forces.min() > 0  # all rollers carry, so that springs and rollers are the same
        rim = discs.node_at(triangles, 1.0, turn)[0]
        found.append((forces.max(), bent[dofs[rim]] * RADIUS**2 / RIGIDITY))
    return np.max(found, axis=0)


@pytest.mark.parametrize(
    ("opening", "hole", "rings", "count", "stiffness", "radius", "at"),
    [
        (0, 0.0, 8, 10, 0.5, 120, 0.375),
        (0, 0.0, 8, 6, 1.0, 80, 0.25),
        (160, 0.25, 6, 10, 0.3, 120, 0.375),
    ],
)
def test_busiest_roller_and_sink_of_the_rim(opening, hole, rings, count, stiffness, radius, at):
    found = review(TEXT.format(opening=opening, count=count, stiffness=stiffness, at=radius))
    values = found.derived.values

    def number(path):
        return values.at(values.plan.slots["ring", path], 1)

    force, sink = by_finite_elements(hole, rings, count, stiffness * 1e6, at)
    assert number("carry.concentration") > 1.05  # the plate matters
    assert number("carry.peak_load") == pytest.approx(force, rel=0.01)
    bent = values.at(values.plan.slots["ring", "rollers_bent"], 1)
    assert bent.rim_sink[0, 1] == pytest.approx(sink, rel=0.02)
    assert number("rim_sink") >= bent.rim_sink[0, 1]  # never less than on a rigid plate
