"""Gere and Goodno, Mechanics of Materials (7th ed., 2009).

`seen` says how each number reached this table.
"""

from functools import wraps
from math import pi, radians

import pytest

from reviewer.mechanics.beams import (
    beam_deflection,
    beam_end_slope,
    beam_moment,
    beam_uniform_deflection,
    beam_uniform_moment,
    overhang_deflection,
    overhang_hold_down,
)
from reviewer.mechanics.bending import (
    bending_stiffness_from_test,
    bending_stress,
    rectangle_shear_stress,
    round_shear_stress,
)
from reviewer.mechanics.cantilevers import (
    cantilever_couple_deflection,
    cantilever_deflection,
    cantilever_moment,
    cantilever_slope,
    cantilever_uniform_deflection,
    cantilever_uniform_moment,
    cantilever_uniform_slope,
)
from reviewer.mechanics.fixed_beams import (
    fixed_beam_deflection,
    fixed_beam_moments,
    fixed_beam_uniform_deflection,
    fixed_beam_uniform_end_moment,
)
from reviewer.mechanics.layers import glued_layers_stiffness, loose_layers_stiffness
from reviewer.mechanics.plywood import punching_stress
from reviewer.mechanics.sections import pipe_section, rectangle_section, round_section
from reviewer.mechanics.shafts import (
    lever_end_deflection,
    misalignment_force,
    torsion_stress,
    twist,
)

IN, LB = 0.0254, 4.4482216
PSI = LB / IN**2
TUBE = pipe_section(1.75 * IN, 0.25 * IN)
TORQUE = 6200 * LB * IN


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    (of(pipe_section, "torsion_constant"), (1.75 * IN, 0.25 * IN), 0.681 * IN**4, 1e-3,
     "problem 3.3-7", "reprint"),
    (torsion_stress, (TORQUE, TUBE.torsion_modulus), 7965 * PSI, 1e-3, "problem 3.3-7", "reprint"),
    (twist, (TORQUE, 24 * IN, 3.129e6 * PSI, TUBE.torsion_constant), radians(4), 1e-3,
     "problem 3.3-7", "reprint"),
    (twist, (1200.0, 1.0, 78e9, round_section(0.0588).torsion_constant), radians(0.75), 3.5e-3,
     "example 3-4, solid, twist governs", "reprint"),
    (twist, (1200.0, 1.0, 78e9, pipe_section(0.0671, 0.00671).torsion_constant), radians(0.75),
     3e-3, "example 3-4, tube by the printed ratio 1.14", "computed"),
    (torsion_stress, (1200.0, round_section(0.0535).torsion_modulus), 40e6, 3e-3,
     "example 3-4, stress alone", "computed"),
    (cantilever_deflection, (3.0, 2.0, 2.0, 8.0), 1.0, 1e-12, "table G-1 case 4, PL^3/3EI",
     "memory"),
    (cantilever_slope, (4.0, 2.0, 8.0), 1.0, 1e-12, "table G-1 case 4, PL^2/2EI", "memory"),
    (cantilever_moment, (3.0, 2.0), 6.0, 1e-12, "statics, PL", "memory"),
    (cantilever_uniform_deflection, (4.0, 2.0, 8.0), 1.0, 1e-12, "table G-1 case 1, wL^4/8EI",
     "memory"),
    (cantilever_uniform_slope, (6.0, 2.0, 8.0), 1.0, 1e-12, "table G-1 case 1, wL^3/6EI", "memory"),
    (cantilever_uniform_moment, (3.0, 2.0), 6.0, 1e-12, "statics, wL^2/2", "memory"),
    (cantilever_couple_deflection, (4.0, 2.0, 8.0), 1.0, 1e-12, "table G-1 case 6, ML^2/2EI",
     "memory"),
    (beam_deflection, (48.0, 1.0, 1.0, 2.0, 8.0), 1.0, 1e-12, "table G-2 case 4, PL^3/48EI",
     "memory"),
    (beam_deflection, (81.0, 1.0, 2.0, 3.0, 7.0), 4.5, 1e-12,
     "table G-2 case 5, Pbx(L^2-b^2-x^2)/6LEI", "memory"),
    (beam_end_slope, (32.0, 1.0, 2.0, 8.0), 1.0, 1e-12, "table G-2 case 4, PL^2/16EI", "memory"),
    (beam_moment, (4.0, 1.0, 2.0), 2.0, 1e-12, "4.5, PL/4", "memory"),
    (beam_uniform_deflection, (76.8, 2.0, 16.0), 1.0, 1e-12, "table G-2 case 1, 5wL^4/384EI",
     "memory"),
    (beam_uniform_moment, (4.0, 2.0), 2.0, 1e-12, "4.5, wL^2/8", "memory"),
    (overhang_hold_down, (10.0, 1.0, 2.0), 5.0, 1e-12, "statics, Pc/L", "memory"),
    (overhang_deflection, (1.0, 1.0, 2.0, 1.0), 1.0, 1e-12,
     "example 9-5 by superposition, Pc^2(L+c)/3EI", "memory"),
    (fixed_beam_deflection, (192.0, 1.0, 1.0, 2.0, 8.0), 1.0, 1e-12, "ch. 10, PL^3/192EI",
     "memory"),
    (of(fixed_beam_moments, "near"), (8.0, 1.0, 2.0), 2.0, 1e-12, "ch. 10, PL/8", "memory"),
    (of(fixed_beam_moments, "under_load"), (27.0, 1.0, 3.0), 8.0, 1e-12,
     "ch. 10, 2Pa^2b^2/L^3", "memory"),
    (of(fixed_beam_moments, "far"), (9.0, 1.0, 3.0), 2.0, 1e-12, "ch. 10, Pa^2b/L^2", "memory"),
    (fixed_beam_uniform_deflection, (384.0, 2.0, 16.0), 1.0, 1e-12, "ch. 10, wL^4/384EI", "memory"),
    (fixed_beam_uniform_end_moment, (12.0, 2.0), 4.0, 1e-12, "ch. 10, wL^2/12", "memory"),
    (bending_stress, (6.0, rectangle_section(1.0, 1.0).section_modulus), 36.0, 1e-12,
     "5.5, 6M/bh^2", "memory"),
    (rectangle_shear_stress, (2.0, 1.0), 3.0, 1e-12, "5.8, 3V/2A", "memory"),
    (round_shear_stress, (3.0, 1.0), 4.0, 1e-12, "5.9, 4V/3A", "memory"),
    (bending_stiffness_from_test, (3.0, 2.0, 1.0), 8.0, 1e-12, "table G-1 case 4, PL^3/3EI",
     "memory"),
    (misalignment_force, (1.0, 1.0, 1.0, 8.0), 48.0, 1e-12, "table G-2 case 4, 48EI/L^3", "memory"),
    (punching_stress, (28000 * LB, 0.75 * IN, 0.25 * IN), 47500 * PSI, 1e-3,
     "example 1-6, punch in a steel plate", "memory, recomputed"),
    (loose_layers_stiffness, (1.0, 1.0, 2.0, 3.0), 2.0, 1e-12, "5.5, n b t^3/12", "memory"),
    (glued_layers_stiffness, (1.0, 1.0, 2.0, 3.0), 18.0, 1e-12, "5.5, b (n t)^3/12", "memory"),
    (of(round_section, "second_moment"), (2.0,), pi / 4, 1e-12, "appendix D, circle", "memory"),
    (of(rectangle_section, "second_moment"), (2.0, 3.0), 4.5, 1e-12, "appendix D, bh^3/12",
     "memory"),
    (lever_end_deflection, (100.0, 0.3, 0.4, 7e3, 7e3, 70e9 / 2.66 * 2e-7), 1.11733e-3, 5e-6,
     "frame program, lever on a shaft", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
