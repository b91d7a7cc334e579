"""Fine Woodworking (2007): what sag of a shelf the eye sees.

`seen` says how each number reached this table.
"""

import pytest

from reviewer.mechanics.bending import span_ratio

# fmt: off
ROWS = [
    (span_ratio, (12.0, 1 / 32), 384, 1e-9, "1/32 in per foot", "print"),
    (span_ratio, (12.0, 0.02), 600, 1e-9, "0.02 in per foot", "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
