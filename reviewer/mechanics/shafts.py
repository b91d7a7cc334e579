"""Shafts at rest: torsion, bending and torsion together, twist and what it does to levers."""

import numpy as np

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


@defined(positive="torsion_modulus")
def torsion_stress(torque: Number, torsion_modulus: Number) -> Number:
    """Peak shear stress of a bar in torsion.

    Gere and Goodno, Mechanics of Materials (2009), 3.3.

    Parameters
    ----------
    torque : torque that the bar carries [N m]
    torsion_modulus : torque per peak shear stress of the section [m^3]

    Returns
    -------
    stress : peak shear stress [Pa]

    Notes
    -----
    T / Wt; for a round bar 16 T / (pi d^3).

    >>> torsion_stress(50.0, 1e-6)
    50000000.0
    """
    return torque / torsion_modulus


@defined(positive="length shear_modulus torsion_constant")
def twist(
    torque: Number, length: Number, shear_modulus: Number, torsion_constant: Number
) -> Number:
    """Twist of a bar in torsion, as between the first and the last lever on a shaft.

    Gere and Goodno, Mechanics of Materials (2009), 3.3.

    Parameters
    ----------
    torque : torque that this length of the bar carries [N m]
    length : length in which it carries it [m]
    shear_modulus : shear modulus G [Pa]
    torsion_constant : torsion constant J of the section [m^4]

    Returns
    -------
    twist : angle between the two ends [rad]

    Notes
    -----
    T L / (G J); several lengths with different torques add up.

    >>> round(twist(10.0, 0.6, 26.3e9, 1.0974e-7), 6)
    0.002079
    """
    return torque * length / (shear_modulus * torsion_constant)


@valid_when(
    lambda twist: np.abs(twist) < 0.2, "the twist must be below 0.2 rad, where sine is the angle"
)
@silent
def lever_lag(twist: Number, lever_length: Number) -> Number:
    """How far the last lever's end stays behind the first lever's end.

    Geometry.

    Parameters
    ----------
    twist : angle between the two levers [rad]
    lever_length : length of the levers from the shaft's axis [m]

    Returns
    -------
    lag : what the far side lacks in lift [m]

    Notes
    -----
    theta r.

    >>> lever_lag(0.02, 0.1)
    0.002
    """
    return twist * lever_length


@silent
def von_mises_stress(normal_stress: Number, shear_stress: Number) -> Number:
    """Equivalent stress of a normal stress with a shear stress, by distortion energy.

    Budynas and Nisbett, Shigley's Mechanical Engineering Design (2008), eq. (5-15).

    Parameters
    ----------
    normal_stress : normal stress, as from bending [Pa]
    shear_stress : shear stress at the same place, as from torsion [Pa]

    Returns
    -------
    stress : equivalent stress, to hold against the yield stress [Pa]

    Notes
    -----
    sqrt(sigma^2 + 3 tau^2).

    >>> round(float(von_mises_stress(100e6, 100e6)) / 1e6)
    200
    """
    square = normal_stress * normal_stress + 3 * shear_stress * shear_stress
    stress: Number = np.sqrt(square)
    return stress


@silent
def equivalent_torque(moment: Number, torque: Number) -> Number:
    """Torque that alone gives a round shaft the same peak shear stress as moment and torque.

    Guest; as in Khurmi and Gupta, A Textbook of Machine Design (2005), ch. 14.

    Parameters
    ----------
    moment : bending moment [N m]
    torque : torque [N m]

    Returns
    -------
    torque : equivalent torque [N m]

    Notes
    -----
    Te = sqrt(M^2 + T^2).

    >>> float(equivalent_torque(3.0, 4.0))
    5.0
    """
    equivalent: Number = np.hypot(moment, torque)
    return equivalent


@silent
def equivalent_moment(moment: Number, torque: Number) -> Number:
    """Bending moment that alone gives a round shaft the same largest normal stress.

    Rankine; as in Khurmi and Gupta, A Textbook of Machine Design (2005), ch. 14.

    Parameters
    ----------
    moment : bending moment [N m]
    torque : torque [N m]

    Returns
    -------
    moment : equivalent bending moment [N m]

    Notes
    -----
    Me = (M + sqrt(M^2 + T^2)) / 2.

    >>> float(equivalent_moment(3.0, 4.0))
    4.0
    """
    equivalent: Number = (moment + np.hypot(moment, torque)) / 2
    return equivalent


@valid_when(
    lambda bending_stiffness, torsional_stiffness: (
        (bending_stiffness > 0) & (torsional_stiffness > 0)
    ),
    "E I and G J must be above zero",
)
@defined(positive="lever_bending_stiffness bending_stiffness torsional_stiffness")
def lever_end_deflection(
    force: Number,
    lever_length: Number,
    shaft_length: Number,
    lever_bending_stiffness: Number,
    bending_stiffness: Number,
    torsional_stiffness: Number,
) -> Number:
    """Deflection of a lever's end when the lever sits on the free end of a shaft held at the other.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 4 and 3.3, by superposition.

    Parameters
    ----------
    force : force across the lever's end, square to lever and shaft [N]
    lever_length : length of the lever [m]
    shaft_length : length of the shaft [m]
    lever_bending_stiffness : E I of the lever [N m^2]
    bending_stiffness : E I of the shaft [N m^2]
    torsional_stiffness : G J of the shaft [N m^2]

    Returns
    -------
    deflection : deflection of the lever's end along the force [m]

    Notes
    -----
    P a^3 / (3 E I lever) + P L^3 / (3 E I shaft) + P a^2 L / (G J).

    >>> round(lever_end_deflection(100.0, 0.3, 0.4, 7000.0, 7000.0, 11811.8), 6)
    0.000738
    """
    lever = lever_length * lever_length
    bending = lever * lever_length / lever_bending_stiffness
    bending = bending + shaft_length * shaft_length * shaft_length / bending_stiffness
    return force * (bending / 3 + lever * shaft_length / torsional_stiffness)


@defined(positive="left right bending_stiffness")
def misalignment_force(
    offset: Number, left: Number, right: Number, bending_stiffness: Number
) -> Number:
    """Force on the middle one of three bearings that stands out of line with the outer two.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 5, solved for the force.

    Parameters
    ----------
    offset : distance of the middle bearing from the line through the outer two [m]
    left : distance from the middle to the left bearing [m]
    right : distance from the middle to the right bearing [m]
    bending_stiffness : E I of the shaft [N m^2]

    Returns
    -------
    force : radial force that bends the shaft into the middle bearing [N]

    Notes
    -----
    3 E I (a + b) e / (a^2 b^2); the bearings and what carries them are taken as rigid, which
    overstates the force on wood.

    >>> round(float(misalignment_force(0.001, 0.5, 0.5, 1000.0)), 6)
    48.0
    """
    return 3 * bending_stiffness * (left + right) * offset / (left * left * right * right)
