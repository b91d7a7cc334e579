"""The average of a panel with a grain, against the turned stiffness itself."""

import numpy as np
import pytest

from reviewer.mechanics.panel_average import average_rigidity

THICKNESS = 0.018
CUBE = THICKNESS**3 / 12
TURNS = np.pi * np.arange(360) / 360


def turned(matrix, angle, engineering):
    """A plane stiffness (or, with `engineering` 2, compliance) matrix in turned axes.

    Jones, Mechanics of Composite Materials (1999), equations 2.79 to 2.88.
    """
    c, s = np.cos(angle), np.sin(angle)
    stress = np.array(
        [[c * c, s * s, -2 * s * c], [s * s, c * c, 2 * s * c], [s * c, -s * c, 1 - 2 * s * s]]
    )
    reuter = np.diag([1.0, 1.0, 2.0])
    if engineering == 1:
        return stress @ matrix @ reuter @ np.linalg.inv(stress) @ np.linalg.inv(reuter)
    return reuter @ stress @ np.linalg.inv(reuter) @ matrix @ np.linalg.inv(stress)


def averages(along, across, shear, poisson):
    """First entry of the mean stiffness, and of the inverse of the mean compliance."""
    compliance = np.array(
        [[1 / along, -poisson / along, 0], [-poisson / along, 1 / across, 0], [0, 0, 1 / shear]]
    )
    stiffness = np.linalg.inv(compliance)
    stiff = np.mean([turned(stiffness, t, 1) for t in TURNS], axis=0)
    soft = np.mean([turned(compliance, t, 2) for t in TURNS], axis=0)
    return stiff[0, 0] * CUBE, np.linalg.inv(soft)[0, 0] * CUBE


@pytest.mark.parametrize(
    "panel", [(10.05e9, 7.45e9, 0.62e9, 0.04), (8.17e9, 1.7e9, 0.45e9, 0.05)], ids=["birch", "pine"]
)
def test_it_is_the_mean_of_both_averages_over_all_directions(panel):
    stiff, soft = averages(*panel)
    assert soft < stiff
    assert average_rigidity(*panel, THICKNESS) == pytest.approx((stiff + soft) / 2, rel=1e-9)


@pytest.mark.parametrize(("young", "poisson"), [(210e9, 0.3), (2.2e9, 0.25), (70e9, 0.0)])
def test_a_plate_without_grain_is_that_of_the_books(young, poisson):
    """E t^3/12(1 - v^2), Timoshenko and Woinowsky-Krieger (1959), equation 3."""
    shear = young / 2 / (1 + poisson)
    expected = young * CUBE / (1 - poisson**2)
    assert average_rigidity(young, young, shear, poisson, THICKNESS) == pytest.approx(expected)


@pytest.mark.parametrize(
    "panel", [(0.0, 7e9, 1e9, 0.1), (7e9, 7e9, -1e9, 0.1), (1e9, 9e9, 1e9, 0.5)]
)
def test_it_says_nothing_of_a_panel_that_cannot_be(panel):
    assert np.isnan(average_rigidity(*panel, THICKNESS))
