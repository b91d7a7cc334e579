"""Gaps that people can get into: least gaps, bands to keep out of, and reach through openings."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import silent
from reviewer.mechanics.formula import Number, valid_when

LEAST_GAPS = {
    "body": 0.500,
    "head": 0.300,
    "leg": 0.180,
    "foot": 0.120,
    "toes": 0.050,
    "arm": 0.120,
    "hand": 0.100,
    "finger": 0.025,
}
"""ISO 13854 (EN 349) Table 1: gaps in which a part of the body is not crushed, m."""

BANDS = {
    "EN 581-1": (0.007, 0.018),
    "EN 527-2": (0.008, 0.025),
    "GB 28007": (0.005, 0.012),
    "family": (0.005, 0.025),
    "EN 581-1 hole": (0.007, 0.012),
    "GB 28007 hole": (0.006, 0.012),
    "CEN/TR 13387 hole": (0.005, 0.012),
}
"""Gaps between moving parts, and holes deeper than 10 mm, that trap a finger: from and to, m.

EN 581-1 outdoor tables and seats; EN 527-2 (also EN 14749) office tables and storage; GB 28007
children's furniture; CEN/TR 13387 child care articles; family: the strictest of them all, derived.
"""


class Band(NamedTuple):
    """Sizes to keep out of."""

    lower: Number
    upper: Number


@silent
def least_gap(part: str) -> Number:
    """Gap that does not crush a part of the body.

    ISO 13854, Table 1.

    Parameters
    ----------
    part : body, head, leg, foot, toes, arm, hand or finger [1]

    Returns
    -------
    gap : least safe gap [m]

    Notes
    -----
    Raises ValueError for another part. Crushing only, not shear or being drawn in; if several parts
    can get in, the largest gap counts.

    >>> least_gap("finger")
    0.025
    """
    if part not in LEAST_GAPS:
        raise ValueError(f"part of the body {part} is not here; known are {', '.join(LEAST_GAPS)}")
    return LEAST_GAPS[part]


@silent
def forbidden_band(rule: str) -> Band:
    """Gaps that trap a finger.

    EN 581-1, EN 527-2, GB 28007 and CEN/TR 13387.

    Parameters
    ----------
    rule : one of the names in BANDS [1]

    Returns
    -------
    lower : a smaller gap lets no finger in [m]
    upper : a larger gap lets the finger out [m]

    Notes
    -----
    Raises ValueError for another rule.

    >>> tuple(forbidden_band("EN 581-1"))
    (0.007, 0.018)
    """
    if rule not in BANDS:
        raise ValueError(f"rule {rule} is not here; known are {', '.join(BANDS)}")
    return Band(*BANDS[rule])


@silent
@valid_when(lambda lower, upper: lower <= upper, "a band goes from its lower to its upper end")
def band_margin(gap: Number, lower: Number, upper: Number) -> Number:
    """How far a gap is outside a band to keep out of.

    Definition.

    Parameters
    ----------
    gap : that is judged [m]
    lower : lower end of the band [m]
    upper : upper end of the band [m]

    Returns
    -------
    margin : below zero inside the band [m]

    Notes
    -----
    >>> round(band_margin(0.005, 0.007, 0.018), 3), round(band_margin(0.010, 0.007, 0.018), 3)
    (0.002, -0.003)
    """
    return np.maximum(lower - gap, gap - upper)


@silent
@valid_when(
    lambda least, largest, lower, upper: (lower <= upper) & (least <= largest),
    "a band and a travel go from their lower to their upper end",
)
def swept_band_margin(least: Number, largest: Number, lower: Number, upper: Number) -> Number:
    """How far a gap that opens and closes stays outside a band to keep out of.

    EN 581-1, 5.3 (anywhere in the motion).

    Parameters
    ----------
    least : smallest gap in the motion [m]
    largest : largest gap in the motion [m]
    lower : lower end of the band [m]
    upper : upper end of the band [m]

    Returns
    -------
    margin : below zero where the motion passes through the band [m]

    Notes
    -----
    A gap that closes from 50 mm to 2 mm passes through, although both its ends are outside.

    >>> round(swept_band_margin(0.002, 0.050, 0.007, 0.018), 3)
    -0.016
    """
    return np.maximum(lower - largest, least - upper)
