"""Shafts that turn under load: safety against fatigue by the distortion energy criteria."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


class FatigueMoments(NamedTuple):
    """Combined bending and torsion, alternating and steady."""

    alternating: Number
    mean: Number


@silent
def fatigue_moments(
    bending_factor: Number,
    torsion_factor: Number,
    alternating_moment: Number,
    mean_moment: Number,
    alternating_torque: Number,
    mean_torque: Number,
) -> FatigueMoments:
    """Moment and torque combined for the fatigue criteria, notch factors in.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2008), eq. (7-6).

    Parameters
    ----------
    bending_factor : fatigue stress concentration factor Kf [1]
    torsion_factor : fatigue stress concentration factor Kfs [1]
    alternating_moment : amplitude of the bending moment [N m]
    mean_moment : steady bending moment [N m]
    alternating_torque : amplitude of the torque [N m]
    mean_torque : steady torque [N m]

    Returns
    -------
    alternating : A of the criteria [N m]
    mean : B of the criteria [N m]

    Notes
    -----
    A = sqrt(4 (Kf Ma)^2 + 3 (Kfs Ta)^2), B = sqrt(4 (Kf Mm)^2 + 3 (Kfs Tm)^2).

    >>> [round(float(x)) for x in fatigue_moments(2.2, 1.8, 600.0, 500.0, 400.0, 300.0)]
    [2920, 2391]
    """
    alternating = np.hypot(
        2 * bending_factor * alternating_moment, 3**0.5 * torsion_factor * alternating_torque
    )
    mean = np.hypot(2 * bending_factor * mean_moment, 3**0.5 * torsion_factor * mean_torque)
    return FatigueMoments(alternating, mean)


def _stress(diameter: Number, moment: Number) -> Number:
    """Equivalent stress of a combined moment A or B on a solid round shaft."""
    return 16 * moment / (np.pi * diameter * diameter * diameter)


@valid_when(
    lambda diameter, alternating: (diameter > 0) & (alternating > 0),
    "the diameter and the alternating part must be above zero",
)
@defined(positive="diameter endurance ultimate")
def goodman_safety(
    diameter: Number, alternating: Number, mean: Number, endurance: Number, ultimate: Number
) -> Number:
    """Safety factor against fatigue by the modified Goodman line.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2008), eq. (7-7).

    Parameters
    ----------
    diameter : diameter of the solid shaft [m]
    alternating : combined alternating moment A [N m]
    mean : combined mean moment B [N m]
    endurance : endurance limit Se of the part [Pa]
    ultimate : tensile strength [Pa]

    Returns
    -------
    safety : factor on the loads until the criterion [1]

    Notes
    -----
    1/n = 16/(pi d^3) (A/Se + B/Sut).

    >>> round(float(goodman_safety(0.02, 100.0, 100.0, 200e6, 600e6)), 3)
    2.356
    """
    return 1 / (_stress(diameter, alternating) / endurance + _stress(diameter, mean) / ultimate)


@valid_when(
    lambda diameter, alternating: (diameter > 0) & (alternating > 0),
    "the diameter and the alternating part must be above zero",
)
@defined(positive="diameter endurance yield_stress")
def soderberg_safety(
    diameter: Number, alternating: Number, mean: Number, endurance: Number, yield_stress: Number
) -> Number:
    """Safety factor against fatigue and first yield by the Soderberg line.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2008), eq. (7-13).

    Parameters
    ----------
    diameter : diameter of the solid shaft [m]
    alternating : combined alternating moment A [N m]
    mean : combined mean moment B [N m]
    endurance : endurance limit Se of the part [Pa]
    yield_stress : yield stress [Pa]

    Returns
    -------
    safety : factor on the loads until the criterion [1]

    Notes
    -----
    1/n = 16/(pi d^3) (A/Se + B/Sy).

    >>> round(float(soderberg_safety(0.02, 100.0, 100.0, 200e6, 400e6)), 3)
    2.094
    """
    return 1 / (_stress(diameter, alternating) / endurance + _stress(diameter, mean) / yield_stress)


@valid_when(
    lambda diameter, alternating: (diameter > 0) & (alternating > 0),
    "the diameter and the alternating part must be above zero",
)
@defined(positive="diameter endurance yield_stress")
def elliptic_safety(
    diameter: Number, alternating: Number, mean: Number, endurance: Number, yield_stress: Number
) -> Number:
    """Safety factor against fatigue by the ASME elliptic criterion.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2008), eq. (7-11).

    Parameters
    ----------
    diameter : diameter of the solid shaft [m]
    alternating : combined alternating moment A [N m]
    mean : combined mean moment B [N m]
    endurance : endurance limit Se of the part [Pa]
    yield_stress : yield stress [Pa]

    Returns
    -------
    safety : factor on the loads until the criterion [1]

    Notes
    -----
    1/n = 16/(pi d^3) sqrt((A/Se)^2 + (B/Sy)^2).

    >>> round(float(elliptic_safety(0.02, 100.0, 100.0, 200e6, 400e6)), 3)
    2.81
    """
    safety: Number = 1 / np.hypot(
        _stress(diameter, alternating) / endurance, _stress(diameter, mean) / yield_stress
    )
    return safety


@valid_when(
    lambda diameter, alternating: (diameter > 0) & (alternating > 0),
    "the diameter and the alternating part must be above zero",
)
@defined(positive="diameter endurance ultimate")
def gerber_safety(
    diameter: Number, alternating: Number, mean: Number, endurance: Number, ultimate: Number
) -> Number:
    """Safety factor against fatigue by the Gerber parabola.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2008), eq. (7-9).

    Parameters
    ----------
    diameter : diameter of the solid shaft [m]
    alternating : combined alternating moment A [N m]
    mean : combined mean moment B [N m]
    endurance : endurance limit Se of the part [Pa]
    ultimate : tensile strength [Pa]

    Returns
    -------
    safety : factor on the loads until the criterion [1]

    Notes
    -----
    1/n = 8 A/(pi d^3 Se) {1 + sqrt(1 + (2 B Se/(A Sut))^2)}.

    >>> round(float(gerber_safety(0.02, 100.0, 100.0, 200e6, 600e6)), 3)
    2.854
    """
    ratio = 2 * mean * endurance / (alternating * ultimate)
    safety: Number = (
        2 * endurance / (_stress(diameter, alternating) * (1 + np.sqrt(1 + ratio * ratio)))
    )
    return safety
