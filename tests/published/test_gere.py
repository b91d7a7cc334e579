"""Values from Gere and Goodno, Mechanics of Materials (7th ed., 2009)."""

from math import pi, radians

import pytest

from reviewer.mechanics import beams, cantilevers, fixed_beams, sections, shafts

INCH, POUND = 0.0254, 4.4482216
PSI = POUND / INCH**2
TUBE = sections.pipe_section(1.75 * INCH, 0.25 * INCH)
TORQUE = 6200 * POUND * INCH

# formula, arguments, result, expected, relative tolerance, source, seen
ROWS = [
    (
        sections.pipe_section,
        {"outer_diameter": 1.75 * INCH, "wall": 0.25 * INCH},
        "torsion_constant",
        0.681 * INCH**4,
        1e-3,
        "problem 3.3-7",
        "reprint, recomputed",
    ),
    (
        shafts.torsion_stress,
        {"torque": TORQUE, "torsion_modulus": TUBE.torsion_modulus},
        None,
        7965 * PSI,
        1e-3,
        "problem 3.3-7",
        "reprint, recomputed",
    ),
    (
        shafts.twist,
        {
            "torque": TORQUE,
            "length": 24 * INCH,
            "shear_modulus": 3.129e6 * PSI,
            "torsion_constant": TUBE.torsion_constant,
        },
        None,
        radians(4.0),
        1e-3,
        "problem 3.3-7",
        "reprint, recomputed",
    ),
    (
        shafts.twist,
        {
            "torque": 1200.0,
            "length": 1.0,
            "shear_modulus": 78e9,
            "torsion_constant": sections.round_section(0.0588).torsion_constant,
        },
        None,
        radians(0.75),
        3e-3,
        "example 3-4, solid shaft governed by twist",
        "reprint",
    ),
    (
        shafts.twist,
        {
            "torque": 1200.0,
            "length": 1.0,
            "shear_modulus": 78e9,
            "torsion_constant": sections.pipe_section(0.0671, 0.00671).torsion_constant,
        },
        None,
        radians(0.75),
        3e-3,
        "example 3-4, tube of t = d/10",
        "computed from the printed ratio 1.14",
    ),
    (
        cantilevers.cantilever_deflection,
        {"force": 3.0, "position": 2.0, "length": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "table G-1 case 4, P L^3/3EI; also a frame program",
        "memory, recomputed",
    ),
    (
        cantilevers.cantilever_slope,
        {"force": 4.0, "position": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "table G-1 case 4, P L^2/2EI",
        "memory",
    ),
    (
        cantilevers.cantilever_uniform_deflection,
        {"line_load": 4.0, "length": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "table G-1 case 1, w L^4/8EI; also a frame program",
        "memory, recomputed",
    ),
    (
        cantilevers.cantilever_uniform_slope,
        {"line_load": 6.0, "length": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "table G-1 case 1, w L^3/6EI",
        "memory",
    ),
    (
        cantilevers.cantilever_couple_deflection,
        {"moment": 4.0, "length": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "table G-1 case 6, M L^2/2EI",
        "memory",
    ),
    (
        beams.beam_deflection,
        {"force": 48.0, "position": 1.0, "at": 1.0, "span": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "table G-2 case 4, P L^3/48EI; also a frame program",
        "memory, recomputed",
    ),
    (
        beams.beam_end_slope,
        {"force": 32.0, "position": 1.0, "span": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "table G-2 case 4, P L^2/16EI",
        "memory",
    ),
    (
        beams.beam_uniform_deflection,
        {"line_load": 76.8, "span": 2.0, "bending_stiffness": 16.0},
        None,
        1.0,
        1e-12,
        "table G-2 case 1, 5 w L^4/384EI; also a frame program",
        "memory, recomputed",
    ),
    (
        fixed_beams.fixed_beam_deflection,
        {"force": 192.0, "position": 1.0, "at": 1.0, "span": 2.0, "bending_stiffness": 8.0},
        None,
        1.0,
        1e-12,
        "fixed-end beams, P L^3/192EI; also a frame program",
        "memory, recomputed",
    ),
    (
        fixed_beams.fixed_beam_uniform_deflection,
        {"line_load": 384.0, "span": 2.0, "bending_stiffness": 16.0},
        None,
        1.0,
        1e-12,
        "fixed-end beams, w L^4/384EI; also a frame program",
        "memory, recomputed",
    ),
    (
        sections.round_section,
        {"diameter": 2.0},
        "second_moment",
        pi / 4,
        1e-12,
        "appendix D, circle",
        "memory",
    ),
]


@pytest.mark.parametrize(
    ("formula", "arguments", "result", "expected", "tolerance", "source", "seen"), ROWS
)
def test_gere(formula, arguments, result, expected, tolerance, source, seen):
    answer = formula(**arguments)
    value = answer if result is None else getattr(answer, result)
    assert float(value) == pytest.approx(expected, rel=tolerance), source
