"""Timoshenko and Goodier, Theory of Elasticity (1970): torsion of rectangles, short cantilevers.

`seen` says how each number reached this table.
"""

from functools import wraps

import pytest

from reviewer.mechanics.cantilevers import cantilever_deflection
from reviewer.mechanics.sections import rectangle_torsion
from reviewer.mechanics.thin_sections import thin_open_torsion_constant, thin_open_torsion_modulus

RATIOS = (1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 20)
ALPHA = (
    0.2082,
    0.2189,
    0.2310,
    0.2459,
    0.2576,
    0.2672,
    0.2817,
    0.2915,
    0.2984,
    0.3071,
    0.3123,
    0.3228,
)
BETA = (
    0.1406,
    0.1661,
    0.1958,
    0.2287,
    0.2494,
    0.2633,
    0.2808,
    0.2913,
    0.2983,
    0.3071,
    0.3123,
    0.3228,
)
TABLE = "art. 109, table of torsion of rectangular bars"
SEEN = "memory, recomputed by series and by finite elements"
# Cantilever of depth 12, thickness 1, length 48, E 3e7, nu 0.3, P 1000: exact 0.0089000.
STIFF, SHEAR = 3e7 * 12**3 / 12, 5 / 6 * 3e7 / 2.6 * 12


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    *[(of(rectangle_torsion, "torsion_modulus"), (a, 1.0), alpha * a, 3e-4, TABLE, SEEN) for a,
     alpha in zip(RATIOS, ALPHA, strict=True)],
    *[(of(rectangle_torsion, "torsion_constant"), (1.0, a), beta * a, 4e-4, TABLE, SEEN) for a,
     beta in zip(RATIOS, BETA, strict=True)],
    (thin_open_torsion_constant, (3.0, 0.1), 1e-3, 1e-12, "art. 110, b c^3/3", "memory"),
    (thin_open_torsion_modulus, (3.0, 0.1), 1e-2, 1e-12, "art. 110, b c^2/3", "memory"),
    (cantilever_deflection, (1000.0, 48.0, 48.0, STIFF), 0.0085333, 1e-5,
     "art. 21, without shear", "memory, recomputed"),
    (cantilever_deflection, (1000.0, 48.0, 48.0, STIFF, SHEAR), 0.0089493, 1e-5,
     "art. 21, kappa 5/6", "computed"),
    (cantilever_deflection, (1000.0, 48.0, 48.0, STIFF, SHEAR), 0.0089000, 6e-3,
     "art. 21, exact plane stress", "memory, recomputed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
