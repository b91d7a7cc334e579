"""Racking: how a frame on legs sways when it is pushed sideways, and what stiffens it."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number


@defined(positive="height bending_stiffness joint_stiffness")
def leg_sway_stiffness(
    height: Number, bending_stiffness: Number, joint_stiffness: Number
) -> Number:
    """Sideways stiffness of one leg that stands free on the floor and is joined at its top.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 4, with the joint in series.

    Parameters
    ----------
    height : length of the leg from floor to joint [m]
    bending_stiffness : E I of the leg [N m^2]
    joint_stiffness : moment per turn of the joint at the top [N m/rad]

    Returns
    -------
    stiffness : force per sway at the top; legs side by side add up [N/m]

    Notes
    -----
    1 / (h^3/(3 E I) + h^2/k), the top held level. The foot turns freely.

    >>> round(leg_sway_stiffness(0.7, 4000.0, 10000.0))
    12889
    """
    square = height * height
    return 1 / (square * height / (3 * bending_stiffness) + square / joint_stiffness)


@defined(positive="height span leg_stiffness apron_stiffness joint_stiffness")
def portal_sway_stiffness(
    height: Number,
    span: Number,
    leg_stiffness: Number,
    apron_stiffness: Number,
    joint_stiffness: Number,
) -> Number:
    """Sideways stiffness of two legs and the apron between them.

    Kleinlogel, Rigid Frame Formulas (1952), two-hinged portal, with the joints in series.

    Parameters
    ----------
    height : length of the legs from floor to apron [m]
    span : distance between the legs [m]
    leg_stiffness : E I of each leg [N m^2]
    apron_stiffness : E I of the apron [N m^2]
    joint_stiffness : moment per turn of each joint of leg and apron [N m/rad]

    Returns
    -------
    stiffness : force per sway at the apron [N/m]

    Notes
    -----
    1 / (h^3/(6 E I) + h^2 L/(12 E I apron) + h^2/(2 k)). The feet turn freely.

    >>> round(portal_sway_stiffness(0.7, 1.2, 4000.0, 30000.0, 10000.0))
    24737
    """
    square = height * height
    sway = square * height / (6 * leg_stiffness) + square * span / (12 * apron_stiffness)
    return 1 / (sway + square / (2 * joint_stiffness))


@defined(positive="width height shear_modulus thickness")
def panel_racking_stiffness(
    width: Number, height: Number, shear_modulus: Number, thickness: Number
) -> Number:
    """Sideways stiffness of a panel glued or screwed all round into a frame.

    Timoshenko, Strength of Materials, Part I (1955), art. 16, pure shear.

    Parameters
    ----------
    width : width of the panel along the push [m]
    height : height of the panel [m]
    shear_modulus : shear modulus in the panel's plane [Pa]
    thickness : thickness of the panel [m]

    Returns
    -------
    stiffness : force per sway at the top, the fasteners' slip left out [N/m]

    Notes
    -----
    G t w / h. An upper bound: slip of the fasteners takes most of it where there is no glue.

    >>> round(panel_racking_stiffness(0.8, 0.6, 620e6, 0.006))
    4960000
    """
    return shear_modulus * thickness * width / height


@defined(positive="width height axial_stiffness")
def brace_racking_stiffness(width: Number, height: Number, axial_stiffness: Number) -> Number:
    """Sideways stiffness that a diagonal brace gives a frame.

    Gere and Goodno, Mechanics of Materials (2009), 2.2, two-bar truss by virtual work.

    Parameters
    ----------
    width : reach of the brace along the push [m]
    height : rise of the brace [m]
    axial_stiffness : E A of the brace [N]

    Returns
    -------
    stiffness : force per sway at the top, joints left out [N/m]

    Notes
    -----
    E A w^2 / (w^2 + h^2)^1.5. A thin brace works in tension only: fit two.

    >>> round(brace_racking_stiffness(0.6, 0.8, 2e6))
    720000
    """
    square = width * width + height * height
    return axial_stiffness * width * width / (square * np.sqrt(square))


@defined(positive="stiffness")
def sway(force: Number, stiffness: Number) -> Number:
    """How far a frame sways under a sideways push.

    Statics.

    Parameters
    ----------
    force : sideways push at the top [N]
    stiffness : sum of the stiffnesses that resist it [N/m]

    Returns
    -------
    sway : movement of the top [m]

    Notes
    -----
    F / k.

    >>> sway(100.0, 50000.0)
    0.002
    """
    return force / stiffness


@defined(positive="side", not_negative="gap")
def uneven_floor_tilt(gap: Number, side: Number) -> Number:
    """Tilt of a stiff four-legged thing that rocks over a diagonal on an uneven floor.

    Geometry.

    Parameters
    ----------
    gap : gap under the lifted foot when the other three stand [m]
    side : side of the square of feet [m]

    Returns
    -------
    tilt : angle between its two ways of standing [rad]

    Notes
    -----
    gap sqrt 2 / side: the lifted foot is half a diagonal away from the one that it rocks over.

    >>> round(uneven_floor_tilt(0.003, 0.5), 5)
    0.00849
    """
    tilt: Number = gap * np.sqrt(2) / side
    return tilt
