"""A plate on its rollers, solved for the worst direction of the load and turn of the plate."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action, Overturning
from reviewer.mechanics.stability import Actions, stability_ratio
from reviewer.mechanics.supports import Supports, circle
from reviewer.mechanics.worst_direction import worst_direction


class RingSolution(NamedTuple):
    """Forces [N], moments [N m], sink [m], tilt and direction [rad] of a plate on its rollers."""

    axial_load: Number
    moment: Number
    carry_peak: Number
    carry_least: Number
    direction: Number
    hold_peak: Number
    uplift: Number
    sink: Number
    tilt: Number
    turning_over: Number
    restoring: Number


class Rollers(NamedTuple):
    """Number, circle [m], stiffness [N/m], azimuth of the first [rad] and gap [m] of one group."""

    number: int
    diameter: Any
    stiffness: Any
    start: Any
    gap: Any = 0.0


class Standing(NamedTuple):
    """What stands on the rollers, the rollers as springs, and the members of the two groups."""

    total: Overturning
    supports: Supports
    groups: list[list[int]]


def stand_on_rollers(
    action: Action,
    x: Number,
    y: Number,
    level: Number,
    carry_count: int,
    carry_circle: Any,
    carry_stiffness: Any,
    carry_from: Any,
    hold_count: int | None,
    hold_circle: Any,
    hold_stiffness: Any,
    hold_from: Any,
    hold_gap: Any,
    hold_preload: Any,
) -> Standing:
    """The plate's load about its own axis, and its rollers as springs that push one way.

    Statics.
    """
    carry = Rollers(carry_count, carry_circle, carry_stiffness, carry_from)
    carried_by = carry_count * carry_stiffness  # what gives way below while a hold-down is set
    held = hold_count is not None and hold_circle is not None
    hold = (
        Rollers(
            hold_count or 0,
            hold_circle,
            hold_stiffness,
            hold_from,
            hold_gap - hold_preload * (1 / hold_stiffness + (hold_count or 0) / carried_by),
        )
        if held
        else None
    )
    return Standing(action.total.about(x, y, level), *ring_supports(carry, hold))


def solve_ring(
    standing: Standing, action: Action, x: Number, y: Number, level: Number
) -> RingSolution:
    """Roller forces of a rigid plate on one-way springs, for the worst direction.

    Statics of a rigid body on unilateral springs. A lower bound where the plate bends.

    Notes
    -----
    Equilibrium of force and moments; f = k max(0, s w - gap); every azimuth of the load against
    the rollers is searched.
    """
    total, supports, groups = standing
    found = worst_direction(
        supports, total.force, total.moment_x, total.moment_y, total.moment_round, groups
    )
    ratio = stability_ratio(
        supports,
        Actions(*action.weight.about(x, y, level)),
        Actions(*action.loads.about(x, y, level)),
    )
    return RingSolution(
        axial_load=total.force,
        moment=np.hypot(total.moment_x, total.moment_y) + total.moment_round,
        carry_peak=found.peak[0],
        carry_least=found.least[0],
        direction=found.direction[0],
        hold_peak=found.peak[1] if len(groups) > 1 else 0.0 * found.peak[0],
        uplift=found.uplift,
        sink=found.sink,
        tilt=found.tilt,
        turning_over=ratio.moment,
        restoring=ratio.restoring_moment,
    )


def ring_supports(carry: Rollers, hold: Rollers | None) -> tuple[Supports, list[list[int]]]:
    """The rollers as springs: carrying ones first, then hold-downs; and the two groups."""
    groups = [carry] if hold is None else [carry, hold]
    columns: list[list[Any]] = [[], [], [], [], []]
    for sign, group in zip((1.0, -1.0), groups, strict=False):
        x, y = circle(group.number, group.diameter / 2, group.start)
        parts = (x, y, _last(group.stiffness), sign, _last(group.gap))
        for column, part in zip(columns, parts, strict=True):
            column.append(_spread(part, group.number))
    members = [list(range(carry.number))]
    if hold is not None:
        members.append(list(range(carry.number, carry.number + hold.number)))
    return Supports(*(_joined(column) for column in columns)), members


def _last(value: Any) -> Any:
    """Make room for an axis of springs behind samples and cases."""
    return np.asarray(value)[..., None]


def _spread(value: Any, count: int) -> Any:
    array = np.asarray(value, dtype=float)
    return (
        np.broadcast_to(array, (*array.shape[:-1], count)) if array.ndim else np.full(count, value)
    )


def _joined(parts: list[Any]) -> Any:
    if len(parts) == 1:
        return parts[0]
    shape = np.broadcast_shapes(*(part.shape[:-1] for part in parts))
    return np.concatenate(
        [np.broadcast_to(part, (*shape, part.shape[-1])) for part in parts], axis=-1
    )
