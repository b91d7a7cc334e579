"""Budynas and Nisbett, Shigley's Mechanical Engineering Design (8th ed., 2008).

`seen` says how each number reached this table.
"""

from functools import wraps

import pytest

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.fatigue import (
    elliptic_safety,
    fatigue_moments,
    gerber_safety,
    goodman_safety,
    soderberg_safety,
)
from reviewer.mechanics.sections import box_section, pipe_section, rectangle_torsion, round_section
from reviewer.mechanics.shafts import torsion_stress, twist, von_mises_stress
from reviewer.mechanics.thin_sections import thin_open_torsion_constant, thin_open_torsion_modulus

IN, LB = 0.0254, 4.4482216
PSI = LB / IN**2
KSI = 1e3 * PSI
LBIN = LB * IN
PROBLEM = fatigue_moments(2.2, 1.8, 600 * LBIN, 500 * LBIN, 400 * LBIN, 300 * LBIN)
EXAMPLE = fatigue_moments(1.58, 1.37, 1260 * LBIN, 0.0, 0.0, 1100 * LBIN)
BOX = box_section(2.5 * IN, 3.6 * IN, IN / 8)
CRANK = round_section(0.75 * IN)


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    (of(fatigue_moments, "alternating"), (2.2, 1.8, 600.0, 500.0, 400.0, 300.0), 2920, 2e-4,
     "problem 7-1, A", "print, recomputed"),
    (of(fatigue_moments, "mean"), (2.2, 1.8, 600.0, 500.0, 400.0, 300.0), 2391, 2e-4,
     "problem 7-1, B", "print, recomputed"),
    (goodman_safety, (1.073 * IN, *PROBLEM, 30 * KSI, 100 * KSI), 2, 1.5e-3,
     "problem 7-1, d 1.073 in for n = 2", "print, recomputed"),
    (gerber_safety, (1.016 * IN, *PROBLEM, 30 * KSI, 100 * KSI), 2, 1.5e-3,
     "problem 7-1, d 1.016 in for n = 2", "print, recomputed"),
    (elliptic_safety, (1.012 * IN, *PROBLEM, 30 * KSI, 80 * KSI), 2, 1.5e-3,
     "problem 7-1, d 1.012 in for n = 2", "print, recomputed"),
    (soderberg_safety, (1.090 * IN, *PROBLEM, 30 * KSI, 80 * KSI), 2, 1.5e-3,
     "problem 7-1, d 1.090 in for n = 2", "print, recomputed"),
    (goodman_safety, (1.1 * IN, *EXAMPLE, 29.3 * KSI, 105 * KSI), 1.62, 1e-2, "example 7-1",
     "memory"),
    (gerber_safety, (1.1 * IN, *EXAMPLE, 29.3 * KSI, 105 * KSI), 1.86, 1e-2, "example 7-1",
     "memory"),
    (elliptic_safety, (1.1 * IN, *EXAMPLE, 29.3 * KSI, 82 * KSI), 1.87, 1e-2, "example 7-1",
     "memory"),
    (soderberg_safety, (1.1 * IN, *EXAMPLE, 29.3 * KSI, 82 * KSI), 1.56, 1e-2, "example 7-1",
     "memory"),
    (bending_stress, (1200 * LBIN, CRANK.section_modulus), 28.97 * KSI, 2e-4, "crank of ch. 3",
     "computed; M and T from memory"),
    (torsion_stress, (1500 * LBIN, CRANK.torsion_modulus), 18.11 * KSI, 3e-4, "crank of ch. 3",
     "computed; M and T from memory"),
    (von_mises_stress, (28.97 * KSI, 18.11 * KSI), 42.70 * KSI, 2e-4, "crank of ch. 3",
     "computed; M and T from memory"),
    (torsion_stress, (23730 * LBIN, BOX.torsion_modulus), 11.5 * KSI, 2e-3,
     "example 3-11, box tube", "memory"),
    (twist, (23730 * LBIN, 40 * IN, 11.5e6 * PSI, BOX.torsion_constant), 0.0284, 2e-3,
     "example 3-11, box tube", "memory"),
    (torsion_stress, (1 * LBIN, pipe_section(IN, 0.05 * IN).torsion_modulus), 14.81 * PSI, 1e-3,
     "example 3-12, tube 1 / 0.9 in", "memory"),
    (torsion_stress, (59.90 * LBIN, thin_open_torsion_modulus(IN, IN / 8)), 11.5 * KSI, 1e-3,
     "example 3-13, strip", "computed"),
    (twist, (59.90 * LBIN, 12 * IN, 11.5e6 * PSI, thin_open_torsion_constant(IN, IN / 8)), 0.0960,
     1e-3, "example 3-13, strip, 5.5 degrees", "computed"),
    (torsion_stress, (55.72 * LBIN, rectangle_torsion(IN, IN / 8).torsion_modulus), 11.5 * KSI,
     0.02, "example 3-13, solid strip by T = tau b c^2/(3 + 1.8 c/b)", "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
