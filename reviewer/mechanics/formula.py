"""What a formula is: a plain function on SI numbers, with the range in which it holds."""

from collections.abc import Callable
from functools import wraps
from inspect import signature
from typing import Any, NamedTuple, ParamSpec, TypeVar

import numpy as np
from numpy.typing import NDArray

Number = float | NDArray[np.float64]

P = ParamSpec("P")
R = TypeVar("R")


class Validity(NamedTuple):
    """A condition on a formula's arguments, and why nothing is said outside it."""

    holds: Callable[..., Any]
    reason: str


def valid_when(
    holds: Callable[..., Any], reason: str
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Mask a formula's answer with NaN where a condition on its arguments fails.

    `holds` takes any of the formula's parameters by name and returns a truth value or an array of
    them. The conditions stay readable on the function as `validities`, so that a review can say
    which of them a design left. An unknown argument (NaN) makes the answer unknown by itself.

    >>> @valid_when(lambda ratio: ratio > 2, "the ratio must be above 2")
    ... def halve(ratio):
    ...     return ratio / 2
    >>> halve(4.0), halve(1.0)
    (2.0, nan)
    >>> halve.validities[0].reason
    'the ratio must be above 2'
    """

    def decorate(function: Callable[P, R]) -> Callable[P, R]:
        names = tuple(signature(holds).parameters)
        parameters = signature(function)

        @wraps(function)
        def masked(*args: P.args, **kwargs: P.kwargs) -> R:
            bound = parameters.bind(*args, **kwargs)
            bound.apply_defaults()
            condition = holds(**{name: bound.arguments[name] for name in names})
            answer: R = _mask(function(*args, **kwargs), condition)
            return answer

        inner: tuple[Validity, ...] = getattr(function, "validities", ())
        masked.validities = (Validity(holds, reason), *inner)  # type: ignore[attr-defined]
        return masked

    return decorate


def _mask(answer: Any, condition: Any) -> Any:
    """Put NaN where the condition fails, in a number, an array or a named tuple of them."""
    if isinstance(answer, tuple):
        return type(answer)(*(_mask(value, condition) for value in answer))
    if np.ndim(answer) == 0 and np.ndim(condition) == 0:
        return answer if condition else float("nan")
    return np.where(condition, answer, np.nan)
