"""The flexible disc by harmonics of the angle: once for a pair of radii, then for every angle.

A load that turns over its supports meets them at ever other angles, and a sweep of the plate's
thickness meets the same places again. So the compliance of `disc_deflection` is given here as a
short series of cosines for a plate of radius one and rigidity one.
"""

from typing import Any

import numpy as np

from reviewer.mechanics.disc import Array, _first, _freeing, _mean, _Shape
from reviewer.mechanics.domain import silent
from reviewer.mechanics.formula import Number

HARMONICS = 64
_TINY = 1e-100


@silent
def disc_harmonics(
    at_radius: Number, force_radius: Number, hole_radius: Number, poisson: Number
) -> Number:
    """Compliance of a free round plate of radius one and rigidity one, as factors of cosines.

    Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 62 and 71.

    Parameters
    ----------
    at_radius : radius at which the deflection is asked for, over the plate's [1]
    force_radius : radius at which the unit force stands, over the plate's [1]
    hole_radius : radius of the hole's free edge over the plate's, zero for none [1]
    poisson : Poisson's ratio [1]

    Returns
    -------
    factors : of cos(m t), m from 0 to 63 on a last axis; times a^2/D a compliance [1]

    Notes
    -----
    As `disc_deflection`, cut off at 64 harmonics: within 4e-4 of the largest value at a force
    itself, within 2e-5 elsewhere. The first is what an even ring of unit force gives, the second
    twice what a ring that varies as the cosine gives.

    >>> factors = disc_harmonics(0.6, 0.9, 0.0, 0.3)
    >>> from reviewer.mechanics.disc import disc_deflection
    >>> exact = disc_deflection(0.6, 0.9, 1.0, 1.0, 0.0, 1.0, 0.3)
    >>> round(float((factors * np.cos(np.arange(64))).sum() / exact), 5)
    1.0
    """
    r, rho = (np.maximum(np.asarray(each, float), _TINY) for each in (at_radius, force_radius))
    shape = _Shape(np.clip(hole_radius, 0, 0.999), np.asarray(poisson, float))
    r, rho, hole, nu = np.broadcast_arrays(r, rho, shape.hole, shape.poisson)
    inner, outer = np.minimum(r, rho), np.maximum(r, rho)
    square, log = inner * inner, np.log(outer)
    mean = (outer * outer + square) * log + square + _mean(r, rho, shape)
    once = -2 * inner * outer * log - inner * outer - square * inner / (2 * outer)
    once = once + _first(r, rho, shape)
    higher = _higher(r[..., None], rho[..., None], _Shape(hole[..., None], nu[..., None]))
    factors = np.concatenate([mean[..., None], once[..., None], higher], axis=-1)
    result: Number = factors / (8 * np.pi)
    return result


def _higher(r: Array, rho: Array, shape: _Shape) -> Array:
    """Factors from the second harmonic on: of d^2 ln d, and of what frees the edges."""
    m = np.arange(2.0, HARMONICS)
    inner, outer = np.minimum(r, rho), np.maximum(r, rho)
    free = (outer * outer / (m * (m - 1)) - inner * inner / (m * (m + 1))) * (inner / outer) ** m
    factors = _freeing(m, rho, shape.hole, shape.poisson)
    near = shape.hole / r
    basis: tuple[Any, ...] = (r**m, r ** (m + 2), near**m, near ** (m - 2))
    for k in range(4):
        free = free + factors[..., k] * basis[k]
    return free


@silent
def cosine_sum(factors: Number, cosine: Number) -> Number:
    """Sum of a series of cosines of multiples of an angle.

    Clenshaw, A note on the summation of Chebyshev series (1955).

    Parameters
    ----------
    factors : of cos(m t), m from 0 on a last axis that is summed over [1]
    cosine : cosine of the angle t, broadcast against the other axes of the factors [1]

    Returns
    -------
    total : sum of the factors times cos(m t) [1]

    Notes
    -----
    b_m = c_m + 2 cos(t) b_(m+1) - b_(m+2); the sum is c_0 + cos(t) b_1 - b_2.

    >>> round(float(cosine_sum(np.array([1.0, 2.0, 3.0]), 0.5)), 9)
    0.5
    """
    c = np.moveaxis(np.asarray(factors, float), -1, 0)
    twice = 2 * np.asarray(cosine, float)
    after: Any = 0.0
    now: Any = 0.0
    for factor in c[:0:-1]:
        after, now = now, factor + twice * now - after
    total: Number = c[0] + cosine * now - after
    return total
