"""Endurance of steel by Shigley's examples. `seen` says how each number reached this table."""

import pytest

from reviewer.mechanics.endurance import machined_surface_factor, size_factor, steel_endurance

BOOK = "Shigley's Mechanical Engineering Design (2011)"
# fmt: off
ROWS = [
    (machined_surface_factor, (520e6,), 0.860, 5e-4, f"{BOOK}, example 6-3", "memory"),
    (size_factor, (32e-3,), 0.86, 5.1e-3, f"{BOOK}, example 6-4 (a)", "memory"),
    (size_factor, (0.37 * 32e-3,), 0.95, 5e-3, f"{BOOK}, example 6-4 (b)", "memory"),
    (steel_endurance, (400e6, 7.62e-3), 0.5 * 400e6 * 0.814 * 0.922 * 1.0, 2e6,
     f"{BOOK}, table 6-2 and eq. (6-20): k_a 0.922, k_b 1 at 7.62 mm, k_e 0.814", "memory"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=0, abs=tolerance), (source, seen)
