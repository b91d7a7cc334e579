"""Rings of rollers against plain geometry, searched, and friction integrated by scipy."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize

from reviewer.mechanics.ring_edges import gap_after_swelling, path_clearance, run_out, side_gap_left
from reviewer.mechanics.ring_loads import hand_force, peak_roller_load, turning_torque
from reviewer.mechanics.rings import (
    lateral_play,
    rim_play,
    roller_chord,
    roller_gap,
    stack_height,
    tilt_from_gaps,
)


def circle(count, radius, start=0.0):
    angles = start + 2 * np.pi * np.arange(count) / count
    return radius * np.cos(angles), radius * np.sin(angles)


@pytest.mark.parametrize("count", [3, 5, 10])
def test_chord_is_the_distance_of_two_neighbours(count):
    x, y = circle(count, 0.23)
    assert roller_chord(0.46, count) == pytest.approx(math.hypot(x[1] - x[0], y[1] - y[0]))
    assert roller_gap(0.46, count, 0.03) == pytest.approx(roller_chord(0.46, count) - 0.03)


@pytest.mark.parametrize(("carry", "hold", "start"), [(10, 5, 0.0), (4, 4, 0.0), (6, 3, math.pi)])
def test_tilt_is_the_largest_that_linear_programming_finds(carry, hold, start):
    """A rigid plate z = a + b x + c y, above every carrier and below every hold-down."""
    gap, carry_radius, hold_radius = 0.2e-3, 0.23, 0.25
    xc, yc = circle(carry, carry_radius)
    xh, yh = circle(hold, hold_radius, start)
    rows = np.block(
        [
            [-np.ones((carry, 1)), -xc[:, None], -yc[:, None]],
            [np.ones((hold, 1)), xh[:, None], yh[:, None]],
        ]
    )
    limits = np.concatenate([np.zeros(carry), np.full(hold, gap)])
    best = 0.0
    for direction in np.linspace(0, 2 * np.pi, 721):
        aim = -np.array([0, math.cos(direction), math.sin(direction)])
        found = optimize.linprog(aim, rows, limits, bounds=[(None, None)] * 3)
        best = max(best, -found.fun)
    bound = tilt_from_gaps(gap, 0.0, 2 * carry_radius, carry, 2 * hold_radius, hold)
    assert best <= bound * (1 + 1e-6)
    assert best >= 0.85 * bound  # the bound is met where gaps face gaps, and near elsewhere


def test_tilt_of_equal_circles_is_the_gap_over_the_circle():
    tilt = tilt_from_gaps(0.1e-3, 0.1e-3, 0.46, 400, 0.46, 400)
    assert tilt == pytest.approx(0.2e-3 / 0.46, rel=1e-4)


def test_rim_goes_down_here_and_up_there():
    play = rim_play(1e-3, 0.6, 0.46, 4)
    pivot = 0.23 * math.cos(math.pi / 4)
    assert play == pytest.approx((1e-3 * (0.6 - pivot), 1e-3 * (0.6 + pivot)))
    assert play.sink + play.rise == pytest.approx(2 * 1e-3 * 0.6)
    assert np.isnan(rim_play(1e-3, 0.6, 0.46, 2)).all()


@pytest.mark.parametrize("count", [3, 4, 5, 8])
def test_lateral_play_is_the_corner_of_the_polygon(count):
    x, y = circle(count, 1.0)
    rows = np.column_stack([x, y])
    reach = 0.0
    for direction in np.linspace(0, 2 * np.pi, 720 * count + 1):
        aim = -np.array([math.cos(direction), math.sin(direction)])
        reach = max(reach, 1.0 / np.max(rows @ -aim))
    assert lateral_play(1e-4, count) == pytest.approx(1e-4 * reach, rel=1e-5)


def test_stack():
    parts = (28e-3, 18.3e-3, 26e-3, 0.15e-3, 2e-3)
    assert stack_height(*parts) == pytest.approx(sum(parts))


def test_edges():
    assert run_out(0.1e-3, 0.05e-3) == pytest.approx(0.25e-3)
    # An eccentric circle seen from its axis of turning: largest less least radius.
    angles = np.linspace(0, 2 * np.pi, 10001)
    radii = np.abs(0.28 * np.exp(1j * angles) + 0.1e-3)
    assert radii.max() - radii.min() == pytest.approx(run_out(0.1e-3), rel=1e-6)
    assert side_gap_left(0.2e-3, 0.25e-3) == pytest.approx(0.075e-3)
    assert gap_after_swelling(0.15e-3, 18e-3, -0.01) == pytest.approx(0.33e-3)
    assert path_clearance(0.26, 7e-3, 0.23, 4e-3) == pytest.approx(19e-3)
    assert path_clearance(0.23, 7e-3, 0.23, 4e-3) == pytest.approx(-11e-3)


def test_spin_is_friction_integrated_along_the_roller():
    load, length, friction = 500.0, 8e-3, 0.3
    moment, _ = integrate.quad(
        lambda x: friction * load / length * abs(x), -length / 2, length / 2, points=[0]
    )
    torque = turning_torque(load, 0.23, 0.014, 0.0, 0.012, 0.0, length, friction, 0.0)
    assert torque.spin == pytest.approx(moment)
    assert torque.total == pytest.approx(moment)


def test_torque_by_the_work_of_a_turn():
    """In one turn the roller rolls 2 pi R: work of its bearing, of the track and of sliding."""
    load, circle_radius, roller_radius = 500.0, 0.23, 0.014
    turns = circle_radius / roller_radius
    torque = turning_torque(
        load, circle_radius, roller_radius, 0.004, 0.012, 0.0015, 0.0, 0.3, 0.02
    )
    assert torque.bearing == pytest.approx(0.5 * 0.0015 * load * 0.012 * turns)
    assert torque.rolling == pytest.approx(0.004 * load * circle_radius)
    assert torque.toe_in == pytest.approx(0.3 * load * math.sin(0.02) * circle_radius)
    assert torque.total == pytest.approx(sum(torque[:4]))
    assert hand_force(torque.total, 0.6) == pytest.approx(torque.total / 0.6)


@given(st.floats(0.0, 0.5), st.integers(3, 16))
def test_peak_load_by_equal_springs(ratio, count):
    """Loads k (a + b x) of a rigid plate on equal springs, solved as a 2 x 2 system."""
    x, _ = circle(count, 2.0)
    matrix = np.array([[count, x.sum()], [x.sum(), (x * x).sum()]])
    a, b = np.linalg.solve(matrix, [1.0, 2 * ratio])
    assert peak_roller_load(1.0, 2 * ratio, 2.0, count) == pytest.approx(
        (a + b * x).max(), abs=1e-9
    )


def test_peak_load_says_nothing_once_a_roller_lifts_off():
    assert math.isnan(peak_roller_load(600.0, 80.0, 0.23, 6))
    assert peak_roller_load(600.0, -60.0, 0.23, 6) == peak_roller_load(600.0, 60.0, 0.23, 6)
    assert math.isnan(peak_roller_load(600.0, math.nan, 0.23, 6))
