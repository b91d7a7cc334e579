"""A bearing run as a roller on a track: what it carries, how it gives way, how it turns."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number


@defined(positive="rating ball_count")
def roller_static_capacity(rating: Number, ball_count: Number) -> Number:
    """Radial load of a bearing whose outer ring runs on a track, without a housing around it.

    Statics from the basis of ISO 76:2006 (largest ball load 5 C0 / Z).

    Parameters
    ----------
    rating : basic static load rating C0 [N]
    ball_count : balls in the bearing [1]

    Returns
    -------
    capacity : radial load on the outer ring [N]

    Notes
    -----
    Without a housing the ring gives way and the ball above the contact carries more than its share.
    At C0 the busiest ball carries 5 C0 / Z; let it carry everything, and the load is 5 C0 / Z. A
    lower bound: with a thick ring several balls share, and up to 1.4 times as much is carried.

    >>> round(roller_static_capacity(1370.0, 7))
    979
    """
    return rating * np.minimum(5.0 / ball_count, 1.0)


@defined(not_negative="force friction")
def roller_axial_load(force: Number, friction: Number) -> Number:
    """Largest axial load that a track puts on a roller that does not point exactly its way.

    Statics; Coulomb friction.

    Parameters
    ----------
    force : load between roller and track [N]
    friction : sliding friction of roller on track [1]

    Returns
    -------
    axial : axial load on the bearing [N]

    Notes
    -----
    A roller that toes in, or whose circle shifts, slides sideways; more than the friction mu F does
    not reach it. An upper bound.

    >>> roller_axial_load(200.0, 0.25)
    50.0
    """
    return friction * force


@defined(positive="ball_count ball_diameter", not_negative="load")
def radial_approach(load: Number, ball_count: Number, ball_diameter: Number) -> Number:
    """Radial give of a deep groove ball bearing without clearance.

    Palmgren, Ball and Roller Bearing Engineering (1959); from memory.

    Parameters
    ----------
    load : radial load [N]
    ball_count : balls in the bearing [1]
    ball_diameter : diameter of a ball [m]

    Returns
    -------
    approach : movement of the inner ring against the outer ring [m]

    Notes
    -----
    0.436e-3 (Q^2 / Dw)^(1/3) mm with Q = 5 F / Z in N and Dw in mm; about 10 % off by the groove
    radii. Rings stiff; half of the radial clearance is added to it.

    >>> round(radial_approach(200.0, 7, 3.969e-3) * 1e6, 1)
    7.5
    """
    busiest = 5.0 * load / ball_count
    return 0.436e-6 * np.cbrt(busiest * busiest / (ball_diameter * 1e3))


@defined(positive="bore", not_negative="load coefficient")
def friction_moment(load: Number, bore: Number, coefficient: Number = 0.0015) -> Number:
    """Friction moment of a rolling bearing, estimate.

    General bearing catalogues, common practice.

    Parameters
    ----------
    load : equivalent load [N]
    bore : bore of the inner ring [m]
    coefficient : friction at the bore, 0.0010 to 0.0015 for deep groove [1]

    Returns
    -------
    moment : friction moment without seals [N m]

    Notes
    -----
    M = 0.5 mu P d. Up to twice as much at the start; contact seals come on top.

    >>> round(friction_moment(100.0, 8e-3) * 1e3, 3)
    0.6
    """
    return 0.5 * coefficient * load * bore


@defined(positive="track bearing bolt")
def roller_stiffness(track: Number, bearing: Number, bolt: Number) -> Number:
    """Stiffness of a roller: track, bearing and bolt give way one after the other.

    Statics; springs in series.

    Parameters
    ----------
    track : stiffness of the contact with the track [N/m]
    bearing : radial stiffness of the bearing [N/m]
    bolt : stiffness of the bolt where the bearing sits [N/m]

    Returns
    -------
    stiffness : of the three together [N/m]

    Notes
    -----
    1/k = sum of 1/ki; infinity stands for one that does not give way.

    >>> round(roller_stiffness(2e6, 26e6, 8e6) / 1e6, 3)
    1.507
    """
    return 1.0 / (1.0 / track + 1.0 / bearing + 1.0 / bolt)


@defined(positive="stiffness_up stiffness_down")
def interference_force(
    interference: Number, stiffness_up: Number, stiffness_down: Number
) -> Number:
    """Force between a carrying roller and a hold-down when the plate is thicker than their gap.

    Statics; springs in series.

    Parameters
    ----------
    interference : plate thickness over the gap between the rollers, below zero for play [m]
    stiffness_up : stiffness of the hold-down [N/m]
    stiffness_down : stiffness of the carrying roller [N/m]

    Returns
    -------
    force : preload, zero with play [N]

    Notes
    -----
    >>> round(interference_force(1e-4, 2e6, 2e6))
    100
    """
    return np.maximum(interference, 0.0) / (1.0 / stiffness_up + 1.0 / stiffness_down)


def least_capacity(bearing: Number, track: Number, bolt: Number, pull_through: Number) -> Number:
    """Load that a hold-down carries: the least of what each of its members carries.

    Statics; a chain is as strong as its weakest link.

    Parameters
    ----------
    bearing : radial load that the bearing carries [N]
    track : load that the track carries under the roller [N]
    bolt : load that the bolt carries in bending [N]
    pull_through : load that pulls the washer through or the insert out of the panel [N]

    Returns
    -------
    capacity : of the hold-down [N]

    Notes
    -----
    Infinity stands for a member that cannot fail; one that is unknown makes the least unknown.

    >>> least_capacity(979.0, 310.0, 690.0, 1200.0)
    310.0
    """
    least: Number = np.minimum(np.minimum(bearing, track), np.minimum(bolt, pull_through))
    return least if np.ndim(least) else float(least)
