"""Heads, washers and inserts: what keeps a fastener's other end in the wood."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_INCH = 0.0254
_POUND = 4.4482216152605
_MM = 1e-3


@defined(positive="specific_gravity head_diameter thickness")
def nds_head_pull_through(
    specific_gravity: Number, head_diameter: Number, thickness: Number
) -> Number:
    """Allowable force that pulls a round head through a side member.

    NDS 2018, 12.2.5.

    Parameters
    ----------
    specific_gravity : ovendry mass over ovendry volume of the side member, over water's [1]
    head_diameter : diameter of the head [m]
    thickness : net thickness of the side member under the head [m]

    Returns
    -------
    force : reference pull-through value, before adjustment factors [N]

    Notes
    -----
    690 pi D G^2 t up to t = 2.5 D, then 1725 pi D^2 G^2, in pounds and inches.

    >>> round(float(nds_head_pull_through(0.50, 0.363 * 0.0254, 0.0127)) / 4.4482216, 1)
    98.4
    """
    depth = np.minimum(thickness, 2.5 * head_diameter)
    square = specific_gravity * specific_gravity
    inches = head_diameter / _INCH * depth / _INCH
    force: Number = 690 * np.pi * square * inches * _POUND
    return force


@defined(positive="density head_diameter")
def en_head_pull_through(density: Number, head_diameter: Number) -> Number:
    """Characteristic force that pulls a smooth nail's head through wood.

    EN 1995-1-1:2004, eq. (8.26).

    Parameters
    ----------
    density : characteristic density [kg/m^3]
    head_diameter : diameter of the head [m]

    Returns
    -------
    force : characteristic pull-through capacity [N]

    Notes
    -----
    70e-6 rho^2 d_h^2 in N and mm.

    >>> round(en_head_pull_through(350.0, 0.0062))
    330
    """
    diameter = head_diameter / _MM
    return 70e-6 * density * density * diameter * diameter


@valid_when(
    lambda washer_diameter, bolt_diameter: washer_diameter > bolt_diameter + 0.001,
    "the washer must be wider than the bolt's hole",
)
@defined(positive="strength washer_diameter bolt_diameter")
def washer_capacity(strength: Number, washer_diameter: Number, bolt_diameter: Number) -> Number:
    """Characteristic force that wood bears under a bolt's round washer.

    EN 1995-1-1:2004, 8.5.2.

    Parameters
    ----------
    strength : characteristic strength of the wood in compression across the grain [Pa]
    washer_diameter : outer diameter of the washer [m]
    bolt_diameter : diameter of the bolt, in a hole 1 mm larger [m]

    Returns
    -------
    force : characteristic capacity under the washer [N]

    Notes
    -----
    3 f_c,90 on the ring under the washer. The wood dents by then: for a preload that must last,
    use the strength without the 3.

    >>> round(washer_capacity(2.5e6, 0.036, 0.012))
    6639
    """
    return 3 * strength * washer_area(washer_diameter, bolt_diameter + _MM)


@valid_when(
    lambda washer_diameter, hole_diameter: washer_diameter > hole_diameter,
    "the washer must be wider than the hole",
)
@defined(positive="washer_diameter", not_negative="hole_diameter")
def washer_area(washer_diameter: Number, hole_diameter: Number) -> Number:
    """Area on which a round washer presses.

    Geometry.

    Parameters
    ----------
    washer_diameter : outer diameter of the washer [m]
    hole_diameter : diameter of the hole under it [m]

    Returns
    -------
    area : area of the ring [m^2]

    Notes
    -----
    pi/4 (D^2 - d^2).

    >>> round(washer_area(0.036, 0.013) * 1e6, 1)
    885.1
    """
    square = washer_diameter * washer_diameter - hole_diameter * hole_diameter
    return np.pi / 4 * square


@valid_when(
    lambda washer_diameter, bolt_diameter, washer_thickness: (
        (washer_diameter >= 2.999999 * bolt_diameter)
        & (washer_thickness >= 0.299999 * bolt_diameter)
    ),
    "the washer must be three bolt diameters wide and 0.3 thick",
)
@defined(positive="preload washer_diameter bolt_diameter washer_thickness")
def washer_pressure(
    preload: Number, washer_diameter: Number, bolt_diameter: Number, washer_thickness: Number
) -> Number:
    """Pressure of a bolt's preload on the wood under its washer.

    EN 1995-1-1:2004, 10.4.3, for the washer that spreads it evenly.

    Parameters
    ----------
    preload : force in the bolt [N]
    washer_diameter : outer diameter of the washer [m]
    bolt_diameter : diameter of the bolt, in a hole 1 mm larger [m]
    washer_thickness : thickness of the washer [m]

    Returns
    -------
    pressure : mean pressure on the wood [Pa]

    Notes
    -----
    F / A. A thinner or smaller washer bends or dents before it spreads the force.

    >>> round(washer_pressure(1000.0, 0.024, 0.008, 0.0025) / 1e6, 2)
    2.57
    """
    return preload / washer_area(washer_diameter, bolt_diameter + _MM)


@defined(positive="specific_gravity outer_diameter depth")
def insert_withdrawal_estimate(
    specific_gravity: Number, outer_diameter: Number, depth: Number
) -> Number:
    """Rough ultimate force that pulls a threaded insert out of side grain: an estimate.

    Common practice: the wood screw formula of the Wood Handbook, ch. 8, on the outer thread.

    Parameters
    ----------
    specific_gravity : ovendry mass over volume at 12 % moisture, over water's [1]
    outer_diameter : outer diameter of the insert's thread [m]
    depth : length of the insert's thread in the wood [m]

    Returns
    -------
    force : estimated mean ultimate force [N]

    Notes
    -----
    No standard covers inserts. Half or double of this is possible: test one.

    >>> round(insert_withdrawal_estimate(0.63, 0.010, 0.015))
    6445
    """
    return 108.25e6 * specific_gravity * specific_gravity * outer_diameter * depth
