"""ISO 286: standard tolerances, deviations and fits. `seen`: how each number reached this table."""

import itertools

import numpy as np
import pytest

from reviewer.mechanics.fits import fit_clearance, hole_limits, shaft_limits, standard_tolerance

TABLE_1 = "ISO 286-1 Table 1, as reprinted"
DEVIATIONS = "ISO 286-1 Tables 4 and 5, as reprinted"
TEXTBOOK = "ISO 286-1 Table 5, as reprinted in a machine drawing textbook (Table 15.2)"
UM = 1e-6

# fmt: off
GRADES = {  # at 8 and 12 mm
    6: (9, 11), 7: (15, 18), 8: (22, 27), 9: (36, 43), 10: (58, 70), 11: (90, 110), 12: (150, 180),
}
H_SHAFTS = {  # h5 to h9 of a table of shaft tolerances, a size in each step, mm
    2: (4, 6, 10, 14, 25), 5: (5, 8, 12, 18, 30), 8: (6, 9, 15, 22, 36), 12: (8, 11, 18, 27, 43),
    25: (9, 13, 21, 33, 52), 40: (11, 16, 25, 39, 62), 60: (13, 19, 30, 46, 74),
    100: (15, 22, 35, 54, 87),
}
STARTS = {  # lower deviation of m, n, p in each step, mm
    2: (2, 4, 6), 5: (4, 8, 12), 8: (6, 10, 15), 12: (7, 12, 18), 25: (8, 15, 22),
    40: (9, 17, 26), 60: (11, 20, 32), 100: (13, 23, 37),
}

ROWS = [
    *[(standard_tolerance, (d * 1e-3, grade), it * UM, TABLE_1, "print")
      for grade, pair in GRADES.items() for d, it in zip((8, 12), pair, strict=True)],
    *[(standard_tolerance, (d * 1e-3, 5), it * UM, "ISO 286-1 Table 1", "memory")
      for d, it in [(8, 6), (12, 8)]],
    *[(shaft_limits, (d * 1e-3, "h", grade), (0, -it * UM), "table of shaft tolerances, h", "print")
      for d, row in H_SHAFTS.items() for grade, it in zip(range(5, 10), row, strict=True)],
    *[(shaft_limits, (d * 1e-3, letter, grade), (up * UM, low * UM), DEVIATIONS, "print")
      for d, letter, grade, up, low in [
          (8, "h", 6, 0, -9), (12, "h", 6, 0, -11), (8, "g", 6, -5, -14), (12, "g", 6, -6, -17),
          (8, "f", 7, -13, -28), (12, "f", 7, -16, -34), (8, "k", 6, 10, 1), (12, "k", 6, 12, 1)]],
    *[(hole_limits, (d * 1e-3, grade), (it * UM, 0), DEVIATIONS, "print")
      for d, grade, it in [(8, 7, 15), (12, 7, 18), (8, 8, 22), (12, 8, 27)]],
    *[(fit_clearance, (d * 1e-3, letter, 6, 7), (least * UM, most * UM), "ISO 286 fits", "print")
      for d, letter, least, most in [
          (8, "h", 0, 24), (12, "h", 0, 29), (8, "g", 5, 29), (12, "g", 6, 35)]],
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, source, seen):
    assert formula(*inputs) == pytest.approx(expected, abs=1e-9), (source, seen)


@pytest.mark.parametrize("size", STARTS)
def test_tight_shafts_start_where_the_textbook_says(size):
    for letter, start in zip("mnp", STARTS[size], strict=True):
        assert shaft_limits(size * 1e-3, letter, 6).lower == pytest.approx(start * UM), TEXTBOOK


@pytest.mark.parametrize(("grade", "units"), [(6, 10), (7, 16), (8, 25), (9, 40), (10, 64)])
def test_tolerances_follow_the_units_of_the_standard(grade, units):
    """i = 0.45 D^(1/3) + 0.001 D, D the geometric mean of the step: within 6 % and rounding."""
    bounds = [3, 6, 10, 18, 30, 50, 80, 120]
    for low, high in itertools.pairwise(bounds):
        mean = (low * high) ** 0.5
        unit = 0.45 * np.cbrt(mean) + 0.001 * mean
        expected = pytest.approx(units * unit * UM, rel=0.06, abs=0.7 * UM)
        assert standard_tolerance(high * 1e-3, grade) == expected


def test_steps_are_up_to_and_including():
    assert standard_tolerance(10e-3, 7) == pytest.approx(15e-6)
    assert standard_tolerance(10.001e-3, 7) == pytest.approx(18e-6)
    assert np.isnan(standard_tolerance(np.array([0.0, 0.1201, np.nan]), 7)).all()


def test_symmetrical_and_coarse():
    assert tuple(shaft_limits(8e-3, "js", 7)) == pytest.approx((7.5e-6, -7.5e-6))
    assert shaft_limits(8e-3, "k", 8).lower == 0.0


def test_error_names_what_is_known():
    with pytest.raises(ValueError, match=r"deviation z is not here; known are f, g, h, js, k, m"):
        shaft_limits(8e-3, "z", 6)
    with pytest.raises(ValueError, match=r"grade IT13 is not here; known are IT5 to IT12"):
        hole_limits(8e-3, 13)
