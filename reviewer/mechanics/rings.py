"""A plate on a ring of rollers: spacing, play and stack height."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class RimPlay(NamedTuple):
    """How far the rim moves when the plate tips: down where it is pressed, up across."""

    sink: Number
    rise: Number


_A_RING = valid_when(lambda count: count >= 3, "a ring needs three rollers")


@defined(positive="circle_diameter count")
@valid_when(lambda count: count >= 2, "spacing needs two rollers")
def roller_chord(circle_diameter: Number, count: Number) -> Number:
    """Span of the plate between neighbouring rollers.

    Geometry of the circle.

    Parameters
    ----------
    circle_diameter : of the circle of roller contacts [m]
    count : rollers, evenly spaced [1]

    Returns
    -------
    chord : from contact to contact [m]

    Notes
    -----
    D sin(pi/n).

    >>> round(roller_chord(0.46, 10) * 1e3, 1)
    142.1
    """
    return circle_diameter * np.sin(np.pi / count)


@defined(positive="circle_diameter count outer_diameter")
@valid_when(lambda count: count >= 2, "spacing needs two rollers")
def roller_gap(circle_diameter: Number, count: Number, outer_diameter: Number) -> Number:
    """Room between neighbouring rollers.

    Geometry of the circle.

    Parameters
    ----------
    circle_diameter : of the circle of rollers [m]
    count : rollers, evenly spaced [1]
    outer_diameter : of a roller [m]

    Returns
    -------
    gap : below zero where they overlap [m]

    Notes
    -----
    D sin(pi/n) - d.

    >>> round(roller_gap(0.46, 10, 28e-3) * 1e3, 1)
    114.1
    """
    return circle_diameter * np.sin(np.pi / count) - outer_diameter


@defined(positive="carry_circle carry_count hold_circle hold_count", not_negative="gap_up gap_down")
@valid_when(
    lambda carry_count, hold_count: (carry_count >= 3) & (hold_count >= 3),
    "a ring needs three rollers",
)
def tilt_from_gaps(
    gap_up: Number,
    gap_down: Number,
    carry_circle: Number,
    carry_count: Number,
    hold_circle: Number,
    hold_count: Number,
) -> Number:
    """Tilt that a rigid plate can take in the gaps of its rollers.

    Geometry: about the line of two neighbouring rollers, up to the two opposite hold-downs.

    Parameters
    ----------
    gap_up : between the plate and the hold-downs [m]
    gap_down : between the plate and the rollers that carry it [m]
    carry_circle : diameter of the circle of carrying rollers [m]
    carry_count : carrying rollers, evenly spaced [1]
    hold_circle : diameter of the circle of hold-downs [m]
    hold_count : hold-downs, evenly spaced [1]

    Returns
    -------
    tilt : largest angle, from the one stop to the other [rad]

    Notes
    -----
    (up + down) / (Dc/2 cos(pi/nc) + Dh/2 cos(pi/nh)): the shortest lever, which one direction has
    if a gap between carriers faces a gap between hold-downs. Elastic give comes on top.

    >>> round(tilt_from_gaps(0.15e-3, 0.0, 0.46, 10, 0.46, 5) * 1e3, 3)
    0.371
    """
    lever = carry_circle * np.cos(np.pi / carry_count) + hold_circle * np.cos(np.pi / hold_count)
    return (gap_up + gap_down) / (0.5 * lever)


@defined(positive="rim_radius carry_circle count", not_negative="tilt")
@_A_RING
def rim_play(tilt: Number, rim_radius: Number, carry_circle: Number, count: Number) -> RimPlay:
    """Movement of the rim when a rigid plate tilts about two neighbouring rollers.

    Geometry.

    Parameters
    ----------
    tilt : of the plate [rad]
    rim_radius : where the movement is seen [m]
    carry_circle : diameter of the circle of carrying rollers [m]
    count : carrying rollers, evenly spaced [1]

    Returns
    -------
    sink : downwards at the rim that is pressed [m]
    rise : upwards at the rim across [m]

    Notes
    -----
    tilt (r - R cos(pi/n)) and tilt (r + R cos(pi/n)); seen from the plate's middle both are tilt r.

    >>> play = rim_play(0.371e-3, 0.60, 0.46, 10)
    >>> round(play.sink * 1e3, 2), round(play.rise * 1e3, 2)
    (0.14, 0.3)
    """
    pivot = 0.5 * carry_circle * np.cos(np.pi / count)
    return RimPlay(tilt * (rim_radius - pivot), tilt * (rim_radius + pivot))


@defined(positive="count", not_negative="gap")
@_A_RING
def lateral_play(gap: Number, count: Number) -> Number:
    """How far a plate can move sideways from the middle of its side rollers.

    Geometry of the regular polygon.

    Parameters
    ----------
    gap : between the edge and each side roller, plate in the middle [m]
    count : side rollers, evenly spaced [1]

    Returns
    -------
    play : towards the gap between two rollers [m]

    Notes
    -----
    gap / cos(pi/n); straight at a roller it is the gap.

    >>> round(lateral_play(0.05e-3, 5) * 1e3, 4)
    0.0618
    """
    return gap / np.cos(np.pi / count)


@defined(
    positive="carry_diameter plate_thickness",
    not_negative="hold_down_diameter hold_down_gap clearance",
)
def stack_height(
    carry_diameter: Number,
    plate_thickness: Number,
    hold_down_diameter: Number = 0.0,
    hold_down_gap: Number = 0.0,
    clearance: Number = 0.0,
) -> Number:
    """Height of the rollers and the plate between them, axles of the rollers level.

    Geometry.

    Parameters
    ----------
    carry_diameter : outer diameter of the rollers below the plate [m]
    plate_thickness : actual thickness of the plate [m]
    hold_down_diameter : outer diameter of the rollers above it, 0 for none [m]
    hold_down_gap : between the plate and the rollers above it [m]
    clearance : below and above the rollers, both together [m]

    Returns
    -------
    height : from what carries the rollers to what closes over them [m]

    Notes
    -----
    >>> round(stack_height(28e-3, 18e-3, 26e-3, 0.15e-3, 2e-3) * 1e3, 2)
    74.15
    """
    return carry_diameter + plate_thickness + hold_down_diameter + hold_down_gap + clearance
