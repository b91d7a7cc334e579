"""Closed forms of arcs and plates against their own equations, solved numerically (scipy)."""

from math import cos, pi, sin

import numpy as np
import pytest
from scipy.integrate import quad, solve_bvp

from reviewer.mechanics.annular_plates import (
    annular_fixed_ring_load,
    annular_guided_uniform,
    annular_simple_ring_load,
    annular_simple_uniform,
)
from reviewer.mechanics.beams import beam_deflection
from reviewer.mechanics.curved import arc_middle_load
from reviewer.mechanics.ring_beams import ring_beam
from reviewer.mechanics.ring_supported_plates import (
    ring_supported_centre_load,
    ring_supported_uniform,
)

NU = 0.3


def annulus(hole, shear, inner, outer):
    """Sink of the hole's edge for D = 1: slope p = dw/dr with (p' + p/r)' = -Q(r).

    `inner` and `outer` say what each edge does: free, guided or fixed (slope zero); the outer
    edge stays at zero. Q is the force down per length on the part within r.
    """

    def slopes(r, y):
        _, p, dp = y
        return np.stack((p, dp, shear(r) - dp / r + p / (r * r)))

    def ends(a, b):
        left = a[1] if inner != "free" else a[2] + NU * a[1] / hole
        right = b[1] if outer == "fixed" else b[2] + NU * b[1]
        return np.array([left, right, b[0]])

    r = np.linspace(hole, 1.0, 200)
    answer = solve_bvp(slopes, ends, r, np.zeros((3, 200)), tol=1e-8, max_nodes=20000)
    assert answer.success
    return abs(answer.sol(hole)[0])


@pytest.mark.parametrize("hole", [0.15, 0.4, 0.8])
def test_annular_plates(hole):
    arguments = (1.0, hole, 1.0, 1.0, NU)

    def ring(r):
        return hole / r

    def even(r):
        return (r * r - hole * hole) / (2 * r)

    free = annulus(hole, ring, "free", "simple")
    assert annular_simple_ring_load(*arguments).deflection == pytest.approx(free, rel=1e-5)
    fixed = annulus(hole, ring, "free", "fixed")
    assert annular_fixed_ring_load(*arguments).deflection == pytest.approx(fixed, rel=1e-5)
    loaded = annulus(hole, even, "free", "simple")
    assert annular_simple_uniform(*arguments).deflection == pytest.approx(loaded, rel=1e-5)
    guided = annulus(hole, even, "guided", "simple")
    assert annular_guided_uniform(*arguments).deflection == pytest.approx(guided, rel=1e-5)


@pytest.mark.parametrize("angle", [0.5, 1.5, 3.0])
@pytest.mark.parametrize("ratio", [1.3, 8.0])
def test_arc_under_a_middle_force(angle, ratio):
    half = angle / 2

    def energy(start):
        return quad(
            lambda t: (
                (start * cos(t) - sin(t) / 2) ** 2
                + ratio * (start * sin(t) - (1 - cos(t)) / 2) ** 2
            ),
            0,
            half,
        )[0]

    found = arc_middle_load(1.0, 1.0, angle, 1.0, 1 / ratio)
    # The middle moment makes the energy least, and twice the energy is force times deflection.
    assert 2 * energy(found.middle_moment) == pytest.approx(found.deflection, rel=1e-9)
    assert energy(found.middle_moment) < energy(found.middle_moment + 1e-3)
    assert energy(found.middle_moment) < energy(found.middle_moment - 1e-3)


@pytest.mark.parametrize("count", [3, 5, 8])
def test_ring_beam_is_in_equilibrium(count):
    half, beam = pi / count, ring_beam(1.0, 1.0, count, 1.0, 1.0)
    # Over half a span about the radius at the support: the load's moment is what the moment over
    # the support and the middle moment turned by the half angle hold.
    load = quad(lambda t: sin(t), 0, half)[0]
    assert beam.support_moment + beam.middle_moment * cos(half) == pytest.approx(load, rel=1e-9)


@pytest.mark.parametrize("support", [0.4, 0.75])
def test_ring_supported_plates_are_reciprocal(support):
    """The even load's work on a centre force's shape is the force's on the even load's."""

    def shape(r):
        # Deflection at r under a unit centre force, by the plate equation from the closed ends.
        p = 1 / (8 * pi)
        stiff = (1 - NU) / (1 + NU)
        if r <= support:
            c = p * (2 + stiff * support**2)
            log = np.log(r / support) if r > 0 else 0.0
            return c * (support**2 - r * r) / 2 + p * r * r * log
        e = p * stiff * support**2
        return -(e * (r * r - support**2) / 2 + p * support**2 * np.log(r / support))

    found = ring_supported_centre_load(1.0, support, 1.0, 1.0, NU)
    assert shape(0.0) == pytest.approx(found.centre, rel=1e-12)
    assert shape(1.0) == pytest.approx(found.edge, rel=1e-12)
    work = quad(lambda r: shape(r) * 2 * pi * r, 0, 1, points=[support], epsabs=1e-12)[0]
    even = ring_supported_uniform(1.0, support, 1.0, 1.0, NU)
    assert even.centre == pytest.approx(work, rel=1e-6, abs=1e-9)


def test_beam_by_integration():
    def moment(x):
        return np.where(x < 0.3, 0.7 * x, 0.3 * (1 - x))

    x = np.linspace(0, 1, 401)
    answer = solve_bvp(
        lambda x, y: np.stack((y[1], -moment(x))),
        lambda a, b: np.array([a[0], b[0]]),
        x,
        np.zeros((2, 401)),
        tol=1e-8,
    )
    for at in (0.1, 0.3, 0.6, 0.9):
        assert beam_deflection(1.0, 0.3, at, 1.0, 1.0) == pytest.approx(answer.sol(at)[0], rel=1e-5)
