"""Bolt circles and regular polygons of feet. `seen` says how each number reached this table."""

import pytest

from reviewer.mechanics.ring_loads import peak_roller_load, tipping_eccentricity
from reviewer.mechanics.rings import roller_chord

BOLT_CIRCLE = "bolt circle 4M/(nD) - W/n of flange textbooks; table by two solvers"

# fmt: off
ROWS = [
    *[(peak_roller_load, (1.0, e, 1.0, n), peak, 5e-5, BOLT_CIRCLE, "computed")
      for n, e, peak in [
          (3, 0.2, 0.4667), (3, 0.4, 0.6), (3, 0.5, 0.6667), (4, 0.2, 0.35), (4, 0.4, 0.45),
          (4, 0.5, 0.5), (6, 0.2, 0.2333), (6, 0.4, 0.3), (6, 0.5, 0.3333)]],
    *[(tipping_eccentricity, (1.0, n), e, 5e-5, "statics of a polygon, by script", "computed")
      for n, e in [(3, 0.5), (4, 0.7071), (5, 0.8090), (6, 0.8660), (8, 0.9239), (12, 0.9659)]],
    *[(tipping_eccentricity, (0.45, n), r, 5e-5, "support polygon by a geometry library",
       "computed") for n, r in [(3, 0.2250), (4, 0.3182), (5, 0.3641)]],
    *[(roller_chord, (1.0, n), chord, 5e-7, "sides of the regular polygons, geometry", "computed")
      for n, chord in [(3, 0.866025), (4, 0.707107), (6, 0.5), (12, 0.258819)]],
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, abs=tolerance), (source, seen)
