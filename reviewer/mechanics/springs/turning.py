"""A body on one-way supports under a load that turns: its piece of the circle in one direction.

While the same springs touch, every force and movement is a sinusoid of the direction: its value,
slope and bend in one direction give it all along the arc on which those springs touch.
"""

from collections.abc import Callable
from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.springs.arcs import reach_of
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
    pressed,
    respond,
    stand,
    steadied,
    steady,
)
from reviewer.mechanics.springs.settling import (
    STRICT,
    Settled,
    first_guess,
    rounding,
    settle,
    size_of,
    springs_under,
)

SLACK = 1e-12  # of the load: a spring counts as touching, or not, up to this much force
LOOSE_REACH = 1e-3  # half a tangent: how far a direction counts that tells nothing of the next
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


class Pieces(NamedTuple):
    """The body in one direction of an item each, and all along the arc on which it is the same.

    Orders are value, first and second derivative by the direction.

    item : (columns), and unit : (2, columns) the direction of the load's moment
    touching : (n, columns) springs that touch
    way : (n, orders, columns) force that each spring has, or lacks
    moved : (3, orders, columns) sink at the origin and slopes
    back, ahead : (columns) how far the arc reaches, as tangents of half the angle
    """

    item: Indices
    unit: Array
    touching: Flags
    way: Array
    moved: Array
    back: Array
    ahead: Array


def joined(pieces: list[Pieces]) -> Pieces:
    """Pieces one after the other."""
    parts: Any = (np.concatenate(part, axis=-1) for part in zip(*pieces, strict=True))
    return Pieces(*parts)


def pieces_at(
    load: TurningLoad, item: Indices, unit: Array, start: Flags | None, strict: int = STRICT
) -> Pieces:
    """Settle items with the load's moment along unit vectors (2, columns)."""
    springs = springs_towards(load, item, unit)
    settled = settle(springs, first_guess(springs) if start is None else start, strict)
    way, moved, held = _motion(load, item, unit, springs, settled)
    slack = SLACK * size_of(springs.load) + rounding(springs, settled.movement)
    back, ahead = reach_of(way, settled.touching, slack)
    turns, most = load.turning[item] > 0, np.where(held, np.inf, LOOSE_REACH)
    back, ahead = (np.minimum(reach, most) * turns for reach in (back, ahead))
    return Pieces(item, unit, settled.touching, way, moved, back, ahead)


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


def _had_or_lacked(springs: Springs, settled: Settled) -> Array:
    """Force that each spring has, as it is in equilibrium, or that it lacks (n, columns)."""
    way = pressed(springs, settled.movement, settled.forces, springs.gap)
    return np.where(settled.touching, settled.forces, springs.stiffness * way)


def _motion(
    load: TurningLoad, item: Indices, unit: Array, springs: Springs, settled: Settled
) -> tuple[Array, Array, Flags]:
    """Forces had or lacked, and movements at the origin, in all orders; and where they hold.

    Two springs alone carry a load that stands in their line, and none beside it: such a direction
    tells nothing of the next, and is left as it is.
    """
    moment = load.turning[item]
    none = np.zeros_like(moment)
    turned = moment * unit
    loads = np.array([none, -turned[1], turned[0]]), np.array([none, -turned[0], -turned[1]])
    footing = stand(springs, settled.touching)
    held, footing = steady(footing), steadied(footing)
    ways = [_had_or_lacked(springs, settled)]
    movements = [settled.movement]
    for acting, sag in zip(loads, _sag_derivatives(load, item, unit), strict=True):
        gap = -pick(load.layout.sign, load.layout.row[item]) * sag
        answer = respond(springs, footing, acting, gap)
        ways.append(springs.stiffness * answer.way * held)
        movements.append(answer.movement * held)
    moved = movement_at_origin(load.layout, load.layout.row[item], np.stack(movements, axis=1))
    return np.stack(ways, axis=1), moved, held


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
