"""Yield modes of bolts, screws and nails across a wood joint, by EN 1995-1-1."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number


class EnSingleShear(NamedTuple):
    """Characteristic value of each failure mode (a) to (f) in single shear, and the least."""

    a: Number
    b: Number
    c: Number
    d: Number
    e: Number
    f: Number
    capacity: Number


class EnDoubleShear(NamedTuple):
    """Characteristic value per shear plane of each mode (g) to (k) in double shear, the least."""

    g: Number
    h: Number
    j: Number
    k: Number
    capacity: Number


def _least(*values: Any) -> Any:
    least = values[0]
    for value in values[1:]:
        least = np.minimum(least, value)
    return least


def _bends_in(beta: Any, moment: Any, bearing: Any) -> Any:
    """Bracket of mode (d) and (j): one hinge, in the second member."""
    return np.sqrt(2 * beta * (1 + beta) + 4 * beta * (2 + beta) * moment / bearing) - beta


@defined(
    positive="diameter first_thickness second_thickness first_embedment second_embedment "
    "yield_moment",
    not_negative="withdrawal rope_limit",
)
def en_single_shear(
    diameter: Number,
    first_thickness: Number,
    second_thickness: Number,
    first_embedment: Number,
    second_embedment: Number,
    yield_moment: Number,
    withdrawal: Number = 0.0,
    rope_limit: Number = 0.25,
) -> EnSingleShear:
    """Characteristic lateral value of one bolt, screw or nail through two members.

    EN 1995-1-1:2004, eq. (8.6).

    Parameters
    ----------
    diameter : diameter of the fastener [m]
    first_thickness : thickness of the first member, or penetration into it [m]
    second_thickness : thickness of the second member, or penetration into it [m]
    first_embedment : embedment strength of the first member [Pa]
    second_embedment : embedment strength of the second member [Pa]
    yield_moment : yield moment of the fastener [N m]
    withdrawal : characteristic axial capacity of the fastener [N]
    rope_limit : 0.25 bolts, 0.15 round nails, 1.00 screws, 0 dowels [1]

    Returns
    -------
    a : first member crushes [N]
    b : second member crushes [N]
    c : both crush, the fastener tilts [N]
    d : one hinge, in the second member [N]
    e : one hinge, in the first member [N]
    f : two hinges [N]
    capacity : least of them [N]

    Notes
    -----
    Modes c to f have a quarter of the withdrawal added, no more than rope_limit times their own.

    >>> bolt = en_single_shear(0.012, 0.05, 0.05, 25.256e6, 25.256e6, 76.745)
    >>> round(bolt.capacity)
    6277
    """
    beta, ratio = second_embedment / first_embedment, second_thickness / first_thickness
    first = first_embedment * first_thickness * diameter
    second = first_embedment * second_thickness * diameter
    tilt = beta + 2 * beta * beta * (1 + ratio + ratio * ratio)
    tilt = np.sqrt(tilt + beta * beta * beta * ratio * ratio) - beta * (1 + ratio)
    other = np.sqrt(
        2 * beta * beta * (1 + beta)
        + 4 * beta * (1 + 2 * beta) * yield_moment / (second * second_thickness)
    )
    parts = (
        first / (1 + beta) * tilt,
        1.05 * first / (2 + beta) * _bends_in(beta, yield_moment, first * first_thickness),
        1.05 * second / (1 + 2 * beta) * (other - beta),
        1.15 * np.sqrt(2 * beta / (1 + beta) * 2 * yield_moment * first_embedment * diameter),
    )
    roped = [part + np.minimum(withdrawal / 4, rope_limit * part) for part in parts]
    modes = (first, beta * second, *roped)
    return EnSingleShear._make((*modes, _least(*modes)))


@defined(
    positive="diameter side_thickness middle_thickness side_embedment middle_embedment "
    "yield_moment",
    not_negative="withdrawal rope_limit",
)
def en_double_shear(
    diameter: Number,
    side_thickness: Number,
    middle_thickness: Number,
    side_embedment: Number,
    middle_embedment: Number,
    yield_moment: Number,
    withdrawal: Number = 0.0,
    rope_limit: Number = 0.25,
) -> EnDoubleShear:
    """Characteristic lateral value per shear plane of a fastener through three members.

    EN 1995-1-1:2004, eq. (8.7).

    Parameters
    ----------
    diameter : diameter of the fastener [m]
    side_thickness : thickness of each side member [m]
    middle_thickness : thickness of the middle member [m]
    side_embedment : embedment strength of the side members [Pa]
    middle_embedment : embedment strength of the middle member [Pa]
    yield_moment : yield moment of the fastener [N m]
    withdrawal : characteristic axial capacity of the fastener [N]
    rope_limit : 0.25 bolts, 0.15 round nails, 1.00 screws, 0 dowels [1]

    Returns
    -------
    g : side members crush [N]
    h : middle member crushes [N]
    j : one hinge a plane [N]
    k : two hinges a plane [N]
    capacity : least of them; the fastener carries twice this [N]

    Notes
    -----
    Modes j and k have a quarter of the withdrawal added, no more than rope_limit times their own.

    >>> bolt = en_double_shear(0.012, 0.05, 0.05, 25.256e6, 25.256e6, 76.745)
    >>> round(bolt.capacity)
    6809
    """
    beta = middle_embedment / side_embedment
    side = side_embedment * side_thickness * diameter
    parts = (
        1.05 * side / (2 + beta) * _bends_in(beta, yield_moment, side * side_thickness),
        1.15 * np.sqrt(2 * beta / (1 + beta) * 2 * yield_moment * side_embedment * diameter),
    )
    roped = [part + np.minimum(withdrawal / 4, rope_limit * part) for part in parts]
    modes = (side, middle_embedment * middle_thickness * diameter / 2, *roped)
    return EnDoubleShear._make((*modes, _least(*modes)))
