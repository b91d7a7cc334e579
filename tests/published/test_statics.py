"""Small statics and geometry, worked by hand.

`seen` says how each number reached this table.
"""

from functools import wraps
from math import pi, radians

import pytest

from reviewer.mechanics.beams import (
    beam_deflection,
    beam_uniform_deflection,
    overhang_deflection,
)
from reviewer.mechanics.cantilevers import cantilever_uniform_deflection, root_rotation_deflection
from reviewer.mechanics.fixed_beams import fixed_beam_deflection, fixed_beam_uniform_deflection
from reviewer.mechanics.moisture import gap_left
from reviewer.mechanics.plywood import plywood_movement_coefficient
from reviewer.mechanics.pull_through import insert_withdrawal_estimate
from reviewer.mechanics.racking import (
    brace_racking_stiffness,
    leg_sway_stiffness,
    panel_racking_stiffness,
    sway,
    uneven_floor_tilt,
)
from reviewer.mechanics.shafts import lever_lag
from reviewer.mechanics.thin_sections import given_section


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    (cantilever_uniform_deflection, (4.0, 2.0, 8.0, 8.0), 2.0, 1e-12,
     "shear adds w L^2/(2 kappa G A): Timoshenko, Strength of Materials I, art. 39", "memory"),
    (beam_uniform_deflection, (76.8, 2.0, 16.0, 38.4), 2.0, 1e-12,
     "shear adds w L^2/(8 kappa G A): the same", "memory"),
    (fixed_beam_uniform_deflection, (384.0, 2.0, 16.0, 192.0), 2.0, 1e-12,
     "shear adds w L^2/(8 kappa G A): the same", "memory"),
    (beam_deflection, (48.0, 1.0, 1.0, 2.0, 8.0, 24.0), 2.0, 1e-12,
     "shear adds P L/(4 kappa G A): the same", "memory"),
    (fixed_beam_deflection, (192.0, 1.0, 1.0, 2.0, 8.0, 96.0), 2.0, 1e-12,
     "shear adds P L/(4 kappa G A): the same", "memory"),
    (overhang_deflection, (1.0, 1.0, 2.0, 1.0, 1.5), 2.0, 1e-12,
     "shear adds P c (1 + c/L)/(kappa G A): by work of both spans' shear", "computed"),
    (root_rotation_deflection, (60.0, 1000.0 / radians(1.0), 0.6), radians(0.06) * 0.6, 1e-9,
     "1000 N m a degree, 60 N m, 600 mm", "computed"),
    (lever_lag, (radians(1.0), 0.1), 0.1 * pi / 180, 1e-9, "one degree at 100 mm", "computed"),
    (sway, (200.0, 50e3), 4e-3, 1e-9, "force over stiffness", "computed"),
    (leg_sway_stiffness, (2.0, 1e30, 8.0), 2.0, 1e-9, "stiff leg: k/h^2", "computed"),
    (leg_sway_stiffness, (2.0, 8.0, 1e30), 3.0, 1e-9, "stiff joint: 3EI/h^3", "computed"),
    (panel_racking_stiffness, (2.0, 4.0, 3.0, 1.0), 1.5, 1e-9,
     "shear strain F/(G t w) over height h", "computed"),
    (brace_racking_stiffness, (3.0, 4.0, 125.0), 9.0, 1e-9, "3-4-5 brace: EA/5 times (3/5)^2",
     "computed"),
    (uneven_floor_tilt, (0.003, 0.5), 0.003 / (0.25 * 2**0.5), 1e-9,
     "half a diagonal from the line through two feet", "computed"),
    (gap_left, (0.003, 0.6, 0.00369, 0.08, 0.10, 0.6, 0.0), 0.003 - 0.6 * 0.00369 * 2, 1e-9,
     "board in a frame that does not move", "computed"),
    (gap_left, (0.003, 0.6, 0.002, 0.08, 0.10, 0.6, 0.002), 0.003, 1e-9,
     "board in a frame that moves alike", "computed"),
    (plywood_movement_coefficient, (3.0, 1.0, 0.5, 0.0, 4.0), 1.0, 1e-9,
     "equal and opposite forces in two plies", "computed"),
    (insert_withdrawal_estimate, (0.5, 0.01, 0.01), 108.25 * 0.25 * 100, 1e-9,
     "common practice: wood screw formula on the outer thread", "memory"),
    (of(given_section, "section_modulus"), (2.0, 4.0, 8.0, 10.0, 3.0), 5.0, 1e-9,
     "I over half of the height", "computed"),
    (of(given_section, "lateral_section_modulus"), (2.0, 4.0, 8.0, 10.0, 3.0), 3.0, 1e-9,
     "I over half of the width", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
