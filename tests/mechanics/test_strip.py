"""A strip on an elastic bed against the differential equation, solved by scipy."""

import math

import numpy as np
import pytest
from scipy import integrate

from reviewer.mechanics.strip import (
    decay,
    half_space_bed,
    layer_bed,
    strip_deflection,
    strip_end_under_load,
    strip_under_load,
)

BED, STIFFNESS, WIDTH, FORCE = 440e6, 4.37, 10e-3, 200.0


def beam(ends):
    """Half of a long beam: E I w'''' + k w = 0 (Hetenyi), with the given ends at the load."""
    length = 12 / decay(BED, STIFFNESS)
    grid = np.linspace(0, length, 400)
    solved = integrate.solve_bvp(
        lambda x, y: np.array([y[1], y[2], y[3], -BED / STIFFNESS * y[0]]),
        lambda near, far: np.array([*ends(near), far[0], far[1]]),
        grid,
        np.zeros((4, grid.size)),
        tol=1e-8,
        max_nodes=100000,
    )
    assert solved.success
    return solved.sol


def test_within_the_strip():
    sol = beam(lambda near: (near[1], near[3] - FORCE / 2 / STIFFNESS))
    strip = strip_under_load(FORCE, BED, WIDTH, STIFFNESS)
    assert strip.deflection == pytest.approx(sol(0)[0], rel=1e-5)
    assert strip.pressure == pytest.approx(BED * sol(0)[0] / WIDTH, rel=1e-5)
    assert strip.moment == pytest.approx(-STIFFNESS * sol(0)[2], rel=1e-5)
    for x in [0.5, 1.0, 2.5]:
        away = x / decay(BED, STIFFNESS)
        assert strip_deflection(away, FORCE, BED, STIFFNESS) == pytest.approx(
            sol(away)[0], abs=1e-5 * strip.deflection
        )


def test_at_its_end():
    sol = beam(lambda near: (near[2], near[3] - FORCE / STIFFNESS))
    strip = strip_end_under_load(FORCE, BED, WIDTH, STIFFNESS)
    assert strip.deflection == pytest.approx(sol(0)[0], rel=1e-5)
    assert strip.pressure == pytest.approx(BED * sol(0)[0] / WIDTH, rel=1e-5)
    places = np.linspace(0, 4 / decay(BED, STIFFNESS), 4001)
    assert strip.moment == pytest.approx(np.abs(STIFFNESS * sol(places)[2]).max(), rel=1e-4)
    assert sol(strip.lift_off)[0] == pytest.approx(0, abs=1e-5 * strip.deflection)


def test_bed_carries_the_load():
    carried, _ = integrate.quad(
        lambda x: BED * strip_deflection(x, FORCE, BED, STIFFNESS), 0, 20 / decay(BED, STIFFNESS)
    )
    assert 2 * carried == pytest.approx(FORCE, rel=1e-6)


def test_bed_of_a_half_space_is_that_of_biot_within_a_quarter():
    """Biot (1937) matched moments: k = 0.95 E/(1-v^2) (E b^4/(16 (1-v^2) E_s I))^0.108, half b.

    Two independent fits to the same half-space; from memory. The factor between them is what the
    model is worth.
    """
    modulus, width, stiffness, poisson = 600e6, 10e-3, 4.37, 0.3
    plane = modulus / (1 - poisson**2)
    biot = 0.95 * plane * (plane * (width / 2) ** 4 / stiffness) ** 0.108
    assert half_space_bed(modulus, width, stiffness, poisson) == pytest.approx(biot, rel=0.25)


def test_bed_of_a_half_space_hardly_feels_the_strip():
    """Vesic's exponent of 1/12: a strip 4096 times as stiff halves the bed, width goes with 1/3."""
    bed = half_space_bed(600e6, 10e-3, 4.37)
    assert half_space_bed(600e6, 10e-3, 4096 * 4.37) == pytest.approx(bed / 2)
    assert half_space_bed(600e6, 80e-3, 4.37) == pytest.approx(2 * bed)


def test_layer_is_a_spring():
    assert layer_bed(600e6, 10e-3, 2e-3) == pytest.approx(600e6 * 10e-3 / 2e-3)


def test_unknown_and_impossible():
    assert math.isnan(strip_under_load(FORCE, 0.0, WIDTH, STIFFNESS).pressure)
    assert math.isnan(strip_deflection(-1.0, FORCE, BED, STIFFNESS))
    assert np.isnan(strip_end_under_load(math.nan, BED, WIDTH, STIFFNESS)).all()
