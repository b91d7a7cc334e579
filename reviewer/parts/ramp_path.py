"""The path of a follower on a ramp: its points, its slopes, its height."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.profiles import Array, profile_height

Point = tuple[float, float]


class Path(NamedTuple):
    """Points of a ramp along the last axis: travel [m] and height [m]."""

    travel: Array
    height: Array


def path_of(
    profile: tuple[Point, ...] | None, rise: Number | None, run: Number | None, flat: Number
) -> Path | None:
    """The points of a profile, or of a straight ramp with a level stretch behind it.

    Geometry.
    """
    if profile is not None:
        travel, height = np.asarray(profile, dtype=float).T
        return Path(travel, height - height[0])
    if rise is None or run is None:
        return None
    end, top, nothing = run + flat, rise + 0.0 * flat, 0.0 * (rise + run + flat)
    corners = ([nothing, run + nothing, end + nothing], [nothing, top + nothing, top + nothing])
    travel, height = (np.stack(np.broadcast_arrays(*each), axis=-1) for each in corners)
    return Path(travel, height)


def slopes_of(path: Path) -> Number:
    """Slopes between neighbouring points along the last axis; level where nothing is between."""
    steps = np.diff(path.travel, axis=-1)
    rises = np.diff(path.height, axis=-1)
    slope: Number = np.where(steps > 0, rises / np.where(steps > 0, steps, 1.0), 0.0)
    return slope


def steepest_angle(path: Path) -> Number:
    """Angle of the steepest part of the ramp to its travel.

    Geometry.
    """
    steepest: Number = np.arctan(np.max(np.abs(slopes_of(path)), axis=-1))
    return steepest


def end_of(path: Path) -> Number:
    """Length of the whole travel.

    Geometry.
    """
    length: Number = path.travel[..., -1] - path.travel[..., 0]
    return length


def top_of(path: Path) -> Number:
    """Height of the highest point above the first one.

    Geometry.
    """
    highest: Number = np.max(path.height, axis=-1)
    return highest


def height_there(path: Path, at: Number) -> Number:
    """Height of the follower where it stands.

    Geometry: straight lines between the points.
    """
    return profile_height(at, path.travel, path.height)
