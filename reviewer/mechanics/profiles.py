"""Ramps given by points: the height at a place, and the slopes on its two sides."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.domain import silent
from reviewer.mechanics.formula import Number, valid_when

Array = NDArray[np.float64]

NEAR = 1e-9
"""Two places of a travel nearer than this are one [m]."""


class SideSlopes(NamedTuple):
    """Slopes of a profile just before and just after a place."""

    before: Number
    after: Number


_ON_PROFILE = valid_when(
    lambda at, travel: (at >= travel[..., 0] - NEAR) & (at <= travel[..., -1] + NEAR),
    "the place must lie on the profile",
)


@_ON_PROFILE
@silent
def profile_height(at: Number, travel: Array, height: Array) -> Number:
    """Height of a profile at a place of its travel.

    Geometry: straight lines between the points.

    Parameters
    ----------
    at : place along the travel [m]
    travel : of the points, growing along the last axis [m]
    height : of the points, along the last axis [m]

    Returns
    -------
    height : above the first point [m]

    Notes
    -----
    The heights are those of the roller's middle.

    >>> profile_height(1.5, np.array([0.0, 1.0, 3.0]), np.array([0.0, 0.5, 0.9]))
    0.6
    """
    steps = np.diff(travel, axis=-1)
    passed = np.clip(np.asarray(at)[..., None] - travel[..., :-1], 0.0, steps)
    share = np.where(steps > 0, passed / np.where(steps > 0, steps, 1.0), 0.0)
    gained: Number = np.sum(share * np.diff(height, axis=-1), axis=-1)
    return gained


@_ON_PROFILE
@silent
def profile_slopes(at: Number, travel: Array, height: Array) -> SideSlopes:
    """Slopes of a profile on the two sides of a place.

    Geometry: straight lines between the points.

    Parameters
    ----------
    at : place along the travel [m]
    travel : of the points, growing along the last axis [m]
    height : of the points, along the last axis [m]

    Returns
    -------
    before : slope just before the place, zero at the first point [1]
    after : slope just behind the place, zero at the last point [1]

    Notes
    -----
    At a point between two lines the slopes differ: below a crest both lead down.

    >>> slopes = profile_slopes(1.0, np.array([0.0, 1.0, 3.0]), np.array([0.0, 0.5, 0.0]))
    >>> slopes.before, slopes.after
    (0.5, -0.25)
    """
    steps = np.diff(travel, axis=-1)
    slope = np.where(steps > 0, np.diff(height, axis=-1) / np.where(steps > 0, steps, 1.0), 0.0)

    def at_side(shift: float) -> Number:
        place = np.asarray(at)[..., None] + shift
        holds = (place >= travel[..., :-1]) & (place < travel[..., 1:])
        found: Number = np.sum(np.where(holds, slope, 0.0), axis=-1)
        return found

    return SideSlopes(at_side(-2 * NEAR), at_side(2 * NEAR))
