"""Hertz contact by textbooks and a benchmark. `seen` says how each number reached this table."""

import math

import pytest

from reviewer.mechanics.contact import contact_modulus, line_contact, point_contact
from reviewer.mechanics.contact_yield import line_shear, line_yield_force, point_yield_force
from reviewer.mechanics.elliptical import elliptical_contact

PSI = 6894.757293168
LBF = 4.4482216152605
INCH = 0.0254
STEEL_PSI = 30e6 * PSI / (2 * (1 - 0.28**2))
NORTON_20 = 206.8e9 / (2 * (1 - 0.28**2))
NAFEMS = 1 / (0.91 / 210e9 + 0.91 / 70e9)
JOHNSON = "Johnson, Contact Mechanics (1985)"

# fmt: off
ROWS = [
    (contact_modulus, (30e6 * PSI, 0.28, 30e6 * PSI, 0.28), STEEL_PSI, 1e-12,
     "Norton, Machine Design, Ex. 7-1", "print"),
    (point_contact, (151 / 7 * LBF, 0.3937 / 2 * INCH, STEEL_PSI),
     (0.00581 * INCH, 305586 * PSI, None), 1e-3, "Norton, Machine Design, Ex. 7-1", "print"),
    (point_contact, (60 * math.pi, 8e-3, 1000e6 / 0.91), (1.010e-3, None, None), 5e-4,
     "textbook: sphere on a rigid flat", "print"),
    # Two equal spheres brought 4 mm nearer: p0 = E/(pi (1-v^2)) sqrt(2h/R); the force from a.
    (point_contact, (4 / 3 * 20e9 / 1.82 * 10e-3**3 / 25e-3, 25e-3, 20e9 / 1.82),
     (10e-3, 2798.3e6, 4e-3), 2e-5, "contact benchmark, two spheres", "memory"),
    (line_contact, (35e6, 1.0, 50e-3, NAFEMS), (6.215e-3, 3585.4e6), 1e-4,
     "NAFEMS (2006), CGS-1, cylinder on block", "memory"),
    (line_contact, (200.0, 6.4e-3, 11e-3, 206e9 / 1.82), (0.0622e-3, 319.9e6), 5e-4,
     "Hertz by script: 608 on a steel flat", "computed"),
    (elliptical_contact, (10e3, 10e-3, 20e-3 / 3, NORTON_20), (0.933e-3, 0.712e-3, 7182e6, None),
     1e-3, "exact ellipse by script, statement of Norton 7-20", "computed"),
    (elliptical_contact, (10e3, 10e-3, 20e-3 / 3, NORTON_20), (0.947e-3, 0.710e-3, 7097e6, None),
     1.6e-2, "Norton, Machine Design, 7-20 (curve-fit factors)", "print"),
    (line_shear, (0.786, 1.0, 1.0), 0.300, 2e-3, f"{JOHNSON}, 4.2(b)", "memory"),
    (line_shear, (0.786, 1.0, 1.0), 0.304, 1.5e-2, "Norton, Machine Design, ch. 7", "print"),
    # First yield by Johnson 6.2: F' = pi R (1.67 Y)^2 / E*; F = 21.17 R^2 Y (Y/E*)^2.
    (line_yield_force, (100e6, 1.0, 10e-3, 100e9), math.pi * 10e-3 * 167e6**2 / 100e9, 1e-9,
     f"{JOHNSON}, 6.2", "memory"),
    (point_yield_force, (100e6, 10e-3, 100e9), 21.17 * 10e-3**2 * 100e6 * 1e-3**2, 1e-3,
     f"{JOHNSON}, 6.2", "memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    answer = formula(*inputs)
    if not isinstance(expected, tuple):
        answer, expected = (answer,), (expected,)
    for got, wanted in zip(answer, expected, strict=True):
        if wanted is not None:
            assert got == pytest.approx(wanted, rel=tolerance), (source, seen)
