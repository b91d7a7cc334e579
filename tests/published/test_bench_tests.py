"""Bench tests: the beam and the shaft of Gere and Goodno (2009), solved for the modulus.

`seen` says how each number reached this table.
"""

from math import pi

import pytest

from reviewer.mechanics.bench_tests import (
    modulus_from_bending_test,
    shear_modulus_from_twist_test,
)

# fmt: off
ROWS = [
    (modulus_from_bending_test, (1000.0, 1.0, 0.1, 0.05, 0.002), 10e9, 1e-9,
     "table G-2 case 4: I 1.0417e-6 m4, 2 mm under 1 kN", "formula memory, computed"),
    (modulus_from_bending_test, (48.0, 1.0, 12.0, 1.0, 1.0), 1.0, 1e-9,
     "table G-2 case 4: F L3 / 48 E I is one for E I one", "formula memory"),
    (shear_modulus_from_twist_test, (100.0, 0.5, pi / 32 * 0.02**4, 0.0401396), 79.3e9, 1e-4,
     "3.3: a bar of 20 mm of carbon steel, G 11.5 Mpsi, turns 2.3 deg", "formula memory, computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
