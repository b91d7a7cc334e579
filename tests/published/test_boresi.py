"""Boresi, Advanced Mechanics of Materials: beams on an elastic bed. `seen`: how it was reached."""

import math

import numpy as np
import pytest

from reviewer.mechanics.strip import decay, strip_deflection, strip_under_load

# Example 10.1: rail, E 200 GPa, I 36.9e6 mm^4, bed 14.0 N/mm^2, wheel 170 kN, three at 1.7 m.
RAIL = (14e6, 200e9 * 36.9e-6)
EXAMPLE = "Boresi and Schmidt, Ex. 10.1, as worked in an open companion code"

ROWS = [
    (decay, RAIL, 0.000830e3, 5e-4, EXAMPLE, "memory"),
    (
        strip_under_load,
        (170e3, RAIL[0], 1.0, RAIL[1]),
        (5.04e-3, None, 51.21e3, None),
        1e-3,
        EXAMPLE,
        "reprint",
    ),
    (strip_deflection, (0.0, 170e3, *RAIL), 5.04e-3, 1e-3, EXAMPLE, "reprint"),
]


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    answer = formula(*inputs)
    if not isinstance(expected, tuple):
        answer, expected = (answer,), (expected,)
    for got, wanted in zip(answer, expected, strict=True):
        if wanted is not None:
            assert got == pytest.approx(wanted, rel=tolerance), (source, seen)


def test_three_wheels_add_up():
    # Example 10.1 (b), the same source: 7.86 mm under the wheel that sinks most; stress 137.54 MPa.
    sunk = {
        wheel: sum(strip_deflection(1.7 * abs(wheel - other), 170e3, *RAIL) for other in range(3))
        for wheel in range(3)
    }
    assert max(sunk.values()) == pytest.approx(7.86e-3, abs=0.005e-3)
    moment = strip_under_load(170e3, RAIL[0], 1.0, RAIL[1]).moment
    assert moment * 99.1e-3 / 36.9e-6 == pytest.approx(137.54e6, abs=0.005e6)


def test_rail_lifts_where_its_deflection_is_zero():
    lift = strip_under_load(170e3, RAIL[0], 1.0, RAIL[1]).lift_off
    assert strip_deflection(lift, 170e3, *RAIL) == pytest.approx(0.0, abs=1e-12)
    assert math.isclose(lift * decay(*RAIL), 3 * np.pi / 4)
