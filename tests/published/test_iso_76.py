"""ISO 76: static ratings of ball bearings. `seen` says how each number reached this table."""

import math

import pytest

from reviewer.mechanics.bearings import (
    ball_ratio,
    pure_axial_limit,
    static_equivalent_load,
    static_factor,
    static_rating,
    static_safety,
)

TABLE_1 = "ISO 76:2006 Table 1, as reprinted (one reprint has a slip, 15.7, at 0.06)"
CATALOGUES = "general bearing catalogues, printed rating"

# fmt: off
FACTORS = [
    14.7, 14.9, 15.1, 15.3, 15.5, 15.7, 15.9, 16.1, 16.3, 16.5, 16.4, 16.1, 15.9, 15.6,
    15.4, 15.2, 14.9, 14.7, 14.4, 14.2, 14.0, 13.7, 13.5, 13.2, 13.0, 12.8, 12.5, 12.3,
    12.1, 11.8, 11.6, 11.4, 11.2, 10.9, 10.7, 10.5, 10.3, 10.0, 9.8, 9.6, 9.4,
]

ROWS = [
    *[(static_factor, (i / 100,), f0, 0.051, TABLE_1, "print") for i, f0 in enumerate(FACTORS)],
    (static_factor, (ball_ratio(3.969e-3, 15e-3),), 12.41, 0.01, "ISO 76 by script, 608",
     "computed"),
    (static_rating, (7, 3.969e-3, 15e-3), 1376, 14, f"{CATALOGUES}, 608 1.37 to 1.383 kN", "print"),
    (static_rating, (7, 4.762e-3, 18e-3), 1960, 26, f"{CATALOGUES}, 6000, balls", "memory"),
    (static_rating, (8, 4.762e-3, 20e-3), 2390, 31, f"{CATALOGUES}, 6001, balls", "memory"),
    (static_rating, (7, 5.953e-3, 22e-3), 3050, 40, f"{CATALOGUES}, 6201, balls", "memory"),
    (static_rating, (9, 2.381e-3, 12e-3), 716, 1, "ISO 76 by script, 688", "computed"),
    (static_equivalent_load, (200.0, 100.0), 200, 0, "ISO 76:2006, 5.2, as reprinted", "print"),
    (static_equivalent_load, (100.0, 400.0), 260, 1e-9, "ISO 76:2006, 5.2, as reprinted", "print"),
    (static_safety, (1370.0, 200.0), 6.85, 0.005, "ISO 76 by script, 608", "computed"),
    (pure_axial_limit, (1370.0, 8e-3), 342.5, 0, "general bearing catalogues", "print"),
    (pure_axial_limit, (11300.0, 30e-3), 5650, 0, "general bearing catalogues, 6206", "print"),
    (pure_axial_limit, (1000.0, 12e-3), 250, 0, "general bearing catalogues", "print"),
    (pure_axial_limit, (1000.0, 12.5e-3), 500, 0, "general bearing catalogues", "print"),
    (static_rating, (7, 3.969e-3, 15e-3, 0.0, 2), 2752, 28, "ISO 76:2006, 5.1: i rows", "print"),
    (pure_axial_limit, (11300.0, 30e-3, 1), 2825, 0, "general bearing catalogues", "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=1e-12, abs=tolerance), (source, seen)


def test_rating_says_nothing_for_a_ball_ratio_outside_the_table():
    assert math.isnan(static_rating(7, 7e-3, 15e-3))
    assert math.isnan(static_factor(0.41))


def test_unknown_axial_load_makes_the_equivalent_load_unknown():
    assert math.isnan(static_equivalent_load(200.0, math.nan))
