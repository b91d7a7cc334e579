"""Endurance of steel in reversed bending, from its tensile strength, surface and size."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

ENDURED_SHARE = 0.5
"""Endurance limit of a polished specimen over the tensile strength, below 1400 MPa."""

RELIABILITY = 0.814
"""Factor for a reliability of 99 %."""


@defined(positive="tensile_strength")
def machined_surface_factor(tensile_strength: Number) -> Number:
    """Factor of a machined or cold-drawn surface on the endurance limit of steel.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), eq. (6-19), table 6-2.

    Parameters
    ----------
    tensile_strength : tensile strength [Pa]

    Returns
    -------
    factor : k_a [1]

    Notes
    -----
    4.51 S^-0.265, S in MPa; at most 1.

    >>> round(machined_surface_factor(520e6), 3)
    0.86
    """
    return np.minimum(4.51 * (tensile_strength / 1e6) ** -0.265, 1.0)


@valid_when(
    lambda diameter: (diameter >= 2.79e-3) & (diameter <= 51e-3),
    "the size factor holds for diameters from 2.79 to 51 mm",
)
@defined(positive="diameter")
def size_factor(diameter: Number) -> Number:
    """Factor of size on the endurance limit in bending and torsion.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), eq. (6-20).

    Parameters
    ----------
    diameter : of a bar that turns, 0.37 of it for one that does not [m]

    Returns
    -------
    factor : k_b [1]

    Notes
    -----
    1.24 d^-0.107, d in mm.

    >>> round(size_factor(32e-3), 2)
    0.86
    """
    return 1.24 * (diameter * 1e3) ** -0.107


@valid_when(
    lambda tensile_strength: tensile_strength <= 1400e6,
    "half of the tensile strength holds up to 1400 MPa",
)
@defined(positive="tensile_strength diameter")
def steel_endurance(tensile_strength: Number, diameter: Number) -> Number:
    """Endurance limit of a machined steel bar that turns under a bending load.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2011), eq. (6-8) and (6-18).

    Parameters
    ----------
    tensile_strength : tensile strength [Pa]
    diameter : of the bar [m]

    Returns
    -------
    endurance : stress amplitude that it bears for ever, in 99 of 100 bars [Pa]

    Notes
    -----
    k_a k_b 0.814 S/2. Steel only: aluminium has no such limit. On the safe side for a bar that
    does not turn.

    >>> round(steel_endurance(690e6, 32e-3) / 1e6)
    192
    """
    surface, size = machined_surface_factor(tensile_strength), size_factor(diameter)
    return surface * size * RELIABILITY * ENDURED_SHARE * tensile_strength
