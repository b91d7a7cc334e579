"""How a formula meets numbers that it was not made for: in silence, and with NaN."""

from collections.abc import Callable
from functools import wraps
from inspect import Parameter, Signature
from typing import Any, ParamSpec, TypeVar

import numpy as np

from reviewer.mechanics.formula import valid_when

P = ParamSpec("P")
R = TypeVar("R")


def silent(function: Callable[P, R]) -> Callable[P, R]:
    """Evaluate in numpy's arithmetic without warnings, and give plain floats back for floats.

    A division of floats by zero raises in Python and gives infinity in numpy: with this, one number
    and an array of numbers behave alike.

    >>> silent(lambda force, area: force / area)(1.0, 0.0)
    inf
    """

    @wraps(function)
    def evaluated(*args: P.args, **kwargs: P.kwargs) -> R:
        with np.errstate(all="ignore"):
            answer: Any = function(
                *(_number(value) for value in args),
                **{name: _number(value) for name, value in kwargs.items()},
            )
        plain: R = _plain(answer)
        return plain

    return evaluated


def defined(
    *, positive: str = "", not_negative: str = ""
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Give NaN where a parameter named here is not above zero, or is below it.

    The names are written in one text, apart by spaces.

    >>> @defined(positive="area", not_negative="force")
    ... def pressure(force, area):
    ...     return force / area
    >>> pressure(6.0, 2.0), pressure(6.0, 0.0), pressure(-6.0, 2.0)
    (3.0, nan, nan)
    >>> pressure.validities[0].reason
    'area must be above zero; force must not be below zero'
    """
    above, from_zero = positive.split(), not_negative.split()

    def holds(**values: Any) -> Any:
        condition: Any = True
        for name in above:
            condition = condition & (np.asarray(values[name]) > 0)
        for name in from_zero:
            condition = condition & (np.asarray(values[name]) >= 0)
        return condition

    names = [Parameter(name, Parameter.KEYWORD_ONLY) for name in above + from_zero]
    holds.__signature__ = Signature(names)  # type: ignore[attr-defined]
    parts = [f"{_listed(above)} must be above zero"] if above else []
    parts += [f"{_listed(from_zero)} must not be below zero"] if from_zero else []

    def decorate(function: Callable[P, R]) -> Callable[P, R]:
        return valid_when(holds, "; ".join(parts))(silent(function))

    return decorate


def _listed(names: list[str]) -> str:
    words = [name.replace("_", " ") for name in names]
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def _number(value: Any) -> Any:
    """Turn a Python number into numpy's; leave arrays, texts and truth values alone."""
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return np.float64(value)
    return value


def _plain(answer: Any) -> Any:
    """Turn a single numpy number into a float, also inside a named tuple."""
    if isinstance(answer, tuple):
        return type(answer)(*(_plain(value) for value in answer))
    return answer if np.ndim(answer) else float(answer)
