"""Arcs fixed at both ends, loaded out of their plane: Bergman's bow girders and a frame program.

The middle moment under an even load is Bergman's printed closed form; the rest is an energy
solution that a frame of 180 straight pieces confirms within 0.02 %.
"""

from functools import wraps
from math import cos, pi, radians, sin

import numpy as np
import pytest

from reviewer.mechanics.curved import arc_cantilever_deflection, arc_middle_load, arc_uniform

FIELDS = ("deflection", "middle_moment", "end_moment", "end_torque")
# Angle in degrees, K = EI/GJ, then under a middle force and under an even load: deflection in
# P R^3/EI or w R^4/EI, middle moment, end moment and end torque in P R or w R^2.
# fmt: off
ARCS = [
    (30, 1.3, (7.6437e-4, .0650, -.0667, -.0002), (2.0010e-4, .01128, -.02318, -.00006)),
    (45, 1.3, (2.6486e-3, .0966, -.1021, -.0011), (1.0399e-3, .02497, -.05305, -.00046)),
    (45, 10, (2.8990e-3, .0898, -.1084, -.0037), (1.1357e-3, .02214, -.05566, -.00154)),
    (90, 1.3, (.02393, .1846, -.2230, -.0159), (.01876, .09197, -.22786, -.01326)),
    (90, 3, (.02522, .1768, -.2285, -.0214), (.01971, .08550, -.23244, -.01784)),
    (90, 10, (.02941, .1640, -.2376, -.0305), (.02273, .07483, -.23998, -.02538)),
    (180, 1.3, (.25817, .3183, -.5000, -.1817), (.39755, .27324, -1.0000, -.29756)),
    (180, 3, (.29037, .3183, -.5000, -.1817), (.44223, .27324, -1.0000, -.29756)),
    (180, 10, (.42297, .3183, -.5000, -.1817), (.62623, .27324, -1.0000, -.29756)),
]
# fmt: on


@pytest.mark.parametrize(("angle", "ratio", "force", "even"), ARCS)
@pytest.mark.parametrize(("formula", "column"), [(arc_middle_load, 2), (arc_uniform, 3)])
def test_arc(formula, column, angle, ratio, force, even):
    expected = (force, even)[column - 2]
    found = formula(1.0, 1.0, radians(angle), 1.0, 1 / ratio)
    assert found.deflection == pytest.approx(expected[0], rel=2e-4, abs=1e-9)
    for field, value in zip(FIELDS[1:], expected[1:], strict=True):
        # printed to four or five decimals
        assert getattr(found, field) == pytest.approx(value, abs=5.5e-5), field


def bergman(angle, ratio):
    """Middle moment under an even load over w R^2, as printed."""
    a = angle / 2
    top = 2 * (ratio + 1) * sin(a) - 2 * ratio * a * cos(a)
    return top / ((ratio + 1) * a - (ratio - 1) * sin(a) * cos(a)) - 1


@wraps(arc_uniform)
def middle_moment(angle, ratio):
    """Middle moment over w R^2."""
    return arc_uniform(1.0, 1.0, angle, 1.0, 1 / ratio).middle_moment


@wraps(arc_middle_load)
def sink(angle, ratio):
    """Deflection under a force at the middle over P R^3/EI."""
    return arc_middle_load(1.0, 1.0, radians(angle), 1.0, 1 / ratio).deflection


ROWS = [
    *[
        (sink, (angle, ratio), force[0], 2e-4, "fixed arc, a frame program", "computed")
        for angle, ratio, force, _ in ARCS
    ],
    *[
        (middle_moment, (angle, ratio), bergman(angle, ratio), 1e-7, "Bergman (1937)", "print")
        for angle in (0.5, 1.0, 2.0, 3.0, 5.0)
        for ratio in (1.3, 3.0, 10.0)
    ],
    *[
        (
            arc_cantilever_deflection,
            (1.0, 1.0, radians(angle), 1.0, 1 / 1.3),
            value,
            5e-5,
            "arc cantilever, a frame program",
            "computed",
        )
        for angle, value in ((45, 0.16075), (90, 1.24843), (180, 7.69657))
    ],
    (
        arc_cantilever_deflection,
        (1.0, 1.0, pi / 2, 1.0, 1.0),
        pi / 4 + 3 * pi / 4 - 2,
        1e-12,
        "int sin^2 = pi/4, int (1 - cos)^2 = 3 pi/4 - 2",
        "memory",
    ),
]


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)


def test_ends_of_a_half_circle_do_not_depend_on_its_torsional_stiffness():
    found = arc_uniform(1.0, 1.0, pi, 1.0, 1 / np.array([1.3, 3.0, 10.0]))
    assert np.ptp(found.end_moment) < 1e-12
    assert np.ptp(found.end_torque) < 1e-12
