"""ISO 13854, ISO 13857 and furniture gaps. `seen` says how each number reached this table."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.gaps import (
    BANDS,
    band_margin,
    forbidden_band,
    least_gap,
    swept_band_margin,
)
from reviewer.mechanics.reach import reach_distance

# fmt: off
GAPS = {"body": 500, "head": 300, "leg": 180, "foot": 120, "toes": 50, "arm": 120, "hand": 100,
        "finger": 25}
ADULT = "ISO 13857 Table 4, as reprinted"
STRICTER = "ISO 13857 Table 4, the stricter of two reprints"
CHILD = "ISO 13857:2019 Table 5"

# opening, slot, square, round in mm; the stricter reprint is marked in the row
ADULTS = [
    (4, 2, 2, 2), (6, 10, None, 5), (8, 20, 15, None), (10, 80, 25, 20), (12, 100, 80, 80),
    (20, 120, 120, 120), (30, 850, 120, 120), (40, 850, 200, None), (120, 850, 850, 850),
]
CHILDREN = [
    (4, 2, 2, 2), (6, 20, 10, 10), (8, 40, 30, 20), (10, 80, 60, 60), (12, 100, 80, 80),
    (20, 900, 120, 120), (30, 900, 550, 120), (40, 900, 900, 900), (100, 900, 900, 900),
]
SHAPES = ("slot", "square", "round")


def reach_rows(table, age, source, seen):
    return [(reach_distance, (e * 1e-3, shape, age), reach * 1e-3, source, seen)
            for e, *row in table for shape, reach in zip(SHAPES, row, strict=True)
            if reach is not None]


ROWS = [
    *[(least_gap, (part,), gap * 1e-3, "ISO 13854 (EN 349) Table 1, as reprinted", "print")
      for part, gap in GAPS.items()],
    *reach_rows(ADULTS, "adult", ADULT, "print"),
    *reach_rows(CHILDREN, "child", CHILD, "memory"),
    *[(reach_distance, (e * 1e-3, shape, "adult"), reach * 1e-3, STRICTER, "print")
      for e, shape, reach in [(5, "square", 10), (7, "round", 15), (35, "round", 200)]],
    (reach_distance, (25e-3, "slot", "adult", 65e-3), 0.200, ADULT, "print"),
    (reach_distance, (25e-3, "slot", "adult", 66e-3), 0.850, ADULT, "print"),
    (reach_distance, (15e-3, "slot", "child", 40e-3), 0.120, CHILD, "memory"),
    (forbidden_band, ("EN 581-1",), (0.007, 0.018), "EN 581-1, definition and 5.3", "print"),
    (forbidden_band, ("EN 581-1 hole",), (0.007, 0.012), "EN 581-1:2017, 5.2", "print"),
    (forbidden_band, ("EN 527-2",), (0.008, 0.025), "EN 527-2, EN 14749", "print"),
    (forbidden_band, ("GB 28007",), (0.005, 0.012), "GB 28007-2011", "print"),
    (forbidden_band, ("GB 28007 hole",), (0.006, 0.012), "GB 28007-2011", "print"),
    (forbidden_band, ("CEN/TR 13387 hole",), (0.005, 0.012), "CEN/TR 13387", "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, source, seen):
    assert formula(*inputs) == pytest.approx(expected, abs=1e-12), (source, seen)


def test_family_band_is_the_union_of_the_bands_between_moving_parts():
    moving = [band for name, band in BANDS.items() if "hole" not in name and name != "family"]
    family = forbidden_band("family")
    assert family == (min(low for low, _ in moving), max(high for _, high in moving))


def test_reach_ends_with_its_table_and_works_on_arrays():
    openings = np.array([0.010, 0.121, math.nan, 0.0])
    reach = reach_distance(openings, "slot", "adult")
    assert reach[0] == pytest.approx(0.080)
    assert np.isnan(reach[1:]).all()
    assert math.isnan(reach_distance(0.101, "round", "child"))


@given(st.floats(1e-4, 0.1), st.floats(1e-4, 0.1), st.sampled_from(SHAPES))
def test_a_wider_opening_never_asks_for_less_distance(first, second, shape):
    narrow, wide = sorted([first, second])
    for age in ("adult", "child"):
        assert reach_distance(narrow, shape, age) <= reach_distance(wide, shape, age)


@given(st.floats(0, 0.05), st.floats(0, 0.05))
def test_swept_margin_is_the_worst_on_the_way_or_passes_through(first, second):
    least, largest = sorted([first, second])
    lower, upper = forbidden_band("EN 581-1")
    way = np.linspace(least, largest, 2001)
    touched = np.any((way > lower + 1e-4) & (way < upper - 1e-4))
    margin = swept_band_margin(least, largest, lower, upper)
    if touched:
        assert margin < 0
    if margin >= 0:
        assert np.all(band_margin(way, lower, upper) >= -1e-12)


def test_margins():
    assert band_margin(0.010, 0.007, 0.018) == pytest.approx(-0.003)
    assert swept_band_margin(0.002, 0.050, 0.007, 0.018) < 0
    assert math.isnan(band_margin(math.nan, 0.007, 0.018))
    assert math.isnan(band_margin(0.010, 0.018, 0.007))


def test_error_names_what_is_known():
    with pytest.raises(ValueError, match=r"part of the body nose is not here; known are body, he"):
        least_gap("nose")
    with pytest.raises(ValueError, match=r"rule mine is not here; known are EN 581-1, EN 527-2"):
        forbidden_band("mine")
    with pytest.raises(ValueError, match=r"opening star for adult is not here; known are slot"):
        reach_distance(0.01, "star", "adult")
