"""What a requirement comes to, and how the outcomes of its comparisons join to one.

Joined by `and`, the comparison governs that fails; else the one that is unknown; else the one that
is used most. Joined by `or`, the one that holds; else the unknown; else the one used least. A
comparison without a utilisation stands behind those that have one, and of two that are used alike
to 1e-9 the first governs.
"""

from collections.abc import Callable
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging.comparison import TOLERANCE, Flag
from reviewer.judging.members import aligned

MOST = 1e308
"""Stands for a utilisation that is no number, where the least is looked for."""


class Outcome(NamedTuple):
    """What a requirement comes to: floats, or arrays that broadcast.

    `holds` where it is known to hold, `known` where it is known at all. `demand` is what is asked
    and `capacity` what there is, in SI units, of the comparison that governs, and `utilisation` the
    one over the other: NaN where there is none. `which` is that comparison's place in
    `Requirement.terms`.
    """

    holds: Flag
    known: Flag
    demand: Any
    capacity: Any
    utilisation: Any
    which: Any


class Judged(NamedTuple):
    """An outcome under way: as `Outcome`, but with where it is known to fail."""

    holds: Flag
    fails: Flag
    demand: Any
    capacity: Any
    utilisation: Any
    which: Any


def both(left: Judged, right: Judged) -> Judged:
    """Join two outcomes by `and`."""
    holds, fails = left.holds & right.holds, left.fails | right.fails
    ranks = _standing(left.fails, left.holds), _standing(right.fails, right.holds)
    used, other = _used(left, -1.0), _used(right, -1.0)
    more = other > used + TOLERANCE * abs(used)
    return _chosen(
        (ranks[1] > ranks[0]) | ((ranks[1] == ranks[0]) & more), left, right, holds, fails
    )


def either(left: Judged, right: Judged) -> Judged:
    """Join two outcomes by `or`."""
    holds, fails = left.holds | right.holds, left.fails & right.fails
    ranks = _standing(left.holds, left.fails), _standing(right.holds, right.fails)
    used, other = _used(left, MOST), _used(right, MOST)
    less = other < used - TOLERANCE * abs(used)
    return _chosen(
        (ranks[1] > ranks[0]) | ((ranks[1] == ranks[0]) & less), left, right, holds, fails
    )


def all_members(judged: Judged) -> Judged:
    """Join the outcomes of all members by `and`, along axis 0."""
    if np.ndim(judged.holds) == 0:
        return judged
    holds, fails, *fields = np.broadcast_arrays(*judged)
    if not len(holds):
        shape = holds.shape[1:]
        none = np.full(shape, np.nan)
        return Judged(np.ones(shape, bool), np.zeros(shape, bool), none, none, none, 0)
    rank = _standing(fails, holds)
    used = np.where(rank == rank.max(axis=0), _used(judged, -1.0), -2.0)
    most = used.max(axis=0)
    first = np.argmax(used >= most - TOLERANCE * np.abs(most), axis=0)[np.newaxis]
    taken = (np.take_along_axis(field, first, axis=0)[0] for field in fields)
    return Judged(holds.all(axis=0), fails.any(axis=0), *taken)


def paired(
    join: Callable[[Judged, Judged], Judged], left: Judged, first: bool, right: Judged, second: bool
) -> Judged:
    """Join two outcomes of which the `first` or the `second` has an axis of members."""
    sides = [
        aligned(one, first, other, second)
        for one, other in zip(_spread(left, first), _spread(right, second), strict=True)
    ]
    return join(Judged(*(one for one, _ in sides)), Judged(*(other for _, other in sides)))


def _spread(judged: Judged, many: bool) -> Judged:
    """Give every field the shape of all of them, so that each has the axis of members."""
    return Judged(*np.broadcast_arrays(*judged)) if many else judged


def _standing(first: Flag, last: Flag) -> Any:
    """Rank outcomes: 1 where `first`, -1 where `last`, 0 where neither is known."""
    if type(first) is bool and type(last) is bool:
        return first - last
    return np.subtract(first, last, dtype=int)


def _used(judged: Judged, otherwise: float) -> Any:
    """Return the utilisation, with a number where there is none."""
    used = judged.utilisation
    if type(used) is float:
        return used if used == used else otherwise
    return np.where(np.isnan(used), otherwise, used)


def _chosen(second: Flag, left: Judged, right: Judged, holds: Flag, fails: Flag) -> Judged:
    """Take the fields of the outcome that governs, the second or the first."""
    if type(second) is bool:
        return (right if second else left)._replace(holds=holds, fails=fails)
    pairs = zip(left[2:], right[2:], strict=True)
    return Judged(holds, fails, *(np.where(second, other, one) for one, other in pairs))
