"""Yield modes of a bolt through a steel plate and one member of wood, by EN 1995-1-1."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number


class EnSteelToTimber(NamedTuple):
    """Characteristic value of each failure mode beside a steel plate, and the least."""

    crushes: Number
    bends_once: Number
    bends_twice: Number
    capacity: Number


@defined(
    positive="diameter wood_thickness plate_thickness embedment yield_moment",
    not_negative="withdrawal rope_limit",
)
def en_steel_to_timber(
    diameter: Number,
    wood_thickness: Number,
    plate_thickness: Number,
    embedment: Number,
    yield_moment: Number,
    withdrawal: Number = 0.0,
    rope_limit: Number = 0.25,
) -> EnSteelToTimber:
    """Characteristic lateral value of one bolt through a steel plate and a member of wood.

    EN 1995-1-1:2004, 8.2.3, eq. (8.9) and (8.10) (from memory).

    Parameters
    ----------
    diameter : diameter of the bolt [m]
    wood_thickness : thickness of the wood, or penetration into it [m]
    plate_thickness : thickness of the steel plate [m]
    embedment : embedment strength of the wood [Pa]
    yield_moment : yield moment of the bolt [N m]
    withdrawal : characteristic axial capacity of the bolt [N]
    rope_limit : 0.25 bolts, 0.15 round nails, 1.00 screws, 0 dowels [1]

    Returns
    -------
    crushes : the wood crushes all along the bolt [N]
    bends_once : the bolt bends once and crushes the wood [N]
    bends_twice : the bolt bends at the plate and in the wood [N]
    capacity : least of them [N]

    Notes
    -----
    A plate up to d/2 lets the bolt tilt: 0.4 fh t d and 1.15 sqrt(2 My fh d). One from d on holds
    it: fh t d, fh t d (sqrt(2 + 4 My / (fh d t^2)) - 1) and 2.3 sqrt(My fh d). Straight between.
    With a thin plate the bolt bends at most once, which stands under both bends. A quarter of the
    withdrawal is added where it bends, no more than rope_limit times its own. The plate itself has
    to be checked apart.

    >>> bolt = en_steel_to_timber(0.012, 0.05, 0.003, 25.256e6, 76.745)
    >>> round(bolt.capacity)
    6061
    """
    bearing = embedment * diameter
    crush = bearing * wood_thickness
    slender = 4 * yield_moment / (bearing * wood_thickness * wood_thickness)
    held = np.clip((plate_thickness - diameter / 2) / (diameter / 2), 0.0, 1.0)
    root = np.sqrt(yield_moment * bearing)
    thin = (0.4 * crush, 1.15 * np.sqrt(2) * root, 1.15 * np.sqrt(2) * root)
    thick = (crush, crush * (np.sqrt(2 + slender) - 1), 2.3 * root)
    modes = [one + (other - one) * held for one, other in zip(thin, thick, strict=True)]
    roped = [each + np.minimum(withdrawal / 4, rope_limit * each) for each in modes[1:]]
    least = np.minimum(modes[0], np.minimum(*roped))
    return EnSteelToTimber(modes[0], roped[0], roped[1], least)
