"""What bolts, screws and nails press on: dowel bearing strength and yield moment."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_INCH = 0.0254
_PSI = 6894.757293168
_MM = 1e-3
_MPA = 1e6
_GRAVITY_RANGE = "specific gravity must lie between 0.25 and 1.0"


@valid_when(
    lambda specific_gravity: (specific_gravity > 0.25) & (specific_gravity < 1), _GRAVITY_RANGE
)
@defined(positive="specific_gravity")
def nds_bearing_along(specific_gravity: Number) -> Number:
    """Dowel bearing strength along the grain, for bolts and lag screws.

    NDS 2018, 12.3.3, table 12.3.3 footnote.

    Parameters
    ----------
    specific_gravity : ovendry mass over ovendry volume, over water's [1]

    Returns
    -------
    strength : dowel bearing strength [Pa]

    Notes
    -----
    11200 G psi, for diameters of 1/4 inch and more.

    >>> round(nds_bearing_along(0.50) / 6894.757293168)
    5600
    """
    return 11200 * _PSI * specific_gravity


@valid_when(
    lambda specific_gravity: (specific_gravity > 0.25) & (specific_gravity < 1), _GRAVITY_RANGE
)
@defined(positive="specific_gravity diameter")
def nds_bearing_across(specific_gravity: Number, diameter: Number) -> Number:
    """Dowel bearing strength across the grain, for bolts and lag screws.

    NDS 2018, 12.3.3, table 12.3.3 footnote.

    Parameters
    ----------
    specific_gravity : ovendry mass over ovendry volume, over water's [1]
    diameter : diameter of the bolt, 1/4 inch and more [m]

    Returns
    -------
    strength : dowel bearing strength [Pa]

    Notes
    -----
    6100 G^1.45 / sqrt(D) psi, D in inches; between the two directions by Hankinson.

    >>> round(nds_bearing_across(0.50, 0.0127) / 6894.757293168)
    3158
    """
    strength: Number = 6100 * _PSI * np.power(specific_gravity, 1.45) / np.sqrt(diameter / _INCH)
    return strength


@valid_when(
    lambda specific_gravity: (specific_gravity > 0.25) & (specific_gravity < 1), _GRAVITY_RANGE
)
@defined(positive="specific_gravity")
def nds_small_bearing(specific_gravity: Number) -> Number:
    """Dowel bearing strength in any direction for nails and screws under 1/4 inch.

    NDS 2018, 12.3.3, table 12.3.3 footnote.

    Parameters
    ----------
    specific_gravity : ovendry mass over ovendry volume, over water's [1]

    Returns
    -------
    strength : dowel bearing strength [Pa]

    Notes
    -----
    16600 G^1.84 psi.

    >>> round(nds_small_bearing(0.50) / 6894.757293168)
    4637
    """
    strength: Number = 16600 * _PSI * np.power(specific_gravity, 1.84)
    return strength


@valid_when(lambda diameter: diameter <= 0.030, "the diameter must be at most 30 mm")
@defined(positive="density diameter grain_factor")
def en_bolt_embedment(
    density: Number, diameter: Number, angle: Number, grain_factor: Number
) -> Number:
    """Embedment strength of solid timber under a bolt, or a nail in a bored hole.

    EN 1995-1-1:2004, eq. (8.31) to (8.33).

    Parameters
    ----------
    density : characteristic density [kg/m^3]
    diameter : diameter of the bolt [m]
    angle : angle between load and grain [rad]
    grain_factor : 1.35 for softwood, 0.90 for hardwood, 1.30 for LVL [1]

    Returns
    -------
    strength : characteristic embedment strength [Pa]

    Notes
    -----
    0.082 (1 - 0.01 d) rho / (k90 sin^2 a + cos^2 a), k90 = grain factor + 0.015 d, d in mm.

    >>> round(en_bolt_embedment(350.0, 0.012, 0.0, 1.35) / 1e6, 3)
    25.256
    """
    d = diameter / _MM
    sine = np.sin(angle)
    turned = 1 + (grain_factor + 0.015 * d - 1) * sine * sine
    return 0.082 * (1 - 0.01 * d) * density / turned * _MPA


@valid_when(lambda diameter: diameter <= 0.008, "nails up to 8 mm")
@defined(positive="density diameter")
def en_nail_embedment(density: Number, diameter: Number) -> Number:
    """Embedment strength of solid timber under a nail or thin screw driven without a hole.

    EN 1995-1-1:2004, eq. (8.15).

    Parameters
    ----------
    density : characteristic density [kg/m^3]
    diameter : diameter of the nail [m]

    Returns
    -------
    strength : characteristic embedment strength [Pa]

    Notes
    -----
    0.082 rho d^-0.3, d in mm.

    >>> round(en_nail_embedment(350.0, 0.0031) / 1e6, 3)
    20.44
    """
    strength: Number = 0.082 * density * np.power(diameter / _MM, -0.3) * _MPA
    return strength


@valid_when(lambda diameter: diameter <= 0.030, "the diameter must be at most 30 mm")
@defined(positive="density diameter")
def en_plywood_bolt_embedment(density: Number, diameter: Number) -> Number:
    """Embedment strength of plywood under a bolt, in any direction of the face grain.

    EN 1995-1-1:2004, eq. (8.36).

    Parameters
    ----------
    density : characteristic density of the plywood [kg/m^3]
    diameter : diameter of the bolt [m]

    Returns
    -------
    strength : characteristic embedment strength [Pa]

    Notes
    -----
    0.11 (1 - 0.01 d) rho, d in mm.

    >>> round(en_plywood_bolt_embedment(630.0, 0.008) / 1e6, 2)
    63.76
    """
    return 0.11 * (1 - 0.01 * diameter / _MM) * density * _MPA


@valid_when(lambda diameter: diameter <= 0.008, "nails up to 8 mm")
@defined(positive="density diameter")
def en_plywood_nail_embedment(density: Number, diameter: Number) -> Number:
    """Embedment strength of plywood under a nail or thin screw.

    EN 1995-1-1:2004, eq. (8.20).

    Parameters
    ----------
    density : characteristic density of the plywood [kg/m^3]
    diameter : diameter of the nail [m]

    Returns
    -------
    strength : characteristic embedment strength [Pa]

    Notes
    -----
    0.11 rho d^-0.3, d in mm.

    >>> round(en_plywood_nail_embedment(630.0, 0.003) / 1e6, 2)
    49.84
    """
    strength: Number = 0.11 * density * np.power(diameter / _MM, -0.3) * _MPA
    return strength


@valid_when(lambda diameter: diameter <= 0.030, "the diameter must be at most 30 mm")
@defined(positive="diameter thickness")
def en_board_bolt_embedment(diameter: Number, thickness: Number) -> Number:
    """Embedment strength of particleboard and oriented strand board under a bolt.

    EN 1995-1-1:2004, eq. (8.37) (from memory).

    Parameters
    ----------
    diameter : diameter of the bolt [m]
    thickness : thickness of the board [m]

    Returns
    -------
    strength : characteristic embedment strength, in any direction [Pa]

    Notes
    -----
    50 d^-0.6 t^0.2, d and t in mm. The standard gives nothing for MDF under a bolt.

    >>> round(en_board_bolt_embedment(0.008, 0.018) / 1e6, 2)
    25.6
    """
    d, t = diameter / _MM, thickness / _MM
    strength: Number = 50 * np.power(d, -0.6) * np.power(t, 0.2) * _MPA
    return strength


@defined(positive="tensile_strength")
def nds_steel_bearing(tensile_strength: Number, cold_formed: Number = 0.0) -> Number:
    """Dowel bearing strength of a steel member.

    NDS 2018, appendix I and tables 12A to 12T, footnotes (from memory).

    Parameters
    ----------
    tensile_strength : tensile strength of the steel [Pa]
    cold_formed : 1 for sheet up to 3/16 inch, 0 for hot rolled plate [1]

    Returns
    -------
    strength : dowel bearing strength [Pa]

    Notes
    -----
    2.4 Fu / 1.6 of hot rolled steel, 2.2 Fu / 1.6 of cold formed; brought down to the level of
    wood under a load of ten years.

    >>> round(nds_steel_bearing(58000 * 6894.757293168) / 6894.757293168)
    87000
    """
    return (2.4 - 0.2 * cold_formed) / 1.6 * tensile_strength


@valid_when(lambda diameter: diameter <= 0.030, "the diameter must be at most 30 mm")
@defined(positive="tensile_strength diameter")
def en_yield_moment(tensile_strength: Number, diameter: Number) -> Number:
    """Moment at which a round bolt or nail bends in the wood.

    EN 1995-1-1:2004, eq. (8.30).

    Parameters
    ----------
    tensile_strength : tensile strength of the fastener [Pa]
    diameter : diameter of the fastener [m]

    Returns
    -------
    moment : characteristic yield moment [N m]

    Notes
    -----
    0.3 fu d^2.6 in N mm, fu in MPa, d in mm.

    >>> round(en_yield_moment(400e6, 0.012) * 1e3)
    76745
    """
    moment: Number = 0.3 * tensile_strength / _MPA * np.power(diameter / _MM, 2.6) * _MM
    return moment
