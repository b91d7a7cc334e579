"""A bearing run as a roller, against statics and against Hertz's contact of its balls."""

import math

import numpy as np
import pytest

from reviewer.mechanics.rollers import (
    friction_moment,
    interference_force,
    least_capacity,
    roller_axial_load,
    roller_static_capacity,
    roller_stiffness,
)

RPM = math.pi / 30


def test_one_ball_carries_the_roller():
    # At C0 the busiest ball carries 5 C0/Z (basis of ISO 76): one may carry that alone.
    assert roller_static_capacity(1370.0, 7) == pytest.approx(1370 * 5 / 7)
    assert roller_static_capacity(1370.0, 4) == 1370.0


@pytest.mark.parametrize(
    ("load", "bore", "coefficient", "moment", "source"),
    [
        (100.0, 8e-3, 0.0015, 0.600e-3, "general bearing catalogues; computed apart"),
        (25e3, 40e-3, 0.0012, 0.6, "catalogue example: inputs printed, answer computed apart"),
    ],
)
def test_friction_moment(load, bore, coefficient, moment, source):
    assert friction_moment(load, bore, coefficient) == pytest.approx(moment, rel=1e-9), source


def test_power_lost_in_a_bearing():
    # Catalogue example: 40 mm bore, 25 kN, 0.0012, 1440 rpm: 90.5 W (computed apart).
    assert friction_moment(25e3, 40e-3, 0.0012) * 1440 * RPM == pytest.approx(90.5, abs=0.05)


def test_springs_in_series():
    assert roller_stiffness(3.0, 6.0, math.inf) == pytest.approx(2.0)
    assert roller_stiffness(3.0, 6.0, 2.0) == pytest.approx(1.0)
    assert interference_force(0.1, 3.0, 6.0) == pytest.approx(0.2)
    assert interference_force(-0.1, 3.0, 6.0) == 0.0


def test_the_weakest_member_governs_and_an_unknown_one_hides_it():
    assert least_capacity(4.0, 3.0, 2.0, math.inf) == 2.0
    assert math.isnan(least_capacity(4.0, math.nan, 2.0, 9.0))
    assert least_capacity(np.array([1.0, 9.0]), 3.0, 4.0, 5.0).tolist() == [1.0, 3.0]


def test_sideways_load_is_at_most_friction():
    assert roller_axial_load(200.0, 0.25) == 50.0
    assert math.isnan(roller_axial_load(-1.0, 0.25))
