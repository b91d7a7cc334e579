"""Jones, Mechanics of Composite Materials (2nd ed., 1999): rigidities of an orthotropic plate.

`seen` says how each number reached this table.
"""

from functools import wraps

import numpy as np
import pytest

from reviewer.mechanics.disc import disc_deflection
from reviewer.mechanics.panel_disc import (
    panel_disc_compliance,
    panel_disc_uniform,
    panel_rigidities,
)


def of(formula, field):
    """One field of a formula that returns several."""

    @wraps(formula)
    def value(*inputs):
        return getattr(formula(*inputs), field)

    return value


# A plate of E 12, nu 0.3 and thickness 1 has D = 1 / 0.91 and D66 = D (1 - nu) / 2.
ALIKE = (12.0, 12.0, 12 / 2.6, 0.3, 1.0)
LAMINA = (181e9, 10.3e9, 7.17e9, 0.28, 1e-3)  # Q11 181.8, Q22 10.34, Q12 2.897, Q66 7.17 GPa
GRAPHITE = "graphite and epoxy, reduced stiffness Q over 12"
LIMIT = "alike in all directions: Timoshenko's plate"


@wraps(panel_disc_compliance)
def between(angle):
    """Compliance between two points of a plate alike in all directions, radius 0.9 and 0.7."""
    points = (np.array([0.9, 0.7]), np.array([0.0, angle]))
    return panel_disc_compliance(*points, 1.0, 0.2, 1.0, 1.0, 0.3, 0.35)[0, 1]


@wraps(panel_disc_uniform)
def even():
    """Centre against edge under an even load: simply supported edge."""
    found = panel_disc_uniform(np.array([0.0, 1.0]), np.zeros(2), 1.0, 0.0, 1.0, 1.0, 0.3, 0.35)
    return found[0] - found[1]


# fmt: off
ROWS = [
    (of(panel_rigidities, "along"), ALIKE, 1 / 0.91, 1e-9, "5.2, E t^3/12(1 - nu^2)", "memory"),
    (of(panel_rigidities, "twisting"), ALIKE, 0.35 / 0.91, 1e-9, "5.2, G t^3/12", "memory"),
    (of(panel_rigidities, "along"), LAMINA, 181.8 / 12, 3e-4, GRAPHITE, "memory"),
    (of(panel_rigidities, "across"), LAMINA, 10.34 / 12, 1e-3, GRAPHITE, "memory"),
    (of(panel_rigidities, "coupling"), LAMINA, 2.897 / 12, 5e-4, GRAPHITE, "memory"),
    (of(panel_rigidities, "twisting"), LAMINA, 7.17 / 12, 1e-9, GRAPHITE, "memory"),
    (between, (1.0,), disc_deflection(0.9, 0.7, 1.0, 1.0, 0.2, 1.0, 0.3), 1e-9, LIMIT, "computed"),
    (even, (), 0.063702, 1e-5, LIMIT, "print"),
]
# fmt: on


@pytest.mark.parametrize(("formula", "inputs", "expected", "tolerance", "source", "seen"), ROWS)
def test_value(formula, inputs, expected, tolerance, source, seen):
    assert formula(*inputs) == pytest.approx(expected, rel=tolerance), (source, seen)
