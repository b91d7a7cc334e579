"""How the marks of a divided circle are set, and what may be their place."""

import numpy as np

from reviewer.mechanics.dividing import direct_error, stepped_error, stepping_setting
from reviewer.mechanics.formula import Number
from reviewer.mechanics.tolerances import floating_fastener_tolerance
from reviewer.stock.fasteners import Fastener

RIGHT_ANGLE = np.pi / 2
GROUPS = ("carry", "hold_down", "side", "feet")


def of_group(
    group: str | None,
    carry: Number | None,
    hold_down: Number | None,
    side: Number | None,
    feet: Number | None,
) -> Number | None:
    """What the part says of the group of things that stand on the circle.

    Taken over.
    """
    said = dict(zip(GROUPS, (carry, hold_down, side, feet), strict=True))
    return said.get(group or "")


def start_of(group: str | None, carry: Number | None, hold_down: Number | None) -> Number:
    """Azimuth of the first of them, 0 where the part does not say it.

    Taken over.
    """
    found = of_group(group, carry, hold_down, None, None)
    return 0.0 if found is None else found


def permitted_of(bolt: Fastener | None, hole: Number | None, limit: Number) -> Number:
    """How far a mark may stand from its place: half of what the holes' clearance leaves.

    ASME Y14.5, appendix B, floating fastener; without a bolt, what the limit says.

    Notes
    -----
    (H - F) / 2 as a radius, clearance holes of this size in both parts.
    """
    if bolt is None or hole is None:
        return limit
    return floating_fastener_tolerance(hole, bolt.thread.diameter) / 2


def hole_of(bolt: Fastener, series: str) -> float:
    """Diameter of the clearance hole.

    ISO 273, in the stock row of the thread.
    """
    hole: float = getattr(bolt.thread, f"hole_{series}")
    return hole


def error_of_setting(method: str, within: Number, count: int) -> Number:
    """How far the mark that is set worst may stand off along the circle.

    Geometry of the circle: mechanics/dividing.py.

    Notes
    -----
    Direct: each mark by itself, by its chord over a right angle at most from the first mark or the
    point across from it, e / cos(45 deg); by its distances from two centre lines it is no worse.
    Stepped: the last of n - 1 steps, dividers set wrong by e, (n - 1) e / cos(pi/n).
    """
    if method == "stepped":
        return stepped_error(within, count, float(count - 1)).steady
    return direct_error(within, RIGHT_ANGLE)


def setting_asked(method: str, permitted: Number, count: int) -> Number:
    """How exactly a length must be set for every mark to be in place.

    The same turned round.
    """
    if method == "stepped":
        return stepping_setting(permitted, count)
    return permitted / direct_error(1.0, RIGHT_ANGLE)


def first_of(solution: Number | None, other: Number | None) -> Number | None:
    """The first that is known."""
    return other if solution is None else solution
