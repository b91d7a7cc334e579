"""ISO 281: dynamic ratings, equivalent load and life of ball bearings; worked examples by the book.

`seen` says how a row's number reached this table: print or reprint read, computed apart from the
project, or from memory. Standards seen in reprints are cited "as reprinted".
"""

import math

import numpy as np
import pytest

from reviewer.mechanics.bearing_life import (
    axial_factors,
    dynamic_factor,
    dynamic_rating,
    equivalent_load,
    life_revolutions,
    life_time,
    required_rating,
)
from reviewer.mechanics.duty import mean_load, mean_load_of_ramp

TABLE_2 = "ISO 281:2007 Table 2, as reprinted"
TABLE_3 = "ISO 281:2007 Table 3, as reprinted"
CATALOGUES = "general bearing catalogues, band of the printed ratings"
RPM = math.pi / 30

# fmt: off
FACTORS = [
    29.1, 35.8, 40.3, 43.8, 46.7, 49.1, 51.1, 52.8, 54.3, 55.5, 56.6, 57.5, 58.2, 58.8,
    59.3, 59.6, 59.8, 59.9, 60.0, 59.9, 59.8, 59.6, 59.3, 59.0, 58.6, 58.2, 57.7, 57.1,
    56.6, 56.0, 55.3, 54.6, 53.9, 53.2, 52.4, 51.7, 50.9, 50.0, 49.2, 48.4,
]
AXIAL = [
    (0.172, 0.19, 2.30), (0.345, 0.22, 1.99), (0.689, 0.26, 1.71), (1.03, 0.28, 1.55),
    (1.38, 0.30, 1.45), (2.07, 0.34, 1.31), (3.45, 0.38, 1.15), (5.17, 0.42, 1.04),
    (6.89, 0.44, 1.00),
]
LOAD_STEPS = (np.array([3e3, 7e3, 5e3]), np.array([720.0, 1440.0, 900.0]), np.array([30, 40, 30.]))

ROWS = [
    *[(dynamic_factor, ((i + 1) / 100,), fc, 0.051, TABLE_2, "print")
      for i, fc in enumerate(FACTORS)],
    *[(axial_factors, (ratio,), (e, y), 0.005, TABLE_3, "print") for ratio, e, y in AXIAL],
    # Balls and pitch circle with the ratings that catalogues print (band, half width as tolerance).
    (dynamic_rating, (7, 3.969e-3, 15e-3), 3373, 78, f"{CATALOGUES}, 608", "print"),
    (dynamic_rating, (7, 4.762e-3, 18e-3), 4550, 60, f"{CATALOGUES}, 6000, balls", "memory"),
    (dynamic_rating, (8, 4.762e-3, 20e-3), 5100, 51, f"{CATALOGUES}, 6001, balls", "memory"),
    (dynamic_rating, (7, 5.953e-3, 22e-3), 6800, 68, f"{CATALOGUES}, 6201, balls", "memory"),
    # Above 25.4 mm: 1.3 * 3.647 fc Z^(2/3) Dw^1.4, fc 59.9 at 0.2, by hand.
    (dynamic_rating, (8, 30e-3, 150e-3), 1.3 * 3.647 * 59.9 * 4 * 30**1.4, 120,
     "ISO 281:2007, 5.1", "memory"),
    (life_revolutions, (22.4e3, 3.2e3), 343e6, 0.5e6, "catalogue worked example", "print"),
    (life_time, (22.4e3, 3.2e3, 650 * RPM), 8795 * 3600, 3600, "catalogue worked example", "print"),
    (required_rating, (2000.0, 60 * 1600 * 10000), 19730, 1, "catalogue example, 6206", "print"),
    (required_rating, (6080.0, 60 * 1000 * 10000), 51280, 1, "catalogue example", "print"),
    (life_revolutions, (29900.0, 2770.0), 1258e6, 1.3e6, "Faires, problem 601", "print"),
    (life_time, (29900.0, 2770.0, 1500 * RPM), 13974 * 3600, 14 * 3600, "Faires 601", "print"),
    (required_rating, (1.2 * 1.898e3, 540e6), 18.55e3, 5, "Shigley Ex. 11-1, plain life", "print"),
    (mean_load, LOAD_STEPS, 6067, 0.5, "textbook statement (30.7 kN), answer apart", "computed"),
    (life_time, (30.7e3, 6067.0, 1062 * RPM), 2033 * 3600, 3600, "the same statement", "computed"),
    (life_time, (7350.0, 3000.0, 720 * RPM), 340.4 * 3600, 0.1 * 3600, "textbook statement",
     "computed"),
    (equivalent_load, (200.0, 100.0, 1370.0, 12.4), 272.9, 0.05, "ISO 281 by script, 608",
     "computed"),
    (equivalent_load, (2000.0, 300.0, 11300.0, 14.0), 2000, 0.5, "catalogue example, Fa/Fr < e",
     "print"),
    (mean_load_of_ramp, (0.0, 3000.0), 2000, 0.5, "general bearing catalogues", "print"),
]
# fmt: on


@pytest.mark.parametrize(
    ("formula", "inputs", "expected", "tolerance", "source", "seen"),
    ROWS,
)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=0, abs=tolerance), (source, seen)


@pytest.mark.parametrize("ratio", [0.0, 0.401, math.nan])
def test_factor_says_nothing_outside_its_table(ratio):
    assert math.isnan(dynamic_factor(ratio))


def test_axial_load_past_the_table_has_no_equivalent_load():
    assert math.isnan(equivalent_load(100.0, 800.0, 1370.0, 12.4))


def test_mean_load_does_not_exceed_the_largest_and_ramp_is_close_to_the_cubic_mean():
    # Cubic mean over a linear climb, by fine steps (definition of the cubic mean).
    forces = np.linspace(0.0, 3000.0, 20001)
    exact = mean_load(forces, np.ones(1), np.ones(1))
    assert exact == pytest.approx(3000 / 4 ** (1 / 3), rel=1e-4)
    assert mean_load_of_ramp(0.0, 3000.0) == pytest.approx(exact, rel=0.06)


def test_unknown_travels():
    assert math.isnan(equivalent_load(200.0, math.nan, 1370.0, 12.4))
    assert np.isnan(life_revolutions(np.array([math.nan, 1.0]), 1.0)).tolist() == [True, False]
