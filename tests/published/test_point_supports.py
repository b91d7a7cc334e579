"""Plates on points by Nadai, and by an element program. `seen` says how each number was known."""

from math import pi

import pytest

from reviewer.mechanics.point_supported_plates import (
    point_supported_centre_load,
    point_supported_uniform,
)
from reviewer.mechanics.ring_supported_plates import (
    ring_supported_centre_load,
    ring_supported_uniform,
)

NADAI = "Timoshenko and Woinowsky-Krieger, art. 71, plate on three points (Nadai)"
POINTS = "Morley element program, 0.3 %"


def row(formula, size, count, poisson, expected, source, seen):
    inputs = (size, 1.0, count, 1.0, 1.0, poisson)
    return formula, inputs, expected, 0.004 * expected, source, seen


# fmt: off
ROWS = [
    row(point_supported_centre_load, 1.0, 3, 0.25, 0.0670, NADAI, "memory"),
    row(point_supported_uniform, 1 / pi, 3, 0.25, 0.0362, NADAI, "memory"),
    *[row(point_supported_centre_load, 1.0, k, 0.3, value, POINTS, "computed")
      for k, value in ((3, 0.0668), (4, 0.0568), (6, 0.0523))],
    *[row(point_supported_uniform, 1 / pi, k, 0.3, value, POINTS, "computed")
      for k, value in ((3, 0.0366), (4, 0.0266), (6, 0.0220))],
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=0, abs=tolerance), (source, seen)


@pytest.mark.parametrize("support", [0.5, 0.7, 0.8, 1.0])
def test_many_points_are_a_ring(support):
    """Timoshenko and Woinowsky-Krieger, art. 16 and 17: a continuous ring."""
    points, ring = (support, 60, 1.0, 1.0, 0.3), (support, 1.0, 1.0, 0.3)
    assert point_supported_centre_load(1.0, *points) == pytest.approx(
        ring_supported_centre_load(1.0, *ring).centre, rel=5e-3
    )
    assert point_supported_uniform(1.0, *points) == pytest.approx(
        ring_supported_uniform(1.0, *ring).centre, rel=5e-3, abs=2e-5
    )
