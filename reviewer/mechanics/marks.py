"""Where the marks of a divided circle stand, from lengths measured between them.

A free network: nothing says which way the circle as a whole is turned, so the answer is turned
until the errors along the circle of the marks that serve as datum add up to nothing. The middle
needs no such condition, since the marks lie on a circle that was scribed about it.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.domain import silent
from reviewer.mechanics.formula import Number
from reviewer.mechanics.mark_datum import carried_on

Array = NDArray[np.float64]

ROUNDS = 4  # of Gauss and Newton; marks off by a hundredth of the circle are exact by then
UNSETTLED = 0.02  # of the diameter: a mark that is known no better is not settled by the lengths
UNCONTROLLED = 1e-9  # share of a length's error that shows in its residual


class Network(NamedTuple):
    """Errors of marks with the covariance of both, and how well the lengths agree."""

    radial: Number
    tangential: Number
    covariance: Number
    misfit: Number
    freedom: Number
    suspicion: Number


class _Expected(NamedTuple):
    """What is known before measuring: what one unit of each unknown is, and which are expected.

    Unknowns are, each in units of its standard uncertainty: the distance of every mark from the
    scribed circle, the place of every mark along it (in units of the uncertainty of a length; that
    alone is not expected to be near zero), the radius of the scribed circle, the scale of the rule.
    """

    spread: Array  # (..., 2 n + 1, 2 n + 2): unknowns to radial errors, tangential ones and scale
    weight: Array  # (2 n + 2,): 1 where the unknown is expected to be near zero


@silent
def marks_from_lengths(
    diameter: Number,
    angles: NDArray[np.float64],
    ends: NDArray[np.int_],
    lengths: NDArray[np.float64],
    measuring: Number,
    scale: Number,
    marking: Number,
    setting: Number,
) -> Network:
    """Errors of the marks of a divided circle by least squares, all marks being the datum.

    Caspary, Concepts of Network and Deformation Analysis (1987), ch. 3, free networks, from memory;
    Baarda, A Testing Procedure for Use in Geodetic Networks (1968), from memory.

    Parameters
    ----------
    diameter : of the circle on which the marks should be [m]
    angles : at which the marks should be, anticlockwise, shape (n,) [rad]
    ends : the two marks of each length, counted from 0, shape (m, 2) [1]
    lengths : as they were measured, shape (..., m) [m]
    measuring : standard uncertainty of one measured length [m]
    scale : standard uncertainty of the rule or tape, as a share of the length [1]
    marking : standard uncertainty of a mark's distance from the scribed circle [m]
    setting : standard uncertainty of the radius of the scribed circle [m]

    Returns
    -------
    radial : of each mark, outward, shape (..., n) [m]
    tangential : of each mark along the circle, anticlockwise, shape (..., n) [m]
    covariance : of the radial errors and then the tangential ones, shape (..., 2 n, 2 n) [m^2]
    misfit : how the lengths differ from what fits best, against what was stated; about 1 [1]
    freedom : lengths more than needed, m - n + 1 [1]
    suspicion : of each length its normalised residual, without sign, shape (..., m) [1]

    Notes
    -----
    The least sum of squares, each over its variance, of the lengths' residuals, of the marks'
    distances from the scribed circle, of that circle's error and of the rule's; places along the
    circle are free. Minimum constraint: the errors along the circle add up to zero. Lengths that do
    not settle every mark give NaN.

    >>> corners = np.arange(6) * np.pi / 3
    >>> ring = np.array([(mark, (mark + 1) % 6) for mark in range(6)])
    >>> lengths = np.array([0.2, 0.2004, 0.1996, 0.2, 0.2, 0.2])
    >>> network = marks_from_lengths(0.4, corners, ring, lengths, 1e-4, 0.0, 0.0, 0.0)
    >>> np.round(network.tangential * 1e3, 2).tolist()
    [-0.08, -0.08, 0.38, -0.08, -0.08, -0.08]
    """
    count = len(angles)
    known = np.where(np.asarray(measuring) > 0, measuring, np.nan)
    expected = _expected(count, known, scale, marking, setting)
    across, noise = np.asarray(diameter)[..., None], known[..., None]
    unknowns: Array = np.zeros(expected.spread.shape[-1])
    for _ in range(ROUNDS):
        errors = np.einsum("...ei,...i->...e", expected.spread, unknowns)
        fitted, slopes = _lengths_between(across, angles, ends, errors)
        design = np.einsum("...me,...ei->...mi", slopes, expected.spread) / noise[..., None]
        residuals = (lengths - fitted) / noise
        inverse = _inverse(design, expected.weight, count, UNSETTLED * across / noise)
        pull = np.einsum("...mi,...m->...i", design, residuals) - expected.weight * unknowns
        change = np.einsum("...ij,...j->...i", inverse, pull)
        unknowns = unknowns + change
    left = residuals - np.einsum("...mi,...i->...m", design, change)
    squares = np.einsum("...m,...m->...", left, left)
    squares = squares + np.einsum("...i,...i->...", expected.weight * unknowns, unknowns)
    freedom = len(ends) - count + 1
    spread = expected.spread[..., : 2 * count, :]
    errors = np.einsum("...ei,...i->...e", spread, unknowns)
    return Network(
        errors[..., :count],
        errors[..., count:],
        carried_on(spread, inverse),
        np.sqrt(squares / freedom) if freedom > 0 else np.nan * squares,
        float(freedom),
        _suspicion(left, design, inverse),
    )


def _expected(
    count: int, measuring: Number, scale: Number, marking: Number, setting: Number
) -> _Expected:
    known = (np.asarray(each, float) for each in (measuring, scale, marking, setting))
    by_length, by_scale, by_mark, by_circle = np.broadcast_arrays(*known)
    spread = np.zeros((*by_length.shape, 2 * count + 1, 2 * count + 2))
    marks = np.arange(count)
    spread[..., marks, marks] = by_mark[..., None]
    spread[..., marks, -2] = by_circle[..., None]
    spread[..., count + marks, count + marks] = by_length[..., None]
    spread[..., -1, -1] = by_scale
    weight = np.ones(2 * count + 2)
    weight[count : 2 * count] = 0.0
    return _Expected(spread, weight)


def _lengths_between(
    diameter: Array, angles: Array, ends: NDArray[np.int_], errors: Array
) -> tuple[Array, Array]:
    """Lengths as the rule shows them; their slopes by radial, tangential errors and scale."""
    count = len(angles)
    radius = 0.5 * diameter + errors[..., :count]
    turned = angles + 2.0 * errors[..., count:-1] / diameter
    factor = 1.0 + errors[..., -1:]
    x, y = radius * np.cos(turned), radius * np.sin(turned)
    first, second = ends[:, 0], ends[:, 1]
    along_x, along_y = x[..., first] - x[..., second], y[..., first] - y[..., second]
    length = np.hypot(along_x, along_y)
    slopes = np.zeros((*length.shape, 2 * count + 1))
    each = np.arange(len(ends))
    for end, sign in ((first, factor), (second, -factor)):
        cosine, sine = np.cos(turned[..., end]), np.sin(turned[..., end])
        outward = (along_x * cosine + along_y * sine) / length
        forward = (along_y * cosine - along_x * sine) / length
        slopes[..., each, end] = sign * outward
        slopes[..., each, count + end] = sign * forward * 2.0 * radius[..., end] / diameter
    slopes[..., -1] = length
    return factor * length, slopes


def _inverse(design: Array, weight: Array, count: int, widest: Array) -> Array:
    """Cofactors of the unknowns, all marks being the datum.

    NaN where a mark is known no better than the widest, in units of a length's uncertainty.
    """
    size = len(weight)
    bordered = np.zeros((*design.shape[:-2], size + 1, size + 1))
    bordered[..., :size, :size] = np.einsum("...mi,...mj->...ij", design, design)
    unknown = np.arange(size)
    bordered[..., unknown, unknown] += weight
    datum = slice(count, 2 * count)
    bordered[..., size, datum] = bordered[..., datum, size] = 1.0
    try:
        inverse: Array = np.linalg.inv(bordered)[..., :size, :size]
    except np.linalg.LinAlgError:
        return np.full((*design.shape[:-2], size, size), np.nan)
    variance = inverse[..., unknown, unknown][..., datum]
    settled = np.all((variance > 0) & (variance < widest * widest), axis=-1)
    return np.where(settled[..., None, None], inverse, np.nan)


def _suspicion(left: Array, design: Array, inverse: Array) -> Array:
    """Residuals over their own standard errors; none where nothing controls the length."""
    share = 1.0 - np.einsum(
        "...mj,...mj->...m", np.einsum("...mi,...ij->...mj", design, inverse), design
    )
    controlled = share > UNCONTROLLED
    return np.where(controlled, np.abs(left) / np.sqrt(np.where(controlled, share, 1.0)), 0.0)
