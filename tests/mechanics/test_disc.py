"""The flexible disc by what must hold of any free plate; values from books are in published/."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.mechanics.annular_plates import annular_simple_ring_load, annular_simple_uniform
from reviewer.mechanics.disc import disc_deflection, disc_uniform_deflection
from reviewer.mechanics.panel_disc import panel_disc_compliance

RATIO = st.floats(0.31, 1.0)
ANGLE = st.floats(-7.0, 7.0)


def compliance(radii, angles, hole=0.0, poisson=0.3, radius=1.0, rigidity=1.0):
    r, t = np.asarray(radii, float), np.asarray(angles, float)
    return disc_deflection(
        r[:, None], r[None, :], t[:, None] - t[None, :], radius, hole, rigidity, poisson
    )


@given(RATIO, RATIO, ANGLE, st.floats(0.0, 0.3), st.floats(0.0, 0.5))
@settings(max_examples=40, deadline=None)
def test_reciprocity(one, other, angle, hole, poisson):
    there = disc_deflection(one, other, angle, 1.0, hole, 1.0, poisson)
    back = disc_deflection(other, one, -angle, 1.0, hole, 1.0, poisson)
    assert there == pytest.approx(back, abs=1e-14)


@given(st.lists(st.tuples(RATIO, ANGLE), min_size=2, max_size=8), st.sampled_from([0.0, 0.3]))
@settings(max_examples=25, deadline=None)
def test_no_set_of_forces_gives_energy(points, hole):
    radii, angles = zip(*points, strict=True)
    assert np.linalg.eigvalsh(compliance(radii, angles, hole)).min() > -1e-5


def test_scales_with_size_and_rigidity():
    small = compliance([0.4, 0.9], [0.0, 1.0], 0.3)
    large = compliance([0.8, 1.8], [0.0, 1.0], 0.6, radius=2.0, rigidity=5.0)
    assert large == pytest.approx(small * 4 / 5, rel=1e-12)


def test_one_at_a_time_and_together_agree_to_the_bit():
    radii, angles = [0.35, 0.6, 0.99, 1.0], [0.0, 1.0, 2.0, 4.0]
    together = compliance(radii, angles, 0.3)
    for i in range(4):
        for j in range(4):
            alone = disc_deflection(radii[i], radii[j], angles[i] - angles[j], 1.0, 0.3, 1.0, 0.3)
            assert alone == together[i, j]


@pytest.mark.parametrize("hole", [0.1, 0.3, 0.5, 0.7])
def test_many_forces_around_the_hole_are_the_annular_plate(hole):
    count = 120
    angles = 2 * np.pi * np.arange(count) / count
    c = compliance([hole] * count + [1.0] * count, np.tile(angles, 2), hole)
    forces = np.repeat([1.0, -1.0], count) * 2 * np.pi * hole / count
    sag = np.einsum("ij,j", c, forces)
    plate = annular_simple_ring_load(1.0, hole, 1.0, 1.0, 0.3)
    assert sag[0] - sag[count] == pytest.approx(plate.deflection, rel=1e-5)


@pytest.mark.parametrize("hole", [0.1, 0.3, 0.5, 0.7])
def test_even_load_with_a_hole_is_the_annular_plate(hole):
    inner, outer = disc_uniform_deflection(np.array([hole, 1.0]), 1.0, hole, 1.0, 0.3)
    plate = annular_simple_uniform(1.0, hole, 1.0, 1.0, 0.3)
    assert inner - outer == pytest.approx(plate.deflection, rel=1e-10)
    assert outer == pytest.approx(0.0, abs=1e-15)


def test_a_pinhole_is_no_hole():
    radii, angles = [0.4, 0.9, 1.0], [0.0, 1.0, 2.5]
    assert compliance(radii, angles, 1e-4) == pytest.approx(compliance(radii, angles), abs=1e-8)


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"at_radius": 0.2}, "in the hole"),
        ({"force_radius": 1.1}, "beyond the edge"),
        ({"hole_radius": 1.0}, "no plate left"),
        ({"hole_radius": -0.1}, "negative hole"),
        ({"poisson": 0.6}, "impossible material"),
        ({"rigidity": 0.0}, "no rigidity"),
        ({"rigidity": float("nan")}, "unknown rigidity"),
        ({"poisson": float("nan")}, "unknown material"),
        ({"at_radius": float("nan")}, "unknown place"),
    ],
)
def test_says_nothing_where_it_cannot(change, why):
    given_values = {
        "at_radius": 0.5,
        "force_radius": 0.8,
        "angle_between": 1.0,
        "radius": 1.0,
        "hole_radius": 0.3,
        "rigidity": 1.0,
        "poisson": 0.3,
    }
    assert np.isfinite(disc_deflection(**given_values))
    assert np.isnan(disc_deflection(**{**given_values, **change})), why


PLYWOOD = (1.15, 0.86, 0.05, 0.075)


def panel(radii, angles, hole=0.3, rigidities=PLYWOOD):
    return panel_disc_compliance(np.array(radii), np.array(angles), 1.0, hole, *rigidities)


def test_a_panel_alike_in_all_directions_is_the_plain_disc():
    radii, angles = [0.4, 0.7, 1.0], [0.0, 1.0, 2.5]
    alike = panel(radii, angles, rigidities=(2.0, 2.0, 0.6, 0.7))
    plain = compliance(radii, angles, 0.3, rigidity=2.0)
    assert alike == pytest.approx(plain, abs=1e-10)


def test_a_panel_is_reciprocal_and_gives_no_energy():
    radii, angles = [0.4, 0.7, 1.0, 0.9], [0.0, 1.0, 2.5, -1.0]
    c = panel(radii, angles)
    assert c == pytest.approx(c.T, abs=1e-12)
    assert np.linalg.eigvalsh(c).min() > 0


def sink(angle, rigidities):
    """Sink of the rim between two of four supports that stand at 45 degrees to the grain."""
    turns = np.append(np.pi / 4 + np.pi / 2 * np.arange(4), angle)
    c = panel([0.8] * 4 + [1.0], turns, 0.3, rigidities)
    places = np.stack((np.ones(5), np.cos(turns), np.sin(turns)))
    places[1:, :4] *= 0.8
    share = np.linalg.lstsq(places[:, :4], places[:, 4], rcond=None)[0]
    # An even saddle of support forces is found from no gap at any support.
    saddle = np.array([1.0, -1.0, 1.0, -1.0])
    bent = c[:4, 4] - c[:4, :4] @ share
    share = share + saddle * (saddle @ bent) / (saddle @ c[:4, :4] @ saddle)
    return c[4, 4] - 2 * c[4, :4] @ share + share @ c[:4, :4] @ share


def test_turning_the_panel_by_a_right_angle_swaps_along_and_across():
    swapped = (PLYWOOD[1], PLYWOOD[0], *PLYWOOD[2:])
    assert sink(0.0, PLYWOOD) == pytest.approx(sink(np.pi / 2, swapped), rel=1e-9)
    assert sink(0.0, PLYWOOD) != pytest.approx(sink(np.pi / 2, PLYWOOD), rel=1e-3)


def test_plywood_sinks_more_than_a_plate_of_its_mean_bending_stiffness():
    assert sink(0.0, PLYWOOD) > sink(0.0, (1.0, 1.0, 0.3, 0.35))


@pytest.mark.parametrize(
    ("rigidities", "hole", "radii"),
    [
        ((1.0, 1.0, 1.1, 0.3), 0.3, [0.5]),  # coupling that no material has
        ((1.0, 1.0, 0.3, 0.0), 0.3, [0.5]),
        ((1.0, float("nan"), 0.3, 0.3), 0.3, [0.5]),
        (PLYWOOD, 1.0, [0.5]),
        (PLYWOOD, float("nan"), [0.5]),
        (PLYWOOD, 0.3, [0.2]),
        (PLYWOOD, 0.3, [1.2]),
    ],
)
def test_a_panel_says_nothing_where_it_cannot(rigidities, hole, radii):
    assert np.isnan(panel(radii, [0.0], hole, rigidities)).all()
