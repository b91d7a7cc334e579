"""A body on one-way supports under a load that turns: what is asked of it in one direction.

Values that grow towards the worst are asked, one a row: each support's force, each one's negative
(for the least), the uplift, the sink and the tilt. A support that does not touch counts with the
force that it lacks, below zero, so that a value stays smooth until the support touches.
"""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.layout import (
    Array,
    Indices,
    Layout,
    movement_at_origin,
    pick,
    take,
)
from reviewer.mechanics.springs.one_way import (
    Springs,
    added,
    pressed,
    respond,
    stand,
    steadied,
)
from reviewer.mechanics.springs.settling import Settled, springs_under

PACE = 1e-4  # step in which the body's own sag is differentiated [rad]

SagOfDirection = Callable[[Array, Array, Indices], Array]


class TurningLoad(NamedTuple):
    """Items under a load of which a moment turns.

    `fixed` (3, items) and `turning` (items) in the layout's local coordinates; `sag` (n, items) or
    (n, 1), or a function of cosine, sine and item; `rim` is the radius at which the sink counts.
    """

    layout: Layout
    fixed: Array
    turning: Array
    sag: Array | SagOfDirection
    rim: float


class Motion(NamedTuple):
    """Values and their derivatives by the direction, in an axis of orders after the first.

    way : (n, orders, columns) force that each spring has, or lacks
    moved : (3, orders, columns) sink at the origin and slopes
    """

    way: Array
    moved: Array


class Answer(NamedTuple):
    """A value with its first and second derivative by the direction."""

    value: Array
    slope: Array
    bend: Array


def block_of(load: TurningLoad, block: Indices) -> TurningLoad:
    """Some of the items, counted anew."""
    sag = load.sag
    chosen: Array | SagOfDirection
    if callable(sag):

        def chosen(cosine: Array, sine: Array, item: Indices) -> Array:
            return sag(cosine, sine, block[item])
    else:
        chosen = pick(sag, block)
    layout = load.layout._replace(row=load.layout.row[block])
    return TurningLoad(layout, take(load.fixed, block), load.turning[block], chosen, load.rim)


def springs_towards(load: TurningLoad, item: Indices, unit: Array) -> Springs:
    """The springs with the load's moment pointing along unit vectors (2, columns)."""
    moment = load.turning[item]
    acting = take(load.fixed, item)
    acting[1] += moment * unit[0]
    acting[2] += moment * unit[1]
    return springs_under(load.layout, item, acting, _sag(load, item, unit))


def _sag(load: TurningLoad, item: Indices, unit: Array) -> Array:
    if callable(load.sag):
        return np.ascontiguousarray(np.asarray(load.sag(unit[0], unit[1], item), float).T)
    return pick(load.sag, item)


def values_of(load: TurningLoad, item: Indices, springs: Springs, settled: Settled) -> Array:
    """All values (2 n + 3, columns): forces, their negatives, uplift, sink and tilt."""
    count = len(springs.basis)
    way = _had_or_lacked(springs, settled)
    sink, slope_x, slope_y = movement_at_origin(
        load.layout, load.layout.row[item], settled.movement
    )
    tilt = np.sqrt(slope_x * slope_x + slope_y * slope_y)
    values = np.empty((2 * count + 3, way.shape[1]))
    values[:count] = way
    np.negative(np.maximum(way, 0.0), out=values[count : 2 * count])
    values[2 * count :] = _uplift(springs, way[:, None])[0], sink + load.rim * tilt, tilt
    return values


def _had_or_lacked(springs: Springs, settled: Settled) -> Array:
    """Force that each spring has, as it is in equilibrium, or that it lacks (n, columns)."""
    way = pressed(springs, settled.movement, settled.forces, springs.gap)
    return np.where(settled.touching, settled.forces, springs.stiffness * way)


def answers_of(
    load: TurningLoad,
    item: Indices,
    unit: Array,
    springs: Springs,
    settled: Settled,
    row: Indices,
) -> Answer:
    """One value a column, with its derivatives: `row` counts as in `values_of`."""
    count, column = len(springs.basis), np.arange(len(row))
    motion = _motion(load, item, unit, springs, settled)
    force = motion.way[row % count, :, column].T
    least = np.where(force[0] > 0, -force, 0.0)
    result = np.where(row < count, force, least)
    if np.any(row >= 2 * count):
        tilt = _tilt(motion.moved)
        result = np.where(row == 2 * count, _uplift(springs, motion.way), result)
        result = np.where(row == 2 * count + 1, motion.moved[0] + load.rim * tilt, result)
        result = np.where(row == 2 * count + 2, tilt, result)
    return Answer(*result)


def _tilt(moved: Array) -> Array:
    """Greatest slope in any direction and its derivatives (3, columns)."""

    def product(one: int, other: int) -> Array:
        result: Array = moved[1, one] * moved[1, other] + moved[2, one] * moved[2, other]
        return result

    tilt = np.sqrt(product(0, 0))
    lean = np.where(tilt > 0, tilt, 1.0)
    first = product(0, 1) / lean
    second = (product(1, 1) + product(0, 2) - first * first) / lean
    return np.array([tilt, first, second])


def _uplift(springs: Springs, way: Array) -> Array:
    """Sum of the hold-downs' forces (orders, columns) from those they have or lack.

    While none touches, it is the force that the nearest lacks.
    """
    holding = springs.basis[:, 0] < 0
    if not np.any(holding):
        return np.zeros(way.shape[1:])
    touching = holding & (way[:, 0] > 0)
    nearest = np.argmax(np.where(holding, way[:, 0], -np.inf), axis=0)
    lacking = way[nearest, :, np.arange(len(nearest))].T
    lacking = np.where(np.any(holding, axis=0), lacking, 0.0)
    held = added(np.where(touching[:, None], way, 0.0))
    return np.where(np.any(touching, axis=0), held, lacking)


def _motion(
    load: TurningLoad, item: Indices, unit: Array, springs: Springs, settled: Settled
) -> Motion:
    """Motion and its two derivatives by the direction, while the same springs touch."""
    moment = load.turning[item]
    none = np.zeros_like(moment)
    turned = moment * unit
    loads = np.array([none, -turned[1], turned[0]]), np.array([none, -turned[0], -turned[1]])
    footing = steadied(stand(springs, settled.touching))
    ways = [_had_or_lacked(springs, settled)]
    movements = [settled.movement]
    for acting, sag in zip(loads, _sag_derivatives(load, item, unit), strict=True):
        gap = -pick(load.layout.sign, load.layout.row[item]) * sag
        answer = respond(springs, footing, acting, gap)
        ways.append(springs.stiffness * answer.way)
        movements.append(answer.movement)
    moved = movement_at_origin(load.layout, load.layout.row[item], np.stack(movements, axis=1))
    return Motion(np.stack(ways, axis=1), moved)


def _sag_derivatives(load: TurningLoad, item: Indices, unit: Array) -> tuple[Array, Array]:
    """First and second derivative of the body's own sag by the direction."""
    if not callable(load.sag):
        return np.zeros((1, 1)), np.zeros((1, 1))
    aside = PACE * np.array([-unit[1], unit[0]])
    long = np.sqrt(1 + PACE * PACE)
    here, there, back = (
        _sag(load, item, way) for way in (unit, (unit + aside) / long, (unit - aside) / long)
    )
    return (there - back) / (2 * PACE), (there - 2 * here + back) / (PACE * PACE)
