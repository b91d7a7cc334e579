"""Parts that are lined up by bolts in clearance holes: how far they can stand from each other."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

SURE = 0.95  # share of what is built that a likely deviation covers
_HALVINGS = 60  # of the interval from 0 to 1, past which a float does not change


class Deviation(NamedTuple):
    """How far something can deviate to each side: at worst, and in 95 of 100 that are built."""

    worst: Number
    likely: Number


@defined(positive="hole other_hole bolt", not_negative="position")
@valid_when(
    lambda hole, other_hole, bolt: (hole >= bolt) & (other_hole >= bolt),
    "the bolt must pass through both holes",
)
def sideways_float(hole: Number, other_hole: Number, bolt: Number, position: Number) -> Number:
    """How far two parts can stand from each other across one bolt.

    Geometry; ASME Y14.5, appendix B, turned round.

    Parameters
    ----------
    hole : in one part [m]
    other_hole : in the other part; as wide as the bolt where it is tapped [m]
    bolt : diameter [m]
    position : how far each of both holes may stand from its place, to each side [m]

    Returns
    -------
    float_ : to each side [m]

    Notes
    -----
    (h1 - d)/2 + (h2 - d)/2 + 2 p. Holes that are drilled through both parts at once have p = 0.

    >>> round(sideways_float(9e-3, 9e-3, 8e-3, 0.0) * 1e3, 2)
    1.0
    """
    return 0.5 * (hole - bolt) + 0.5 * (other_hole - bolt) + 2.0 * position


@defined(positive="spacing", not_negative="near far reach")
def deviation_at_end(near: Number, far: Number, spacing: Number, reach: Number) -> Deviation:
    """How far the far end of a part stands out of line that two bolts hold.

    Geometry; the likely one is the quantile of two uniform deviations added, a trapezoid.

    Parameters
    ----------
    near : float across the bolt nearest the far end, to each side [m]
    far : float across the bolt farthest from it, to each side [m]
    spacing : between the two bolts [m]
    reach : from the nearest bolt to the far end [m]

    Returns
    -------
    worst : to each side, the two bolts lying at opposite sides of their holes [m]
    likely : to each side; 95 of 100 lie within, each float being uniform [m]

    Notes
    -----
    With p = a (1 + L/s) and q = b L/s: worst p + q; likely p + q - sqrt(0.2 p q), or 0.95 of the
    larger where it outweighs the other. Uniform is severe: it holds whoever tightens the bolts to
    no attempt at alignment.

    >>> end = deviation_at_end(1e-3, 1e-3, 0.06, 0.34)
    >>> round(end.worst * 1e3, 2), round(end.likely * 1e3, 2)
    (12.33, 9.58)
    """
    over = reach / spacing
    return _of_two(near * (1.0 + over), far * over)


@defined(not_negative="deviation")
@valid_when(lambda count: count >= 1, "there must be one at least")
def spread_of_several(deviation: Number, count: Number) -> Deviation:
    """How far the ends of several like parts can differ, from the foremost to the hindmost.

    David and Nagaraja, Order Statistics (2003), 2.3, range of a uniform sample.

    Parameters
    ----------
    deviation : of each, to each side [m]
    count : how many there are [1]

    Returns
    -------
    worst : between two of them [m]
    likely : between the extremes; less in 95 of 100, each deviation being uniform [m]

    Notes
    -----
    2 d; and 2 d r with n r^(n-1) - (n-1) r^n = 0.95. Neither is anything for one part alone.

    >>> several = spread_of_several(1.0, 5)
    >>> round(several.worst, 3), round(several.likely, 3)
    (2.0, 1.847)
    """
    low, high = 0.0 * (deviation + count), 1.0 + 0.0 * (deviation + count)
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        below = count * middle ** (count - 1) - (count - 1) * middle**count < SURE
        low, high = np.where(below, middle, low), np.where(below, high, middle)
    several = np.where(count > 1, 1.0, 0.0)
    return Deviation(2.0 * deviation * several, 2.0 * deviation * high * several)


@defined(positive="spacing", not_negative="near far")
def angle_of_float(near: Number, far: Number, spacing: Number) -> Deviation:
    """Angle by which a part can be out of line that two bolts hold.

    Geometry; the likely one is the quantile of two uniform deviations added.

    Parameters
    ----------
    near : float across one bolt, to each side [m]
    far : float across the other bolt, to each side [m]
    spacing : between the two bolts [m]

    Returns
    -------
    worst : to each side [rad]
    likely : to each side; 95 of 100 lie within [rad]

    Notes
    -----
    (a + b)/s, and (a + b - sqrt(0.2 a b))/s: small angles.

    >>> angle = angle_of_float(0.6e-3, 0.6e-3, 60e-3)
    >>> round(float(np.degrees(angle.worst)), 3), round(float(np.degrees(angle.likely)), 3)
    (1.146, 0.89)
    """
    sum_of_both = _of_two(near, far)
    return Deviation(sum_of_both.worst / spacing, sum_of_both.likely / spacing)


def _of_two(first: Number, second: Number) -> Deviation:
    """Sum of two uniform deviations: a trapezoid, under whose flat top the share grows evenly."""
    worst = first + second
    sloping = worst - np.sqrt(4.0 * (1.0 - SURE) * first * second)
    flat = SURE * np.maximum(first, second)
    return Deviation(worst, np.where(flat < np.abs(first - second), flat, sloping))
