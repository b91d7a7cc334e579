"""The worst of a load that comes from all round, or of a table that turns over its supports."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reviewer.mechanics.formula import Number
from reviewer.mechanics.springs.cone import overturning
from reviewer.mechanics.springs.layout import (
    Array,
    Flags,
    Indices,
    Layout,
    Supports,
    flat,
    flat_sag,
    lay_out,
    local_load,
    pick,
)
from reviewer.mechanics.springs.scan import searched
from reviewer.mechanics.springs.turning import SagOfDirection, TurningLoad
from reviewer.mechanics.springs.worst_of import Worst

Groups = Mapping[str, ArrayLike] | Sequence[ArrayLike]


class WorstDirection(NamedTuple):
    """See `worst_direction`. The first five have a first axis of groups."""

    peak: Array
    member: NDArray[np.int64]
    direction: Array
    least: Array
    least_direction: Array
    uplift: Any
    uplift_direction: Any
    sink: Any
    sink_direction: Any
    tilt: Any
    tilt_direction: Any
    overturns: Any
    overturning_direction: Any


def worst_direction(
    supports: Supports,
    force: Number,
    fixed_x: Number,
    fixed_y: Number,
    round_moment: Number,
    groups: Groups | None = None,
    compliance: Number | None = None,
    free_sag: Number | SagOfDirection = 0.0,
    rim: float = 0.0,
) -> WorstDirection:
    """Worst forces and movements of a body on one-way supports over all directions of a moment.

    Statics, as in `solve_supports`; the directions are searched.

    Parameters
    ----------
    supports : positions, stiffnesses, signs and gaps of the n supports [1]
    force : vertical load, downward positive [N]
    fixed_x : moment along x that keeps its direction [N m]
    fixed_y : moment along y that keeps its direction [N m]
    round_moment : moment of which the direction t is free, not below zero; it adds
        (cos t, sin t) times itself [N m]
    groups : supports whose peak and least force are asked, by name or in order; all if none [1]
    compliance : flexibility of the body between the supports, as in `solve_supports` [m/N]
    free_sag : sag of the flexible body at the supports under the load alone (..., n); or, where
        it depends on the direction, a function of the direction's cosine and sine and of the
        place in the flattened batch, each of shape (m,), that returns it as (m, n) [m]
    rim : distance from the origin at which the greatest sink is asked [m]

    Returns
    -------
    peak : greatest force of a support of each group, a first axis of groups [N]
    member : the number of that support among all, -1 where there is no answer [1]
    direction : direction t of the moment at that peak, 0 to 2 pi [rad]
    least : least force of a support of each group [N]
    least_direction : direction at that least force [rad]
    uplift : greatest sum of the forces of the hold-downs [N]
    uplift_direction : direction at the greatest uplift [rad]
    sink : greatest downward movement at the origin, or on the circle of the rim [m]
    sink_direction : direction at the greatest sink [rad]
    tilt : greatest slope of the body in any direction [rad]
    tilt_direction : direction at the greatest tilt [rad]
    overturns : whether the supports cannot carry the load in some direction [1]
    overturning_direction : direction in which the body is nearest to turning over [rad]

    Notes
    -----
    Where the body overturns in any direction, the peaks are NaN. Among equals (within 1e-9 of the
    largest) the first direction counts, then the first support; a force that is zero throughout
    has direction 0. Raises ValueError for a group of supports that do not exist.

    >>> from math import degrees
    >>> from reviewer.mechanics.supports import circle
    >>> ring = Supports(*circle(6, 0.25), 2e6)
    >>> worst = worst_direction(ring, 1000.0, 0.0, 0.0, 0.7 * 0.25 * 1000.0)
    >>> round(float(worst.peak[0]), 1), round(degrees(worst.direction[0]), 1)
    (427.7, 10.9)
    """
    shapes = tuple(np.shape(part) for part in (force, fixed_x, fixed_y, round_moment))
    sag_shape = () if callable(free_sag) else np.shape(free_sag)[:-1]
    layout = lay_out(supports, compliance, (*shapes, sag_shape))
    chosen = _groups(groups, len(layout.basis))
    sag = free_sag if callable(free_sag) else flat_sag(free_sag, layout)
    with np.errstate(all="ignore"):
        parts = (flat(part, layout.batch) for part in (force, fixed_x, fixed_y))
        fixed = local_load(layout, *parts)
        turning = flat(round_moment, layout.batch) / pick(layout.length, layout.row)
        load = TurningLoad(layout, fixed, turning, sag, rim)
        known = _known(load)
        over, towards = overturning(layout, fixed, turning)
        results = searched(load, np.flatnonzero(known & ~over), chosen)
    towards = np.where(known, towards, np.nan)
    return _in_place(layout, results, over & known, towards, len(chosen))


def _groups(groups: Groups | None, count: int) -> list[Indices]:
    """Members of each group, checked, in rising order."""
    if groups is None:
        return [np.arange(count)]
    named = groups.items() if isinstance(groups, Mapping) else enumerate(groups)
    chosen = []
    for name, members in named:
        group = np.unique(np.asarray(members, int).ravel())
        if not len(group) or group[0] < 0 or group[-1] >= count:
            raise ValueError(
                f"group {name!r} has to name supports from 0 to {count - 1}, not {group.tolist()}"
            )
        chosen.append(group)
    return chosen


def _known(load: TurningLoad) -> Flags:
    layout = load.layout
    known = pick(layout.known, layout.row) & np.all(np.isfinite(load.fixed), axis=0)
    known = known & (load.turning >= 0) & np.isfinite(load.turning)
    if not callable(load.sag):
        known = known & np.all(np.isfinite(load.sag), axis=0)
    return np.asarray(known, bool)


def _in_place(
    layout: Layout, worst: Worst, over: Flags, towards: Array, groups: int
) -> WorstDirection:
    """Forces that are not there as zero at direction 0, and all in the batch's own shape."""
    uplift, sink, tilt = range(2 * groups, 2 * groups + 3)
    force = np.arange(len(worst.value)) < groups
    force[uplift] = True
    absent = force[:, None] & (worst.value <= 0)
    value = np.where(absent, 0.0, worst.value)
    value[groups : 2 * groups] = 0.0 - value[groups : 2 * groups]
    direction = np.where(absent, 0.0, worst.direction)

    def shaped(array: Any) -> Any:
        return array.reshape((*array.shape[:-1], *layout.batch))[()]

    return WorstDirection(
        shaped(value[:groups]),
        shaped(worst.member[:groups]),
        shaped(direction[:groups]),
        shaped(value[groups : 2 * groups]),
        shaped(direction[groups : 2 * groups]),
        shaped(value[uplift]),
        shaped(direction[uplift]),
        shaped(value[sink]),
        shaped(direction[sink]),
        shaped(value[tilt]),
        shaped(direction[tilt]),
        shaped(over),
        shaped(towards),
    )
