"""Bolts: limits, inverses and statics."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.bolt_assembly import assembly_torque
from reviewer.mechanics.bolt_limits import (
    bolt_bending_stress,
    bolt_slope,
    bolt_stiffness,
    pull_through,
    punching_load,
    washer_pressure,
)
from reviewer.mechanics.bolts import (
    least_preload,
    preload_from_torque,
    stress_area,
    thread_torque,
    tightening_factor,
    tightening_torque,
)
from reviewer.mechanics.threads import engagement_needed, thread_shear_areas


@given(st.floats(1.0, 1e5), st.floats(1e-3, 3e-2), st.floats(0.05, 0.5))
def test_torque_and_back(force, diameter, nut_factor):
    torque = tightening_torque(force, diameter, nut_factor)
    assert preload_from_torque(torque, diameter, nut_factor) == pytest.approx(force)


def test_without_friction_the_work_of_the_torque_raises_the_load():
    # One turn: 2 pi T = F times the lead (energy).
    assert thread_torque(1e3, 8e-3, 7.2e-3, 1.25e-3, 0.0, 0.0) * 2 * math.pi == pytest.approx(1.25)
    frictionless = assembly_torque(1e3, 8e-3, 1.25e-3, 0.0, 0.0, 12e-3, 9e-3)
    assert frictionless * 2 * math.pi == pytest.approx(1.25, rel=2e-3)


def test_scatter():
    assert least_preload(1.0, 0.3) * tightening_factor(0.3) == pytest.approx(1.3)
    assert math.isnan(tightening_factor(1.0))


def test_bolt_in_bending_by_the_beam_table():
    # Slope and deflection of a cantilever (Gere, appendix H) and shear F l / (kappa G A).
    force, span, diameter, modulus = 300.0, 0.2, 8e-3, 205e9
    inertia = math.pi * diameter**4 / 64
    assert bolt_stiffness(span, diameter) == pytest.approx(
        3 * modulus * inertia / span**3, rel=2e-3
    )
    slope = bolt_slope(force, span, diameter)
    assert slope == pytest.approx(force * span**2 / (2 * modulus * inertia))
    stress = bolt_bending_stress(force, span, diameter)
    assert stress == pytest.approx(force * span * diameter / 2 / inertia)
    area, shear = math.pi * diameter**2 / 4, modulus / 2.6
    assert bolt_stiffness(1e-4, diameter) == pytest.approx(6 / 7 * shear * area / 1e-4, rel=1e-3)


def test_washer():
    area = math.pi / 4 * (24**2 - 9**2) * 1e-6
    assert washer_pressure(1000.0, 24e-3, 9e-3) == pytest.approx(1000 / area)
    # EN 1995-1-1, 8.5.2(2): 3 f_c,90 over the washer's area.
    assert pull_through(24e-3, 9e-3, 4e6) == pytest.approx(12e6 * area)
    assert punching_load(24e-3, 9e-3, 3e6) == pytest.approx(3e6 * math.pi * 24e-3 * 9e-3)
    assert math.isnan(washer_pressure(1.0, 8e-3, 9e-3))
    assert math.isnan(pull_through(8e-3, 9e-3, 4e6))


def test_thread_areas_from_the_profile():
    """FED-STD-H28: pi n L Ds (1/2n + 0.57735 (Ds - En)) at the basic sizes of ISO 68-1."""
    diameter, pitch, length = 10e-3, 1.5e-3, 9e-3
    major, mean, minor = diameter, diameter - 0.649519 * pitch, diameter - 1.082532 * pitch
    internal = math.pi * length / pitch * major * (pitch / 2 + 0.57735 * (major - mean))
    external = math.pi * length / pitch * minor * (pitch / 2 + 0.57735 * (mean - minor))
    assert thread_shear_areas(diameter, pitch, length) == pytest.approx(
        (internal, external), rel=1e-3
    )


def test_engagement_is_that_of_the_thread_that_strips_first():
    soft = engagement_needed(1e4, 8e-3, 1.25e-3, 50e6, 400e6)
    assert thread_shear_areas(8e-3, 1.25e-3, soft).internal * 50e6 == pytest.approx(1e4)
    hard = engagement_needed(1e4, 8e-3, 1.25e-3, 900e6, 100e6)
    assert thread_shear_areas(8e-3, 1.25e-3, hard).external * 100e6 == pytest.approx(1e4)


def test_pitch_coarser_than_the_bolt():
    assert math.isnan(stress_area(1e-3, 2e-3))
