"""Errors of marks about a datum: turned so that chosen marks are in place together."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.domain import silent
from reviewer.mechanics.formula import Number

Array = NDArray[np.float64]

NOTHING = 1e-12  # m: an error so small has no direction
LEAST_DATUM = 2  # marks that must go on agreeing with each other


class MarkErrors(NamedTuple):
    """How far marks stand from their places, with one standard error of each."""

    radial: Number
    tangential: Number
    error: Number
    radial_uncertainty: Number
    tangential_uncertainty: Number
    uncertainty: Number


@silent
def carried_on(change: NDArray[np.float64], covariance: NDArray[np.float64]) -> NDArray[np.float64]:
    """Covariance of quantities that follow linearly from others.

    BIPM, Guide to the Expression of Uncertainty in Measurement (2008), 5.2.2, from memory.

    Parameters
    ----------
    change : how each follows from the others, shape (..., k, n) [1]
    covariance : of the others, shape (..., n, n) [m^2]

    Returns
    -------
    covariance : of what follows, shape (..., k, k) [m^2]

    Notes
    -----
    A C A^T.

    >>> carried_on(np.array([[1.0, -1.0]]), np.array([[4.0, 1.0], [1.0, 9.0]])).tolist()
    [[11.0]]
    """
    halfway = np.einsum("...ij,...jk->...ik", change, covariance)
    carried: Array = np.einsum("...ik,...lk->...il", halfway, change)
    return carried


@silent
def errors_about(
    radial: Number,
    tangential: Number,
    covariance: NDArray[np.float64],
    datum: NDArray[np.float64],
) -> MarkErrors:
    """Errors of the marks when the circle is turned so that the marks of the datum are in place.

    Baarda, S-Transformations and Criterion Matrices (1973), from memory.

    Parameters
    ----------
    radial : of each mark, outward, shape (..., n) [m]
    tangential : along the circle, anticlockwise, about any datum, shape (..., n) [m]
    covariance : of the radial errors and then the tangential ones, shape (..., 2 n, 2 n) [m^2]
    datum : 1 for a mark that serves as datum, else 0, shape (..., n) [1]

    Returns
    -------
    radial : of each mark, outward [m]
    tangential : of each mark along the circle, anticlockwise [m]
    error : distance of each mark from its place [m]
    radial_uncertainty : standard uncertainty of the radial error [m]
    tangential_uncertainty : standard uncertainty of the tangential error [m]
    uncertainty : standard uncertainty of the distance from its place [m]

    Notes
    -----
    The mean of the datum's tangential errors is taken off all of them, and the covariance goes
    along. The uncertainty of a distance is that in its own direction, or in the worst direction
    where there is no distance.

    >>> errors = errors_about(
    ...     np.zeros(3), np.array([1e-3, 0.0, -1e-3]), np.eye(6) * 1e-8, np.array([0.0, 1.0, 1.0])
    ... )
    >>> np.round(errors.error * 1e3, 2).tolist()
    [1.5, 0.5, 0.5]
    >>> np.round(errors.uncertainty * 1e3, 3).tolist()
    [0.122, 0.071, 0.071]
    """
    share = datum / np.sum(datum, axis=-1)[..., None]
    count = share.shape[-1]
    turned = tangential - np.einsum("...i,...i->...", share, tangential)[..., None]
    change = np.broadcast_to(np.eye(2 * count), (*share.shape[:-1], 2 * count, 2 * count)).copy()
    change[..., count:, count:] -= share[..., None, :]
    moved = carried_on(change, covariance)
    mark = np.arange(count)
    outward = moved[..., mark, mark]
    forward = moved[..., count + mark, count + mark]
    both = moved[..., mark, count + mark]
    error = np.hypot(radial, turned)
    return MarkErrors(
        radial + 0.0 * turned,
        turned,
        error,
        np.sqrt(outward),
        np.sqrt(forward),
        np.sqrt(_along(radial, turned, error, outward, forward, both)),
    )


def _along(
    radial: Number, tangential: Array, error: Array, outward: Array, forward: Array, both: Array
) -> Array:
    """Variance in the direction of an error, or the largest in any where there is no error."""
    there = error > NOTHING
    size = np.where(there, error, 1.0)
    cosine, sine = radial / size, tangential / size
    directed = cosine * cosine * outward + sine * sine * forward + 2.0 * cosine * sine * both
    largest = 0.5 * (outward + forward) + np.hypot(0.5 * (outward - forward), both)
    variance: Array = np.where(there | np.isnan(error), directed, largest)
    return variance


@silent
def datum_in_place(
    radial: Number,
    tangential: Number,
    covariance: NDArray[np.float64],
    allowed: Number,
    coverage: Number,
) -> NDArray[np.float64]:
    """Choose as datum the marks that are not out of place.

    After Caspary, Concepts of Network and Deformation Analysis (1987), ch. 5 (a mark that has moved
    is no datum), from memory; taking the worst away first is common practice.

    Parameters
    ----------
    radial : of each mark, outward, shape (..., n) [m]
    tangential : along the circle, anticlockwise, about any datum, shape (..., n) [m]
    covariance : of the radial errors and then the tangential ones, shape (..., 2 n, 2 n) [m^2]
    allowed : how far a mark may stand from its place [m]
    coverage : standard uncertainties by which an error must pass that to be certain [1]

    Returns
    -------
    datum : 1 for a mark that serves as datum, else 0, shape (..., n) [1]

    Notes
    -----
    All marks at first; then, as long as one is certainly out, the worst leaves the datum, and the
    circle is turned back by what that one had turned it. Two marks always stay.

    >>> one_out = np.array([0.75e-3, -0.25e-3, -0.25e-3, -0.25e-3])
    >>> datum_in_place(np.zeros(4), one_out, np.eye(8) * 1e-12, 0.3e-3, 2.0).tolist()
    [0.0, 1.0, 1.0, 1.0]
    """
    limit = np.asarray(allowed, float)[..., None]
    factor = np.asarray(coverage, float)[..., None]
    shape = np.broadcast_shapes(np.shape(tangential), np.shape(limit), np.shape(factor))
    datum = np.ones(shape)
    for _ in range(shape[-1] - LEAST_DATUM):
        errors = errors_about(radial, tangential, covariance, datum)
        beyond = np.where(datum > 0, errors.error - factor * errors.uncertainty - limit, -1.0)
        worst = np.argmax(np.where(np.isnan(beyond), -1.0, beyond), axis=-1)[..., None]
        out = np.take_along_axis(beyond, worst, axis=-1) > 0
        if not np.any(out):
            break
        stays = np.take_along_axis(datum, worst, axis=-1)
        np.put_along_axis(datum, worst, np.where(out, 0.0, stays), axis=-1)
    return datum
