"""Handbook of Finnish Plywood: sanded birch of 1.4 mm plies, characteristic values.

`seen` says how each number reached this table.
"""

from functools import wraps

import pytest

from reviewer.mechanics.plywood import plywood_ratios

BIRCH = [
    # plies, mean thickness mm, bending strength along and across MPa, modulus along and across MPa
    (3, 3.6, 65.9, 10.6, 16471, 1029),
    (5, 6.4, 50.9, 29.0, 12737, 4763),
    (7, 9.2, 45.6, 32.1, 11395, 6105),
    (9, 12.0, 42.9, 33.2, 10719, 6781),
    (11, 14.8, 41.3, 33.8, 10316, 7184),
    (13, 17.6, 40.2, 34.1, 10048, 7452),
    (15, 20.4, 39.4, 34.3, 9858, 7642),
    (17, 23.2, 38.9, 34.4, 9717, 7783),
    (19, 26.0, 38.4, 34.5, 9607, 7893),
    (21, 28.8, 38.1, 34.6, 9519, 7981),
    (25, 34.4, 37.6, 34.7, 9389, 8111),
    (29, 40.0, 37.2, 34.7, 9296, 8204),
]
MODULUS, STRENGTH = 17500, 70  # of a birch ply along its grain, MPa
FIELDS = ("strength_along", "strength_across", "modulus_along", "modulus_across")
UNITS = (STRENGTH, STRENGTH, MODULUS, MODULUS)
DIGITS = (0.051, 0.051, 0.51, 0.51)


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    *[(of(plywood_ratios, "thickness"), (n, 1.4e-3, 1.1e-3), t * 1e-3, 1e-9, "birch panels",
     "memory, recomputed") for n, t, *_ in BIRCH],
    *[(of(plywood_ratios, field), (n, 1.4e-3, 1.1e-3), value / unit, digit / value, "birch panels",
     "memory, recomputed") for n, _, *values in BIRCH for field, value, unit, digit in zip(FIELDS,
     values, UNITS, DIGITS, strict=True)],
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
