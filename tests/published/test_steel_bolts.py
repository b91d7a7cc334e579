"""Bolts in shear as the tables of steel designers print them. `seen` says how each was known."""

import pytest

from reviewer.mechanics.bolt_shear import BRITTLE_SHEAR_FACTOR, bolt_shear_resistance

BLUE = "design resistance of non-preloaded bolts to EN 1993-1-8, class and size as in the row"
# fmt: off
# stress area in mm2, tensile strength in MPa, factor, resistance in kN as printed
BOLTS = [
    (84.3, 800, 0.6, 32.4, "8.8 M12"), (157, 800, 0.6, 60.3, "8.8 M16"),
    (245, 800, 0.6, 94.1, "8.8 M20"), (353, 800, 0.6, 136.0, "8.8 M24"),
    (245, 400, 0.6, 47.0, "4.6 M20"), (245, 1000, BRITTLE_SHEAR_FACTOR, 98.0, "10.9 M20"),
]

ROWS = [
    (bolt_shear_resistance, (area * 1e-6, strength * 1e6, 1.0, factor), printed * 1e3,
     (500 if printed > 100 else 51), f"{BLUE}: {name}", "memory")
    for area, strength, factor, printed, name in BOLTS
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=0, abs=tolerance), (source, seen)
