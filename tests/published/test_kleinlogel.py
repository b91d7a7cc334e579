"""Kleinlogel, Rigid Frame Formulas (1952), two-hinged portal pushed sideways.

`seen` says how each number reached this table.
"""

import pytest

from reviewer.mechanics.racking import portal_sway_stiffness

# fmt: off
ROWS = [
    (portal_sway_stiffness, (2.0, 3.0, 4.0, 1e30, 1e30), 3.0, 1e-9, "stiff apron: 6EI/h^3",
     "memory"),
    (portal_sway_stiffness, (2.0, 3.0, 1e30, 5.0, 1e30), 5.0, 1e-9, "stiff legs: 12EI/(h^2 L)",
     "memory"),
    (portal_sway_stiffness, (2.0, 3.0, 1e30, 1e30, 8.0), 4.0, 1e-9, "stiff members: 2k/h^2",
     "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
