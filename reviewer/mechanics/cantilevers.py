"""Cantilevers: arms and levers held at one end."""

from math import inf

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when


@valid_when(
    lambda position, length: (position >= 0) & (position <= length),
    "the load must stand between the root and the tip",
)
@defined(positive="length bending_stiffness shear_stiffness")
def cantilever_deflection(
    force: Number,
    position: Number,
    length: Number,
    bending_stiffness: Number,
    shear_stiffness: Number = inf,
) -> Number:
    """Deflection of a cantilever's tip under a force anywhere on it.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 5; shear: Timoshenko.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from the root [m]
    length : length from root to tip [m]
    bending_stiffness : E I [N m^2]
    shear_stiffness : kappa G A; without it shear is left out [N]

    Returns
    -------
    deflection : deflection of the tip in the direction of the force [m]

    Notes
    -----
    P a^2 (3 L - a) / (6 E I) + P a / (kappa G A). The shear part is up to 1.1 % of the whole high
    on beams as short as twice their height, where the root is clamped over its whole face.

    >>> round(float(cantilever_deflection(100.0, 0.6, 0.6, 70e3 * 73365.3e-6)) * 1e3, 3)
    1.402
    """
    bending = force * position * position * (3 * length - position) / (6 * bending_stiffness)
    return bending + force * position / shear_stiffness


@defined(positive="bending_stiffness")
def cantilever_slope(force: Number, position: Number, bending_stiffness: Number) -> Number:
    """Slope of a cantilever from the force outwards to its tip.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 5.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from the root [m]
    bending_stiffness : E I [N m^2]

    Returns
    -------
    slope : slope beyond the force [rad]

    Notes
    -----
    P a^2 / (2 E I).

    >>> cantilever_slope(100.0, 0.6, 4000.0)
    0.0045
    """
    return force * position * position / (2 * bending_stiffness)


@silent
def cantilever_moment(force: Number, position: Number) -> Number:
    """Bending moment at the root of a cantilever.

    Statics.

    Parameters
    ----------
    force : force across the beam [N]
    position : distance of the force from the root [m]

    Returns
    -------
    moment : bending moment at the root [N m]

    Notes
    -----
    P a.

    >>> cantilever_moment(100.0, 0.6)
    60.0
    """
    return force * position


@defined(positive="length bending_stiffness shear_stiffness")
def cantilever_uniform_deflection(
    line_load: Number, length: Number, bending_stiffness: Number, shear_stiffness: Number = inf
) -> Number:
    """Deflection of a cantilever's tip under an even load over its length.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 1; shear: Timoshenko.

    Parameters
    ----------
    line_load : load per length [N/m]
    length : length from root to tip [m]
    bending_stiffness : E I [N m^2]
    shear_stiffness : kappa G A; without it shear is left out [N]

    Returns
    -------
    deflection : deflection of the tip [m]

    Notes
    -----
    w L^4 / (8 E I) + w L^2 / (2 kappa G A).

    >>> cantilever_uniform_deflection(80.0, 1.0, 1000.0)
    0.01
    """
    square = length * length
    bending = line_load * square * square / (8 * bending_stiffness)
    return bending + line_load * square / (2 * shear_stiffness)


@defined(positive="length bending_stiffness")
def cantilever_uniform_slope(
    line_load: Number, length: Number, bending_stiffness: Number
) -> Number:
    """Slope of a cantilever's tip under an even load over its length.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 1.

    Parameters
    ----------
    line_load : load per length [N/m]
    length : length from root to tip [m]
    bending_stiffness : E I [N m^2]

    Returns
    -------
    slope : slope of the tip [rad]

    Notes
    -----
    w L^3 / (6 E I).

    >>> cantilever_uniform_slope(60.0, 1.0, 1000.0)
    0.01
    """
    return line_load * length * length * length / (6 * bending_stiffness)


@defined(positive="length")
def cantilever_uniform_moment(line_load: Number, length: Number) -> Number:
    """Bending moment at the root of a cantilever under an even load.

    Statics.

    Parameters
    ----------
    line_load : load per length [N/m]
    length : length from root to tip [m]

    Returns
    -------
    moment : bending moment at the root [N m]

    Notes
    -----
    w L^2 / 2.

    >>> cantilever_uniform_moment(80.0, 1.0)
    40.0
    """
    return line_load * length * length / 2


@defined(positive="length bending_stiffness")
def cantilever_couple_deflection(
    moment: Number, length: Number, bending_stiffness: Number
) -> Number:
    """Deflection of a cantilever's tip under a couple at the tip.

    Gere and Goodno, Mechanics of Materials (2009), table G-1 case 6.

    Parameters
    ----------
    moment : couple at the tip [N m]
    length : length from root to tip [m]
    bending_stiffness : E I [N m^2]

    Returns
    -------
    deflection : deflection of the tip [m]

    Notes
    -----
    M L^2 / (2 E I).

    >>> cantilever_couple_deflection(20.0, 1.0, 1000.0)
    0.01
    """
    return moment * length * length / (2 * bending_stiffness)


@defined(positive="rotational_stiffness length")
def root_rotation_deflection(
    moment: Number, rotational_stiffness: Number, length: Number
) -> Number:
    """Deflection of a tip because the joint at the root turns.

    Statics.

    Parameters
    ----------
    moment : bending moment that the root passes on [N m]
    rotational_stiffness : moment per turn of the joint [N m/rad]
    length : length from root to tip [m]

    Returns
    -------
    deflection : deflection of the tip, to add to the bending of the arm [m]

    Notes
    -----
    M L / k.

    >>> root_rotation_deflection(60.0, 12000.0, 0.6)
    0.003
    """
    return moment / rotational_stiffness * length
