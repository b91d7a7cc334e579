"""How far is a body on one-way supports from turning over, and about which line?"""

from collections.abc import Callable
from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.springs.cone import NO_LINE, Facets, facet_blocks, grip, margins
from reviewer.mechanics.springs.layout import (
    Array,
    Flags,
    Indices,
    Layout,
    Supports,
    flat,
    lay_out,
    local_load,
    pick,
)
from reviewer.mechanics.springs.worst_of import first_largest


class Actions(NamedTuple):
    """A vertical force with its moments, and a moment that can come from any direction.

    force : downward force [N]
    moment_x : force times its x, or a push along x times its height [N m]
    moment_y : force times its y, or a push along y times its height [N m]
    round_moment : moment that goes all round on top of these, not below zero [N m]
    """

    force: Number
    moment_x: Number = 0.0
    moment_y: Number = 0.0
    round_moment: Number = 0.0


class OverturningLine(NamedTuple):
    """See `overturning_line`."""

    first: Any
    second: Any
    margin: Any


class StabilityRatio(NamedTuple):
    """See `stability_ratio`."""

    moment: Any
    restoring_moment: Any
    first: Any
    second: Any


def overturning_line(
    supports: Supports,
    force: Number,
    moment_x: Number,
    moment_y: Number,
    round_moment: Number = 0.0,
) -> OverturningLine:
    """The line through two supports about which the body is nearest to turning over.

    Statics.

    Parameters
    ----------
    supports : positions and signs of the supports [1]
    force : vertical load, downward positive [N]
    moment_x : force times the x at which it stands [N m]
    moment_y : force times the y at which it stands [N m]
    round_moment : moment that can come from any direction on top of these [N m]

    Returns
    -------
    first : number of one support of the line; -1 where nothing turns the body over [1]
    second : number of the other; the same where the line passes one support only [1]
    margin : moment about the line that is still to be added before the body turns over; below
        zero where it turns over, infinite where nothing can turn it over [N m]

    Notes
    -----
    margin = sum of force times its distance inside the line, less the moments about it.

    >>> square = Supports([0.3, -0.3, -0.3, 0.3], [0.2, 0.2, -0.2, -0.2], 1.0)
    >>> line = overturning_line(square, 100.0, 0.0, 25.0)
    >>> int(line.first), int(line.second), round(float(line.margin), 9)
    (0, 1, -5.0)
    """
    action = Actions(force, moment_x, moment_y, round_moment)

    def least(facets: Facets, arms: Array, loads: list[Array]) -> tuple[Any, ...]:
        inside = _moments(facets, arms, loads[0])
        line = first_largest(-inside)
        return facets.first[line], facets.second[line], _at(inside, line)

    first, second, margin = _by_block(supports, (action,), least, (-1, -1, np.inf))
    return OverturningLine(first, second, margin)


def stability_ratio(
    supports: Supports, stabilising: Actions, overturning: Actions
) -> StabilityRatio:
    """Moment that turns a body over, and moment that holds it, about the worst line.

    Statics.

    Parameters
    ----------
    supports : positions and signs of the supports [1]
    stabilising : own weight and what else surely holds the body down, already reduced by its
        factor, with its moments about the origin [1]
    overturning : loads, with their moments about the origin [1]

    Returns
    -------
    moment : moment of the overturning actions about the line, less what they hold themselves, and
        of stabilising ones that in truth stand outside the line; not below zero [N m]
    restoring_moment : moment of the stabilising actions about the line; zero where they stand
        outside it, infinite where nothing turns the body over [N m]
    first : number of one support of the line; -1 where there is none [1]
    second : number of the other [1]

    Notes
    -----
    The worst line is the one with the largest moment / restoring_moment, which is 1 at the limit.
    A moment that comes from all round meets every line squarely.

    >>> from reviewer.mechanics.supports import circle
    >>> tripod = Supports(*circle(3, 0.4), 1.0)
    >>> ratio = stability_ratio(tripod, Actions(100.0), Actions(0.0, round_moment=15.0))
    >>> round(float(ratio.moment), 9), round(float(ratio.restoring_moment), 9)
    (15.0, 20.0)
    """

    def worst(facets: Facets, arms: Array, loads: list[Array]) -> tuple[Any, ...]:
        held, turned = _moments(facets, arms, loads[0]), -_moments(facets, arms, loads[1])
        restoring = np.maximum(held, 0.0)
        moment = np.maximum(turned - np.minimum(held, 0.0), 0.0)
        line = first_largest(np.where(moment == 0, 0.0, moment / restoring))
        return _at(moment, line), _at(restoring, line), facets.first[line], facets.second[line]

    return StabilityRatio(
        *_by_block(supports, (stabilising, overturning), worst, (0.0, np.inf, -1, -1))
    )


def _moments(facets: Facets, arms: Array, load: Array) -> Array:
    """Moment with which actions (4, items) hold the body down about each line [N m]."""
    result: Array = arms * margins(facets, load[:3])
    return np.where(arms > 0, result - load[3], np.inf)


def _at(values: Array, line: Indices) -> Array:
    result: Array = values[line, np.arange(values.shape[1])]
    return result


def _by_block(
    supports: Supports,
    actions: tuple[Actions, ...],
    measure: Callable[[Facets, Array, list[Array]], tuple[Any, ...]],
    without: tuple[float, ...],
) -> tuple[Any, ...]:
    """Measure every item's actions against its facets; `without` says what holds if it has none."""
    layout = lay_out(supports, None, tuple(np.shape(part) for each in actions for part in each))
    loads = [_load(layout, action) for action in actions]
    results = [np.full(len(layout.row), value) for value in without]
    with np.errstate(all="ignore"):
        for block, facets in facet_blocks(layout):
            if len(facets.normal):
                arms = _arms(facets, pick(layout.length, layout.row[block]))
                parts = measure(facets, arms, [load[:, block] for load in loads])
                for result, part, value in zip(results, parts, without, strict=True):
                    result[block] = np.where(np.any(arms > 0, axis=0), part, value)
    unknown = ~_known(layout, loads)
    return tuple(_in_place(result, unknown, layout) for result in results)


def _load(layout: Layout, action: Actions) -> Array:
    """Force and moments (4, items): three in local coordinates, the last as it is."""
    force, about_x, about_y, all_round = (flat(part, layout.batch) for part in action)
    return np.concatenate([local_load(layout, force, about_x, about_y), all_round[None]])


def _arms(facets: Facets, length: Array) -> Array:
    """What turns a facet's margin into a moment; zero where it is no line to turn about."""
    hold = grip(facets)
    return np.where(hold > NO_LINE, length / np.where(hold > NO_LINE, hold, 1.0), 0.0)


def _known(layout: Layout, loads: list[Array]) -> Flags:
    placed = np.all(np.isfinite(layout.basis), axis=(0, 1))
    known = np.broadcast_to(pick(placed, layout.row), layout.row.shape)
    for load in loads:
        known = known & np.all(np.isfinite(load), axis=0)
    return np.asarray(known, bool)


def _in_place(result: Array, unknown: Flags, layout: Layout) -> Any:
    nothing = -1 if result.dtype.kind == "i" else np.nan
    return np.where(unknown, nothing, result).reshape(layout.batch)[()]
