"""What gives way around a bolt: its own bending, and the wood under the washer."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

CIRCLE_SHEAR = 6.0 / 7.0
"""Shear coefficient of a solid circle (Cowper, Poisson's ratio 0)."""


@defined(positive="overhang diameter modulus", not_negative="poisson_ratio")
def bolt_stiffness(
    overhang: Number, diameter: Number, modulus: Number = 205e9, poisson_ratio: Number = 0.3
) -> Number:
    """Stiffness of a bolt that carries a roller at its end, across the bolt.

    Timoshenko beam; Gere, Mechanics of Materials, appendix H, with shear added.

    Parameters
    ----------
    overhang : from the bracket to the middle of the bearing [m]
    diameter : that bends, the core's if the thread is there [m]
    modulus : Young's modulus of the bolt [Pa]
    poisson_ratio : Poisson's ratio of the bolt [1]

    Returns
    -------
    stiffness : force over deflection at the bearing [N/m]

    Notes
    -----
    1/k = l^3/3EI + l/(6/7 G A). An upper bound: held stiffly where it leaves the bracket; in a
    bracket of wood it is up to several times softer.

    >>> round(bolt_stiffness(12e-3, 8e-3) / 1e6, 1)
    57.1
    """
    square = diameter * diameter
    bending = modulus * np.pi / 64.0 * square * square
    shear = CIRCLE_SHEAR * modulus / (2.0 * (1.0 + poisson_ratio)) * np.pi / 4.0 * square
    return 1.0 / (overhang * overhang * overhang / (3.0 * bending) + overhang / shear)


@defined(positive="overhang diameter", not_negative="force")
def bolt_bending_stress(force: Number, overhang: Number, diameter: Number) -> Number:
    """Bending stress in a bolt that carries a roller at its end.

    Gere, Mechanics of Materials, 5.5 (flexure formula of a solid circle).

    Parameters
    ----------
    force : load across the bolt [N]
    overhang : from the bracket to the middle of the bearing [m]
    diameter : that bends, the core's if the thread is there [m]

    Returns
    -------
    stress : at the bracket, without preload [Pa]

    Notes
    -----
    32 F l / (pi d^3).

    >>> round(bolt_bending_stress(200.0, 12e-3, 8e-3) / 1e6, 1)
    47.7
    """
    return 32.0 * force * overhang / (np.pi * diameter * diameter * diameter)


@defined(positive="overhang diameter modulus", not_negative="force")
def bolt_slope(
    force: Number, overhang: Number, diameter: Number, modulus: Number = 205e9
) -> Number:
    """Tilt of a bearing on a bolt that bends under it.

    Gere, Mechanics of Materials, appendix H (cantilever).

    Parameters
    ----------
    force : load across the bolt [N]
    overhang : from the bracket to the middle of the bearing [m]
    diameter : that bends, the core's if the thread is there [m]
    modulus : Young's modulus of the bolt [Pa]

    Returns
    -------
    slope : tilt [rad]

    Notes
    -----
    F l^2 / (2 E I).

    >>> round(bolt_slope(200.0, 12e-3, 8e-3) * 1e3, 3)
    0.349
    """
    square = diameter * diameter
    return force * overhang * overhang / (modulus * np.pi / 32.0 * square * square)


@defined(positive="outer_diameter", not_negative="force hole_diameter")
@valid_when(
    lambda outer_diameter, hole_diameter: hole_diameter < outer_diameter,
    "the hole must be smaller than the washer",
)
def washer_pressure(force: Number, outer_diameter: Number, hole_diameter: Number) -> Number:
    """Pressure under a washer that stays flat.

    Statics.

    Parameters
    ----------
    force : load on the washer [N]
    outer_diameter : of the washer [m]
    hole_diameter : of the hole in what it presses on [m]

    Returns
    -------
    pressure : mean pressure [Pa]

    Notes
    -----
    A thin washer bends and presses harder around the hole.

    >>> round(washer_pressure(2000.0, 24e-3, 9e-3) / 1e6, 2)
    5.14
    """
    squares = outer_diameter * outer_diameter - hole_diameter * hole_diameter
    return force / (np.pi / 4.0 * squares)


@defined(positive="outer_diameter strength spread", not_negative="hole_diameter")
@valid_when(
    lambda outer_diameter, hole_diameter: hole_diameter < outer_diameter,
    "the hole must be smaller than the washer",
)
def pull_through(
    outer_diameter: Number, hole_diameter: Number, strength: Number, spread: Number = 3.0
) -> Number:
    """Load that presses a washer into wood or a panel.

    EN 1995-1-1, 8.5.2(2).

    Parameters
    ----------
    outer_diameter : of the washer [m]
    hole_diameter : of the hole in the panel [m]
    strength : compression across the grain or face, f_c,90 [Pa]
    spread : how much more the wood bears under a washer than over its whole face [1]

    Returns
    -------
    force : load on the bolt [N]

    Notes
    -----
    3 f_c,90 times the washer's area on the wood; a thin panel may also be punched.

    >>> round(pull_through(24e-3, 9e-3, 4e6))
    4665
    """
    squares = outer_diameter * outer_diameter - hole_diameter * hole_diameter
    return spread * strength * np.pi / 4.0 * squares


@defined(positive="outer_diameter thickness shear_strength")
def punching_load(outer_diameter: Number, thickness: Number, shear_strength: Number) -> Number:
    """Load that punches a washer out of a panel.

    Statics: shear around the washer.

    Parameters
    ----------
    outer_diameter : of the washer or the head [m]
    thickness : of the panel [m]
    shear_strength : shear through the thickness (panel shear) [Pa]

    Returns
    -------
    force : load on the bolt [N]

    Notes
    -----
    pi D t f_v.

    >>> round(punching_load(24e-3, 9e-3, 3.5e6))
    2375
    """
    return np.pi * outer_diameter * thickness * shear_strength
