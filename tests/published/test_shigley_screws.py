"""Shigley, Mechanical Engineering Design, 8: screws and bolts. `seen`: how a number was reached."""

import math

import numpy as np
import pytest

from reviewer.mechanics.bolts import preload, stress_area, thread_torque, tightening_torque
from reviewer.mechanics.screws import screw_torque
from reviewer.mechanics.tolerances import worst_case

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
    (screw_torque, (6.4e3, 30e-3, 8e-3, 0.08, 0.0, 0.08, 40e-3), (26.18, 9.77, 10.24, 0.311), 2e-3,
     "Shigley, Ex. 8-1", "memory"),
    (screw_torque, (6e3, 22.5e-3, 5e-3, 0.08, 0.0, 0.05, 40e-3), (16.23, 6.622, 6.0, 0.294), 2e-3,
     "Shigley, problem 8-4 (8th ed.)", "print"),
    *[(screw_torque, (1e3, 1 / math.pi, math.tan(math.radians(lead)), 0.08),
       (None, None, 0.0, efficiency), 1e-3, "Shigley, problem 8-3 (8th ed.)", "print")
      for lead, efficiency in [(10, 0.678), (20, 0.796), (30, 0.838), (40, 0.8517), (45, 0.8519)]],
    (screw_torque, (2500 * LBF, 2.75 * INCH, 0.5 * INCH, 0.05, math.radians(14.5), 0.06, 5 * INCH),
     ((377.6 + 375) * LBF * INCH, None, 375 * LBF * INCH, None), 1e-3,
     "Shigley, problem 8-6 (8th ed.)", "print"),
    (screw_torque, (1e4 * LBF, 2 * INCH, 0.5 * INCH, 0.2),
     (2840 * LBF * INCH, None, 0.0, None), 3e-3, "open statics text, 5.6.1", "print"),
    (worst_case, (np.array([0.003, 0.001, 0.005, 0.001]) * INCH,), 0.010 * INCH, 1e-9,
     "Shigley, Ex. 1-3 (9th ed.)", "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    answer = formula(*inputs)
    if not isinstance(expected, tuple):
        answer, expected = (answer,), (expected,)
    for got, wanted in zip(answer, expected, strict=True):
        if wanted is not None:
            assert got == pytest.approx(wanted, rel=tolerance), (source, seen)
