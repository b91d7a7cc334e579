"""Plywood from its plies: stiffness, strength, shear and swelling of the panel."""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_PLIES = "an odd number of plies, three or more, of thickness above zero"


class PanelRatios(NamedTuple):
    """What share of a ply's modulus and strength a panel keeps in bending."""

    thickness: Number
    modulus_along: Number
    modulus_across: Number
    strength_along: Number
    strength_across: Number


@valid_when(
    lambda plies, ply_thickness, face_thickness: (
        (plies >= 3) & (plies % 2 == 1) & (ply_thickness > 0) & (face_thickness > 0)
    ),
    _PLIES,
)
@defined(positive="ply_thickness face_thickness")
def plywood_ratios(
    plies: Number, ply_thickness: Number, face_thickness: Number, ply_cross_ratio: Number = 0.0
) -> PanelRatios:
    """Bending modulus and strength of balanced plywood as shares of a single ply's.

    Lamination theory; as in the Handbook of Finnish Plywood, characteristic values.

    Parameters
    ----------
    plies : number of plies, odd, their grain crossing in turn [1]
    ply_thickness : thickness of an inner ply [m]
    face_thickness : thickness of each of the two faces, sanded [m]
    ply_cross_ratio : modulus of a ply across its grain over that along it [1]

    Returns
    -------
    thickness : thickness of the panel [m]
    modulus_along : bending modulus along the face grain over a ply's [1]
    modulus_across : bending modulus across the face grain over a ply's [1]
    strength_along : bending strength along the face grain over a ply's [1]
    strength_across : bending strength across the face grain over a ply's [1]

    Notes
    -----
    r = (second moment of the crossing plies) / (t^3/12); along 1 - r, across r, and across for
    strength r t/(t - 2 face), because the outermost crossing ply lies under the face.

    >>> birch = plywood_ratios(13, 1.4e-3, 1.1e-3)
    >>> round(float(birch.modulus_along * 17500)), round(float(birch.modulus_across * 17500))
    (10048, 7452)
    """
    thickness = (plies - 2) * ply_thickness + 2 * face_thickness
    crossing = _crossing_second_moment(plies, ply_thickness)
    share = 12 * crossing / (thickness * thickness * thickness)
    inner = thickness - 2 * face_thickness
    return PanelRatios(
        thickness,
        1 - share + ply_cross_ratio * share,
        share + ply_cross_ratio * (1 - share),
        1 - share,
        share * thickness / inner,
    )


def _crossing_second_moment(plies: Number, ply_thickness: Number) -> Number:
    """Second moment per width of every second ply, the faces not among them.

    Their centres lie 2 t apart and symmetric about the middle, so that the sum of squares of the
    distances is n (n^2 - 1)/3 t^2 for n = (plies - 1)/2 of them.
    """
    count = (plies - 1) / 2
    cube = ply_thickness * ply_thickness * ply_thickness
    return cube * (count / 12 + count * (count * count - 1) / 3)


@defined(positive="along_modulus across_modulus")
def plywood_movement_coefficient(
    along_modulus: Number,
    across_modulus: Number,
    along_share: Number,
    along_coefficient: Number,
    across_coefficient: Number,
) -> Number:
    """In-plane movement of plywood per per cent of moisture, from its plies.

    Wood Handbook FPL-GTR-282 (2021), ch. 12, balance of forces between the plies.

    Parameters
    ----------
    along_modulus : modulus of elasticity of a ply along its grain [Pa]
    across_modulus : modulus of elasticity of a ply across its grain [Pa]
    along_share : share of the thickness whose grain runs in the direction asked for [1]
    along_coefficient : strain along the grain per per cent of moisture [1]
    across_coefficient : strain across the grain per per cent of moisture [1]

    Returns
    -------
    coefficient : strain of the panel per per cent of moisture [1]

    Notes
    -----
    sum(E t alpha) / sum(E t). The plies' shares of stiffness hold each other back.

    >>> round(plywood_movement_coefficient(12e9, 0.6e9, 0.5, 1e-4, 3e-3) * 1e4, 2)
    2.38
    """
    along = along_modulus * along_share
    across = across_modulus * (1 - along_share)
    return (along * along_coefficient + across * across_coefficient) / (along + across)


@defined(positive="load_diameter thickness")
def punching_stress(force: Number, load_diameter: Number, thickness: Number) -> Number:
    """Shear stress through a panel's thickness around a washer, a foot or a bolt head.

    Statics.

    Parameters
    ----------
    force : force through the panel [N]
    load_diameter : diameter of what presses on it [m]
    thickness : thickness of the panel [m]

    Returns
    -------
    stress : mean shear stress on the cylinder under the edge [Pa]

    Notes
    -----
    F / (pi d t), against the panel shear strength.

    >>> round(punching_stress(9000.0, 0.03, 0.018) / 1e6, 3)
    5.305
    """
    return force / (np.pi * load_diameter * thickness)
