"""Rings of rollers and tipping, against tables made outside the project.

bearings.md and machine.md are the project's list of published check values; "computed" there means
computed for the list by a script apart from the project, from the formula named.
"""

from math import cos, pi, radians

import numpy as np
import pytest

from reviewer.mechanics.supports import (
    Actions,
    Supports,
    circle,
    overturning_line,
    solve_supports,
    stability_ratio,
    worst_direction,
)

SECTION_5 = "bearings.md section 5, computed; two independent solvers agree to 6e-16"
RADIUS, LOAD, STIFFNESS = 0.23, 800.0, 2e6


def ring(count):
    return Supports(*circle(count, RADIUS), STIFFNESS)


def worst(count, ratio):
    return worst_direction(ring(count), LOAD, 0.0, 0.0, ratio * RADIUS * LOAD)


@pytest.mark.parametrize(
    ("count", "ratio", "share", "tolerance", "source"),
    [
        (3, 0.2, 0.4667, 5e-5, SECTION_5),
        (3, 0.4, 0.6000, 5e-5, SECTION_5),
        (3, 0.5, 0.6667, 5e-5, SECTION_5),
        (4, 0.2, 0.3500, 5e-5, SECTION_5),
        (4, 0.4, 0.4500, 5e-5, SECTION_5),
        (4, 0.5, 0.5000, 5e-5, SECTION_5),
        (4, 0.6, 0.6000, 5e-5, SECTION_5),
        (4, 0.7, 0.7000, 5e-5, SECTION_5),
        (6, 0.2, 0.2333, 5e-5, SECTION_5),
        (6, 0.4, 0.3000, 5e-5, SECTION_5),
        (6, 0.5, 0.3333, 5e-5, SECTION_5),
        (6, 0.6, 0.3778, 5e-5, SECTION_5),
        (6, 0.7, 0.4277, 5e-5, SECTION_5),
        (6, 0.8, 0.6000, 5e-5, SECTION_5),
    ],
)
def test_busiest_roller(count, ratio, share, tolerance, source):
    result = worst(count, ratio)
    assert not result.overturns
    assert result.peak[0] / LOAD == pytest.approx(share, abs=tolerance), source


@pytest.mark.parametrize(
    ("count", "ratio"),
    [(3, 0.6), (3, 0.7), (3, 0.8), (3, 0.9), (4, 0.8), (4, 0.9), (6, 0.9)],
)
def test_overturns_in_its_weakest_direction(count, ratio):
    """The TIP entries of the table in bearings.md section 5, computed."""
    result = worst(count, ratio)
    assert result.overturns
    assert np.isnan(result.peak).all()
    assert np.isnan(result.least).all()
    assert np.isnan([result.uplift, result.sink, result.tilt]).all()


def test_the_worst_direction_is_off_the_roller():
    """bearings.md section 5, footnote, computed: 10.9 degrees off a roller, and .4222 on it."""
    result = worst(6, 0.7)
    off = np.degrees(result.direction[0]) % 60
    assert min(off, 60 - off) == pytest.approx(10.9, abs=0.05)
    on_axis = solve_supports(ring(6), LOAD, 0.7 * RADIUS * LOAD, 0.0)
    assert on_axis.forces[0] / LOAD == pytest.approx(0.4222, abs=5e-5)


@pytest.mark.parametrize(
    ("count", "ratio", "shares"),
    [
        (6, 0.6, [0.37778, 0.26667, 0.04444, 0.0, 0.04444, 0.26667]),
        (6, 0.8, [0.6, 0.2, 0.0, 0.0, 0.0, 0.2]),
        (4, 0.6, [0.6, 0.2, 0.0, 0.2]),
    ],
)
def test_on_axis_load_sets(count, ratio, shares):
    """bearings.md section 5, computed."""
    solution = solve_supports(ring(count), LOAD, ratio * RADIUS * LOAD, 0.0)
    assert solution.forces / LOAD == pytest.approx(shares, abs=5e-6)


@pytest.mark.parametrize("count", [3, 4, 5, 6, 8, 12])
@pytest.mark.parametrize("ratio", [0.1, 0.3, 0.5])
def test_below_lift_off_the_linear_formula_holds(count, ratio):
    """Fmax = (W/n)(1 + 2e/R), Fmin = (W/n)(1 - 2e/R): bearings.md section 5, computed; the same as
    the bolt-circle formula 4M/(nD) - W/n, seen. An odd ring has its least half a step off."""
    result = worst(count, ratio)
    assert result.peak[0] == pytest.approx(LOAD / count * (1 + 2 * ratio), rel=1e-12)
    assert result.least[0] == pytest.approx(LOAD / count * (1 - 2 * ratio), abs=1e-10)
    assert result.direction[0] == pytest.approx(0.0, abs=1e-12)
    assert result.member[0] == 0


@pytest.mark.parametrize("count", [4, 5, 6, 8, 12])  # three tip as soon as one lifts off
def test_first_lift_off_at_half_the_radius(count):
    """Earliest orientation: e/R = 1/2 for every n >= 3: bearings.md section 5, computed."""
    assert worst(count, 0.4999).least[0] > 0
    assert worst(count, 0.5001).least[0] == 0.0


@pytest.mark.parametrize(("count", "ratio"), [(6, 0.5774), (8, 0.5412), (12, 0.5176)])
def test_lift_off_in_the_best_orientation(count, ratio):
    """1/(2 cos(pi/n)) for an even number, half way between two rollers: section 5, computed."""

    def least(share):
        moment = share * RADIUS * LOAD
        angle = pi / count
        solution = solve_supports(ring(count), LOAD, moment * cos(angle), moment * np.sin(angle))
        return solution.forces.min()

    assert least(ratio - 1e-4) > 0
    assert least(ratio + 1e-4) == pytest.approx(0.0, abs=1e-9)


def test_lift_off_of_four_in_the_best_orientation():
    """.7071 for n = 4, as section 5 says (computed): there it tips at the same moment."""
    moment = RADIUS * LOAD / 2
    forces = solve_supports(ring(4), LOAD, moment, moment).forces
    assert forces == pytest.approx([LOAD / 2, LOAD / 2, 0.0, 0.0], abs=1e-9)
    assert solve_supports(ring(4), LOAD, moment * 1.0001, moment * 1.0001).overturns


def test_lift_off_of_three_in_the_best_orientation():
    """1.0 for n = 3, as section 5 says (computed): towards a roller."""
    assert solve_supports(ring(3), LOAD, 0.9999 * RADIUS * LOAD, 0.0).forces.min() > 0
    forces = solve_supports(ring(3), LOAD, RADIUS * LOAD, 0.0).forces
    assert forces == pytest.approx([LOAD, 0.0, 0.0], abs=1e-9)


@pytest.mark.parametrize(
    ("count", "ratio"), [(3, 0.5), (4, 0.7071), (6, 0.8660), (8, 0.9239), (12, 0.9659)]
)
def test_tipping_in_the_weakest_direction(count, ratio):
    """e/R = cos(pi/n): bearings.md section 5, computed (statics)."""
    assert not worst(count, ratio - 1e-4).overturns
    result = worst(count, ratio + 1e-4)
    assert result.overturns
    off = np.degrees(result.overturning_direction) % (360 / count)
    assert off == pytest.approx(180 / count, abs=1e-6)


@pytest.mark.parametrize(
    ("half_angle", "ratio"),
    [
        (180.0, 0.5),  # lift-off at e = R/2: seen
        (90.0, pi / 4),  # half in contact at e = pi R/4: seen
        (120.0, None),  # e/R = (B - sinB cosB) / (2 (sinB - B cosB)): computed
    ],
)
def test_many_rollers_are_a_continuous_ring(half_angle, ratio):
    """bearings.md section 5: qmax 2 pi R/W = pi (1 - cosB) / (sinB - B cosB)."""
    b = radians(half_angle)
    eccentricity = (b - np.sin(b) * cos(b)) / (2 * (np.sin(b) - b * cos(b)))
    if ratio is not None:
        assert eccentricity == pytest.approx(ratio, rel=1e-12)
    count = 720
    solution = solve_supports(ring(count), LOAD, eccentricity * RADIUS * LOAD, 0.0)
    peak = pi * (1 - cos(b)) / (np.sin(b) - b * cos(b))
    assert solution.forces[0] * count / LOAD == pytest.approx(peak, rel=1e-4)


TIPPING = [(3, 1.000), (4, 2.414)]


@pytest.mark.parametrize(("count", "share"), TIPPING)
def test_load_at_the_rim_between_feet(count, share):
    """F/W = cos(pi/n) / (1 - cos(pi/n)), feet at the rim: bearings.md section 6, computed."""
    feet = Supports(*circle(count, 0.4), 1.0)
    for force, tips in ((share - 1e-3, False), (share + 1e-3, True)):
        action = Actions(force * 100.0, round_moment=force * 100.0 * 0.4)
        result = stability_ratio(feet, Actions(100.0), action)
        assert (result.moment > result.restoring_moment) == tips
        assert (
            worst_direction(feet, 100.0 + action.force, 0, 0, action.round_moment).overturns == tips
        )


def test_three_legged_top():
    """30 in top, 1.25 in thick, 39 lb/ft3, three legs at the rim: weight 19.94 lb, tipped by 19.94
    lb: bearings.md section 6, inputs seen, answer computed."""
    inch, pound = 0.0254, 4.4482216152605
    weight = pi / 4 * 30**2 * 1.25 / 12**3 * 39 * pound
    assert weight / pound == pytest.approx(19.94, abs=0.005)
    legs = Supports(*circle(3, 15 * inch), 1.0)
    action = Actions(19.94 * pound, round_moment=19.94 * pound * 15 * inch)
    result = stability_ratio(legs, Actions(weight), action)
    assert result.moment / result.restoring_moment == pytest.approx(1.0, abs=5e-4)


@pytest.mark.parametrize(
    ("count", "margin", "edge_load", "push"),
    [(3, 225.0, 180.0, 92.5), (4, 318.2, 338.7, 130.8), (5, 364.1, 462.9, 149.6)],
)
def test_feet_under_a_round_top(count, margin, edge_load, push):
    """machine.md 9.1, computed (shapely): W 300 N, feet at 450, top 600, push at 730 mm."""
    feet, own = Supports(*circle(count, 0.45), 1.0), Actions(300.0)
    line = overturning_line(feet, 300.0, 0.0, 0.0)
    assert line.margin / 300.0 * 1e3 == pytest.approx(margin, abs=0.05)
    at_edge = Actions(edge_load, round_moment=edge_load * 0.6)
    result = stability_ratio(feet, own, at_edge)
    assert result.moment / result.restoring_moment == pytest.approx(1.0, abs=5e-4)
    pushed = stability_ratio(feet, own, Actions(0.0, round_moment=push * 0.73))
    assert pushed.moment / pushed.restoring_moment == pytest.approx(1.0, abs=1e-3)


@pytest.mark.parametrize(
    ("count", "share"), [(3, 0.5), (4, 0.7071), (5, 0.8090), (6, 0.8660), (8, 0.9239)]
)
def test_margin_of_a_round_base(count, share):
    """r = R cos(pi/n): machine.md section 9."""
    line = overturning_line(Supports(*circle(count, 1.0), 1.0), 1.0, 0.0, 0.0)
    assert line.margin == pytest.approx(share, abs=5e-5)


def test_rectangle_of_feet():
    """machine.md 9.3, computed: feet 500 x 400, centre of mass at (200, 150): margin 150."""
    feet = Supports([0.0, 0.5, 0.5, 0.0], [0.0, 0.0, 0.4, 0.4], 1.0)
    line = overturning_line(feet, 1.0, 0.2, 0.15)
    assert line.margin == pytest.approx(0.150, rel=1e-12)
    assert (line.first, line.second) == (0, 1)


def test_statics_text_example():
    """machine.md 9.4: W 250 lb, base 32 in wide, push 60 lb at 60 in: at rest (seen); the greatest
    height is W a / 2P = 66.7 in (computed)."""
    inch, pound = 0.0254, 4.4482216152605
    base = Supports([-16 * inch, 16 * inch], [0.0, 0.0], 1.0)
    own = Actions(250 * pound)
    at_60 = stability_ratio(base, own, Actions(0.0, moment_x=60 * 60 * pound * inch))
    assert at_60.moment < at_60.restoring_moment
    at_limit = stability_ratio(base, own, Actions(0.0, moment_x=60 * 66.7 * pound * inch))
    assert at_limit.moment / at_limit.restoring_moment == pytest.approx(1.0, abs=1e-3)


def test_block_on_an_incline():
    """machine.md 9.5, seen: a block of width to height 1:2 tips at 26.56 degrees."""

    def tips(degrees):
        slope, weight, height = radians(degrees), 100.0, 2.0
        base = Supports([-0.5, 0.5, 0.5, -0.5], [-0.5, -0.5, 0.5, 0.5], 1.0)
        down_slope = weight * np.sin(slope) * height / 2
        return overturning_line(base, weight * cos(slope), down_slope, 0.0).margin < 0

    assert not tips(26.56)
    assert tips(26.57)


def test_crate_with_a_high_centre():
    """machine.md 9.6: cube of 1.2 m with its centre of mass 0.30 m up from the middle tips at 33.7
    degrees (statement seen, answer computed)."""

    def margin(degrees):
        slope = radians(degrees)
        base = Supports([-0.6, 0.6, 0.6, -0.6], [-0.6, -0.6, 0.6, 0.6], 1.0)
        return overturning_line(base, cos(slope), np.sin(slope) * 0.9, 0.0).margin

    assert margin(33.65) > 0 > margin(33.75)
