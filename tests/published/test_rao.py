"""Rao, Mechanical Vibrations (2011): frequency from static deflection.

`seen` says how each number reached this table.
"""

import pytest

from reviewer.mechanics.bending import natural_frequency

# fmt: off
ROWS = [
    (natural_frequency, (0.001,), 15.8, 3.2e-3, "2.2, sag 1 mm", "computed"),
    (natural_frequency, (0.005,), 7.05, 8e-4, "2.2, sag 5 mm", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
