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
    Flags,
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
from reviewer.mechanics.springs.settling import Settled, settle, springs_under

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
    """Forces that springs have or lack (n, columns), sink and slopes (3, columns)."""

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


def settle_towards(load: TurningLoad, item: Indices, unit: Array, start: Flags) -> Settled:
    """Equilibrium with the load's moment pointing along unit vectors (2, columns)."""
    return settle(springs_towards(load, item, unit), start)


def values_of(load: TurningLoad, item: Indices, springs: Springs, settled: Settled) -> Array:
    """All values (2 n + 3, columns): forces, their negatives, uplift, sink and tilt."""
    count = len(springs.basis)
    now = _motion(load, item, springs, settled.movement, settled.forces)
    values = np.empty((2 * count + 3, now.way.shape[1]))
    values[:count] = now.way
    np.negative(np.maximum(now.way, 0.0), out=values[count : 2 * count])
    values[2 * count] = _uplift(springs, now, now)
    tilt = np.sqrt(_product(now, now))
    values[2 * count + 1], values[2 * count + 2] = now.moved[0] + load.rim * tilt, tilt
    return values


def answers_of(
    load: TurningLoad, item: Indices, unit: Array, settled: Settled, row: Indices
) -> Answer:
    """One value a column, with its derivatives: `row` counts as in `values_of`."""
    springs = springs_towards(load, item, unit)
    now = _motion(load, item, springs, settled.movement, settled.forces)
    first, second = _derivatives(load, item, unit, springs, settled.touching)
    tilt = np.sqrt(_product(now, now))
    lean = np.where(tilt > 0, tilt, 1.0)
    tilt_1 = _product(now, first) / lean
    tilt_2 = (_product(first, first) + _product(now, second) - tilt_1 * tilt_1) / lean
    return Answer(
        _asked(load, springs, row, now, now, tilt),
        _asked(load, springs, row, now, first, tilt_1),
        _asked(load, springs, row, now, second, tilt_2),
    )


def _motion(
    load: TurningLoad, item: Indices, springs: Springs, movement: Array, forces: Array
) -> Motion:
    return Motion(
        springs.stiffness * pressed(springs, movement, forces, springs.gap),
        movement_at_origin(load.layout, load.layout.row[item], movement),
    )


def _product(one: Motion, other: Motion) -> Array:
    result: Array = one.moved[1] * other.moved[1] + one.moved[2] * other.moved[2]
    return result


def _asked(
    load: TurningLoad, springs: Springs, row: Indices, now: Motion, of: Motion, tilt: Array
) -> Array:
    """The value that each column asks for, or a derivative, while the same springs touch."""
    count = len(now.way)
    column = np.arange(len(row))
    own = of.way[row % count, column]
    least = np.where(now.way[row % count, column] > 0, -own, 0.0)
    result = np.where(row < count, own, least)
    if np.any(row >= 2 * count):
        sink = of.moved[0] + load.rim * tilt
        other = np.where(row == 2 * count + 1, sink, tilt)
        other = np.where(row == 2 * count, _uplift(springs, now, of), other)
        result = np.where(row < 2 * count, result, other)
    return result


def _uplift(springs: Springs, now: Motion, of: Motion) -> Array:
    """Sum of the hold-downs' forces; while none touches, the force that the nearest lacks."""
    holding = springs.basis[:, 0] < 0
    if not np.any(holding):
        return np.zeros(now.way.shape[1])
    touching = holding & (now.way > 0)
    nearest = np.argmax(np.where(holding, now.way, -np.inf), axis=0)
    lacking = of.way[nearest, np.arange(len(nearest))]
    lacking = np.where(np.any(holding, axis=0), lacking, 0.0)
    return np.where(np.any(touching, axis=0), added(np.where(touching, of.way, 0.0)), lacking)


def _derivatives(
    load: TurningLoad, item: Indices, unit: Array, springs: Springs, touching: Flags
) -> tuple[Motion, Motion]:
    """First and second derivative by the direction, while the same springs touch."""
    moment = load.turning[item]
    none = np.zeros_like(moment)
    loads = (
        np.array([none, -moment * unit[1], moment * unit[0]]),
        np.array([none, -moment * unit[0], -moment * unit[1]]),
    )
    footing = steadied(stand(springs, touching))
    results = []
    for acting, sag in zip(loads, _sag_derivatives(load, item, unit), strict=True):
        gap = -pick(load.layout.sign, load.layout.row[item]) * sag
        answer = respond(springs, footing, acting, gap)
        moved = movement_at_origin(load.layout, load.layout.row[item], answer.movement)
        results.append(Motion(springs.stiffness * answer.way, moved))
    return results[0], results[1]


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
