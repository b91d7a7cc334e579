"""The disc by harmonics, against the same disc in closed form."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.polynomial import chebyshev

from reviewer.mechanics.disc import disc_deflection
from reviewer.mechanics.disc_series import cosine_sum, disc_harmonics

RADIUS = st.floats(0.31, 1.0)


@given(RADIUS, RADIUS, st.floats(0.0, np.pi), st.sampled_from([0.0, 0.1, 0.3]))
@settings(max_examples=60, deadline=None)
def test_the_series_is_the_disc(one, other, angle, hole):
    exact = disc_deflection(one, other, angle, 1.0, hole, 1.0, 0.3)
    series = cosine_sum(disc_harmonics(one, other, hole, 0.3), np.cos(angle))
    assert series == pytest.approx(exact, abs=4e-5)  # the largest value is 0.1


def test_away_from_the_force_it_is_closer():
    angle = np.linspace(0.2, np.pi, 50)
    exact = disc_deflection(0.8, 0.8, angle, 1.0, 0.0, 1.0, 0.3)
    series = cosine_sum(disc_harmonics(0.8, 0.8, 0.0, 0.3), np.cos(angle))
    assert series == pytest.approx(exact, abs=2e-6)


def test_the_first_factors_are_those_of_ring_loads():
    """The mean over a ring of forces, and twice its first harmonic."""
    turns = 2 * np.pi * np.arange(2000) / 2000
    around = disc_deflection(0.5, 0.9, turns, 1.0, 0.2, 1.0, 0.3)
    factors = disc_harmonics(0.5, 0.9, 0.2, 0.3)
    assert factors[0] == pytest.approx(around.mean(), abs=1e-9)
    assert factors[1] == pytest.approx(2 * (around * np.cos(turns)).mean(), abs=1e-9)


def test_one_at_a_time_and_together_agree_to_the_bit():
    one, other = np.array([0.35, 0.6, 1.0]), np.array([1.0, 0.6, 0.4])
    together = disc_harmonics(one, other, 0.3, 0.3)
    for k in range(3):
        assert np.array_equal(disc_harmonics(one[k], other[k], 0.3, 0.3), together[k])


@given(st.lists(st.floats(-5, 5), min_size=1, max_size=20), st.floats(-1, 1))
def test_sums_of_cosines_are_those_of_numpy(factors, cosine):
    expected = chebyshev.chebval(cosine, factors)
    assert cosine_sum(np.array(factors), cosine) == pytest.approx(expected, abs=1e-11)


def test_an_unknown_radius_leaves_it_unknown():
    assert np.isnan(disc_harmonics(np.nan, 0.5, 0.0, 0.3)).all()
