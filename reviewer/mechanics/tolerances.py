"""Clearance holes and deviations that add up: what play and position they leave."""

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when

# ISO 273: nominal diameter and clearance hole of the fine, medium and coarse series, mm.
_DIAMETERS = np.array([3, 4, 5, 6, 8, 10, 12, 14, 16, 20]) * 1e-3
_HOLES = {
    "fine": np.array([3.2, 4.3, 5.3, 6.4, 8.4, 10.5, 13, 15, 17, 21]) * 1e-3,
    "medium": np.array([3.4, 4.5, 5.5, 6.6, 9, 11, 13.5, 15.5, 17.5, 22]) * 1e-3,
    "coarse": np.array([3.6, 4.8, 5.8, 7, 10, 12, 14.5, 16.5, 18.5, 24]) * 1e-3,
}


@silent
@valid_when(
    lambda diameter: np.any(np.abs(np.asarray(diameter)[..., None] - _DIAMETERS) < 1e-6, axis=-1),
    "ISO 273 is held here for M3, M4, M5, M6, M8, M10, M12, M14, M16 and M20",
)
def clearance_hole(diameter: Number, series: str = "medium") -> Number:
    """Diameter of the clearance hole of a bolt.

    ISO 273.

    Parameters
    ----------
    diameter : nominal diameter of the bolt [m]
    series : fine, medium or coarse [1]

    Returns
    -------
    hole : diameter of the hole [m]

    Notes
    -----
    Raises ValueError for another series.

    >>> round(clearance_hole(8e-3) * 1e3, 1)
    9.0
    """
    if series not in _HOLES:
        raise ValueError(f"series {series} of ISO 273 is not here; known are {', '.join(_HOLES)}")
    return np.interp(diameter, _DIAMETERS, _HOLES[series])


@defined(positive="spacing", not_negative="first_clearance second_clearance")
def float_angle(first_clearance: Number, second_clearance: Number, spacing: Number) -> Number:
    """Angle by which two plates can be out of line when two bolts hold them.

    Geometry.

    Parameters
    ----------
    first_clearance : hole less bolt in one plate, 0 if tapped or a dowel [m]
    second_clearance : hole less bolt in the other plate [m]
    spacing : between the two bolts [m]

    Returns
    -------
    angle : to each side [rad]

    Notes
    -----
    (c1 + c2) / s. Of equal bolts the two furthest apart govern.

    >>> round(float(np.degrees(float_angle(0.6e-3, 0.6e-3, 60e-3))), 3)
    1.146
    """
    return (first_clearance + second_clearance) / spacing


@defined(positive="hole fastener")
def floating_fastener_tolerance(hole: Number, fastener: Number) -> Number:
    """Tolerance of position of holes that a bolt passes with clearance in both parts.

    ASME Y14.5, appendix B.

    Parameters
    ----------
    hole : least diameter of the clearance holes [m]
    fastener : largest diameter of the bolt [m]

    Returns
    -------
    tolerance : diameter of the zone, in each part [m]

    Notes
    -----
    T = H - F; below zero they cannot be assembled.

    >>> round(floating_fastener_tolerance(3.94e-3, 3.5e-3) * 1e3, 2)
    0.44
    """
    return hole - fastener


@defined(positive="hole fastener")
def fixed_fastener_tolerance(hole: Number, fastener: Number) -> Number:
    """Tolerance of position of holes where the bolt is held by one of the two parts.

    ASME Y14.5, appendix B.

    Parameters
    ----------
    hole : least diameter of the clearance hole [m]
    fastener : largest diameter of the bolt or stud [m]

    Returns
    -------
    tolerance : diameter of the zone, in each part, projected [m]

    Notes
    -----
    T = (H - F) / 2; below zero they cannot be assembled.

    >>> round(fixed_fastener_tolerance(3.94e-3, 3.5e-3) * 1e3, 2)
    0.22
    """
    return 0.5 * (hole - fastener)


@silent
def worst_case(deviations: Number) -> Number:
    """Deviation of a sum when all its members deviate the same way.

    Shigley, Mechanical Engineering Design, 1-13.

    Parameters
    ----------
    deviations : to each side, members along the last axis [m]

    Returns
    -------
    deviation : of the sum, to each side [m]

    Notes
    -----
    >>> round(worst_case(np.array([3e-3, 1e-3, 5e-3, 1e-3])), 6)
    0.01
    """
    total: Number = np.sum(np.abs(deviations), axis=-1)
    return total


@silent
def root_sum_square(deviations: Number) -> Number:
    """Deviation of a sum when its members deviate each for itself.

    Shigley, Mechanical Engineering Design, 1-13 (statistical stack).

    Parameters
    ----------
    deviations : to each side, at the same number of standard deviations, along the last axis [m]

    Returns
    -------
    deviation : of the sum, to each side [m]

    Notes
    -----
    Members independent and centred on their nominal size.

    >>> round(root_sum_square(np.array([3e-3, 1e-3, 5e-3, 1e-3])), 6)
    0.006
    """
    total: Number = np.sqrt(np.sum(np.square(deviations), axis=-1))
    return total
