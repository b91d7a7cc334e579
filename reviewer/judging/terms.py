"""The comparisons of a requirement, each compiled so that it says how near its limit it is."""

from collections.abc import Callable, Collection, Iterator, Mapping
from functools import reduce
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging.arithmetic import Environment, Part, joined
from reviewer.judging.choices import are_texts
from reviewer.judging.comparison import at_most, below, utilisation
from reviewer.judging.conditions import comparing, condition, side
from reviewer.judging.expression import Comparison, Every, Expression, Logical, Span
from reviewer.judging.outcome import Judged, all_members, both, either, paired
from reviewer.notation.dimension import Dimension

_DOWN = frozenset({">", ">="})
_STRICT = frozenset({"<", ">"})
_SAME = frozenset({"==", "!="})


class Term(NamedTuple):
    """One comparison of a requirement, or a condition in it that has no demand and capacity.

    `dimension` is that of both; None where they are no numbers.
    """

    span: Span
    demand: Expression | None = None
    capacity: Expression | None = None
    dimension: Dimension | None = None


def terms_of(node: Expression, dimensions: Mapping[Span, Dimension]) -> Iterator[Term]:
    """List the terms of a requirement in order, with what was inferred of its comparisons."""
    match node:
        case Logical():
            for operand in node.operands:
                yield from terms_of(operand, dimensions)
        case Every():
            yield from terms_of(node.operand, dimensions)
        case Comparison():
            for left, sign, right in _pairs(node):
                asked, there = _turned(left, sign, right)
                span = (left.span[0], right.span[1])
                yield Term(span, asked, there, dimensions.get(node.span))
        case _:
            yield Term(node.span)


def compile_terms(node: Expression, many: Collection[str], which: Iterator[int]) -> Part:
    """Compile a requirement to closures that give a Judged; `which` numbers its terms."""
    match node:
        case Logical():
            join = both if node.operator == "and" else either
            parts = [compile_terms(operand, many, which) for operand in node.operands]
            return reduce(lambda left, right: _joined(join, left, right), parts)
        case Every():
            inner = compile_terms(node.operand, many, which).value
            return Part(lambda environment: all_members(inner(environment)))
        case Comparison():
            parts = [_term(*pair, many, next(which)) for pair in _pairs(node)]
            return reduce(lambda left, right: _joined(both, left, right), parts)
        case _:
            return _plain(condition(node, many), next(which))


def _pairs(node: Comparison) -> list[tuple[Expression, str, Expression]]:
    return list(zip(node.operands, node.operators, node.operands[1:], strict=False))


def _turned(left: Expression, sign: str, right: Expression) -> tuple[Expression, Expression]:
    """Return the demand and the capacity: of `a >= b` what is asked is b."""
    return (right, left) if sign in _DOWN else (left, right)


def _joined(join: Callable[[Judged, Judged], Judged], left: Part, right: Part) -> Part:
    first, second = left.value, right.value
    if not (left.many or right.many):
        return Part(lambda environment: join(first(environment), second(environment)))

    def together(environment: Environment) -> Judged:
        return paired(join, first(environment), left.many, second(environment), right.many)

    return Part(together, True)


def _plain(part: Part, which: int) -> Part:
    """Compile a condition that asks for no number."""

    def judged(environment: Environment) -> Judged:
        holds, fails = part.value(environment)
        return Judged(holds, fails, np.nan, np.nan, np.nan, which)

    return Part(judged, part.many)


def _term(
    left: Expression, sign: str, right: Expression, many: Collection[str], which: int
) -> Part:
    """Compile one comparison."""
    demand, capacity = (side(each, many) for each in _turned(left, sign, right))
    judged = _same(sign, which) if sign in _SAME else _ordered(sign in _STRICT, which)
    return joined(judged, demand, capacity)


def _ordered(strict: bool, which: int) -> Callable[[Any, Any], Judged]:
    """Return the function that judges a demand against a capacity."""
    compare = below if strict else at_most

    def judged(demand: Any, capacity: Any) -> Judged:
        holds, fails = compare(demand, capacity)
        used = utilisation(demand, capacity, strict, fails)
        return Judged(holds, fails, demand, capacity, used, which)

    return judged


def _same(sign: str, which: int) -> Callable[[Any, Any], Judged]:
    """Return the function that judges whether two numbers or texts are the same, or are not."""
    compare = comparing(sign)

    def judged(left: Any, right: Any) -> Judged:
        holds, fails = compare(left, right)
        if are_texts(left) or are_texts(right):
            left = right = np.nan
        return Judged(holds, fails, left, right, np.nan, which)

    return judged
