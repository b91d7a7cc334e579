"""Profiles and levers against numpy's interpolation and scipy's integration and search."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import minimize_scalar

from reviewer.mechanics.lever_travel import lever_travel
from reviewer.mechanics.profiles import profile_height, profile_slopes

steps = st.lists(st.tuples(st.floats(0.001, 0.2), st.floats(-0.1, 0.1)), min_size=1, max_size=8)


def profile(found):
    travel = np.concatenate([[0.0], np.cumsum([step for step, _ in found])])
    height = np.concatenate([[0.0], np.cumsum([rise for _, rise in found])])
    return travel, height


@given(steps, st.lists(st.floats(0.0, 1.0), min_size=1, max_size=5))
def test_height_is_linear_interpolation(found, shares):
    travel, height = profile(found)
    at = np.array(shares) * travel[-1]
    assert profile_height(at, travel, height) == pytest.approx(
        np.interp(at, travel, height), abs=1e-12
    )


@given(steps, st.floats(0.001, 0.999))
def test_slopes_add_up_to_the_height(found, share):
    travel, height = profile(found)
    at = share * travel[-1]
    points = sorted(each for each in travel if 0 < each < at)
    rise, _ = quad(
        lambda x: float(profile_slopes(x, travel, height).after), 0.0, at, points=points, limit=200
    )
    assert rise == pytest.approx(float(np.interp(at, travel, height)), abs=1e-6)


@pytest.mark.parametrize("at", [-0.001, 0.301])
def test_beside_the_profile_nothing_is_known(at):
    travel, height = np.array([0.0, 0.1, 0.3]), np.array([0.0, 0.02, 0.02])
    assert np.isnan(profile_height(at, travel, height))
    assert np.isnan(profile_slopes(at, travel, height).before)


@given(st.floats(-1.4, 1.4), st.floats(-1.4, 1.4), st.floats(-0.1, 0.1), st.floats(0.0, 5.0))
def test_the_hardest_place_of_a_lever(start, end, bend, friction):
    def force(angle):
        return (400 * 0.05 * np.cos(angle) + friction) / (0.4 * np.cos(angle + bend))

    low, high = min(start, end), max(start, end)
    found = minimize_scalar(lambda angle: -force(angle), bounds=(low, high), method="bounded")
    hardest = max(force(low), force(high), force(found.x) if high > low else 0.0)
    peak = lever_travel(400.0, 0.05, 0.4, start, end, bend, 1.0, friction).peak_force
    assert peak == pytest.approx(hardest, rel=1e-4)
