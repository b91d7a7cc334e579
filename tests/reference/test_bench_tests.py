"""Bench tests played on frames of known stiffness (PyNiteFEA): the moduli come back."""

import pytest

from reviewer.mechanics.bench_tests import modulus_from_bending_test, shear_modulus_from_twist_test

pynite = pytest.importorskip("Pynite")

SIX = ("DX", "DY", "DZ", "RX", "RY", "RZ")
MODULUS, SHEAR_MODULUS = 9.2e9, 0.7e9


def bar(length: float, inertia: float, torsion: float, nodes: int):
    """A straight bar of a material of known moduli, in pieces between nodes along x."""
    model = pynite.FEModel3D()
    model.add_material("wood", MODULUS, SHEAR_MODULUS, 0.3, 1.0)
    model.add_section("strip", 1.0, inertia, inertia, torsion)
    for index in range(nodes):
        model.add_node(f"n{index}", length * index / (nodes - 1), 0.0, 0.0)
    for index in range(nodes - 1):
        model.add_member(f"m{index}", f"n{index}", f"n{index + 1}", "wood", "strip")
    return model


@pytest.mark.parametrize(("span", "width", "thickness"), [(0.8, 0.1, 0.018), (0.4, 0.05, 0.009)])
def test_a_strip_on_two_edges(span: float, width: float, thickness: float) -> None:
    model = bar(span, width * thickness * thickness * thickness / 12, 1.0, 3)
    held = {"support_DX": True, "support_DY": True, "support_DZ": True, "support_RX": True}
    model.def_support("n0", **held)
    model.def_support("n2", support_DY=True, support_DZ=True)
    model.add_node_load("n1", "FY", -100.0)
    model.analyze_linear()
    sag = -model.nodes["n1"].DY["Combo 1"]
    found = modulus_from_bending_test(100.0, span, width, thickness, sag)
    assert found == pytest.approx(MODULUS, rel=1e-9)


@pytest.mark.parametrize(("length", "torsion"), [(0.6, 1.57e-8), (1.1, 4.0e-9)])
def test_a_bar_twisted_at_its_end(length: float, torsion: float) -> None:
    model = bar(length, 1.0, torsion, 2)
    model.def_support("n0", **{f"support_{name}": True for name in SIX})
    model.add_node_load("n1", "MX", 5.0)
    model.analyze_linear()
    angle = model.nodes["n1"].RX["Combo 1"]
    found = shear_modulus_from_twist_test(5.0, length, torsion, angle)
    assert found == pytest.approx(SHEAR_MODULUS, rel=1e-9)
