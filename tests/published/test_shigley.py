"""Shigley, Mechanical Engineering Design: bolts and screws. `seen`: how each number was reached."""

import pytest

from reviewer.mechanics.bolts import preload, stress_area, thread_torque, tightening_torque

INCH = 0.0254
LBF = 4.4482216152605
KIP = 1000 * LBF

# fmt: off
ROWS = [
    *[(stress_area, (d * 1e-3, p * 1e-3), area * 1e-6, 3e-3, "ISO 898-1 Table 4 / Shigley 8-1",
       seen)
      for d, p, area, seen in [
          (4, 0.7, 8.78, "memory"), (5, 0.8, 14.2, "memory"), (6, 1.0, 20.1, "memory"),
          (8, 1.25, 36.6, "memory"), (10, 1.5, 58.0, "memory"), (12, 1.75, 84.3, "memory"),
          (16, 2.0, 157, "memory"), (20, 2.5, 245, "print"), (30, 3.5, 561, "print")]],
    (preload, (245e-6, 600e6, 0.9), 132.3e3, 2e-3, "Shigley, problem 8-29 (8th ed.)", "print"),
    (tightening_torque, (132.3e3, 20e-3, 0.18), 476, 2e-3, "Shigley, problem 8-29 (8th ed.)",
     "print"),
    (tightening_torque, (25 * KIP, 0.75 * INCH, 0.2), 3750 * LBF * INCH, 1e-3, "Shigley, Ex. 8-3",
     "memory"),
    (thread_torque, (25 * KIP, 0.75 * INCH, 0.7094 * INCH, INCH / 16), 3551 * LBF * INCH, 1e-3,
     "Shigley, Ex. 8-3, long form", "memory"),
    *[(preload, (area * 1e-6, strength * 1e6), force * 1e3, 3e-3,
       "75 % of proof load by script, strengths of ISO 898-1", "computed")
      for area, strength, force in [
          (14.2, 225, 2.39), (20.1, 580, 8.75), (36.6, 580, 15.92), (58.0, 830, 36.10),
          (84.3, 970, 61.30)]],
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
