"""Marks of a divided circle as they were measured: which are out, by how much, which way."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.formula import Number
from reviewer.mechanics.mark_datum import MarkErrors, datum_in_place, errors_about
from reviewer.mechanics.marks import Network, marks_from_lengths

Array = NDArray[np.float64]
Lengths = tuple[tuple[float, ...], ...]

WITHIN = 1.959964  # standard uncertainties in "to each side, 95 of 100": quantile of the normal
AS_SUSPICIOUS = 1e-6  # residuals that differ by less cannot be told apart


class Measured(NamedTuple):
    """Lengths between marks, counted from 0, as they were measured [m]."""

    ends: NDArray[np.int_]
    lengths: Array


class Standing(NamedTuple):
    """Where the marks stand, and the worst of them; lengths [m], marks counted from 1."""

    errors: MarkErrors
    error: Number
    uncertainty: Number
    found_within: Number
    mark: Number
    along: Number
    towards: Number
    across: Number
    way: Array
    out: Number
    doubtful: Number
    out_marks: str
    doubtful_marks: str


def count_of(chords: Lengths | None, diagonals: Lengths | None) -> Number:
    """How many lengths were measured.

    Bookkeeping.
    """
    return float(len(chords or ()) + len(diagonals or ()))


def measured_of(count: int, chords: Lengths | None, diagonals: Lengths | None) -> Measured | None:
    """The lengths that were measured; none where they do not belong to so many marks.

    Bookkeeping.
    """
    if chords is not None and len(chords) != count:
        return None
    ends = [(mark, (mark + 1) % count) for mark in range(count if chords is not None else 0)]
    lengths = [chord for (chord,) in chords or ()]
    for first, second, length in diagonals or ():
        pair = (first, second)
        if not all(1 <= mark <= count and mark == int(mark) for mark in pair) or first == second:
            return None
        ends.append((int(first) - 1, int(second) - 1))
        lengths.append(length)
    return Measured(np.array(ends), np.array(lengths)) if ends else None


def network_of(
    circle: Number,
    count: int,
    measured: Measured,
    within: Number,
    scale: Number,
    marks_within: Number,
    radius_within: Number,
) -> Network:
    """Errors of all marks by least squares, from limits that 95 of 100 measurements keep.

    Least squares, a free network: mechanics/marks.py.
    """
    angles: Array = np.arange(count, dtype=np.float64) * (2 * np.pi / count)
    known = (within / WITHIN, scale / WITHIN, marks_within / WITHIN, radius_within / WITHIN)
    return marks_from_lengths(circle, angles, measured.ends, measured.lengths, *known)


def standing_of(network: Network, count: int, permitted: Number) -> Standing:
    """Which marks are out of place, those that are in place being the datum.

    ISO 14253-1, decision rules, from memory: out is what lies beyond limit and uncertainty.

    Notes
    -----
    Out: e - U > t. Doubtful: neither that nor e + U <= t. U covers 95 of 100. The worst is the one
    with the largest e - U.
    """
    found = network.radial, network.tangential, np.asarray(network.covariance)
    limit = np.asarray(permitted)[..., None]
    errors = errors_about(*found, datum_in_place(*found, permitted, WITHIN))
    error, expanded = np.asarray(errors.error), WITHIN * np.asarray(errors.uncertainty)
    out = error - expanded > limit
    settled = error + expanded <= limit
    unknown = np.where(np.isnan(error[..., 0]), np.nan, 0.0)
    worst = np.argmax(error - expanded, axis=-1)[..., None]
    along, across = (_at(np.asarray(each), worst) for each in (errors.tangential, errors.radial))
    mark = worst[..., 0] + 1.0 + unknown
    # A mark that stands too far along the circle is moved back, towards the one before it.
    neighbour = np.where(along > 0, (worst[..., 0] - 1) % count, (worst[..., 0] + 1) % count)
    return Standing(
        errors,
        _at(error, worst),
        _at(expanded, worst),
        permitted + _at(expanded, worst),
        mark,
        np.abs(along),
        neighbour + 1.0 + unknown,
        np.abs(across),
        np.where(across > 0, "inward", "outward"),
        np.sum(out, axis=-1) + unknown,
        np.sum(~out & ~settled, axis=-1) + unknown,
        _named(out),
        _named(~out & ~settled),
    )


def _named(which: NDArray[np.bool_]) -> str:
    """The marks that are so as designed, without tolerances, in words."""
    marks = [str(mark + 1) for mark in np.flatnonzero(which.reshape(-1, which.shape[-1])[0])]
    return " and ".join([", ".join(marks[:-1]), marks[-1]] if len(marks) > 1 else marks) or "none"


def _at(values: Array, place: NDArray[np.int_]) -> Array:
    picked: Array = np.take_along_axis(values, place, axis=-1)[..., 0]
    return picked


def suspect_of(network: Network, measured: Measured) -> str:
    """The measured length that agrees least with the others, in words.

    Baarda, data snooping, from memory: the largest normalised residual.
    """
    suspicion = np.asarray(network.suspicion)
    while suspicion.ndim > 1:
        suspicion = suspicion[0]
    alike = np.flatnonzero(suspicion >= np.max(suspicion) - AS_SUSPICIOUS)
    if len(alike) != 1:
        return "every length, since none can be told from the others"
    first, second = measured.ends[alike[0]] + 1
    return f"the length from mark {first} to mark {second} first"
