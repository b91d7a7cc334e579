"""Khurmi and Gupta, A Textbook of Machine Design (2005), ch. 14.

`seen` says how each number reached this table.
"""

import pytest

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.sections import round_section
from reviewer.mechanics.shafts import equivalent_moment, equivalent_torque, torsion_stress

# fmt: off
ROWS = [
    (torsion_stress, (955.0, round_section(0.0487).torsion_modulus), 42e6, 3e-3,
     "line shaft, 20 kW at 200 rpm, d 48.7 mm", "memory, recomputed"),
    (equivalent_torque, (3000.0, 10000.0), 10440, 1e-4, "shaft in bending and torsion",
     "memory, recomputed"),
    (equivalent_moment, (3000.0, 10000.0), 6720, 1e-4, "shaft in bending and torsion",
     "memory, recomputed"),
    (torsion_stress, (10440.0, round_section(0.0861).torsion_modulus), 83.3e6, 3e-3,
     "the same, d 86 mm by shear", "memory, recomputed"),
    (bending_stress, (6720.0, round_section(0.0837).section_modulus), 116.7e6, 3e-3,
     "the same, d 83.7 mm by normal stress", "memory, recomputed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
