"""Statics of ramps and wedges by textbooks. `seen` says how each number reached this table."""

import math

import pytest

from reviewer.mechanics.ramps import (
    lowering_force,
    raising_force,
    ramp_efficiency,
    self_locking_margin,
    wedge_force,
    wedge_force_at_wall,
    wedge_force_sideways,
)

BY_SCRIPT = "ramp statics (Meriam and Kraige 6/4), by script"
DEGREE = math.pi / 180

# fmt: off
# angle in degrees, friction, up, down, efficiency, wedge with friction on two faces
RAMPS = [
    (5, 0.10, 0.1891, 0.0124, 0.4626, 0.2891), (5, 0.20, 0.2926, 0.1106, 0.2990, 0.4926),
    (10, 0.20, 0.3901, 0.0229, 0.4520, 0.5901), (15, 0.20, 0.4944, -0.0645, 0.5419, 0.6944),
]

ROWS = [
    *[(formula, (*load, a * DEGREE, mu, *more), value, 5.1e-5, BY_SCRIPT, "computed")
      for a, mu, up, down, efficiency, wedge in RAMPS
      for formula, load, more, value in [
          (raising_force, (1.0,), (), up), (lowering_force, (1.0,), (), down),
          (ramp_efficiency, (), (), efficiency), (wedge_force, (1.0,), (mu,), wedge)]],
    (self_locking_margin, (5 * DEGREE, 0.10), 0.7 * DEGREE, 0.05 * DEGREE, BY_SCRIPT, "computed"),
    (wedge_force_sideways, (500 * 9.81, 5 * DEGREE, 0.30, 0.60), 2505, 1.5,
     "Meriam, Statics, sample problem 6/6 (book rounds 2500)", "print"),
    (wedge_force_at_wall, (1500.0, 10 * DEGREE, 0.30), 1417.5, 2.8,
     "textbook, lifting wedge at a rough wall (graphical)", "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=0, abs=tolerance), (source, seen)
