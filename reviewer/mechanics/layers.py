"""Strips of several layers bent flat: loose, slipping, or glued into one."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


@valid_when(
    lambda count, thickness: (count >= 1) & (thickness > 0),
    "there must be at least one layer, of a thickness above zero",
)
@defined(positive="modulus width thickness count")
def loose_layers_stiffness(
    modulus: Number, width: Number, thickness: Number, count: Number
) -> Number:
    """Bending stiffness of equal layers that slide on one another.

    Gere and Goodno, Mechanics of Materials (2009), 5.5.

    Parameters
    ----------
    modulus : modulus of elasticity along the strip [Pa]
    width : width of the strip [m]
    thickness : thickness of one layer [m]
    count : number of layers [1]

    Returns
    -------
    bending_stiffness : E I [N m^2]

    Notes
    -----
    n E b t^3/12: the layers only add up.

    >>> round(loose_layers_stiffness(12e9, 0.1, 0.003, 3), 3)
    8.1
    """
    return count * modulus * width * thickness * thickness * thickness / 12


@valid_when(
    lambda count, thickness: (count >= 1) & (thickness > 0),
    "there must be at least one layer, of a thickness above zero",
)
@defined(positive="modulus width thickness count")
def glued_layers_stiffness(
    modulus: Number, width: Number, thickness: Number, count: Number
) -> Number:
    """Bending stiffness of equal layers glued into one.

    Gere and Goodno, Mechanics of Materials (2009), 5.5.

    Parameters
    ----------
    modulus : modulus of elasticity along the strip [Pa]
    width : width of the strip [m]
    thickness : thickness of one layer [m]
    count : number of layers [1]

    Returns
    -------
    bending_stiffness : E I [N m^2]

    Notes
    -----
    E b (n t)^3/12: n^2 times the loose layers.

    >>> round(glued_layers_stiffness(12e9, 0.1, 0.003, 3), 3)
    72.9
    """
    whole = count * thickness
    return modulus * width * whole * whole * whole / 12


@valid_when(
    lambda axial_stiffness, slip_modulus, spacing, span: (
        (axial_stiffness >= 0) & (slip_modulus > 0) & (spacing > 0) & (span > 0)
    ),
    "slip modulus, spacing and span must be above zero",
)
@defined(positive="slip_modulus spacing span")
def connection_efficiency(
    axial_stiffness: Number, slip_modulus: Number, spacing: Number, span: Number
) -> Number:
    """Share of the glued action that screws or nails between two layers give the outer layer.

    EN 1995-1-1:2004, Annex B, eq. (B.5).

    Parameters
    ----------
    axial_stiffness : E A of the outer layer [N]
    slip_modulus : slip modulus of one fastener, over all rows across the width [N/m]
    spacing : spacing of the fasteners along the strip [m]
    span : span of the simply supported strip [m]

    Returns
    -------
    gamma : 0 for loose, 1 for glued [1]

    Notes
    -----
    gamma = 1 / (1 + pi^2 E A s / (K l^2)), for a sine-shaped load on a simple span.

    >>> round(connection_efficiency(11e9 * 0.1 * 0.02, 1e6, 0.1, 1.0), 4)
    0.044
    """
    slip = np.pi * np.pi * axial_stiffness * spacing / (slip_modulus * span * span)
    return 1 / (1 + slip)


@defined(positive="modulus width thickness")
def slipping_layers_stiffness(
    modulus: Number,
    width: Number,
    thickness: Number,
    upper_modulus: Number,
    upper_width: Number,
    upper_thickness: Number,
    upper_gamma: Number,
    lower_modulus: Number,
    lower_width: Number,
    lower_thickness: Number,
    lower_gamma: Number,
) -> Number:
    """Effective bending stiffness of two or three layers whose joints give.

    EN 1995-1-1:2004, Annex B, eq. (B.1) to (B.6).

    Parameters
    ----------
    modulus : modulus of elasticity of the middle layer [Pa]
    width : width of the middle layer [m]
    thickness : thickness of the middle layer [m]
    upper_modulus : modulus of elasticity of the upper layer [Pa]
    upper_width : width of the upper layer [m]
    upper_thickness : thickness of the upper layer [m]
    upper_gamma : connection efficiency of the upper layer [1]
    lower_modulus : modulus of elasticity of the lower layer [Pa]
    lower_width : width of the lower layer, zero where there are only two layers [m]
    lower_thickness : thickness of the lower layer, zero where there are only two layers [m]
    lower_gamma : connection efficiency of the lower layer [1]

    Returns
    -------
    bending_stiffness : effective E I [N m^2]

    Notes
    -----
    sum (E I + gamma E A a^2), gamma = 1 for the middle layer;
    a2 = (g1 E1 A1 (h1 + h2) - g3 E3 A3 (h2 + h3)) / (2 sum g E A).

    >>> loose = slipping_layers_stiffness(
    ...     12e9, 0.1, 0.003, 12e9, 0.1, 0.003, 0.0, 12e9, 0.1, 0.003, 0.0)
    >>> round(loose, 3)
    8.1
    """
    axial = modulus * width * thickness
    upper = upper_modulus * upper_width * upper_thickness
    lower = lower_modulus * lower_width * lower_thickness
    above, below = (upper_thickness + thickness) / 2, (thickness + lower_thickness) / 2
    total = axial + upper_gamma * upper + lower_gamma * lower
    shift = (upper_gamma * upper * above - lower_gamma * lower * below) / total
    upper_arm, lower_arm = above - shift, below + shift
    own = axial * thickness * thickness + upper * upper_thickness * upper_thickness
    own = own + lower * lower_thickness * lower_thickness
    joined = upper_gamma * upper * upper_arm * upper_arm
    joined = joined + lower_gamma * lower * lower_arm * lower_arm
    return own / 12 + joined + axial * shift * shift
