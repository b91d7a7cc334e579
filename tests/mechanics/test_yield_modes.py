"""Yield modes by what must hold whichever member is called the first."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.yield_modes_en import en_double_shear, en_single_shear
from reviewer.mechanics.yield_modes_nds import nds_single_shear

MM = st.floats(10e-3, 100e-3)
BEARING = st.floats(5e6, 60e6)
DIAMETER = st.floats(6.4e-3, 20e-3)


@given(DIAMETER, MM, MM, BEARING, BEARING, st.floats(1.0, 500.0))
def test_en_modes_swap_with_the_members(d, first, second, one, other, moment):
    here = en_single_shear(d, first, second, one, other, moment)
    there = en_single_shear(d, second, first, other, one, moment)
    assert (here.a, here.b, here.d, here.e) == pytest.approx((there.b, there.a, there.e, there.d))
    assert (here.c, here.f, here.capacity) == pytest.approx((there.c, there.f, there.capacity))


@given(DIAMETER, MM, MM, BEARING, BEARING, st.floats(1.0, 500.0))
def test_en_double_shear_shares_the_modes_of_a_side_member(d, side, middle, one, other, moment):
    double = en_double_shear(d, side, middle, one, other, moment)
    single = en_single_shear(d, side, middle, one, other, moment)
    assert (double.g, double.h * 2) == pytest.approx((single.a, single.b))
    assert (double.j, double.k) == pytest.approx((single.d, single.f))


@given(DIAMETER, MM, MM, BEARING, BEARING)
def test_nds_modes_swap_with_the_members(d, main, side, one, other):
    here = nds_single_shear(d, main, side, one, other, 310e6, 0.0)
    there = nds_single_shear(d, side, main, other, one, 310e6, 0.0)
    assert here.main_crushes == pytest.approx(there.side_crushes)
    assert here.both_crush == pytest.approx(there.both_crush)
    assert here.bends_in_main == pytest.approx(there.bends_in_side)
    assert here.bends_twice == pytest.approx(there.bends_twice)


@given(DIAMETER, MM, MM, BEARING, BEARING)
def test_both_codes_are_one_theory(d, first, second, one, other):
    """Without the European 1.05 and 1.15 and the American reductions the modes are the same."""
    moment = 310e6 * d**3 / 6
    en = en_single_shear(d, first, second, one, other, moment)
    nds = nds_single_shear(d, second, first, other, one, 310e6, 0.0)
    assert nds.side_crushes * 4.0 == pytest.approx(en.a)
    assert nds.both_crush * 3.6 == pytest.approx(en.c)
    assert nds.bends_in_side * 3.2 == pytest.approx(en.d / 1.05)
    assert nds.bends_in_main * 3.2 == pytest.approx(en.e / 1.05)
    assert nds.bends_twice * 3.2 == pytest.approx(en.f / 1.15)


def test_the_rope_helps_no_more_than_its_limit():
    bare = en_single_shear(0.012, 0.05, 0.05, 25e6, 25e6, 76.7)
    little = en_single_shear(0.012, 0.05, 0.05, 25e6, 25e6, 76.7, 400.0)
    much = en_single_shear(0.012, 0.05, 0.05, 25e6, 25e6, 76.7, 1e6)
    assert little.c == pytest.approx(bare.c + 100.0)
    assert much.c == pytest.approx(1.25 * bare.c)
    assert (much.a, much.b) == (bare.a, bare.b)
