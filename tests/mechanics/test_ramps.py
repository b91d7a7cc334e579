"""Ramps, screws, followers, levers and eccentrics against energy and searched equilibrium."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from reviewer.mechanics.followers import (
    drop_into_gap,
    eccentric_lock_margin,
    eccentric_rise,
    edge_force,
    holding_force,
    lever_hand_force,
    rolling_force,
    slopes_of_profile,
)
from reviewer.mechanics.ramps import (
    lowering_force,
    raising_force,
    ramp_efficiency,
    self_locking_margin,
    wedge_force,
    wedge_force_at_wall,
    wedge_force_sideways,
)
from reviewer.mechanics.screws import screw_torque


@given(st.floats(0.01, 0.7), st.floats(0.01, 0.6))
def test_push_balances_normal_force_and_friction(angle, friction):
    """Equilibrium of a block on a ramp, as two equations for normal force and push."""
    cos, sin = math.cos(angle), math.sin(angle)
    for sign, formula in [(1, raising_force), (-1, lowering_force)]:
        matrix = np.array([[cos - sign * friction * sin, 0], [sin + sign * friction * cos, -1]])
        push = np.linalg.solve(matrix, [1.0, 0.0])[1]
        assert formula(1.0, angle, friction) == pytest.approx(sign * push, abs=1e-12)


@given(st.floats(0.01, 0.7), st.floats(0.01, 0.6))
def test_a_ramp_that_locks_wastes_more_than_half(angle, friction):
    if self_locking_margin(angle, friction) > 0:
        assert ramp_efficiency(angle, friction) < 0.5
        assert lowering_force(1.0, angle, friction) > 0


def test_screw_is_a_ramp_around_an_axis():
    mean, lead, friction = 30e-3, 8e-3, 0.15
    angle = math.atan(lead / (math.pi * mean))
    screw = screw_torque(1e3, mean, lead, friction)
    assert screw.raising == pytest.approx(raising_force(1e3, angle, friction) * mean / 2)
    assert screw.lowering == pytest.approx(lowering_force(1e3, angle, friction) * mean / 2)
    assert screw.efficiency == pytest.approx(ramp_efficiency(angle, friction))


def test_wedge_at_a_wall_by_equilibrium_of_both_bodies():
    angle, friction = math.radians(10), 0.3
    cos, sin = math.cos(angle), math.sin(angle)
    # Unknown: push, normal forces on the slope, at the wall and on the ground. Rows: load across
    # and up, wedge along and up.
    matrix = np.array(
        [
            [0, sin + friction * cos, -1, 0],
            [0, cos - friction * sin, -friction, 0],
            [1, -(sin + friction * cos), 0, -friction],
            [0, -(cos - friction * sin), 0, 1],
        ]
    )
    push = np.linalg.solve(matrix, [0, 1, 0, 0])[0]
    assert wedge_force_at_wall(1.0, angle, friction) == pytest.approx(push)


def test_too_steep_jams():
    assert math.isnan(raising_force(1.0, math.radians(80), 0.2))
    assert math.isnan(wedge_force(1.0, math.radians(80), 0.2, 0.0))
    assert math.isnan(wedge_force_at_wall(1.0, math.radians(60), 0.3))
    assert math.isnan(wedge_force_sideways(1.0, math.radians(80), 0.3, 0.6))
    assert math.isnan(screw_torque(1.0, 1e-3, 1.0, 0.2).raising)
    assert math.isnan(ramp_efficiency(math.radians(80), 0.2))


def test_work_over_a_profile_is_the_load_lifted():
    travel = np.linspace(0, 0.1, 2001)
    height = 0.02 * (1 - np.cos(np.pi * travel / 0.1)) / 2
    slope = slopes_of_profile(travel, height)
    work = np.sum(rolling_force(400.0, slope) * np.diff(travel))
    assert work == pytest.approx(400 * 0.02, rel=1e-9)


@given(st.floats(0.001, 1.0), st.floats(0.0, 0.02))
def test_a_rolling_follower_never_locks_on_a_slope(slope, coefficient):
    held = holding_force(100.0, slope, coefficient)
    assert (held > 0) == (slope > coefficient)
    if slope > coefficient:
        assert held == pytest.approx(-rolling_force(100.0, -slope, coefficient))


def test_profile_that_does_not_advance_is_unknown():
    assert np.isnan(slopes_of_profile(np.array([0.0, 0.0, 1.0]), np.zeros(3))).tolist() == [
        True,
        False,
    ]


def test_edge_by_the_work_of_climbing_it():
    """Force over the travel of the axle on its arc about the edge: the load times the height."""
    load, radius, height = 400.0, 14e-3, 2e-3
    way = math.sqrt(height * (2 * radius - height))

    def force(x):
        left = radius - math.sqrt(radius**2 - x**2)
        return edge_force(load, radius, left)

    work, _ = integrate.quad(force, 0, way)
    assert work == pytest.approx(load * height, rel=1e-6)
    assert math.isnan(edge_force(load, radius, radius))


def test_drop_into_a_gap():
    drop = drop_into_gap(14e-3, 6e-3)
    assert 0 < drop < 3e-3
    assert (14e-3 - drop) ** 2 + 3e-3**2 == pytest.approx(14e-3**2)
    assert math.isnan(drop_into_gap(1e-3, 2.1e-3))


def test_eccentric_in_every_position():
    """Moments about the pivot: the offset of the contact against friction at its height."""
    radius, friction = 20e-3, 0.12
    largest = radius * math.sin(math.atan(friction))
    angles = np.linspace(0, 2 * np.pi, 3601)
    spring_back = largest * np.sin(angles) - friction * (radius - largest * np.cos(angles))
    assert spring_back.max() == pytest.approx(0, abs=1e-8)
    assert eccentric_lock_margin(largest, radius, friction) == pytest.approx(0, abs=2e-5)
    assert eccentric_lock_margin(1e-3, radius, 0.0, 5e-3, 0.2) == pytest.approx(0)
    assert eccentric_rise(2e-3, math.pi) == pytest.approx(4e-3)


def test_lever_by_virtual_work():
    """Arms on a pivot, load upwards: hand's work equals the load's over a small turn."""
    load, short, long, angle, turn = 400.0, 0.04, 0.40, 0.7, 1e-6
    rise = short * (math.sin(angle + turn) - math.sin(angle))
    expected = load * rise / (long * turn)
    assert lever_hand_force(load, short, long, angle) == pytest.approx(expected, rel=1e-5)
    assert lever_hand_force(0.0, short, long, 0.0, math.radians(60), 2.0) == pytest.approx(10.0)
    assert math.isnan(lever_hand_force(load, short, long, 0.0, math.pi / 2))
