"""AFNOR, Guide de validation des progiciels de calcul de structures (1990), case SSLL07.

`seen` says how each number reached this table.
"""

from math import pi

import pytest

from reviewer.mechanics.curved import arc_cantilever_deflection
from reviewer.mechanics.sections import pipe_section

TUBE = pipe_section(0.020, 0.002)
STIFF = 200e9 * TUBE.second_moment
TWIST = 200e9 / 2.6 * TUBE.torsion_constant

# fmt: off
ROWS = [
    (arc_cantilever_deflection, (100.0, 1.0, pi / 2, STIFF, TWIST), 0.13462, 5e-5,
     "SSLL07, quarter arc of tube, tip load", "memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
