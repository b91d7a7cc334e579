"""Bending of panels by thickness, against lamination theory and US span ratings."""

from itertools import pairwise

import numpy as np
import pytest

from reviewer.stock.materials import materials
from reviewer.stock.panels import PanelThickness, at_thickness, panel_modulus, panel_thicknesses

BIRCH = materials().find("birch plywood")


def laminated(plies):
    """Thickness [mm], E along and across [MPa], strength along and across [MPa].

    Classical lamination: 1.4 mm plies sanded to 1.1 mm on the faces, 17500 and 70 MPa along a ply
    and nothing across it (Handbook of Finnish Plywood, from memory).
    """
    layers = [1.1, *[1.4] * (plies - 2), 1.1]
    edges = np.cumsum([0.0, *layers]) - sum(layers) / 2
    whole = sum(layers) ** 3
    crossed = sum(4 * (edges[i + 1] ** 3 - edges[i] ** 3) for i in range(1, plies, 2)) / whole
    outermost = sum(layers) / (sum(layers) - 2.2)
    return (
        *(sum(layers), 17500 * (1 - crossed), 17500 * crossed, 70 * (1 - crossed)),
        70 * crossed * outermost,
    )


@pytest.mark.parametrize(
    ("nominal", "plies"),
    [
        *[(4, 3), (6.5, 5), (9, 7), (12, 9), (15, 11), (18, 13)],
        *[(21, 15), (24, 17), (27, 19), (30, 21), (35, 25), (40, 29)],
    ],
)
def test_birch_plywood_is_what_lamination_theory_makes_it(nominal, plies):
    mean, along, across, strength, strength_across = laminated(plies)
    for thickness in (nominal / 1e3, mean / 1e3):
        modulus = panel_modulus(BIRCH, thickness)
        assert modulus.along / 1e6 == pytest.approx(along, abs=0.51)
        assert modulus.across / 1e6 == pytest.approx(across, abs=0.51)
        row = at_thickness(BIRCH, thickness)
        assert row.bending_strength / 1e6 == pytest.approx(strength, abs=0.051)
        assert row.bending_strength_across / 1e6 == pytest.approx(strength_across, abs=0.051)


@pytest.mark.parametrize(
    ("thickness", "along", "across", "source"),
    [
        # EI in lbf in^2 per foot of width; on the gross section E = EI / t^3 in psi
        (15 / 32, 125_000, 25_000, "US rated sheathing 32/16, five plies, from memory"),
        (19 / 32, 250_000, 56_000, "US rated sheathing 40/20, five plies, from memory"),
        (23 / 32, 440_000, 91_500, "US rated sheathing 48/24, five plies, from memory"),
    ],
)
def test_softwood_plywood_has_the_stiffness_of_its_span_rating(thickness, along, across, source):
    modulus = panel_modulus(materials().find("softwood plywood"), thickness * 0.0254)
    psi = 6894.757
    assert modulus.along / psi == pytest.approx(along / thickness**3, rel=0.005)
    assert modulus.across / psi == pytest.approx(across / thickness**3, rel=0.005)


@pytest.mark.parametrize(
    ("name", "thickness", "modulus", "strength", "source"),
    [
        ("MDF", 9, 2700, 23, "EN 622-5 Table 3, from memory"),
        ("MDF", 9.1, 2500, 22, "EN 622-5 Table 3, from memory"),
        ("MDF", 12, 2500, 22, "EN 622-5 Table 3, from memory"),
        ("MDF", 18, 2200, 20, "EN 622-5 Table 3, from memory"),
        ("MDF", 25, 2100, 18, "EN 622-5 Table 3, from memory"),
        ("particleboard", 16, 1600, 11, "EN 312 P2, from memory"),
        ("particleboard P5", 18, 2400, 16, "EN 312 P5, from memory"),
        ("oriented strand board", 12, 4930, 16.4, "EN 12369-1 OSB/3, from memory"),
    ],
)
def test_boards_by_thickness(name, thickness, modulus, strength, source):
    row = at_thickness(materials().find(name), thickness / 1e3)
    assert row.modulus / 1e6 == pytest.approx(modulus)
    assert row.bending_strength / 1e6 == pytest.approx(strength)
    assert source.split(",")[0].split(" Table")[0].split(" P")[0].split(" OSB")[0] in row.source


def test_many_thicknesses_are_one_at_a_time():
    many = np.array([0.002, 0.006, 0.0176, 0.0183, 0.025, 0.2, np.nan])
    modulus = panel_modulus(BIRCH, many)
    for index, each in enumerate(many):
        alone = panel_modulus(BIRCH, float(each))
        np.testing.assert_array_equal(modulus.along[index], alone.along)
        np.testing.assert_array_equal(modulus.across[index], alone.across)


def test_a_thickness_out_of_reach_is_unknown():
    for thickness in (0.001, 0.2, float("nan")):
        assert np.isnan(panel_modulus(BIRCH, thickness).along)
        assert np.isnan(at_thickness(BIRCH, thickness).modulus)
        assert at_thickness(BIRCH, thickness).density == BIRCH.density


def test_a_material_without_rows_by_thickness_keeps_its_own():
    steel = materials().find("S235")
    assert panel_modulus(steel, 0.01) == (210e9, 210e9)
    assert at_thickness(steel, 0.01) is steel


def test_the_base_row_is_that_of_eighteen_millimetres():
    for name in dict.fromkeys(row.material for row in panel_thicknesses()):
        row = materials().find(name)
        # OSB/3 is listed over 18 to 25 mm.
        found = at_thickness(row, 0.0181)
        assert (found.modulus, found.modulus_across) == (row.modulus, row.modulus_across), name
        strengths = (row.bending_strength, row.bending_strength_across)
        known = [each for each in strengths if each == each]
        assert [found.bending_strength, found.bending_strength_across][: len(known)] == known, name


def test_boards_without_grain_are_the_same_both_ways():
    for row in panel_thicknesses():
        if row.material.startswith(("MDF", "particleboard")):
            assert row.modulus_across == row.modulus, row.name
            assert row.bending_strength_across == row.bending_strength, row.name


def test_spans_of_one_material_join_without_overlap():
    for name in dict.fromkeys(row.material for row in panel_thicknesses()):
        assert name in materials()
        rows = [row for row in panel_thicknesses() if row.material == name]
        for thinner, thicker in pairwise(rows):
            assert thinner.above < thinner.up_to == thicker.above, name


def test_a_shop_adds_a_span():
    own = PanelThickness(
        name="birch plywood 50 mm", material="birch plywood", above=0.047, up_to=0.051,
        modulus=9.5e9, modulus_across=8.0e9, source="bent in the shop",
    )  # fmt: skip
    table = panel_thicknesses().with_rows([own])
    assert panel_modulus(BIRCH, 0.050, table) == (9.5e9, 8.0e9)
    assert np.isnan(panel_modulus(BIRCH, 0.050).along)
