"""A body on one-way supports that may have a gap or a preload: forces, sink and tilt.

Feet, rollers under a table, hold-downs over it: each is a spring that pushes and never pulls.
"""

from math import cos, pi, sin
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.formula import Number
from reviewer.mechanics.springs.cone import overturning
from reviewer.mechanics.springs.layout import (
    Array,
    Flags,
    Indices,
    Layout,
    Supports,
    by_one,
    flat,
    flat_sag,
    lay_out,
    local_load,
    movement_at_origin,
    pick,
    take,
)
from reviewer.mechanics.springs.settling import Settled, first_guess, settle, springs_under
from reviewer.mechanics.springs.two_alone import on_two_alone
from reviewer.mechanics.stability import (
    Actions,
    OverturningLine,
    StabilityRatio,
    overturning_line,
    stability_ratio,
)
from reviewer.mechanics.worst_direction import WorstDirection, worst_direction

__all__ = [
    "Actions",
    "OverturningLine",
    "Points",
    "StabilityRatio",
    "SupportSolution",
    "Supports",
    "WorstDirection",
    "circle",
    "overturning_line",
    "solve_supports",
    "stability_ratio",
    "worst_direction",
]

BLOCK = 120_000  # springs times cases solved at once: arrays of a few megabytes


class Points(NamedTuple):
    """See `circle`."""

    x: Array
    y: Array


class SupportSolution(NamedTuple):
    """See `solve_supports`."""

    forces: Array
    sink: Number
    slope_x: Number
    slope_y: Number
    overturns: bool | NDArray[np.bool_]


def circle(count: int, radius: Number, start: Number = 0.0) -> Points:
    """Coordinates of evenly spaced points on a circle.

    Plane trigonometry.

    Parameters
    ----------
    count : number of points [1]
    radius : radius of the circle [m]
    start : azimuth of the first point [rad]

    Returns
    -------
    x : R cos(azimuth), a last axis of points [m]
    y : R sin(azimuth), a last axis of points [m]

    Notes
    -----
    A sine or cosine of a right angle comes out as zero, not as 6e-17, so that opposite supports
    lie on one line.

    >>> x, y = circle(4, 2.0)
    >>> [float(value) for value in x], [float(value) for value in y]
    ([2.0, 0.0, -2.0, 0.0], [0.0, 2.0, 0.0, -2.0])
    """
    if count < 1:
        raise ValueError(f"a circle of supports has at least one point, not {count}")
    azimuth = np.expand_dims(np.asarray(start, float), -1) + 2 * pi * np.arange(count) / count
    reach = np.expand_dims(np.asarray(radius, float), -1)
    return Points(reach * _clean(by_one(cos, azimuth)), reach * _clean(by_one(sin, azimuth)))


def solve_supports(
    supports: Supports,
    force: Number,
    moment_x: Number,
    moment_y: Number,
    compliance: Number | None = None,
    free_sag: Number = 0.0,
) -> SupportSolution:
    """Forces of one-way supports under a stiff or flexible body, by equilibrium and contact.

    Statics of a rigid body on unilateral springs; the energy is as in Kalker, Three-Dimensional
    Elastic Bodies in Rolling Contact (1990), ch. 3 (from memory), with a body of few points.

    Parameters
    ----------
    supports : positions, stiffnesses, signs and gaps of the n supports [1]
    force : vertical load W, downward positive [N]
    moment_x : W times the x at which it stands [N m]
    moment_y : W times the y at which it stands [N m]
    compliance : flexibility C of the body between the n supports, symmetric and positive
        semi-definite, (n, n) or (..., n, n); none for a stiff body [m/N]
    free_sag : downward sag of the flexible body at the supports under the load alone (..., n) [m]

    Returns
    -------
    forces : force of each support, a last axis of n; NaN where the body overturns [N]
    sink : downward movement of the body at the origin [m]
    slope_x : increase of the sink along x [rad]
    slope_y : increase of the sink along y [rad]
    overturns : whether the supports cannot carry the load at all [1]

    Notes
    -----
    w = z + a x + b y + free_sag - sum_j C_ij s_j f_j; f = k max(0, s w - gap);
    sum s f = W, sum s f x = Mx, sum s f y = My. Loads broadcast against the supports' leading
    axes. Where the load stands on the line of two supports, the tilt about it is arbitrary; where
    a lever is too short for sixteen digits, sink and slopes are NaN and the forces are not.
    Raises ValueError where the numbers of supports do not agree.

    >>> x, y = circle(4, 0.2)
    >>> solution = solve_supports(Supports(x, y, 2e6), 800.0, 32.0, 0.0)
    >>> [round(float(f), 6) for f in solution.forces], bool(solution.overturns)
    ([280.0, 200.0, 120.0, 200.0], False)
    """
    loads = (force, moment_x, moment_y)
    shapes = (*(np.shape(load) for load in loads), np.shape(free_sag)[:-1])
    layout = lay_out(supports, compliance, shapes)
    sag = flat_sag(free_sag, layout)
    with np.errstate(all="ignore"):
        load = local_load(layout, *(flat(value, layout.batch) for value in loads))
        over, _ = overturning(layout, load, np.zeros(len(layout.row)))
        known = pick(layout.known, layout.row) & np.all(np.isfinite(load), axis=0)
        known = known & np.all(np.isfinite(sag), axis=0)
        solved = _in_blocks(layout, np.flatnonzero(known & ~over), load, sag)
        return _in_place(layout, solved, over & known)


def _in_blocks(layout: Layout, items: Indices, load: Array, sag: Array) -> Settled:
    """Settle the items that can be settled; the others stay NaN."""
    count, columns = len(layout.basis), load.shape[1]
    whole = Settled(
        np.full((3, columns), np.nan),
        np.full((count, columns), np.nan),
        np.zeros((count, columns), bool),
    )
    step = max(1, BLOCK // count)
    for start in range(0, len(items), step):
        block = items[start : start + step]
        springs = springs_under(layout, block, take(load, block), pick(sag, block))
        found = settle(springs, first_guess(springs))
        on_two_alone(springs, found)
        for target, part in zip(whole, found, strict=True):
            target[:, block] = part
    return whole


def _in_place(layout: Layout, solved: Settled, over: Flags) -> SupportSolution:
    """Back to the origin and to the batch's own shape."""
    sink, slope_x, slope_y = movement_at_origin(layout, layout.row, solved.movement)
    return SupportSolution(
        np.ascontiguousarray(solved.forces.T).reshape(*layout.batch, len(layout.basis)),
        sink.reshape(layout.batch)[()],
        slope_x.reshape(layout.batch)[()],
        slope_y.reshape(layout.batch)[()],
        over.reshape(layout.batch)[()],
    )


def _clean(ratio: Array) -> Array:
    return np.where(np.abs(ratio) < 1e-15, 0.0, ratio)
