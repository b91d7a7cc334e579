"""Young and Budynas, Roark's Formulas for Stress and Strain (7th ed., 2002), thin rings.

`seen` says how each number reached this table.
"""

from functools import wraps
from math import pi

import pytest

from reviewer.mechanics.ring_beams import ring_pull_widening, ring_squeeze

FRAME = "the same ring as a frame of straight pieces"


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    *[(of(ring_squeeze, "deflection"), (1.0, 1.0, k, 1.0), value, 3e-4, "table 9.2 case 7",
     "memory") for k, value in ((2, .07439), (3, .015939), (4, .006079), (6, .001682))],
    *[(of(ring_squeeze, "deflection"), (1.0, 1.0, k, 1.0), value, 5e-4, FRAME, "computed") for k,
     value in ((2, .074385), (3, .015938), (4, .006079), (6, .001682))],
    (of(ring_squeeze, "deflection"), (2.0, 1.0, 2, 1.0), 0.14878, 1e-4,
     "table 9.2 case 1, whole change of diameter", "print, recomputed"),
    (of(ring_squeeze, "load_moment"), (1.0, 1.0, 2, 1.0), 1 / pi, 1e-9,
     "table 9.2 case 1, under the load", "memory"),
    (of(ring_squeeze, "middle_moment"), (1.0, 1.0, 2, 1.0), 0.1817, 3e-4,
     "table 9.2 case 1, square to the load", "memory"),
    (ring_pull_widening, (1.0, 1.0, 1.0), 0.13662, 4e-5, "table 9.2 case 1, 2/pi - 1/2",
     "memory, recomputed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
