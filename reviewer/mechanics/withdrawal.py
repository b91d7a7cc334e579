"""What pulls a screw, nail or lag screw out of wood, or its head through it."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_INCH = 0.0254
_POUND_PER_INCH = 4.4482216152605 / 0.0254
_MM = 1e-3


@defined(positive="specific_gravity diameter penetration")
def nail_withdrawal(specific_gravity: Number, diameter: Number, penetration: Number) -> Number:
    """Force that pulls a smooth nail out of the side grain of seasoned wood.

    Wood Handbook FPL-GTR-282 (2021), ch. 8, nails, withdrawal.

    Parameters
    ----------
    specific_gravity : ovendry mass over volume at 12 % moisture, over water's [1]
    diameter : diameter of the nail [m]
    penetration : depth of the nail in the piece that holds its point [m]

    Returns
    -------
    force : mean ultimate force; a sixth of it is allowed [N]

    Notes
    -----
    54.12 G^2.5 D L in N and mm.

    >>> round(nail_withdrawal(0.48, 0.00333, 0.0381))
    1096
    """
    force: Number = 54.12e6 * np.power(specific_gravity, 2.5) * diameter * penetration
    return force


@defined(positive="specific_gravity diameter penetration")
def wood_screw_withdrawal(
    specific_gravity: Number, diameter: Number, penetration: Number
) -> Number:
    """Force that pulls a wood screw out of side grain.

    Wood Handbook FPL-GTR-282 (2021), ch. 8, wood screws, withdrawal.

    Parameters
    ----------
    specific_gravity : ovendry mass over volume at 12 % moisture, over water's [1]
    diameter : shank diameter of the screw [m]
    penetration : length of thread in the wood [m]

    Returns
    -------
    force : mean ultimate force; a fifth of it is allowed [N]

    Notes
    -----
    108.25 G^2 D L in N and mm; pilot holes 70 to 90 % of the root diameter.

    >>> round(wood_screw_withdrawal(0.63, 0.00483, 0.0254))
    5271
    """
    return 108.25e6 * specific_gravity * specific_gravity * diameter * penetration


@defined(positive="specific_gravity diameter penetration")
def lag_screw_withdrawal(specific_gravity: Number, diameter: Number, penetration: Number) -> Number:
    """Force that pulls a lag screw out of side grain.

    Wood Handbook FPL-GTR-282 (2021), ch. 8, lag screws, withdrawal.

    Parameters
    ----------
    specific_gravity : ovendry mass over volume at 12 % moisture, over water's [1]
    diameter : shank diameter of the lag screw [m]
    penetration : length of thread in the wood [m]

    Returns
    -------
    force : mean ultimate force; a fifth of it is allowed [N]

    Notes
    -----
    125.4 G^1.5 D^0.75 L in N and mm; three quarters of it in end grain.

    >>> round(lag_screw_withdrawal(0.48, 0.009525, 0.0508))
    11486
    """
    force: Number = (
        125.4 * np.power(specific_gravity, 1.5) * np.power(diameter / _MM, 0.75) * penetration / _MM
    )
    return force


@defined(positive="specific_gravity diameter penetration")
def nds_nail_withdrawal(specific_gravity: Number, diameter: Number, penetration: Number) -> Number:
    """Allowable withdrawal of a smooth nail from side grain.

    NDS 2018, eq. (12.2-3).

    Parameters
    ----------
    specific_gravity : ovendry mass over ovendry volume, over water's [1]
    diameter : diameter of the nail [m]
    penetration : depth of the nail in the piece that holds its point [m]

    Returns
    -------
    force : reference withdrawal value, before adjustment factors [N]

    Notes
    -----
    1380 G^2.5 D L in pounds and inches. Not in end grain.

    >>> round(nds_nail_withdrawal(0.42, 0.131 * 0.0254, 2.395 * 0.0254) / 4.4482216, 1)
    49.5
    """
    per_length = 1380 * np.power(specific_gravity, 2.5) * diameter / _INCH
    return per_length * penetration * _POUND_PER_INCH


@defined(positive="specific_gravity diameter penetration")
def nds_wood_screw_withdrawal(
    specific_gravity: Number, diameter: Number, penetration: Number
) -> Number:
    """Allowable withdrawal of a wood screw from side grain.

    NDS 2018, eq. (12.2-2).

    Parameters
    ----------
    specific_gravity : ovendry mass over ovendry volume, over water's [1]
    diameter : shank diameter of the screw [m]
    penetration : length of thread in the wood [m]

    Returns
    -------
    force : reference withdrawal value, before adjustment factors [N]

    Notes
    -----
    2850 G^2 D L in pounds and inches. Not in end grain.

    >>> round(nds_wood_screw_withdrawal(0.45, 0.190 * 0.0254, 0.0254) / 4.4482216, 1)
    109.7
    """
    per_length = 2850 * specific_gravity * specific_gravity * diameter / _INCH
    return per_length * penetration * _POUND_PER_INCH


@defined(positive="specific_gravity diameter penetration")
def nds_lag_screw_withdrawal(
    specific_gravity: Number, diameter: Number, penetration: Number
) -> Number:
    """Allowable withdrawal of a lag screw from side grain.

    NDS 2018, eq. (12.2-1).

    Parameters
    ----------
    specific_gravity : ovendry mass over ovendry volume, over water's [1]
    diameter : shank diameter of the lag screw [m]
    penetration : length of thread in the wood, its tapered tip left out [m]

    Returns
    -------
    force : reference withdrawal value, before adjustment factors [N]

    Notes
    -----
    1800 G^1.5 D^0.75 L in pounds and inches; three quarters of it in end grain.

    >>> round(nds_lag_screw_withdrawal(0.55, 0.0127, 2.1875 * 0.0254) / 4.4482216)
    955
    """
    per_length = 1800 * np.power(specific_gravity, 1.5) * np.power(diameter / _INCH, 0.75)
    return per_length * penetration * _POUND_PER_INCH


@valid_when(
    lambda diameter, penetration: (
        (diameter >= 0.006) & (diameter <= 0.012) & (penetration >= 5.999999 * diameter)
    ),
    "screws of 6 to 12 mm, threaded into the wood for at least six diameters",
)
@defined(positive="density diameter penetration")
def en_screw_withdrawal(density: Number, diameter: Number, penetration: Number) -> Number:
    """Characteristic withdrawal of a screw square to the grain.

    EN 1995-1-1:2004/A1:2008, eq. (8.38) to (8.40).

    Parameters
    ----------
    density : characteristic density [kg/m^3]
    diameter : outer diameter of the thread [m]
    penetration : length of thread in the wood [m]

    Returns
    -------
    force : characteristic withdrawal capacity [N]

    Notes
    -----
    0.52 d^-0.5 l^-0.1 rho^0.8 d l k_d, k_d = d/8 up to 1, in N and mm.

    >>> round(en_screw_withdrawal(350.0, 0.008, 0.060))
    6355
    """
    d, depth = diameter / _MM, penetration / _MM
    strength = 0.52 * np.power(d, -0.5) * np.power(depth, -0.1) * np.power(density, 0.8)
    force: Number = strength * d * depth * np.minimum(d / 8, 1)
    return force
