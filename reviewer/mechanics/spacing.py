"""How far fasteners must stand from ends, edges and each other, so that wood does not split.

The NDS gives distances for the full value and a minimum, at which the joint is worth as much less
as the distance is shorter.
"""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class NdsSpacing(NamedTuple):
    """Distances of bolts by the NDS."""

    end_full: Number
    end_least: Number
    compressed_end_full: Number
    compressed_end_least: Number
    in_row_full: Number
    in_row_least: Number
    edge: Number
    loaded_edge: Number
    between_rows: Number
    between_rows_across: Number


class EnSpacing(NamedTuple):
    """Least distances of bolts by EN 1995-1-1."""

    in_row: Number
    between_rows: Number
    loaded_end: Number
    unloaded_end: Number
    loaded_edge: Number
    unloaded_edge: Number


@valid_when(
    lambda end_diameters: (end_diameters >= 5) & (end_diameters <= 7),
    "the loaded end needs 7 diameters in softwood, 5 in hardwood",
)
@defined(positive="diameter length_in_wood end_diameters")
def nds_bolt_spacing(
    diameter: Number, length_in_wood: Number, end_diameters: Number = 7.0
) -> NdsSpacing:
    """End, edge and spacing distances of bolts and lag screws of 1/4 inch and more.

    NDS 2018, tables 12.5.1A to 12.5.1D (from memory).

    Parameters
    ----------
    diameter : diameter of the bolt [m]
    length_in_wood : length of the bolt in the main member, or in the side members if less [m]
    end_diameters : full distance of a pulled end in diameters: 7 softwood, 5 hardwood [1]

    Returns
    -------
    end_full : end that the bolt is pulled towards, for the full value [m]
    end_least : the same, least [m]
    compressed_end_full : end pressed away from, or load across the grain, full value [m]
    compressed_end_least : the same, least [m]
    in_row_full : spacing in a row along the load, full value [m]
    in_row_least : the same, least [m]
    edge : edge of a member loaded along its grain, or unloaded edge [m]
    loaded_edge : edge that a load across the grain presses towards [m]
    between_rows : spacing between rows, load along the grain [m]
    between_rows_across : spacing between rows, load across the grain [m]

    Notes
    -----
    7 or 5 D and half, 4 D and half, 4 D and 3 D, 1.5 D, 4 D, 1.5 D; across the grain 2.5 D to 5 D
    as l/D goes from 2 to 6, (5 l + 10 D)/8 between.

    >>> spacing = nds_bolt_spacing(0.010, 0.036)
    >>> round(spacing.end_full, 4), round(spacing.loaded_edge, 4)
    (0.07, 0.04)
    """
    slender = np.clip((5 * length_in_wood + 10 * diameter) / 8, 2.5 * diameter, 5 * diameter)
    return NdsSpacing(
        end_diameters * diameter,
        end_diameters * diameter / 2,
        4 * diameter,
        2 * diameter,
        4 * diameter,
        3 * diameter,
        1.5 * diameter,
        4 * diameter,
        1.5 * diameter,
        slender,
    )


@valid_when(
    lambda distance, least: distance >= least * (1 - 1e-9),
    "the distance is below the least that the NDS allows, where the joint counts for nothing",
)
@defined(positive="distance full least")
def nds_geometry_factor(distance: Number, full: Number, least: Number) -> Number:
    """Share of the full value that a joint keeps where a distance is short of the full one.

    NDS 2018, 12.5.1.

    Parameters
    ----------
    distance : distance as built [m]
    full : distance for the full value [m]
    least : least distance allowed [m]

    Returns
    -------
    factor : geometry factor; the least over ends and spacings applies to the whole joint [1]

    Notes
    -----
    actual / full, up to 1.

    >>> round(nds_geometry_factor(0.0525, 0.07, 0.035), 3)
    0.75
    """
    factor: Number = np.minimum(distance / full, 1.0)
    return factor


@defined(positive="diameter")
def en_bolt_spacing(diameter: Number, angle: Number) -> EnSpacing:
    """Least end, edge and spacing distances of bolts.

    EN 1995-1-1:2004, table 8.4 (from memory).

    Parameters
    ----------
    diameter : diameter of the bolt [m]
    angle : angle between load and grain, 0 to a right angle [rad]

    Returns
    -------
    in_row : spacing along the grain, a1 [m]
    between_rows : spacing across the grain, a2 [m]
    loaded_end : end that the load pulls towards, a3,t [m]
    unloaded_end : other end, a3,c [m]
    loaded_edge : edge that the load presses towards, a4,t [m]
    unloaded_edge : other edge, a4,c [m]

    Notes
    -----
    (4 + |cos a|) d, 4 d, max(7 d, 80 mm), max((1 + 6 sin a) d, 4 d), max((2 + 2 sin a) d, 3 d),
    3 d.

    >>> round(float(en_bolt_spacing(0.012, 0.0).loaded_end), 3)
    0.084
    """
    sine, cosine = np.abs(np.sin(angle)), np.abs(np.cos(angle))
    four = 4 * diameter + 0 * sine
    return EnSpacing(
        (4 + cosine) * diameter,
        four,
        np.maximum(7 * diameter, 0.080) + 0 * sine,
        np.maximum((1 + 6 * sine) * diameter, four),
        np.maximum((2 + 2 * sine) * diameter, 3 * diameter),
        3 * diameter + 0 * sine,
    )


@valid_when(lambda bored: (bored == 0) | (bored == 1), "the hole is bored or not: 1 or 0")
@defined(positive="diameter", not_negative="bored")
def nds_screw_end_distance(diameter: Number, bored: Number) -> Number:
    """End distance of a nail or wood screw that is pulled towards the end.

    NDS 2018 commentary, table C12.1.5.7 (from memory): 15 D, 10 D in bored holes.

    Parameters
    ----------
    diameter : diameter of the nail or shank of the screw [m]
    bored : 1 where a lead hole is bored, else 0 [1]

    Returns
    -------
    distance : least distance from the end of the wood [m]

    Notes
    -----
    The same along the grain between fasteners; edges 2.5 D, pressed ends 10 D and 5 D, between
    rows 5 D and 3 D.

    >>> round(nds_screw_end_distance(0.004, 1.0), 3)
    0.04
    """
    return (15 - 5 * bored) * diameter
