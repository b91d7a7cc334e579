"""Contact formulas against integrals by scipy and against each other's limits."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize, special

from reviewer.mechanics.bearings import static_factor
from reviewer.mechanics.contact import contact_modulus, effective_radius, line_contact
from reviewer.mechanics.contact import point_contact as point
from reviewer.mechanics.contact_yield import (
    line_force_at_pressure,
    line_shakedown_force,
    line_shear,
    line_yield_force,
    point_yield_force,
)
from reviewer.mechanics.elliptical import elliptical_contact
from reviewer.mechanics.rollers import radial_approach
from reviewer.mechanics.track import (
    bed_contact,
    dent,
    rolling_coefficient,
    rut_resistance,
    secant_stiffness,
    track_approach,
)

BALL_STEEL = contact_modulus(207e9, 0.3, 207e9, 0.3)


def hertz_ellipse(force, larger, smaller, modulus):
    """Johnson 4.25 to 4.28 with scipy's elliptic integrals and root finder."""

    def ratio(narrowness):
        square = 1 - narrowness**2
        first, second = special.ellipk(square), special.ellipe(square)
        return (second / narrowness**2 - first) / (first - second) - larger / smaller

    narrowness = optimize.brentq(ratio, 1e-5, 1 - 1e-7, xtol=1e-15)
    square = 1 - narrowness**2
    first, second = special.ellipk(square), special.ellipe(square)
    long = (3 * force * larger * (first - second) / (math.pi * modulus * square)) ** (1 / 3)
    short = long * narrowness
    return (
        long,
        short,
        1.5 * force / (math.pi * long * short),
        1.5 * force * first / (math.pi * long * modulus),
    )


@pytest.mark.parametrize("larger", [1.01, 1.5, 4.0, 30.0, 500.0, 9000.0])
def test_ellipse_against_scipy(larger):
    expected = hertz_ellipse(100.0, larger * 1e-3, 1e-3, 100e9)
    assert elliptical_contact(100.0, larger * 1e-3, 1e-3, 100e9) == pytest.approx(
        expected, rel=1e-8
    )
    turned = elliptical_contact(100.0, 1e-3, larger * 1e-3, 100e9)
    assert (turned.second_half_width, turned.first_half_width) == pytest.approx(
        expected[:2], rel=1e-8
    )


def test_ellipse_of_equal_radii_is_the_circle():
    ellipse, circle = elliptical_contact(50.0, 4e-3, 4e-3, 1e11), point(50.0, 4e-3, 1e11)
    assert tuple(ellipse) == pytest.approx((circle.radius, *circle), rel=1e-12)


def test_no_load_no_pressure_and_unknown_load_unknown():
    assert tuple(elliptical_contact(0.0, 2e-3, 1e-3, 1e11)) == (0, 0, 0, 0)
    assert tuple(point(0.0, 1e-3, 1e11)) == (0, 0, 0)
    assert np.isnan(elliptical_contact(math.nan, 2e-3, 1e-3, 1e11)).all()
    assert np.isnan(line_contact(-1.0, 1e-3, 1e-3, 1e11)).all()
    assert np.isnan(point(1.0, 0.0, 1e11)).all()


@pytest.mark.parametrize("ratio", [0.05, 0.1, 0.16, 0.24, 0.32, 0.40])
def test_static_factor_is_hertz_at_4200_megapascals(ratio):
    """ISO 76's f0 is the load at which the busiest ball, 5 C0/Z, presses with 4200 MPa."""
    diameter, pitch = 1e-3 * 10, 1e-3 * 10 / ratio
    ball = diameter / 2
    capacities = []
    for race, groove in [((pitch - diameter) / 2, 0.52), (-(pitch + diameter) / 2, 0.53)]:
        rolling = effective_radius(ball, race)
        across = effective_radius(ball, -groove * diameter)
        pressure = elliptical_contact(1.0, across, rolling, BALL_STEEL).pressure
        capacities.append((4200e6 / pressure) ** 3 / 5)
    assert static_factor(ratio) == pytest.approx(min(capacities) / 1e2, abs=0.06)


@pytest.mark.parametrize("load", [50.0, 200.0, 1000.0])
def test_give_of_a_bearing_against_hertz_in_both_grooves(load):
    """Palmgren's constant stands for groove radii of about 0.52 Dw: within 10 %."""
    diameter, pitch, busiest = 3.969e-3, 15e-3, 5 * load / 7
    approach = 0.0
    for race in [(pitch - diameter) / 2, -(pitch + diameter) / 2]:
        rolling = effective_radius(diameter / 2, race)
        across = effective_radius(diameter / 2, -0.52 * diameter)
        approach += elliptical_contact(busiest, across, rolling, BALL_STEEL).approach
    assert radial_approach(load, 7, diameter) == pytest.approx(approach, rel=0.10)


def test_shear_peaks_where_johnson_says():
    found = optimize.minimize_scalar(lambda s: -line_shear(s, 1.0, 1.0), (0.1, 0.8, 3.0))
    assert found.x == pytest.approx(0.786, abs=5e-4)
    assert -found.fun == pytest.approx(0.300, abs=5e-4)


@given(st.floats(1e6, 1e9), st.floats(1e-3, 1e-1), st.floats(1e-3, 1.0), st.floats(1e8, 1e12))
def test_yield_forces_give_back_the_pressure(strength, length, radius, modulus):
    line = line_yield_force(strength, length, radius, modulus)
    assert line_contact(line, length, radius, modulus).pressure == pytest.approx(1.67 * strength)
    ball = point_yield_force(strength, radius, modulus)
    assert point(ball, radius, modulus).pressure == pytest.approx(1.6 * strength)
    steady = line_shakedown_force(strength, length, radius, modulus)
    assert steady == pytest.approx(line_force_at_pressure(2 * strength, length, radius, modulus))


def test_dent_is_the_chord_of_the_cylinder():
    mark = dent(400.0, 8e-3, 11e-3, 8e6, 600e6)
    assert mark.width * 8e-3 * 24e6 == pytest.approx(400.0)
    assert (11e-3 - mark.depth) ** 2 + (mark.width / 2) ** 2 == pytest.approx(11e-3**2)


def test_no_dent_before_first_yield_and_none_known_past_the_axle():
    first = line_yield_force(8e6, 8e-3, 11e-3, 600e6)
    assert tuple(dent(0.999 * first, 8e-3, 11e-3, 8e6, 600e6)) == (0, 0)
    assert dent(1.001 * first, 8e-3, 11e-3, 8e6, 600e6).depth > 0
    assert np.isnan(dent(5000.0, 8e-3, 11e-3, 8e6, 600e6)).all()


def test_approach_of_a_deep_track_by_integrating_strain_under_the_strip():
    """Johnson 4.57 by quadrature: plane strain under Hertz's pressure, from surface to depth."""
    force, length, radius, modulus, depth, poisson = 40.0, 1.0, 0.011, 650e6, 0.018, 0.3
    contact = line_contact(force, length, radius, modulus)

    def strain(z):
        s = z / contact.half_width
        root = math.sqrt(1 + s * s)
        vertical = -contact.pressure / root
        across = -contact.pressure * ((1 + 2 * s * s) / root - 2 * s)
        return -(vertical - poisson / (1 - poisson) * across) / modulus

    total, _ = integrate.quad(strain, 0, depth, epsabs=1e-15, limit=400)
    assert track_approach(force, length, radius, modulus, depth, poisson) == pytest.approx(
        total, rel=2e-3
    )


def test_approach_of_a_short_roller_by_boussinesq():
    """Settlement of the middle of a strip with Hertz's pressure on a half-space, by quadrature."""
    force, length, radius, modulus = 100.0, 0.02, 0.011, 650e6
    half, pressure = line_contact(force, length, radius, modulus)

    def along(x):
        return pressure * math.sqrt(1 - (x / half) ** 2) * 2 * math.asinh(length / 2 / abs(x))

    total, _ = integrate.quad(along, 0, half, limit=400)
    settled = 2 * total / (math.pi * modulus)
    assert track_approach(force, length, radius, modulus, 10.0) == pytest.approx(settled, rel=5e-3)


def test_approach_says_nothing_for_a_thin_track_and_nothing_happens_without_load():
    assert math.isnan(track_approach(200.0, 0.0064, 0.011, 650e6, 1e-3))
    assert track_approach(0.0, 0.0064, 0.011, 650e6, 0.018) == 0.0


def test_bed_carries_the_load():
    force, length, radius, modulus, thickness = 200.0, 0.01, 0.011, 20e6, 1e-3
    half, pressure, approach = bed_contact(force, length, radius, modulus, thickness)
    carried, _ = integrate.quad(
        lambda x: length * modulus / thickness * (approach - x * x / (2 * radius)), -half, half
    )
    assert carried == pytest.approx(force)
    assert pressure == pytest.approx(modulus * approach / thickness)


def test_rolling_loss_is_the_work_of_the_front_half():
    half, radius, loss = 0.8e-3, 0.011, 0.2
    moment, _ = integrate.quad(
        lambda x: 2 / (math.pi * half) * math.sqrt(1 - (x / half) ** 2) * x, 0, half
    )
    assert rolling_coefficient(half, radius, loss) == pytest.approx(loss * moment / radius)


def test_rut_resistance_is_the_work_of_the_rut():
    force, length, radius, pressure = 400.0, 8e-3, 11e-3, 24e6
    chord = force / (pressure * length)
    depth = chord**2 / (2 * radius)
    assert rut_resistance(force, length, radius, pressure) == pytest.approx(
        pressure * length * depth
    )


def test_secant_of_no_load_is_unknown():
    assert secant_stiffness(200.0, 1e-4) == pytest.approx(2e6)
    assert math.isnan(secant_stiffness(0.0, 0.0))


def test_radius_of_a_ball_in_a_groove():
    assert effective_radius(5e-3, -5.2e-3) == pytest.approx(1 / (200 - 1 / 5.2e-3))
    assert math.isnan(effective_radius(5e-3, -4.9e-3))
    assert effective_radius(math.inf, 3e-3) == 3e-3
    assert contact_modulus(math.inf, 0.3, 1000.0, 0.0) == 1000.0
