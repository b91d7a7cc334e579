"""Numbers of an expression as closures over floats and numpy arrays.

The environment is a function from a dotted name to its value: a float or an array for a number (NaN
where unknown), a text or None (unknown) for a choice, True, False or None for a yes or no. A name
of a collection gives the values of all members: an array whose axis 0 is the member, or a list.
`many` are the names of that sort. What is compiled has passed `infer`, which holds the dimensions.

A division by zero, a root of a negative number, a value beside its table: each is unknown (NaN).
"""

import operator
from collections.abc import Callable, Collection
from fractions import Fraction
from functools import reduce
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging import members
from reviewer.judging.expression import (
    Aggregate,
    Arithmetic,
    Call,
    Expression,
    Name,
    Negative,
    Power,
    Quantity,
    Table,
)
from reviewer.judging.tables import look_up

Environment = Callable[[str], Any]
Closure = Callable[[Environment], Any]


class Part(NamedTuple):
    """A compiled node: its value from an environment, and whether it has one for each member."""

    value: Closure
    many: bool = False


def number(node: Expression, many: Collection[str]) -> Part:
    """Compile a node that is a number, for use where numpy's warnings are off."""
    match node:
        case Quantity():
            constant = node.value
            return Part(lambda environment: constant)
        case Name():
            return named(node, many)
        case Negative():
            inner = number(node.operand, many)
            return Part(lambda environment: -inner.value(environment), inner.many)
        case Arithmetic():
            sides = number(node.left, many), number(node.right, many)
            return joined(_OPERATORS[node.operator], *sides)
        case Power():
            return _applied(_power(node.exponent), number(node.base, many))
        case Call():
            return _called(node.function, [number(each, many) for each in node.arguments])
        case Table():
            return _applied(look_up(node), number(node.argument, many))
        case Aggregate():
            gather = _GATHERED[node.function]
            return Part(_applied(gather, number(node.operand, many)).value)
        case _:
            raise TypeError(f"{type(node).__name__} is no number; infer refuses it")


def named(node: Name, many: Collection[str]) -> Part:
    """Compile a name, whose number is NaN where it has none."""
    path = node.path

    def value(environment: Environment) -> Any:
        found = environment(path)
        if found is None:
            return np.nan
        return float(found) if type(found) is int else found

    def values(environment: Environment) -> Any:
        return members.gathered(environment(path))

    return Part(values, True) if path in many else Part(value)


def joined(join: Callable[[Any, Any], Any], left: Part, right: Part) -> Part:
    """Compile what joins two values, member by member if one of them has many."""
    first, second = left.value, right.value
    if not (left.many or right.many):
        return Part(lambda environment: join(first(environment), second(environment)))

    def together(environment: Environment) -> Any:
        sides = (first(environment), left.many, second(environment), right.many)
        return join(*members.aligned(*sides))

    return Part(together, True)


def _applied(function: Callable[[Any], Any], part: Part) -> Part:
    value = part.value
    return Part(lambda environment: function(value(environment)), part.many)


def _called(function: str, arguments: list[Part]) -> Part:
    if function in _PAIRED:
        pair = _PAIRED[function]
        return reduce(lambda left, right: joined(pair, left, right), arguments)
    return _applied(_FUNCTIONS[function], arguments[0])


def _divided(above: Any, below: Any) -> Any:
    if type(below) is float:
        return above / below if below else above * np.nan
    return above / np.where(below == 0, np.nan, below)


def _power(exponent: Fraction) -> Callable[[Any], Any]:
    """Return the function for a constant power; whole ones multiply, so that each bit is kept."""
    size = abs(exponent)
    whole = int(size)

    def raised(base: Any) -> Any:
        if size == whole:
            return reduce(operator.mul, [base] * whole, 1.0) if whole else base * 0.0 + 1.0
        return np.sqrt(base) if size == Fraction(1, 2) else np.power(base, float(size))

    return raised if exponent >= 0 else lambda base: _divided(1.0, raised(base))


_OPERATORS: dict[str, Callable[[Any, Any], Any]] = {
    "+": operator.add,
    "-": operator.sub,
    "*": operator.mul,
    "/": _divided,
}
_PAIRED: dict[str, Callable[[Any, Any], Any]] = {"min": np.minimum, "max": np.maximum}
_FUNCTIONS: dict[str, Callable[[Any], Any]] = {
    "abs": abs,
    "sqrt": np.sqrt,
    "sin": np.sin,
    "cos": np.cos,
    "tan": np.tan,
    "asin": np.arcsin,
    "acos": np.arccos,
    "atan": np.arctan,
}
_GATHERED: dict[str, Callable[[Any], Any]] = {
    "largest": members.largest,
    "least": members.least,
    "sum": members.total,
}
