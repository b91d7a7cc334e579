"""Sliding guides: when they jam, what arrives of the push, play, overlap and reactions."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number


class GuideReactions(NamedTuple):
    """Forces at the two ends of what is still engaged in a guide."""

    front: Number
    rear: Number


@defined(positive="length friction")
def largest_offset(length: Number, friction: Number) -> Number:
    """Offset of a push from the middle of a guide at which the slide jams.

    Beer and Johnston, Vector Mechanics, 8.1 (bracket on a column).

    Parameters
    ----------
    length : engaged in the guide, for a drawer its depth [m]
    friction : sliding friction in the guide [1]

    Returns
    -------
    offset : of the push from the line along which the guide resists [m]

    Notes
    -----
    L / (2 mu), whatever the force; L/a = 2 mu is the trade's two-to-one rule for mu = 0.25.

    >>> largest_offset(0.30, 0.25)
    0.6
    """
    return length / (2.0 * friction)


@defined(positive="length", not_negative="friction")
def share_of_push(offset: Number, length: Number, friction: Number) -> Number:
    """Share of a push at an offset that arrives at the load of a slide.

    Statics: two-point contact; Beer and Johnston, Vector Mechanics, 8.1.

    Parameters
    ----------
    offset : of the push from the line along which the load resists [m]
    length : engaged in the guide [m]
    friction : sliding friction in the guide [1]

    Returns
    -------
    share : 0 where it jams [1]

    Notes
    -----
    1 - 2 mu a/L: the push is the load over this share.

    >>> share_of_push(0.15, 0.30, 0.25)
    0.75
    """
    return np.maximum(1.0 - 2.0 * friction * np.abs(offset) / length, 0.0)


@defined(positive="length", not_negative="clearance")
def guide_tilt(clearance: Number, length: Number) -> Number:
    """Angle that a slide can take in its guide.

    Geometry.

    Parameters
    ----------
    clearance : of the slide in the guide, both sides together [m]
    length : engaged in the guide [m]

    Returns
    -------
    tilt : from the one stop to the other, half of it to each side [rad]

    Notes
    -----
    2 c / L; it grows as the slide is pulled out.

    >>> round(guide_tilt(0.5e-3, 0.20) * 1e3, 3)
    5.0
    """
    return 2.0 * clearance / length


@silent
def overlap(length: Number, travel: Number) -> Number:
    """Length that is still engaged when a slide is pulled out.

    Geometry.

    Parameters
    ----------
    length : engaged at rest [m]
    travel : pulled out [m]

    Returns
    -------
    overlap : below zero where it falls out [m]

    Notes
    -----
    >>> round(overlap(0.40, 0.28), 3)
    0.12
    """
    return length - travel


@defined(positive="engaged", not_negative="reach")
def guide_reactions(force: Number, reach: Number, engaged: Number) -> GuideReactions:
    """Forces that a guide puts on a slide loaded beyond its end.

    Statics: moments about the ends of the overlap.

    Parameters
    ----------
    force : across the slide [N]
    reach : from the guide's end to the force [m]
    engaged : length of the slide still in the guide [m]

    Returns
    -------
    front : at the guide's end, against the force [N]
    rear : at the slide's end, with the force [N]

    Notes
    -----
    F (1 + a/L) and F a/L.

    >>> guide_reactions(100.0, 0.3, 0.1)
    GuideReactions(front=400.0, rear=300.0)
    """
    rear = force * reach / engaged
    return GuideReactions(force + rear, rear)
