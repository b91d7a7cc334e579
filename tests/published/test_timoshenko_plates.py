"""Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959).

`seen` says how each number reached this table.
"""

from functools import wraps

import numpy as np
import pytest

from reviewer.mechanics.disc import disc_deflection, disc_uniform_deflection
from reviewer.mechanics.plates import (
    clamped_plate_centre_deflection,
    clamped_plate_uniform_deflection,
    plate_rigidity,
    simple_plate_patch_deflection,
    simple_plate_uniform_deflection,
    simple_plate_uniform_moment,
)
from reviewer.mechanics.ring_supported_plates import (
    ring_supported_centre_load,
    ring_supported_edge_load,
    ring_supported_uniform,
)

NADAI = "art. 71, plate on three points (Nadai)"
RING = "axisymmetric solution; a Morley element program within 0.7 %"
POINTS = "Morley element program, 0.3 %"


def on_points(count, circle, poisson, forces):
    """Sink of the centre against `count` equal supports: forces, then an even load of total one."""
    angles = 2 * np.pi * np.arange(count) / count
    r = np.r_[0.0, np.full(count, circle)]
    t = np.r_[0.0, angles]
    c = disc_deflection(r[:, None], r, t[:, None] - t, 1.0, 0.0, 1.0, poisson)
    load = np.r_[forces, np.full(count, -1 / count)]
    even = disc_uniform_deflection(r, 1.0, 0.0, 1.0, poisson) / np.pi * (1 - forces)
    sag = np.einsum("ij,j", c, load) + even
    return sag[0] - sag[1]


@wraps(disc_deflection)
def centre_force(count, circle, poisson):
    """A force at the centre of a plate on points."""
    return on_points(count, circle, poisson, 1.0)


@wraps(disc_uniform_deflection)
def even_load(count, circle, poisson):
    """An even load of total one on a plate on points."""
    return on_points(count, circle, poisson, 0.0)


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# fmt: off
ROWS = [
    (plate_rigidity, (12.0, 1.0, 0.0), 1.0, 1e-12, "eq. (3)", "memory"),
    (simple_plate_uniform_deflection, (1.0, 1.0, 1.0, 0.3), 0.063702, 1e-5, "eq. (68)",
     "print, recomputed"),
    (simple_plate_uniform_moment, (1.0, 1.0, 0.3), 0.20625, 1e-6, "eq. (69)", "print, recomputed"),
    (clamped_plate_uniform_deflection, (1.0, 1.0, 1.0), 0.015625, 1e-6, "eq. (62)", "print"),
    (clamped_plate_centre_deflection, (1.0, 1.0, 1.0), 0.019894, 3e-5, "eq. (92)", "memory"),
    (of(ring_supported_centre_load, "centre"), (1.0, 1.0, 1.0, 1.0, 0.3), 0.050501, 1e-5,
     "eq. (88), support at the edge", "memory"),
    (simple_plate_patch_deflection, (1.0, 0.2, 1.0, 1.0, 0.3), 0.048011, 1e-5, "art. 16",
     "memory, finite elements -0.10 %"),
    (simple_plate_patch_deflection, (1.0, 0.5, 1.0, 1.0, 0.3), 0.039498, 1e-5, "art. 16",
     "memory, finite elements +0.03 %"),
    (of(ring_supported_uniform, "centre"), (1.0, 0.5, 1.0, 1.0, 0.3), -.009116, 6e-5, RING,
     "computed"),
    (of(ring_supported_uniform, "edge"), (1.0, 0.5, 1.0, 1.0, 0.3), .024512, 3e-5, RING,
     "computed"),
    (of(ring_supported_uniform, "centre"), (1.0, 0.7, 1.0, 1.0, 0.3), .004862, 1e-4, RING,
     "computed"),
    (of(ring_supported_uniform, "edge"), (1.0, 0.7, 1.0, 1.0, 0.3), .000227, 3e-3, RING,
     "computed"),
    (of(ring_supported_uniform, "centre"), (1.0, 0.8, 1.0, 1.0, 0.3), .018764, 4e-5, RING,
     "computed"),
    (of(ring_supported_uniform, "edge"), (1.0, 0.8, 1.0, 1.0, 0.3), -.005674, 1e-4, RING,
     "computed"),
    (of(ring_supported_centre_load, "centre"), (1.0, 0.5, 1.0, 1.0, 0.3), .010617, 6e-5, RING,
     "computed"),
    (of(ring_supported_centre_load, "edge"), (1.0, 0.5, 1.0, 1.0, 0.3), -.008903, 6e-5, RING,
     "computed"),
    (of(ring_supported_centre_load, "centre"), (1.0, 0.7, 1.0, 1.0, 0.3), .022069, 3e-5, RING,
     "computed"),
    (of(ring_supported_centre_load, "edge"), (1.0, 0.7, 1.0, 1.0, 0.3), -.009631, 6e-5, RING,
     "computed"),
    (of(ring_supported_edge_load, "centre"), (1.0, 0.7, 1.0, 1.0, 0.3), -.009631, 6e-5, RING,
     "computed"),
    (of(ring_supported_edge_load, "edge"), (1.0, 0.5, 1.0, 1.0, 0.3), .022078, 3e-5, RING,
     "computed"),
    (of(ring_supported_edge_load, "edge"), (1.0, 0.7, 1.0, 1.0, 0.3), .009171, 6e-5, RING,
     "computed"),
    (of(ring_supported_edge_load, "edge"), (1.0, 0.8, 1.0, 1.0, 0.3), .004348, 1.2e-4, RING,
     "computed"),
    (centre_force, (3, 1.0, 0.25), 0.0670, 8e-4, NADAI, "memory"),
    (even_load, (3, 1.0, 0.25), 0.0362, 1.4e-3, NADAI, "memory"),
    (centre_force, (3, 1.0, 0.3), 0.0668, 3e-3, POINTS, "computed"),
    (even_load, (3, 1.0, 0.3), 0.0366, 3e-3, POINTS, "computed"),
    (centre_force, (4, 1.0, 0.3), 0.0568, 3e-3, POINTS, "computed"),
    (even_load, (4, 1.0, 0.3), 0.0266, 3e-3, POINTS, "computed"),
    (centre_force, (6, 1.0, 0.3), 0.0523, 3e-3, POINTS, "computed"),
    (even_load, (6, 1.0, 0.3), 0.0220, 3e-3, POINTS, "computed"),
    (centre_force, (150, 0.5, 0.3), .010617, 2e-4, RING, "computed"),
    (centre_force, (150, 0.8, 0.3), .029853, 2e-4, RING, "computed"),
    (even_load, (150, 0.7, 0.3), .004862 / np.pi, 1e-3, RING, "computed"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
