"""A comparison of numbers: whether it holds, what is asked, what there is, and how near it is.

Of `a <= b` the demand is a and the capacity b; of `a >= b` what is asked is b and what there is is
a. Either way the comparison holds while the demand is no more than the capacity, and the
utilisation is at most 1 exactly then, wherever it is a number at all:

    demand > 0 and capacity > 0    demand / capacity
    demand < 0 and capacity < 0    capacity / demand, since more of the demand is now safer
    demand <= 0 <= capacity        0: nothing is asked of it
    else                           none (NaN), and the comparison alone decides

The last row is a demand with no capacity at all, which fails. It is also a strict comparison at its
limit, which fails at 1.00. Two values within 1e-9 of each other, relatively, are the same value;
against a limit of zero every difference counts.

Values are floats or arrays that broadcast, NaN where unknown.
"""

from collections.abc import Callable
from typing import Any, NamedTuple

import numpy as np

TOLERANCE = 1e-9

Flag = Any
"""A bool, or an array of them."""


class Truth(NamedTuple):
    """Where a condition is known to hold, and where it is known to fail; else it is unknown."""

    holds: Flag
    fails: Flag


def compare(left: Any, operator: str, right: Any) -> Truth:
    """Compare two numbers or arrays by one of the language's six operators.

    >>> compare(0.1 + 0.2, "<=", 0.3), compare(0.1 + 0.2, "<", 0.3)
    (Truth(holds=True, fails=False), Truth(holds=False, fails=True))
    """
    return COMPARE[operator](left, right)


def opposite(truth: Truth) -> Truth:
    """Return what holds where a condition fails."""
    return Truth(truth.fails, truth.holds)


def at_most(left: Any, right: Any) -> Truth:
    """Compare by `<=`."""
    limit = right + TOLERANCE * abs(right)
    return Truth(left <= limit, left > limit)


def below(left: Any, right: Any) -> Truth:
    """Compare by `<`: what is the same as the limit is not below it."""
    limit = left + TOLERANCE * abs(left)
    return Truth(right > limit, right <= limit)


def same(left: Any, right: Any) -> Truth:
    """Compare by `==`."""
    apart = abs(left - right)
    limit = TOLERANCE * np.maximum(abs(left), abs(right))
    return Truth(apart <= limit, apart > limit)


COMPARE: dict[str, Callable[[Any, Any], Truth]] = {
    "<=": at_most,
    "<": below,
    ">=": lambda left, right: at_most(right, left),
    ">": lambda left, right: below(right, left),
    "==": same,
    "!=": lambda left, right: opposite(same(left, right)),
}


def utilisation(demand: Any, capacity: Any, strict: bool, fails: Flag) -> Any:
    """Return how much of the capacity is used, by the rule at the head of this file.

    `fails` is where the comparison is known to fail; `strict` if it fails at its limit.

    >>> utilisation(3.0, 4.0, False, False), utilisation(-4.0, -3.0, False, False)
    (0.75, 0.75)
    >>> utilisation(-1.0, 0.0, False, False), utilisation(1.0, 0.0, False, True)
    (0.0, nan)
    """
    if type(demand) is float and type(capacity) is float:
        return _one_utilisation(demand, capacity, strict, fails)
    if type(demand) is float and demand == 0:
        return np.where(capacity > 0 if strict else capacity >= 0, 0.0, np.nan)
    least = np.minimum(demand, capacity)
    with np.errstate(all="ignore"):
        if not strict and least.size and least.min() > 0:
            used = demand / capacity
            if used.max() < np.inf:
                return used
        return _utilisations(demand, capacity, strict, fails)


def _one_utilisation(demand: float, capacity: float, strict: bool, fails: bool) -> float:
    if demand > 0 and capacity > 0:
        used = demand / capacity
    elif demand < 0 and capacity < 0:
        used = capacity / demand
    elif demand <= 0 <= capacity:
        used = 0.0
    else:
        return np.nan
    return np.nan if used == np.inf or (strict and fails and used <= 1) else used


def _utilisations(demand: Any, capacity: Any, strict: bool, fails: Flag) -> Any:
    negative = (demand < 0) & (capacity < 0)
    ratio = negative | ((demand > 0) & (capacity > 0))
    above = np.where(ratio, np.where(negative, capacity, demand), 0.0)
    below = np.where(ratio, np.where(negative, demand, capacity), 1.0)
    used = above / below
    none = ~ratio & ~((demand <= 0) & (capacity >= 0))
    if strict:
        none = none | (fails & (used <= 1))
    return np.where(none | ~np.isfinite(used), np.nan, used)
