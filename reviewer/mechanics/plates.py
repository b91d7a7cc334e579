"""Round plates without a hole, held around their edge."""

from typing import Any

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_RIGID = "the plate's rigidity must be above zero and Poisson's ratio between 0 and 0.5"


def _plate(rigidity: Number, poisson: Number) -> Any:
    return (rigidity > 0) & (poisson >= 0) & (poisson <= 0.5)


@valid_when(
    lambda modulus, thickness, poisson: (
        (modulus > 0) & (thickness > 0) & (poisson >= 0) & (poisson <= 0.5)
    ),
    "modulus and thickness must be above zero and Poisson's ratio between 0 and 0.5",
)
@defined(positive="modulus thickness")
def plate_rigidity(modulus: Number, thickness: Number, poisson: Number) -> Number:
    """Bending rigidity of a plate per unit of width.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), eq. (3).

    Parameters
    ----------
    modulus : modulus of elasticity [Pa]
    thickness : thickness of the plate [m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    rigidity : D [N m]

    Notes
    -----
    E t^3 / (12 (1 - nu^2)). For plywood, the mean of along and across is an estimate.

    >>> round(plate_rigidity(8.75e9, 0.0176, 0.3), 1)
    4368.4
    """
    cube = thickness * thickness * thickness
    return modulus * cube / (12 * (1 - poisson * poisson))


@valid_when(_plate, _RIGID)
@defined(positive="radius rigidity")
def simple_plate_uniform_deflection(
    pressure: Number, radius: Number, rigidity: Number, poisson: Number
) -> Number:
    """Deflection at the centre of a round plate resting on its edge, evenly loaded.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), eq. (68).

    Parameters
    ----------
    pressure : load per area [Pa]
    radius : radius of the supported edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection at the centre [m]

    Notes
    -----
    (5 + nu) q a^4 / (64 (1 + nu) D); thin plate, deflection below half of the thickness.

    >>> round(simple_plate_uniform_deflection(1.0, 1.0, 1.0, 0.3), 6)
    0.063702
    """
    square = radius * radius
    return (5 + poisson) / (64 * (1 + poisson)) * pressure * square * square / rigidity


@valid_when(lambda poisson: (poisson >= 0) & (poisson <= 0.5), "Poisson's ratio from 0 to 0.5")
@defined(positive="radius")
def simple_plate_uniform_moment(pressure: Number, radius: Number, poisson: Number) -> Number:
    """Bending moment at the centre of a round plate resting on its edge, evenly loaded.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), eq. (69).

    Parameters
    ----------
    pressure : load per area [Pa]
    radius : radius of the supported edge [m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    moment : moment per length; the stress is 6 M / t^2 [N]

    Notes
    -----
    (3 + nu) q a^2 / 16.

    >>> simple_plate_uniform_moment(1.0, 1.0, 0.3)
    0.20625
    """
    return (3 + poisson) * pressure * radius * radius / 16


@defined(positive="radius rigidity")
def clamped_plate_uniform_deflection(pressure: Number, radius: Number, rigidity: Number) -> Number:
    """Deflection at the centre of a round plate clamped around its edge, evenly loaded.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), eq. (62).

    Parameters
    ----------
    pressure : load per area [Pa]
    radius : radius of the clamped edge [m]
    rigidity : D of the plate [N m]

    Returns
    -------
    deflection : deflection at the centre [m]

    Notes
    -----
    q a^4 / (64 D); the edge moment is q a^2/8 per length, hogging.

    >>> clamped_plate_uniform_deflection(1.0, 1.0, 1.0)
    0.015625
    """
    square = radius * radius
    return pressure * square * square / (64 * rigidity)


@defined(positive="radius rigidity")
def clamped_plate_centre_deflection(force: Number, radius: Number, rigidity: Number) -> Number:
    """Deflection under a force at the centre of a round plate clamped around its edge.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), eq. (92).

    Parameters
    ----------
    force : force at the centre [N]
    radius : radius of the clamped edge [m]
    rigidity : D of the plate [N m]

    Returns
    -------
    deflection : deflection at the centre [m]

    Notes
    -----
    P a^2 / (16 pi D).

    >>> round(clamped_plate_centre_deflection(1.0, 1.0, 1.0), 6)
    0.019894
    """
    return force * radius * radius / (16 * np.pi * rigidity)


@valid_when(_plate, _RIGID)
@valid_when(
    lambda patch_radius, radius: (patch_radius > 0) & (patch_radius <= radius),
    "the patch must be smaller than the plate and not a point",
)
@defined(positive="patch_radius radius rigidity")
def simple_plate_patch_deflection(
    force: Number, patch_radius: Number, radius: Number, rigidity: Number, poisson: Number
) -> Number:
    """Deflection at the centre of a round plate resting on its edge, loaded on a round patch.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 16.

    Parameters
    ----------
    force : whole force, even over the patch [N]
    patch_radius : radius of the patch at the centre [m]
    radius : radius of the supported edge [m]
    rigidity : D of the plate [N m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    deflection : deflection at the centre [m]

    Notes
    -----
    P/(16 pi D) [(3 + nu)/(1 + nu) a^2 + c^2 ln(c/a) - (7 + 3 nu) c^2/(4 (1 + nu))].

    >>> round(float(simple_plate_patch_deflection(1.0, 0.2, 1.0, 1.0, 0.3)), 6)
    0.048011
    """
    patch = patch_radius * patch_radius
    shape = (3 + poisson) / (1 + poisson) * radius * radius
    shape = shape + patch * np.log(patch_radius / radius)
    shape = shape - (7 + 3 * poisson) / (4 * (1 + poisson)) * patch
    return force * shape / (16 * np.pi * rigidity)


@valid_when(
    lambda patch_radius, radius: (patch_radius > 0) & (patch_radius <= radius),
    "the patch must be smaller than the plate and not a point",
)
@defined(positive="patch_radius radius")
def simple_plate_patch_moment(
    force: Number, patch_radius: Number, radius: Number, poisson: Number
) -> Number:
    """Bending moment at the centre of a round plate resting on its edge, loaded on a round patch.

    Young and Budynas, Roark's Formulas for Stress and Strain (2002), table 11.2 case 16.

    Parameters
    ----------
    force : whole force, even over the patch [N]
    patch_radius : radius of the patch at the centre, at least its equivalent [m]
    radius : radius of the supported edge [m]
    poisson : Poisson's ratio [1]

    Returns
    -------
    moment : moment per length; the stress is 6 M / t^2 [N]

    Notes
    -----
    P/(4 pi) [(1 + nu) ln(a/c) + 1 - (1 - nu) c^2/(4 a^2)].

    >>> round(float(simple_plate_patch_moment(1.0, 0.1, 1.0, 0.3)), 4)
    0.3176
    """
    ratio = patch_radius / radius
    shape = 1 - (1 + poisson) * np.log(ratio) - (1 - poisson) / 4 * ratio * ratio
    return force / (4 * np.pi) * shape


@valid_when(
    lambda patch_radius, thickness: (patch_radius >= 0) & (thickness > 0),
    "the patch must not be negative and the thickness above zero",
)
@defined(positive="thickness")
def equivalent_patch_radius(patch_radius: Number, thickness: Number) -> Number:
    """Radius to use for stress under a small patch, where thin-plate theory overstates it.

    Westergaard; as in Young and Budynas, Roark's Formulas for Stress and Strain (2002), 11.1.

    Parameters
    ----------
    patch_radius : radius of the patch, zero for a point [m]
    thickness : thickness of the plate [m]

    Returns
    -------
    radius : equivalent radius [m]

    Notes
    -----
    sqrt(1.6 c^2 + t^2) - 0.675 t where c < t/2, else c.

    >>> round(float(equivalent_patch_radius(0.0, 0.018)) * 1e3, 2)
    5.85
    """
    small = np.sqrt(1.6 * patch_radius * patch_radius + thickness * thickness) - 0.675 * thickness
    radius: Number = np.where(patch_radius < thickness / 2, small, patch_radius)[()]
    return radius
