"""Floats of bolts in their holes against scipy's distributions and against positions tried."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize, stats

from reviewer.mechanics.lining_up import (
    angle_of_float,
    deviation_at_end,
    sideways_float,
    spread_of_several,
)

lengths = st.floats(1e-5, 3e-3)
spans = st.floats(0.02, 1.0)


def quantile_of_sum(first, second):
    """95 of 100 of two uniform deviations added: scipy's trapezoid from end to end."""
    total, less = first + second, abs(first - second)
    shape = (1 - less / total) / 2
    return stats.trapezoid(shape, 1 - shape, loc=-total, scale=2 * total).ppf(0.975)


@given(lengths, lengths, spans, st.floats(0.0, 1.0))
def test_likely_deviation_is_the_quantile_of_a_trapezoid(near, far, spacing, reach):
    end = deviation_at_end(near, far, spacing, reach)
    expected = quantile_of_sum(near * (1 + reach / spacing), far * reach / spacing)
    if reach * far / spacing > 1e-3 * near:  # scipy's trapezoid loses digits past that
        assert end.likely == pytest.approx(expected, rel=1e-5)
    assert end.likely <= end.worst


@given(lengths, lengths, spans)
def test_likely_angle_is_the_quantile_of_a_trapezoid(near, far, spacing):
    angle = angle_of_float(near, far, spacing)
    assert angle.likely * spacing == pytest.approx(quantile_of_sum(near, far), rel=1e-5)


@given(lengths, lengths, spans, st.floats(0.0, 1.0))
def test_worst_deviation_is_that_of_a_line_through_both_holes(near, far, spacing, reach):
    """The part as a straight line through its bolts, each at either side of its hole."""
    ends = [
        np.interp(0.0, [0.0], [a]) + (a - b) / spacing * reach
        for a, b in itertools.product((-near, near), (-far, far))
    ]
    assert deviation_at_end(near, far, spacing, reach).worst == pytest.approx(max(ends), rel=1e-9)


@pytest.mark.parametrize("count", [2, 3, 5, 12])
def test_range_of_a_uniform_sample(count):
    """Density of the range n (n-1) r^(n-2) (1-r), integrated by scipy until 0.95 is inside."""

    def inside(reach):
        density = lambda r: count * (count - 1) * r ** (count - 2) * (1 - r)  # noqa: E731
        return integrate.quad(density, 0.0, reach)[0]

    expected = optimize.brentq(lambda r: inside(r) - 0.95, 0.0, 1.0)
    several = spread_of_several(1.5, count)
    assert several.likely == pytest.approx(3.0 * expected, rel=1e-6)
    assert several.worst == 3.0


def test_one_alone_differs_from_nothing():
    assert spread_of_several(1.0, 1) == (0.0, 0.0)


def test_arrays_and_unknown():
    both = deviation_at_end(np.array([1e-3, math.nan]), 1e-3, 0.06, 0.3)
    assert math.isnan(both.worst[1])
    assert both.worst[0] > both.likely[0] > 0
    assert math.isnan(sideways_float(7e-3, 9e-3, 8e-3, 0.0))
    assert math.isnan(deviation_at_end(1e-3, 1e-3, 0.0, 0.3).likely)
    assert np.isnan(spread_of_several(np.array([math.nan]), 5).likely).all()


@pytest.mark.parametrize(
    ("first", "second", "position"), [(9, 9, 0.0), (9, 8.4, 0.2), (10, 8, 0.5)]
)
def test_parts_move_until_the_bolt_touches_both(first, second, position):
    """Linear programming over the bolt, both holes within their positions, and the part [mm]."""
    bolt = 8.0
    # Unknowns: place of the bolt, of the hole in the first part, of that in the second, the part.
    rows, limits = [], []
    for sign in (1, -1):
        rows += [[sign, -sign, 0, 0], [sign, 0, -sign, -sign]]
        limits += [(first - bolt) / 2, (second - bolt) / 2]
    bounds = [(None, None), (-position, position), (-position, position), (None, None)]
    most = optimize.linprog([0, 0, 0, -1], A_ub=rows, b_ub=limits, bounds=bounds)
    found = sideways_float(first * 1e-3, second * 1e-3, bolt * 1e-3, position * 1e-3)
    assert found * 1e3 == pytest.approx(-most.fun, abs=1e-9)
