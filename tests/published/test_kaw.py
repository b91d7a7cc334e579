"""Kaw, Mechanics of Composite Materials (2006), ch. 2: a lamina at an angle to its fibres.

`seen` says how each number reached this table.
"""

from math import radians

import pytest

from reviewer.mechanics.wood import off_axis_modulus

GRAPHITE = (181e9, 10.3e9, 7.17e9, 0.28)

# fmt: off
ROWS = [
    (off_axis_modulus, (*GRAPHITE, radians(60)), 1 / 0.8053e-10, 1e-4,
     "graphite and epoxy at 60 degrees, S11", "memory, recomputed"),
    (off_axis_modulus, (*GRAPHITE, radians(30)), 1 / 0.3475e-10, 2e-4, "the same, S22",
     "memory, recomputed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
