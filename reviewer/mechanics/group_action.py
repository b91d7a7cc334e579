"""Bolts in a row do not share a force alike: what the stretch of the members takes from them."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_INCH = 0.0254
_POUND_PER_INCH = 4.4482216152605 / _INCH


@defined(positive="diameter")
def nds_slip_modulus(diameter: Number, metal: Number = 0.0) -> Number:
    """Force for each length by which a bolt of a joint gives, for the group action factor.

    NDS 2018, 11.3.6 (from memory).

    Parameters
    ----------
    diameter : diameter of the bolt, 1/4 inch and more [m]
    metal : 1 where one of the members is metal, 0 where both are wood [1]

    Returns
    -------
    modulus : load/slip modulus of one bolt [N/m]

    Notes
    -----
    180,000 D^1.5 lbf/in between wood, 270,000 D^1.5 between wood and metal, D in inches.

    >>> round(nds_slip_modulus(0.0254) / 1e6, 2)
    31.52
    """
    power: Number = np.power(diameter / _INCH, 1.5)
    return (180e3 + 90e3 * metal) * power * _POUND_PER_INCH


@valid_when(lambda count: (count >= 1) & (count <= 20), "the row must have from 1 to 20 bolts")
@defined(positive="count spacing slip_modulus main_stiffness side_stiffness")
def nds_group_action(
    count: Number,
    spacing: Number,
    slip_modulus: Number,
    main_stiffness: Number,
    side_stiffness: Number,
) -> Number:
    """Share of the sum of single bolts that a row of them bears.

    NDS 2018, eq. (11.3-1); Zahn, Design equation for multiple-fastener wood connections (1991).

    Parameters
    ----------
    count : bolts in the row, along the force [1]
    spacing : from bolt to bolt [m]
    slip_modulus : load/slip modulus of one bolt [N/m]
    main_stiffness : modulus of elasticity times area of the main member [N]
    side_stiffness : the same of all side members together [N]

    Returns
    -------
    factor : group action factor [1]

    Notes
    -----
    m (1 - m^2n) (1 + R) / (n ((1 + R m^n)(1 + m) - 1 + m^2n)(1 - m)), m = u - sqrt(u^2 - 1),
    u = 1 + g s/2 (1/EmAm + 1/EsAs), R the lesser stiffness over the greater. Elastic; bolts in the
    holes of a shop may lie unevenly, which the formula leaves out.

    >>> psi, square_inch = 6894.757293168, 0.0254 * 0.0254
    >>> side, main = 1.4e6 * psi * 5 * square_inch, 1.4e6 * psi * 10 * square_inch
    >>> round(float(nds_group_action(3, 0.1016, nds_slip_modulus(0.0254), main, side)), 2)
    0.92
    """
    ratio = np.minimum(main_stiffness, side_stiffness) / np.maximum(main_stiffness, side_stiffness)
    u = 1 + slip_modulus * spacing / 2 * (1 / main_stiffness + 1 / side_stiffness)
    m = u - np.sqrt(u * u - 1)
    once = np.power(m, count)
    twice = once * once
    below = count * ((1 + ratio * once) * (1 + m) - 1 + twice) * (1 - m)
    factor: Number = m * (1 - twice) * (1 + ratio) / below
    return factor
