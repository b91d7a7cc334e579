"""Round plates on a few points evenly spaced on a circle, as a top on arms."""

from typing import Any

import numpy as np

from reviewer.mechanics.disc import disc_deflection, disc_uniform_deflection
from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_POINTS = "there must be at least three points, within the plate"
_CHECKED = valid_when(
    lambda support_radius, radius, count: (
        (count >= 3) & (support_radius > 0) & (support_radius <= radius * (1 + 1e-12))
    ),
    _POINTS,
)


def _around(support_radius: Any, radius: Any, count: Any, poisson: Any) -> Number:
    """Mean compliance of one support for a unit force on it and on all the others, of D = 1."""
    reach = np.asarray(support_radius)[..., None]
    edge, ratio = np.asarray(radius)[..., None], np.asarray(poisson)[..., None]
    number = int(np.ravel(count)[0])
    angles = 2 * np.pi * np.arange(number) / number
    found = disc_deflection(reach, reach, angles, edge, 0.0, 1.0, ratio)
    mean: Number = np.mean(found, axis=-1)
    return mean


@_CHECKED
@defined(positive="support_radius radius rigidity")
def point_supported_centre_load(
    force: Number,
    support_radius: Number,
    count: Number,
    radius: Number,
    rigidity: Number,
    poisson: Number,
) -> Number:
    """Sink of the centre of a plate on equal points under a force at its centre.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 71 (Nadai).

    Parameters
    ----------
    force : force at the centre [N]
    support_radius : radius of the circle of points [m]
    count : number of points, the same in every row [1]
    radius : radius of the free edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : sink of the centre against the points [m]

    Notes
    -----
    By the compliance of the free plate: each point carries P/k. Thin isotropic plate.

    >>> round(point_supported_centre_load(1.0, 1.0, 3, 1.0, 1.0, 0.25), 4)
    0.067
    """
    centre = disc_deflection(0.0 * radius, 0.0 * radius, 0.0, radius, 0.0, 1.0, poisson)
    across = disc_deflection(0.0 * radius, support_radius, 0.0, radius, 0.0, 1.0, poisson)
    around = _around(support_radius, radius, count, poisson)
    return force / rigidity * (centre - 2 * across + around)


@_CHECKED
@defined(positive="support_radius radius rigidity")
def point_supported_uniform(
    pressure: Number,
    support_radius: Number,
    count: Number,
    radius: Number,
    rigidity: Number,
    poisson: Number,
) -> Number:
    """Sink of the centre of a plate on equal points under an even load over its whole face.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 71 (Nadai).

    Parameters
    ----------
    pressure : load per area [Pa]
    support_radius : radius of the circle of points [m]
    count : number of points, the same in every row [1]
    radius : radius of the free edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : sink of the centre against the points, negative where it rises [m]

    Notes
    -----
    By the compliance of the free plate. Thin isotropic plate.

    >>> round(point_supported_uniform(1 / np.pi, 1.0, 3, 1.0, 1.0, 0.25), 4)
    0.0362
    """

    def even(at: Number) -> Number:
        return disc_uniform_deflection(at, radius, 0.0, 1.0, poisson)

    across = disc_deflection(0.0 * radius, support_radius, 0.0, radius, 0.0, 1.0, poisson)
    around = _around(support_radius, radius, count, poisson)
    whole = np.pi * radius * radius
    sink = even(0.0 * radius) - even(support_radius) - whole * (across - around)
    return pressure / rigidity * sink
