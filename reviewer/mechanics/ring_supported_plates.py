"""Round plates on a continuous ring of supports, with an overhang beyond it.

The axisymmetric lower bound of a disc on many rollers.
"""

from typing import Any, NamedTuple

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when


class RingSupported(NamedTuple):
    """Deflections of a plate on a ring of supports, relative to the ring."""

    centre: Number
    edge: Number


def _inside(support_radius: Number, radius: Number) -> Any:
    return (support_radius > 0) & (support_radius <= radius)


_RING = "the ring of supports must lie within the plate"


@valid_when(_inside, _RING)
@defined(positive="support_radius radius rigidity")
def ring_supported_centre_load(
    force: Number, support_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> RingSupported:
    """Plate on a ring of supports under a force at its centre.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 16 and 17.

    Parameters
    ----------
    force : force at the centre [N]
    support_radius : radius of the ring of supports [m]
    radius : radius of the free edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    centre : deflection at the centre [m]
    edge : deflection of the free edge, negative where it rises [m]

    Notes
    -----
    centre P s^2/(16 pi D) [2 + (1 - nu)/(1 + nu) s^2/a^2]; thin plate.

    >>> sag = ring_supported_centre_load(1.0, 0.8, 1.0, 1.0, 0.3)
    >>> round(sag.centre, 6), round(float(sag.edge), 6)
    (0.029853, -0.00815)
    """
    square = support_radius * support_radius
    ratio = square / (radius * radius)
    stiff = (1 - poisson) / (1 + poisson)
    unit = force * square / (8 * np.pi * rigidity)
    rise = stiff * (1 - ratio) / 2 + np.log(radius / support_radius)
    return RingSupported(unit * (1 + stiff * ratio / 2), -unit * rise)


@valid_when(_inside, _RING)
@defined(positive="support_radius radius rigidity")
def ring_supported_uniform(
    pressure: Number, support_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> RingSupported:
    """Plate on a ring of supports under an even load over its whole face.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 16 and 17.

    Parameters
    ----------
    pressure : load per area [Pa]
    support_radius : radius of the ring of supports [m]
    radius : radius of the free edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    centre : deflection at the centre, negative where it rises [m]
    edge : deflection of the free edge, negative where it rises [m]

    Notes
    -----
    Slope C r - q r^3/(16 D) within the ring; continuity at it, free edge. Thin plate.

    >>> sag = ring_supported_uniform(1.0, 0.7, 1.0, 1.0, 0.3)
    >>> round(float(sag.centre), 6), round(float(sag.edge), 6)
    (0.004862, 0.000227)
    """
    ratio = support_radius * support_radius / (radius * radius)
    inward = np.log(support_radius / radius)
    outer = ((1 - poisson) * ratio - (3 + poisson) / 2) / (1 + poisson)
    inner = outer + 2 * (1 + inward)
    unit = pressure * radius * radius * radius * radius / (8 * rigidity)
    centre = inner * ratio / 2 - ratio * ratio / 8
    edge = outer * (1 - ratio) / 2 - 2 * ratio * inward - (1 - ratio * ratio) / 8
    return RingSupported(unit * centre, -unit * edge)


@valid_when(_inside, _RING)
@defined(positive="support_radius radius rigidity")
def ring_supported_edge_load(
    force: Number, support_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> RingSupported:
    """Plate on a ring of supports under a force spread evenly around its free edge.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 17.

    Parameters
    ----------
    force : whole force around the edge [N]
    support_radius : radius of the ring of supports [m]
    radius : radius of the free edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    centre : deflection at the centre, negative where it rises [m]
    edge : deflection of the free edge [m]

    Notes
    -----
    Its centre moves as the edge does under a force at the centre (reciprocity). Thin plate.

    >>> sag = ring_supported_edge_load(1.0, 0.8, 1.0, 1.0, 0.3)
    >>> round(float(sag.centre), 6), round(float(sag.edge), 6)
    (-0.00815, 0.004348)
    """
    ratio = support_radius * support_radius / (radius * radius)
    inward = np.log(support_radius / radius)
    outer = ((1 - poisson) * ratio - (3 + poisson)) / (1 + poisson)
    inner = outer + 2 * (1 + inward)
    unit = force * radius * radius / (8 * np.pi * rigidity)
    edge = outer * (1 - ratio) / 2 - 2 * ratio * inward
    return RingSupported(unit * inner * ratio / 2, -unit * edge)
