"""Cutting wood: how deep a cutter reaches, where a circle's pivot stands, what a saw must clear."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


@defined(positive="diameter cutter")
@valid_when(lambda side: np.abs(side) == 1, "the cutter runs outside (1) or inside (-1) the line")
@valid_when(
    lambda diameter, cutter, side: (side > 0) | (diameter > cutter),
    "a circle smaller than the cutter cannot be cut from inside",
)
def pivot_radius(diameter: Number, cutter: Number, side: Number) -> Number:
    """Distance from the pivot to the axis of the cutter for a circle of a diameter.

    Geometry.

    Parameters
    ----------
    diameter : of the circle that is to be left [m]
    cutter : diameter of the cutter [m]
    side : 1 where the cutter runs outside the line and a disc is kept, -1 inside, for a hole [1]

    Returns
    -------
    radius : from the middle of the pin to the middle of the cutter [m]

    Notes
    -----
    D/2 + s d/2.

    >>> round(pivot_radius(0.5, 0.012, 1), 4), round(pivot_radius(0.5, 0.012, -1), 4)
    (0.256, 0.244)
    """
    return diameter / 2 + side * cutter / 2


@defined(positive="cutting_length length shank width", not_negative="held")
def cutter_reach(
    cutting_length: Number, length: Number, shank: Number, width: Number, held: Number
) -> Number:
    """How deep a cutter reaches below the collet in a cut of a width.

    Geometry; how much of a shank a collet must hold is common practice.

    Parameters
    ----------
    cutting_length : length of the edges [m]
    length : of the whole cutter [m]
    shank : diameter of the shank [m]
    width : of the cut at the shank [m]
    held : length of shank that the collet holds [m]

    Returns
    -------
    reach : greatest depth of the cut [m]

    Notes
    -----
    A shank that is thinner than the cut follows the edges into it: then all that stands out of the
    collet counts, L - h; else the edges alone.

    >>> round(float(cutter_reach(0.025, 0.06, 0.008, 0.012, 0.02)), 6)
    0.04
    >>> float(cutter_reach(0.025, 0.06, 0.012, 0.012, 0.02))
    0.025
    """
    out = length - held
    return np.where(shank < width, np.maximum(out, cutting_length), np.minimum(out, cutting_length))


@defined(positive="depth step")
def passes(depth: Number, step: Number) -> Number:
    """How many passes a cut takes.

    Arithmetic.

    Parameters
    ----------
    depth : of the cut [m]
    step : greatest depth of one pass [m]

    Returns
    -------
    passes : whole number of them [1]

    Notes
    -----
    d / s rounded up; a millionth over a whole number is the rounding of decimals.

    >>> float(passes(0.018, 0.006)), float(passes(0.019, 0.006))
    (3.0, 4.0)
    """
    return np.ceil(depth / step - 1e-6)


@defined(positive="thickness")
@valid_when(lambda tilt: np.abs(tilt) < np.pi / 2, "a blade is tilted by less than a right angle")
def blade_height(thickness: Number, tilt: Number) -> Number:
    """How far a tilted blade must stand above the table to cut through, measured along the blade.

    Geometry.

    Parameters
    ----------
    thickness : of the wood [m]
    tilt : of the blade from square [rad]

    Returns
    -------
    height : along the blade [m]

    Notes
    -----
    t / cos(tilt).

    >>> round(blade_height(0.05, np.radians(45)) * 1e3, 2)
    70.71
    """
    return thickness / np.cos(tilt)


@defined(positive="length width sheet_length sheet_width", not_negative="trim")
@valid_when(
    lambda sheet_length, sheet_width, trim: np.minimum(sheet_length, sheet_width) > 2 * trim,
    "nothing is left of the sheet within its margins",
)
def share_of_sheet(
    length: Number, width: Number, sheet_length: Number, sheet_width: Number, trim: Number
) -> Number:
    """Greatest share of a sheet's length or width that a rectangle takes, the better way round.

    Geometry.

    Parameters
    ----------
    length : of the rectangle [m]
    width : of the rectangle [m]
    sheet_length : of the sheet [m]
    sheet_width : of the sheet [m]
    trim : cut off along each edge of the sheet [m]

    Returns
    -------
    share : more than 1 does not fit [1]

    Notes
    -----
    max(l / (L - 2t), w / (W - 2t)), the least over both ways round.

    >>> round(float(share_of_sheet(0.8, 1.3, 2.44, 1.22, 0.01)), 3)
    0.667
    """
    inside_length, inside_width = sheet_length - 2 * trim, sheet_width - 2 * trim
    along = np.maximum(length / inside_length, width / inside_width)
    across = np.maximum(width / inside_length, length / inside_width)
    return np.minimum(along, across)
