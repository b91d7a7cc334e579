"""Clamps against integrals of pressure and friction over the shaft, by scipy."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from reviewer.mechanics.clamp_forces import (
    cheek_closing_force,
    remaining_force,
    split_ring_closing_force,
)
from reviewer.mechanics.clamps import (
    COSINE,
    LINE,
    UNIFORM,
    clamp_torque,
    clamp_torques,
    cosine_factor,
    engagement_ratio,
    mean_pressure,
    peak_pressure,
    slip_demand,
    slotted_hub_grip,
    uniform_factor,
)


@pytest.mark.parametrize("half_angle", [0.1, 0.7, 1.2, math.pi / 2])
@pytest.mark.parametrize(
    ("factor", "pressure"), [(cosine_factor, math.cos), (uniform_factor, lambda t: 1.0)]
)
def test_factor_is_friction_over_grip(factor, pressure, half_angle):
    friction, _ = integrate.quad(pressure, -half_angle, half_angle)
    grip, _ = integrate.quad(lambda t: pressure(t) * math.cos(t), -half_angle, half_angle)
    assert factor(half_angle) == pytest.approx(friction / grip)


def test_factors_end_at_the_constants_and_say_nothing_past_a_half():
    assert cosine_factor(1e-6) == pytest.approx(LINE)
    assert cosine_factor(math.pi / 2) == pytest.approx(COSINE)
    assert uniform_factor(math.pi / 2) == pytest.approx(UNIFORM)
    assert math.isnan(uniform_factor(1.6))


@pytest.mark.parametrize("half_angle", [0.3, 1.0, math.pi / 2])
def test_peak_pressure_carries_the_grip(half_angle):
    peak = peak_pressure(1e4, 20e-3, 25e-3, half_angle)
    grip, _ = integrate.quad(
        lambda t: peak * math.cos(t) ** 2 * 10e-3 * 25e-3, -half_angle, half_angle
    )
    assert grip == pytest.approx(1e4)
    assert mean_pressure(1e4, 20e-3, 25e-3) == pytest.approx(1e4 / (20e-3 * 25e-3))


@given(st.floats(0, 1e5), st.floats(1e-3, 0.1), st.floats(0, 1))
def test_torques_are_in_order_of_the_factors(grip, diameter, friction):
    line, cosine, uniform = clamp_torques(grip, diameter, friction)
    assert line <= cosine <= uniform
    assert line == clamp_torque(grip, diameter, friction)


def test_slotted_hub_by_moments():
    grip = slotted_hub_grip(10e3, 36e-3, 18e-3)
    assert grip * 18e-3 == pytest.approx(10e3 * 36e-3)


def test_cheek_is_a_cantilever():
    force = cheek_closing_force(70e9, 25e-3, 8e-3, 30e-3, 0.1e-3)
    inertia = 25e-3 * 8e-3**3 / 12
    assert force * 30e-3**3 / (3 * 70e9 * inertia) == pytest.approx(0.1e-3)
    assert math.isnan(cheek_closing_force(70e9, 25e-3, 8e-3, 1e-3, 0.5e-3))


def test_split_ring_by_castigliano():
    modulus, length, wall, radius, force = 70e9, 15e-3, 5e-3, 14e-3, 127.0
    inertia = length * wall**3 / 12
    opening, _ = integrate.quad(
        lambda t: force * radius**3 * (1 - math.cos(t)) ** 2 / (modulus * inertia), 0, 2 * math.pi
    )
    assert split_ring_closing_force(modulus, length, wall, radius, opening) == pytest.approx(force)
    assert math.isnan(split_ring_closing_force(modulus, length, 8e-3, radius, opening))


def test_remaining_force():
    assert remaining_force(10e3, 8e3, 0.3, 0.0) == 0.0
    assert remaining_force(10e3, 1e3, 0.3, 0.5) == pytest.approx(3000)
    assert remaining_force(np.array([math.nan, 1e3]), 0.0, 0.0)[1] == 1e3
    assert math.isnan(remaining_force(10e3, 0.0, 1.2))


def test_friction_serves_torque_and_axial_force_together():
    assert slip_demand(3.0, 400.0, 20e-3) == pytest.approx(5.0)
    assert slip_demand(0.0, 400.0, 20e-3) == pytest.approx(400 * 10e-3)
    assert engagement_ratio(30e-3, 20e-3) == 1.5
