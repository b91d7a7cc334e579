"""Errors of marks against scipy's least squares, and their stated uncertainty against trials."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import least_squares
from scipy.stats import chi2

from reviewer.mechanics.mark_datum import carried_on, datum_in_place, errors_about
from reviewer.mechanics.marks import marks_from_lengths
from reviewer.mechanics.misfits import misfit_limit

DIAMETER = 0.58
MEASURING, SCALE, MARKING, SETTING = 0.2e-3, 0.4e-3, 0.15e-3, 0.3e-3
KNOWN = (MEASURING, SCALE, MARKING, SETTING)
NORMAL_95 = 1.959964


def angles_of(count):
    return np.arange(count) * 2 * np.pi / count


def lengths_over(count, *steps):
    """Ends of all chords over so many marks."""
    return np.array([(mark, (mark + k) % count) for k in steps for mark in range(count)])


def measured(radial, tangential, ends, scale=0.0):
    """Lengths between marks with errors, by Pythagoras."""
    count = radial.shape[-1]
    radius = DIAMETER / 2 + radial
    angle = angles_of(count) + tangential / (DIAMETER / 2)
    x, y = radius * np.cos(angle), radius * np.sin(angle)
    first, second = ends.T
    apart = np.hypot(x[..., first] - x[..., second], y[..., first] - y[..., second])
    return apart * (1 + scale)


def by_scipy(lengths, ends, count):
    """The same sum of squares over plan coordinates, the first mark held where it is in y."""
    angle = angles_of(count)
    nominal = DIAMETER / 2 * np.stack([np.cos(angle), np.sin(angle)], axis=-1)

    def residuals(unknown):
        place = nominal + unknown[: 2 * count].reshape(count, 2)
        circle, scale = unknown[2 * count :]
        apart = np.linalg.norm(place[ends[:, 0]] - place[ends[:, 1]], axis=1)
        out = np.linalg.norm(place, axis=1) - DIAMETER / 2
        return np.concatenate(
            [
                (lengths - apart * (1 + scale)) / MEASURING,
                (out - circle) / MARKING,
                [circle / SETTING, scale / SCALE, place[0, 1] / 1e-9],
            ]
        )

    size = 2 * count + 2
    found = least_squares(
        residuals, np.zeros(size), xtol=1e-15, ftol=1e-15, gtol=1e-15, x_scale=1e-4
    )
    place = nominal + found.x[: 2 * count].reshape(count, 2)
    turned = np.arctan2(place[:, 1], place[:, 0]) - angle
    turned = (turned + np.pi) % (2 * np.pi) - np.pi
    tangential = turned * DIAMETER / 2
    return np.hypot(*place.T) - DIAMETER / 2, tangential - tangential.mean()


@pytest.mark.parametrize(("count", "steps"), [(5, (1,)), (10, (1, 3)), (16, (1, 2, 7))])
def test_same_as_scipy_in_other_coordinates(count, steps):
    random = np.random.default_rng(8)
    ends = lengths_over(count, *steps)
    lengths = measured(*random.normal(0, 0.4e-3, (2, count)), ends)
    lengths = lengths + random.normal(0, MEASURING, len(ends))
    network = marks_from_lengths(DIAMETER, angles_of(count), ends, lengths, *KNOWN)
    radial, tangential = by_scipy(lengths, ends, count)
    assert network.radial == pytest.approx(radial, abs=2e-8)
    assert network.tangential == pytest.approx(tangential, abs=2e-8)


@given(
    st.integers(5, 14),
    st.lists(st.floats(-3e-3, 3e-3), min_size=14, max_size=14),
)
def test_known_offsets_come_back(count, offsets):
    """Without an error of measuring, the marks' errors are those that were put in."""
    ends = lengths_over(count, 1, 2)
    tangential = np.array(offsets[:count])
    lengths = measured(np.zeros(count), tangential, ends)
    network = marks_from_lengths(DIAMETER, angles_of(count), ends, lengths, 1e-4, 0.0, 0.0, 0.0)
    assert network.tangential == pytest.approx(tangential - tangential.mean(), abs=1e-9)
    assert network.misfit == pytest.approx(0.0, abs=1e-4)


def test_offsets_in_both_directions_come_back():
    """Radial errors too, where the circle was not trusted and lengths enough were measured."""
    count = 8
    random = np.random.default_rng(1)
    radial, tangential = random.normal(0, 1e-3, (2, count))
    ends = lengths_over(count, 1, 2, 3)
    lengths = measured(radial, tangential, ends)
    found = marks_from_lengths(DIAMETER, angles_of(count), ends, lengths, 1e-5, 0.0, 3e-3, 3e-3)
    # Lengths cannot tell a shift of the whole: what is left is such a one.
    shift = np.stack([np.cos(angles_of(count)), np.sin(angles_of(count))])
    moved = np.linalg.lstsq(shift.T, radial - found.radial, rcond=None)[0]
    assert found.radial + moved @ shift == pytest.approx(radial, abs=1e-5)


TRIALS = 2000


@pytest.fixture(scope="module")
def trials():
    """Ten marks, two of them set wrong, marked and measured two thousand times with errors."""
    random = np.random.default_rng(20)
    count = 10
    ends = lengths_over(count, 1, 3)
    wrong = np.zeros(count)
    wrong[3], wrong[7] = 1.2e-3, -0.5e-3
    radial = random.normal(0, MARKING, (TRIALS, count)) + random.normal(0, SETTING, (TRIALS, 1))
    lengths = measured(radial, wrong, ends, random.normal(0, SCALE, (TRIALS, 1)))
    lengths = lengths + random.normal(0, MEASURING, lengths.shape)
    network = marks_from_lengths(DIAMETER, angles_of(count), ends, lengths, *KNOWN)
    return network, radial, wrong


def covered(found, uncertainty, true):
    return np.mean(np.abs(found - true) <= NORMAL_95 * uncertainty)


def test_stated_uncertainty_covers_95_percent(trials):
    """Coverage of 95 % within 2 % over 2,000 trials, about two datums and in both directions."""
    network, radial, wrong = trials
    for datum in (np.ones(10), np.array([1, 1, 1, 0, 1, 1, 1, 0, 1, 1.0])):
        errors = errors_about(*network[:3], datum)
        true = wrong - np.sum(wrong * datum) / np.sum(datum)
        for mark in range(10):
            along = covered(errors.tangential[:, mark], errors.tangential_uncertainty[:, mark],
                            true[mark])  # fmt: skip
            assert along == pytest.approx(0.95, abs=0.02)
        assert covered(errors.tangential, errors.tangential_uncertainty, true) == pytest.approx(
            0.95, abs=0.01
        )
        assert covered(errors.radial, errors.radial_uncertainty, radial) == pytest.approx(
            0.95, abs=0.01
        )


def test_known_offsets_on_average(trials):
    network, _, wrong = trials
    found = np.mean(network.tangential, axis=0)
    spread = np.std(network.tangential, axis=0) / math.sqrt(TRIALS)
    assert np.all(np.abs(found - (wrong - wrong.mean())) < 4 * spread + 1e-6)


def test_misfit_of_good_measurements_is_about_one(trials):
    """Sum of squares over freedom: a chi-square variable over its degrees, of mean 1."""
    network, _, _ = trials
    assert network.freedom == 11
    assert np.mean(network.misfit**2) == pytest.approx(1.0, abs=0.03)
    assert np.var(network.misfit**2) == pytest.approx(2 / 11, rel=0.15)
    assert np.mean(network.suspicion > 3.3) == pytest.approx(0.001, abs=0.001)


@pytest.mark.parametrize("freedom", [1, 2, 5, 11, 40])
def test_misfit_by_chance(freedom):
    """Chi-square over its freedom at 99 %, by scipy."""
    expected = math.sqrt(chi2.ppf(0.99, freedom) / freedom)
    assert misfit_limit(float(freedom)) == pytest.approx(expected, rel=0.005)


def test_a_misread_length_is_the_most_suspicious():
    count, ends = 10, lengths_over(10, 1, 3)
    lengths = measured(np.zeros(count), np.zeros(count), ends)
    lengths[4] += 5e-3
    network = marks_from_lengths(DIAMETER, angles_of(count), ends, lengths, *KNOWN)
    assert np.argmax(network.suspicion) == 4
    assert network.suspicion[4] > 3.3
    assert network.misfit > 2


def test_marks_that_are_out_leave_the_datum(trials):
    network, radial, wrong = trials
    datum = datum_in_place(*network[:3], 0.3e-3, 2.0)
    assert np.mean(datum[:, 3]) < 0.01
    in_place = np.hypot(radial, wrong) < 0.3e-3
    assert np.mean(datum[in_place]) > 0.99
    one = errors_about(*network[:3], datum)
    assert np.mean(one.tangential[:, 3]) == pytest.approx(wrong[3], abs=0.05e-3)


def test_uncertainty_goes_along_with_a_change():
    """Against the spread of many draws."""
    random = np.random.default_rng(3)
    root = random.normal(size=(3, 3))
    change = random.normal(size=(2, 3))
    draws = change @ root @ random.normal(size=(3, 400_000))
    assert carried_on(change, root @ root.T) == pytest.approx(np.cov(draws), rel=0.02, abs=0.02)


def test_uncertainty_about_one_mark_is_that_of_a_difference(trials):
    """var(a - b) = var a + var b - 2 cov(a, b): numpy's covariance, with one mark as datum."""
    network, _, _ = trials
    covariance = network.covariance[0]
    datum = np.zeros(10)
    datum[2] = 1.0
    errors = errors_about(network.radial[0], network.tangential[0], covariance, datum)
    along = covariance[10:, 10:]
    expected = np.sqrt(np.diag(along) + along[2, 2] - 2 * along[2])
    assert errors.tangential_uncertainty == pytest.approx(expected, rel=1e-9, abs=1e-12)
    assert errors.tangential[2] == 0.0


def test_lengths_that_settle_nothing_are_unknown():
    diameters = np.array([(mark, mark + 5) for mark in range(5)] * 2)
    network = marks_from_lengths(DIAMETER, angles_of(10), diameters, np.full(10, DIAMETER), *KNOWN)
    assert np.isnan(network.tangential).all()


def test_lengths_far_finer_than_the_scribing_settle_them_too():
    """A measuring machine on marks that were scribed by hand."""
    ends = lengths_over(10, 1, 3)
    tangential = np.linspace(-1e-3, 1e-3, 10)
    lengths = measured(np.zeros(10), tangential, ends)
    network = marks_from_lengths(DIAMETER, angles_of(10), ends, lengths, 5e-7, 0.0, 5e-3, 5e-3)
    assert network.tangential == pytest.approx(tangential, abs=1e-8)


@pytest.mark.parametrize("place", range(4))
def test_unknown_travels(place):
    known = list(KNOWN)
    known[place] = math.nan
    ends = lengths_over(6, 1)
    lengths = np.full(6, DIAMETER / 2)
    network = marks_from_lengths(DIAMETER, angles_of(6), ends, lengths, *known)
    assert np.isnan(network.tangential).all()
    errors = errors_about(*network[:3], datum_in_place(*network[:3], 1e-3, 2.0))
    assert np.isnan(errors.error).all()
    assert np.isnan(errors.uncertainty).all()


def test_one_at_a_time_and_batched_agree_to_the_bit():
    ends = lengths_over(10, 1, 3)
    random = np.random.default_rng(5)
    lengths = measured(*random.normal(0, 1e-3, (2, 10)), ends) + random.normal(0, 1e-4, (7, 20))
    together = marks_from_lengths(DIAMETER, angles_of(10), ends, lengths, *KNOWN)
    for each, row in enumerate(lengths):
        alone = marks_from_lengths(DIAMETER, angles_of(10), ends, row, *KNOWN)
        assert (alone.tangential == together.tangential[each]).all()
        assert (alone.covariance == together.covariance[each]).all()
