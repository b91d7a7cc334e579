"""Dividing a circle: chords to set the marks by, and how an error of setting grows."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


class ChordTolerance(NamedTuple):
    """How much a chord between two marks may differ, both marks in place: at worst, and likely."""

    worst: Number
    likely: Number


class SteppedError(NamedTuple):
    """How far a mark stands from its place after steps, each from the mark before."""

    steady: Number
    random: Number


class Place(NamedTuple):
    """Where a mark stands from the middle of the circle."""

    x: Number
    y: Number


_DIVIDED = valid_when(lambda count: count >= 3, "a divided circle has three marks or more")


@silent
def mark_place(diameter: Number, angle: Number) -> Place:
    """Where a mark stands from the middle of its circle.

    Geometry of the circle.

    Parameters
    ----------
    diameter : of the circle of marks [m]
    angle : from the first axis, anticlockwise [rad]

    Returns
    -------
    x : along the first axis [m]
    y : along the second axis [m]

    Notes
    -----
    D/2 cos a and D/2 sin a.

    >>> place = mark_place(0.4, np.pi / 6)
    >>> round(place.x, 4), round(place.y, 4)
    (0.1732, 0.1)
    """
    return Place(0.5 * diameter * np.cos(angle), 0.5 * diameter * np.sin(angle))


@defined(positive="diameter")
def chord(diameter: Number, angle: Number) -> Number:
    """Straight distance between two marks on a circle.

    Geometry of the circle.

    Parameters
    ----------
    diameter : of the circle of marks [m]
    angle : between the marks, seen from the middle [rad]

    Returns
    -------
    chord : from mark to mark [m]

    Notes
    -----
    D sin(a/2).

    >>> round(chord(0.6, np.pi / 6) * 1e3, 2)
    155.29
    """
    return diameter * np.abs(np.sin(0.5 * angle))


@defined(positive="diameter", not_negative="chord")
@valid_when(lambda diameter, chord: chord <= diameter, "no chord is longer than the diameter")
def sagitta(diameter: Number, chord: Number) -> Number:
    """Height of an arc over the middle of its chord, of the shorter of both arcs.

    Geometry of the circle.

    Parameters
    ----------
    diameter : of the circle [m]
    chord : from end to end of the arc [m]

    Returns
    -------
    sagitta : from the middle of the chord to the arc [m]

    Notes
    -----
    D/2 - sqrt(D^2/4 - c^2/4).

    >>> round(sagitta(0.6, 0.4) * 1e3, 3)
    76.393
    """
    half = 0.5 * chord
    radius = 0.5 * diameter
    # The same, without the difference of two near numbers in a flat arc.
    return half * half / (radius + np.sqrt((radius - half) * (radius + half)))


@defined(not_negative="position_error")
def chord_tolerance(position_error: Number) -> ChordTolerance:
    """How much a chord may differ from its length while both its marks are in place.

    Geometry; the likely one as Shigley, Mechanical Engineering Design, 1-13 (statistical stack).

    Parameters
    ----------
    position_error : how far a mark may stand from its place, in any direction [m]

    Returns
    -------
    worst : to each side; a chord beyond it has a mark that is out [m]
    likely : to each side, the marks independent of each other [m]

    Notes
    -----
    2 e and sqrt(2) e: the marks may stand apart by e each, along the chord.

    >>> tolerance = chord_tolerance(0.3e-3)
    >>> round(tolerance.worst * 1e3, 2), round(tolerance.likely * 1e3, 2)
    (0.6, 0.42)
    """
    return ChordTolerance(2.0 * position_error, np.sqrt(2.0) * position_error)


@defined(positive="count", not_negative="setting_error steps")
@_DIVIDED
def stepped_error(setting_error: Number, count: Number, steps: Number) -> SteppedError:
    """How far the last mark is off when each is stepped off from the one before.

    Geometry of the circle, to first order; sums of errors as Shigley, 1-13.

    Parameters
    ----------
    setting_error : of the chord between the points of the dividers, or of one step [m]
    count : marks of the whole circle [1]
    steps : stepped off from the first mark [1]

    Returns
    -------
    steady : along the circle, where the dividers are set wrong by this much [m]
    random : along the circle, where each step errs by itself by this much [m]

    Notes
    -----
    k e / cos(pi/n) and sqrt(k) e / cos(pi/n).

    >>> error = stepped_error(0.1e-3, 16, 15)
    >>> round(error.steady * 1e3, 2), round(error.random * 1e3, 2)
    (1.53, 0.39)
    """
    along = setting_error / np.cos(np.pi / count)
    return SteppedError(steps * along, np.sqrt(steps) * along)


@defined(not_negative="setting_error angle")
@valid_when(
    lambda angle: angle < np.pi * (1 - 1e-9), "a chord across the middle does not place a mark"
)
def direct_error(setting_error: Number, angle: Number) -> Number:
    """How far a mark is off that is set by its chord from the first mark.

    Geometry of the circle, to first order.

    Parameters
    ----------
    setting_error : of the length of the chord [m]
    angle : from the first mark to this one, at most half a turn [rad]

    Returns
    -------
    error : along the circle [m]

    Notes
    -----
    e / cos(a/2): it grows without end as the chord nears the diameter, whose length hardly
    changes with the angle. Up to a right angle it is at most 1.41 e.

    >>> round(direct_error(0.1e-3, np.pi / 2) * 1e3, 3)
    0.141
    """
    return setting_error / np.cos(0.5 * angle)


@defined(positive="count", not_negative="position_error")
@_DIVIDED
def stepping_setting(position_error: Number, count: Number) -> Number:
    """How exactly dividers must be set for the last mark to be in place when stepping round.

    Geometry of the circle, to first order.

    Parameters
    ----------
    position_error : how far a mark may stand from its place [m]
    count : marks of the whole circle [1]

    Returns
    -------
    setting : error of the chord, to each side [m]

    Notes
    -----
    e cos(pi/n) / (n - 1).

    >>> round(stepping_setting(0.3e-3, 16) * 1e3, 4)
    0.0196
    """
    return position_error * np.cos(np.pi / count) / (count - 1)
