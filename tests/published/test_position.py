"""Clearance holes, fasteners and stacks. `seen` says how each number reached this table."""

import math

import numpy as np
import pytest
from scipy import stats

from reviewer.mechanics.tolerances import (
    clearance_hole,
    fixed_fastener_tolerance,
    float_angle,
    floating_fastener_tolerance,
    root_sum_square,
    worst_case,
)

ISO_273 = "ISO 273, as reprinted"
DEGREE = math.pi / 180

# fmt: off
HOLES = {4: (4.3, 4.5, 4.8), 5: (5.3, 5.5, 5.8), 6: (6.4, 6.6, 7), 8: (8.4, 9, 10),
         10: (10.5, 11, 12), 12: (13, 13.5, 14.5)}
MORE_HOLES = {3: (3.2, 3.4, 3.6), 14: (15, 15.5, 16.5), 16: (17, 17.5, 18.5), 20: (21, 22, 24)}
SERIES = ("fine", "medium", "coarse")

ROWS = [
    *[(clearance_hole, (d * 1e-3, series), hole * 1e-3, 1e-9, ISO_273, "print")
      for d, row in HOLES.items() for series, hole in zip(SERIES, row, strict=True)],
    *[(clearance_hole, (d * 1e-3, series), hole * 1e-3, 1e-9, "ISO 273", "memory")
      for d, row in MORE_HOLES.items() for series, hole in zip(SERIES, row, strict=True)],
    (floating_fastener_tolerance, (3.94e-3, 3.5e-3), 0.44e-3, 1e-9, "ASME Y14.5 app. B", "memory"),
    (fixed_fastener_tolerance, (3.94e-3, 3.5e-3), 0.22e-3, 1e-9, "ASME Y14.5 app. B, as reprinted",
     "print"),
    (float_angle, (0.6e-3, 0.6e-3, 60e-3), 1.146 * DEGREE, 1e-5, "geometry, by script: M6 in 6.6",
     "computed"),
    (float_angle, (0.6e-3, 0.0, 60e-3), 0.573 * DEGREE, 1e-5, "geometry, by script: one tapped",
     "computed"),
    # Overrunning clutch: sensitivities in deg/mm times the limits 0.10, 0.01, 0.01, 0.10 mm.
    (worst_case, (np.array([-0.5955, -0.05933, -0.05933, 0.5911]) * DEGREE,), 1.305 * DEGREE,
     1e-5, "Fortini / Creveling, overrunning clutch", "memory"),
    (root_sum_square, (np.array([-0.5955, -0.05933, -0.05933, 0.5911]) * DEGREE,), 0.843 * DEGREE,
     1e-5, "Fortini / Creveling, overrunning clutch", "memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, abs=tolerance), (source, seen)


def test_stack_is_that_of_independent_normal_members():
    limits = np.array([3.0, 1.0, 5.0, 1.0])
    spread = stats.norm(scale=np.sqrt(np.sum((limits / 3) ** 2))).ppf(0.99865)
    assert root_sum_square(limits) == pytest.approx(spread, rel=1e-4)


def test_members_along_the_last_axis_and_unknown_travels():
    both = worst_case(np.array([[1.0, -2.0], [1.0, math.nan]]))
    assert both[0] == 3.0
    assert math.isnan(both[1])


def test_two_plates_turn_until_both_bolts_touch():
    """Two holes a side apart: bolts at opposite walls turn the plates against each other."""
    play, spacing = 0.6e-3, 60e-3
    # Each bolt may sit play/2 off the middle of its hole in either plate: play in all.
    turned = math.atan2(2 * play, spacing)
    assert float_angle(play, play, spacing) == pytest.approx(turned, rel=1e-3)


def test_other_bolts_and_series():
    assert math.isnan(clearance_hole(7e-3))
    assert np.isnan(clearance_hole(np.array([7e-3, 8e-3]))).tolist() == [True, False]
    with pytest.raises(ValueError, match=r"series wide of ISO 273 is not here; known are fine, me"):
        clearance_hole(8e-3, "wide")
