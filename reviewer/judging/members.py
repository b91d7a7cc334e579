"""Collections: arrays whose first axis is the member, beside values that have no such axis."""

from typing import Any

import numpy as np


def aligned(left: Any, left_many: bool, right: Any, right_many: bool) -> tuple[Any, Any]:
    """Return two values so that they broadcast, the axis of members first.

    A collection keeps its first axis first, and gets axes of size 1 behind it until it has one
    more than the value beside it.

    >>> [each.shape for each in aligned(np.ones(3), True, np.ones((5, 2)), False)]
    [(3, 1, 1), (5, 2)]
    """
    if not (left_many or right_many):
        return left, right
    left, right = np.asarray(left), np.asarray(right)
    axes = max(left.ndim - left_many, right.ndim - right_many)
    return _deepened(left, left_many, axes), _deepened(right, right_many, axes)


def _deepened(value: Any, many: bool, axes: int) -> Any:
    """Put axes of size 1 behind the axis of members until there are `axes` of them."""
    if not many or value.ndim == 0 or value.ndim == axes + 1:
        return value
    return value.reshape(value.shape[0], *(1,) * (axes + 1 - value.ndim), *value.shape[1:])


def gathered(values: Any) -> Any:
    """Return the values of all members as one array, those without a value as NaN.

    One None stands for a collection of which nothing is known; texts stay in their list.

    >>> gathered([2.0, None]), gathered(["beech", None])
    (array([ 2., nan]), ['beech', None])
    """
    if values is None:
        return np.nan
    if not isinstance(values, list | tuple) or any(isinstance(each, str) for each in values):
        return values
    numbers = [np.nan if each is None else each for each in values]
    return np.stack(np.broadcast_arrays(*numbers)) if numbers else np.empty(0)


def largest(values: Any) -> Any:
    """Return the largest over the members; unknown if one of them is, or if there is none."""
    if _unknown(values) or not len(values):
        return np.nan
    return np.maximum.reduce(values, axis=0)


def least(values: Any) -> Any:
    """Return the least over the members; unknown if one of them is, or if there is none."""
    if _unknown(values) or not len(values):
        return np.nan
    return np.minimum.reduce(values, axis=0)


def total(values: Any) -> Any:
    """Return the sum over the members, in their order whatever the other axes: 0 of none."""
    if _unknown(values):
        return np.nan
    whole: Any = 0.0
    for value in values:
        whole = whole + value
    return whole


def _unknown(values: Any) -> bool:
    """Whether one NaN stands for a collection of which nothing is known."""
    return np.ndim(values) == 0 and bool(np.isnan(values))
