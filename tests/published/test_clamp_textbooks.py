"""Clamped hubs by textbooks and statics. `seen` says how each number reached this table."""

import math

import pytest

from reviewer.mechanics.clamps import (
    UNIFORM,
    clamp_torque,
    clamp_torques,
    cosine_factor,
    mean_pressure,
    peak_pressure,
    uniform_factor,
)

SHIGLEY = "Shigley, Mechanical Engineering Design, 16-3 / block brakes, factor of a long shoe"
DEGREE = math.pi / 180

# fmt: off
ROWS = [
    *[(cosine_factor, (t * DEGREE,), k, 5e-5, SHIGLEY, "memory")
      for t, k in [(30, 1.0454), (45, 1.1002), (60, 1.1701), (90, 1.2732)]],
    *[(uniform_factor, (t * DEGREE,), k, 5e-5, "statics, by script", "computed")
      for t, k in [(30, 1.0472), (45, 1.1107), (60, 1.2092)]],
    (uniform_factor, (90 * DEGREE,), 1.5708, 5e-5, "textbook: split muff, uniform pressure",
     "print"),
    # Six bolts, three to a shaft, at 70 MPa, 22.2 mm core: T = 2865 N m on 75 mm.
    (clamp_torque, (3 * math.pi / 4 * 22.2e-3**2 * 70e6, 75e-3, 0.3, UNIFORM), 2865, 3e-3,
     "Khurmi, Machine Design, ch. 13, clamp coupling", "memory"),
    (clamp_torques, (31.84e3, 20e-3, 0.15), (95.5, 121.6, 150.1), 2e-3, "statics, by script",
     "computed"),
    (mean_pressure, (31.84e3, 20e-3, 25e-3), 63.7e6, 2e-3, "statics, by script", "computed"),
    (peak_pressure, (31.84e3, 20e-3, 25e-3), 81.1e6, 2e-3, "statics, by script", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
