"""Shafts with a row of levers: bending by several forces, torque given off on the way."""

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


@valid_when(
    lambda positions, span: np.all(
        (positions >= 0) & (positions <= np.asarray(span)[..., None]), axis=-1
    ),
    "the forces must stand between the supports",
)
@defined(positive="span")
def beam_row_moment(force: Number, positions: NDArray[np.float64], span: Number) -> Number:
    """Largest bending moment of a beam on two supports under equal forces at several places.

    Gere and Goodno, Mechanics of Materials (2009), 4.5, by superposition.

    Parameters
    ----------
    force : each of the equal forces [N]
    positions : of the forces from one support, along the last axis [m]
    span : distance between the supports [m]

    Returns
    -------
    moment : largest in the beam, which is under one of the forces [N m]

    Notes
    -----
    At x, the sum of P a (L - b)/L, a the smaller and b the larger of x and the force's place.

    >>> beam_row_moment(30.0, np.array([0.25, 0.5, 0.75]), 1.0)
    15.0
    """
    length = np.asarray(span)[..., None, None]
    at, place = positions[..., :, None], positions[..., None, :]
    near, far = np.minimum(at, place), np.maximum(at, place)
    sums = np.sum(near * (length - far) / length, axis=-1)
    moment: Number = force * np.max(sums, axis=-1)
    return moment


@valid_when(lambda count: count >= 2, "a row has at least two levers")
@defined(positive="length shear_modulus torsion_constant")
def lever_row_twist(
    torque: Number, length: Number, count: Number, shear_modulus: Number, torsion_constant: Number
) -> Number:
    """Twist from the first to the last of equally loaded levers, driven at the first.

    Gere and Goodno, Mechanics of Materials (2009), 3.4: lengths with different torques add up.

    Parameters
    ----------
    torque : of all levers together [N m]
    length : from the first to the last lever, which stand evenly [m]
    count : of the levers [1]
    shear_modulus : shear modulus G [Pa]
    torsion_constant : torsion constant J of the section [m^4]

    Returns
    -------
    twist : between the first and the last lever [rad]

    Notes
    -----
    T L / (2 G J): each length between two levers carries what the levers behind it take, so that
    however many they are the mean is a half.

    >>> round(lever_row_twist(10.0, 0.6, 3, 26.3e9, 1.0974e-7), 7)
    0.0010394
    """
    return torque * length / (2 * shear_modulus * torsion_constant) + 0.0 * count


@defined(positive="left right", not_negative="force")
def misalignment_moment(force: Number, left: Number, right: Number) -> Number:
    """Bending moment in a shaft that is forced into a middle bearing out of line.

    Gere and Goodno, Mechanics of Materials (2009), 4.5.

    Parameters
    ----------
    force : of the middle bearing on the shaft [N]
    left : distance from the middle to the left bearing [m]
    right : distance from the middle to the right bearing [m]

    Returns
    -------
    moment : at the middle bearing [N m]

    Notes
    -----
    F a b / (a + b).

    >>> misalignment_moment(48.0, 0.5, 0.5)
    12.0
    """
    return force * left * right / (left + right)
