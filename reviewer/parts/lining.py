"""How parts that bolts, dowels or a fixture line up stand to each other, and what sets them."""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.lining_up import (
    Deviation,
    angle_of_float,
    deviation_at_end,
    sideways_float,
    spread_of_several,
)
from reviewer.stock.fasteners import Fastener

EIGHTH_TURN = 8.0  # a spanner sets a screw to an eighth of a turn: common practice
BY_HAND = 0.2e-3  # m, a part in a slot is tapped to this: common practice
THINNEST_SHIM = 0.1e-3  # m, common practice
HEAD_SHARE, HEAD_MORE = 1.05, 3.5e-3  # half of an open spanner's head: ISO 3318, from memory
SWING = np.pi / 6  # an open spanner turned over, its jaws set at 15 degrees: common practice


class Bolted(NamedTuple):
    """What two bolts in their holes leave: across one bolt, in angle, at the far end."""

    float_: Number
    angle: Deviation
    end: Deviation


def other_hole_of(bolt: Fastener, hole: Number, tapped: bool) -> Number:
    """Diameter of the hole in the other part; a thread leaves no clearance.

    Geometry.
    """
    return bolt.thread.diameter + 0.0 * hole if tapped else hole


def placed_within(drilled: str, within: Number) -> Number:
    """How far each of two holes may stand off; drilled through both parts at once, not at all.

    Geometry.
    """
    return 0.0 * within if drilled == "together" else within


def bolted_of(
    bolt: Fastener,
    hole: Number,
    other_hole: Number,
    position: Number,
    spacing: Number,
    far_end: Number,
) -> Bolted:
    """Float, angle and deviation at the far end of a part on two bolts.

    Geometry: mechanics/lining_up.py.
    """
    across = sideways_float(hole, other_hole, bolt.thread.diameter, position)
    return Bolted(
        across,
        angle_of_float(across, across, spacing),
        deviation_at_end(across, across, spacing, far_end),
    )


def dowelled_of(
    clearance: Number | None, position: Number, spacing: Number, far_end: Number
) -> Deviation | None:
    """What two dowels leave at the far end, by their clearance and where their holes are.

    Geometry: mechanics/lining_up.py.
    """
    if clearance is None:
        return None
    across = clearance / 2 + 2.0 * position
    return deviation_at_end(across, across, spacing, far_end)


def deviation_of(
    lined_up_by: str, bolted: Bolted, dowelled: Deviation | None, fixture: Number | None
) -> Deviation | None:
    """Deviation of the far end by the way in which it is lined up.

    Taken over; of a fixture its own error, uniform within it.
    """
    if lined_up_by == "dowels":
        return dowelled
    if lined_up_by == "fixture":
        return None if fixture is None else Deviation(fixture, 0.95 * fixture)
    return bolted.end


def alike_of(deviation: Deviation, alike: int) -> Deviation:
    """How far the far ends of several like parts can differ.

    David and Nagaraja, Order Statistics (2003): mechanics/lining_up.py.
    """
    worst = spread_of_several(deviation.worst, float(alike))
    likely = spread_of_several(deviation.likely / 0.95, float(alike))
    return Deviation(worst.worst, np.minimum(likely.likely, worst.worst))


def advice_of(
    allowed: Number, bolted: Bolted, dowelled: Deviation | None, fixture: Number | None
) -> Any:
    """What would line it up: the bolts alone, dowels, a fixture, or only an adjustment.

    The first of them that keeps the far end within what is allowed at worst.
    """
    alone = bolted.end.worst <= allowed
    by_dowels = False if dowelled is None else dowelled.worst <= allowed
    by_fixture = False if fixture is None else fixture <= allowed
    untold = " (dowels are not told)" if dowelled is None else ""
    return np.where(
        alone,
        "neither dowels nor a fixture is needed",
        np.where(
            by_dowels,
            "two dowels line it up",
            np.where(
                by_fixture,
                f"a fixture lines it up while the bolts are tightened{untold}",
                f"neither dowels nor a fixture is enough, so that it must be adjusted{untold}",
            ),
        ),
    )


def leverage_of(spacing: Number, far_end: Number) -> Number:
    """How much farther the far end moves than the bolt that is moved.

    Geometry.

    Notes
    -----
    1 + L/s, turning about the other bolt.
    """
    return 1.0 + far_end / spacing


def finest_of(by: str, bolt: Fastener) -> Number:
    """The smallest move that an adjustment can be set to.

    Common practice: an eighth of a turn of a screw, the thinnest shim, a tap with a mallet.
    """
    if by == "screw":
        return bolt.thread.pitch / EIGHTH_TURN
    return THINNEST_SHIM if by == "shim" else BY_HAND


def room_needed_of(bolt: Fastener) -> Number:
    """Room beside the middle of the bolt that the head of an open spanner takes.

    ISO 3318, from memory: a head no wider than 2.1 times the width across flats and 7 mm.

    Notes
    -----
    1.05 s + 3.5 mm.
    """
    return HEAD_SHARE * bolt.thread.hex_width + HEAD_MORE


def swing_needed() -> Number:
    """Free swing of a spanner until the next flat comes.

    Common practice: an open spanner turned over, jaws at 15 degrees, takes 30.
    """
    return SWING
