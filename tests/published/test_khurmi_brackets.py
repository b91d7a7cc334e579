"""Brackets on a row of bolts by Khurmi and Gupta. `seen` says how each number was known."""

import numpy as np
import pytest

from reviewer.mechanics.root_joints import farthest_bolt_tension, washer_joint_stiffness

BOOK = "Khurmi and Gupta, A Textbook of Machine Design (2005), ch. 11"
# fmt: off
ROWS = [
    # 12 kN at 400 mm, two pairs of bolts 50 and 375 mm from the tilting edge: 6.29 kN in a bolt
    (farthest_bolt_tension, (12e3 * 0.4 / 2, np.array([0.05, 0.375])), 6290, 6,
     f"{BOOK}, crane bracket on four bolts", "memory"),
    (farthest_bolt_tension, (60.0, np.array([0.1])), 600, 1e-6, "statics, one bolt", "computed"),
    # two columns of E A/t = 20 kN/mm at 0.1 and 0.2 m: 20e6 (0.01 + 0.04)
    (washer_joint_stiffness, (1e9, 0.02, 4e-4, np.array([0.1, 0.2])), 1e6, 1e-3,
     "statics, two springs", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=0, abs=tolerance), (source, seen)
