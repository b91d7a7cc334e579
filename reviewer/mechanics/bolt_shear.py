"""Bolts across which two parts slide: what they bear in shear."""

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number

SHEAR_FACTOR = 0.6
"""alpha_v of property classes 4.6, 5.6 and 8.8, and of every class where the shank shears."""

BRITTLE_SHEAR_FACTOR = 0.5
"""alpha_v of property classes 4.8, 5.8, 6.8 and 10.9 where the thread shears."""


@defined(positive="area tensile_strength factor", not_negative="planes")
def bolt_shear_resistance(
    area: Number,
    tensile_strength: Number,
    planes: Number = 1.0,
    factor: Number = SHEAR_FACTOR,
    partial_factor: Number = 1.25,
) -> Number:
    """Design resistance of a bolt in shear.

    EN 1993-1-8:2005, table 3.4; from memory.

    Parameters
    ----------
    area : that shears, of the thread its stress area [m^2]
    tensile_strength : of the bolt [Pa]
    planes : in which it shears [1]
    factor : alpha_v [1]
    partial_factor : gamma_M2 [1]

    Returns
    -------
    force : F_v,Rd [N]

    Notes
    -----
    n alpha_v f_ub A / gamma_M2.

    >>> round(bolt_shear_resistance(157e-6, 800e6) / 1e3, 1)
    60.3
    """
    return planes * factor * tensile_strength * area / partial_factor
