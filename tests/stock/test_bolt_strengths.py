"""Strength of bolts by property class and grade."""

import pytest

from reviewer.stock.fasteners import bolt_strength, bolt_strengths


@pytest.mark.parametrize(
    ("name", "diameter", "proof", "yields", "tensile", "source"),
    [
        ("4.6", 8, 225, 240, 400, "ISO 898-1, as reprinted"),
        ("8.8", 16, 580, 640, 800, "ISO 898-1 Table 3: proof from memory, the rest as reprinted"),
        ("8.8", 20, 600, 660, 830, "ISO 898-1, as reprinted"),
        ("10.9", 8, 830, 940, 1040, "ISO 898-1, as reprinted"),
        ("12.9", 8, 970, 1100, 1220, "ISO 898-1, as reprinted"),
        ("5.8", 8, 380, 420, 520, "ISO 898-1 Table 3, from memory"),
        ("a2-70", 8, 405, 450, 700, "ISO 3506-1, from memory; proof 0.9 of yield"),
    ],
)
def test_property_classes(name, diameter, proof, yields, tensile, source):
    row = bolt_strength(name, diameter / 1e3)
    expected = (proof * 1e6, yields * 1e6, tensile * 1e6)
    assert (row.proof, row.yield_strength, row.tensile_strength) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("grade", "proof", "yields", "tensile", "source"),
    [
        ("grade 2", 55, 57, 74, "SAE J429 as in Shigley Table 8-9, from memory"),
        ("grade 5", 85, 92, 120, "SAE J429 as in Shigley Table 8-9, from memory"),
        ("grade 8", 120, 130, 150, "SAE J429 as in Shigley Table 8-9, from memory"),
    ],
)
def test_inch_grades(grade, proof, yields, tensile, source):
    row = bolt_strength(grade, 0.0127)
    psi = 6.894757e6
    expected = (proof * psi, yields * psi, tensile * psi)
    assert (row.proof, row.yield_strength, row.tensile_strength) == pytest.approx(
        expected, rel=0.001
    )


def test_the_designation_says_the_strength():
    """ISO 898-1: the first figure is a hundredth of Rm, the second ten times the yield ratio."""
    for row in bolt_strengths():
        assert row.proof < row.yield_strength < row.tensile_strength
        first, point, second = row.property_class.partition(".")
        if point:
            nominal = float(first) * 100
            assert nominal <= row.tensile_strength / 1e6 <= 1.06 * nominal
            yields = nominal * float(second) / 10
            assert yields <= row.yield_strength / 1e6 <= 1.07 * yields
