"""Runs of slots: the spiral of Archimedes with its slope by numpy, a line past the axis."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.geometry.slot_run import beside, middle_line

INNER, OUTER = 0.16, 0.26


@given(st.floats(0.2, 2.5))
def test_a_spiral_grows_with_its_angle_and_goes_on_along_itself(turn):
    """dr/da is constant; the direction is the slope that numpy takes of the places."""
    steps = middle_line(INNER, OUTER, turn, None, 400)
    x, y = np.array([each.place for each in steps]).T
    angle = np.unwrap(np.arctan2(y, x))
    assert np.hypot(x, y) == pytest.approx(INNER + (OUTER - INNER) * angle / turn, abs=1e-9)
    slope = np.arctan2(np.gradient(y), np.gradient(x))[2:-2]
    way = np.array([each.way for each in steps])[2:-2]
    assert np.cos(slope - way) == pytest.approx(np.ones(len(way)), abs=1e-6)


@given(st.floats(0.0, 0.155))
def test_a_straight_slot_passes_the_axis_at_its_distance(distance):
    first, last = middle_line(INNER, OUTER, math.nan, distance, 24)
    assert math.hypot(*first.place) == pytest.approx(INNER)
    assert math.hypot(*last.place) == pytest.approx(OUTER)
    (x1, y1), (x2, y2) = first.place, last.place
    from_axis = abs(x1 * y2 - x2 * y1) / math.dist(first.place, last.place)
    assert from_axis == pytest.approx(distance, abs=1e-9)


@given(st.floats(0.2, 2.5), st.floats(0.001, 0.03))
def test_sides_are_square_to_the_run(turn, aside):
    steps = middle_line(INNER, OUTER, turn, None, 50)
    for step, place in zip(steps, beside(steps, aside), strict=True):
        (x, y), (p, q) = step.place, place
        assert math.dist((x, y), (p, q)) == pytest.approx(aside)
        along = (p - x) * math.cos(step.way) + (q - y) * math.sin(step.way)
        assert along == pytest.approx(0.0, abs=1e-12)
