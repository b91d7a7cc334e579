"""The bolted root of an arm: what its couple asks of the bolts, and how far it turns."""

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.domain import defined, silent
from reviewer.mechanics.formula import Number, valid_when

_ROW = valid_when(
    lambda distances: np.all(distances >= 0, axis=-1) & (np.sum(distances, axis=-1) > 0),
    "the bolts must stand behind the edge about which the arm turns",
)


@_ROW
@silent
def farthest_bolt_tension(moment: Number, distances: NDArray[np.float64]) -> Number:
    """Tension in the farthest of the bolts that hold a bracket which turns about its edge.

    Khurmi and Gupta, A Textbook of Machine Design (2005), ch. 11, bracket on a row of bolts.

    Parameters
    ----------
    moment : about the edge [N m]
    distances : of the bolts from the edge, along the last axis [m]

    Returns
    -------
    force : in the bolt that is farthest from the edge [N]

    Notes
    -----
    M x / sum of x^2: bracket and plate rigid, so that each bolt stretches with its distance.
    Preload is left out.

    >>> round(farthest_bolt_tension(2400.0, np.array([0.05, 0.375])), -1)
    6290.0
    """
    squares = np.sum(distances * distances, axis=-1)
    force: Number = moment * np.max(distances, axis=-1) / squares
    return force


@_ROW
@defined(positive="modulus thickness area")
def washer_joint_stiffness(
    modulus: Number, thickness: Number, area: Number, distances: NDArray[np.float64]
) -> Number:
    """Stiffness against turning of an arm held by washers on a panel, about its edge.

    Statics of columns of panel under the washers; rough.

    Parameters
    ----------
    modulus : of the panel through its thickness [Pa]
    thickness : of the panel [m]
    area : of one washer on the panel [m^2]
    distances : of the bolts from the edge, along the last axis [m]

    Returns
    -------
    stiffness : moment per turn [N m/rad]

    Notes
    -----
    E A/t times the sum of x^2. Within a factor of three: the panel spreads the force, which makes
    it stiffer, and the edge digs in, which makes it softer; preload stiffens it until it gapes.

    >>> round(washer_joint_stiffness(1e9, 0.018, 400e-6, np.array([0.025, 0.125])))
    361111
    """
    squares = np.sum(distances * distances, axis=-1)
    stiffness: Number = modulus * area / thickness * squares
    return stiffness
