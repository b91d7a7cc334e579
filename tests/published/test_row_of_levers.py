"""Rows of equal forces, and bearings out of line: tables of steel designers and Clapeyron.

`seen` says how each number reached this table.
"""

import numpy as np
import pytest

from reviewer.mechanics.bolts import preload_from_torque
from reviewer.mechanics.lever_shafts import (
    beam_row_moment,
    lever_row_twist,
    misalignment_moment,
)

AISC = "AISC Steel Construction Manual, table 3-22a, simple beam, equal forces, moment in P L"
CLAPEYRON = "three moments, middle support sunk by d: M = 3 E I d/(a b), force M/a + M/b"
SHIGLEY = "Shigley, problem 8-29 (8th ed.), turned round"


def even(count):
    """Places of forces that cut a span of one into equal parts."""
    return np.arange(1, count + 1) / (count + 1)


# fmt: off
ROWS = [
    *[(beam_row_moment, (1.0, even(count), 1.0), moment, 1.1e-3, AISC, "memory")
      for count, moment in [(1, 0.250), (2, 0.333), (3, 0.500), (4, 0.600)]],
    *[(misalignment_moment, (3 * (a + b) / (a * b) ** 2, a, b), moment, 1e-12, CLAPEYRON, "memory")
      for a, b, moment in [(1.0, 1.0, 3.0), (0.5, 0.5, 12.0), (0.4, 0.6, 12.5)]],
    (lever_row_twist, (8.0, 0.5, 1000, 80e9, 1e-9), 8.0 * 0.5 / (2 * 80.0), 1e-12,
     "Gere, bar under an even torque t: t L^2/(2 G J)", "memory"),
    # Lengths 0.2 m with 2/3 and then 1/3 of 9 N m over G J of 20 N m2: 0.06 + 0.03.
    (lever_row_twist, (9.0, 0.4, 3, 20e9, 1e-9), 0.09, 1e-12, "three levers, added up by hand",
     "computed"),
    (preload_from_torque, (476.0, 20e-3, 0.18), 132.3e3, 2e-3, SHIGLEY, "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)


def test_two_levers_twist_by_half_of_the_torque():
    assert lever_row_twist(8.0, 0.5, 2, 80e9, 1e-9) == pytest.approx(4.0 * 0.5 / 80.0)
