"""The comparisons of a requirement, each compiled so that it says how near its limit it is."""

from collections.abc import Callable, Collection
from functools import reduce
from typing import Any, NamedTuple

import numpy as np

from reviewer.judging.arithmetic import Environment, Part
from reviewer.judging.choices import are_texts
from reviewer.judging.comparison import compare, utilisation
from reviewer.judging.conditions import compare_any, condition, side
from reviewer.judging.expression import Comparison, Every, Expression, Logical, Span
from reviewer.judging.members import aligned
from reviewer.judging.outcome import Judged, all_members, both, either, paired

_DOWN = frozenset({">", ">="})
_STRICT = frozenset({"<", ">"})


class Term(NamedTuple):
    """One comparison of a requirement, or a condition in it that has no demand and capacity."""

    span: Span
    demand: Expression | None = None
    capacity: Expression | None = None


def compile_terms(node: Expression, many: Collection[str], terms: list[Term]) -> Part:
    """Compile a node to closures that give a Judged, and list its terms."""
    match node:
        case Logical():
            join = both if node.operator == "and" else either
            parts = [compile_terms(operand, many, terms) for operand in node.operands]
            return reduce(lambda left, right: _joined(join, left, right), parts)
        case Comparison():
            pairs = zip(node.operands, node.operators, node.operands[1:], strict=False)
            parts = [_term(*pair, many, terms) for pair in pairs]
            return reduce(lambda left, right: _joined(both, left, right), parts)
        case Every():
            inner = compile_terms(node.operand, many, terms).value
            return Part(lambda environment: all_members(inner(environment)))
        case _:
            return _plain(node, many, terms)


def _joined(join: Callable[[Judged, Judged], Judged], left: Part, right: Part) -> Part:
    first, second = left.value, right.value
    if not (left.many or right.many):
        return Part(lambda environment: join(first(environment), second(environment)))

    def together(environment: Environment) -> Judged:
        return paired(join, first(environment), left.many, second(environment), right.many)

    return Part(together, True)


def _plain(node: Expression, many: Collection[str], terms: list[Term]) -> Part:
    """Compile a condition that asks for no number."""
    which = len(terms)
    terms.append(Term(node.span))
    part = condition(node, many)

    def judged(environment: Environment) -> Judged:
        holds, fails = part.value(environment)
        return Judged(holds, fails, np.nan, np.nan, np.nan, which)

    return Part(judged, part.many)


def _term(
    left: Expression, sign: str, right: Expression, many: Collection[str], terms: list[Term]
) -> Part:
    """Compile one comparison: of `a >= b` what is asked is b."""
    asked, there = (right, left) if sign in _DOWN else (left, right)
    which = len(terms)
    terms.append(Term((left.span[0], right.span[1]), asked, there))
    demand, capacity = side(asked, many), side(there, many)
    first, second = demand.value, capacity.value
    judged = _same(sign, which) if sign in {"==", "!="} else _ordered(sign in _STRICT, which)
    if not (demand.many or capacity.many):
        return Part(lambda environment: judged(first(environment), second(environment)))

    def each(environment: Environment) -> Judged:
        sides = (first(environment), demand.many, second(environment), capacity.many)
        return judged(*aligned(*sides))

    return Part(each, True)


def _ordered(strict: bool, which: int) -> Callable[[Any, Any], Judged]:
    """Return the function that judges a demand against a capacity."""
    sign = "<" if strict else "<="

    def judged(demand: Any, capacity: Any) -> Judged:
        holds, fails = compare(demand, sign, capacity)
        used = utilisation(demand, capacity, strict, fails)
        return Judged(holds, fails, demand, capacity, used, which)

    return judged


def _same(sign: str, which: int) -> Callable[[Any, Any], Judged]:
    """Return the function that judges whether two numbers or texts are the same, or are not."""

    def judged(left: Any, right: Any) -> Judged:
        holds, fails = compare_any(sign, left, right)
        if are_texts(left) or are_texts(right):
            left = right = np.nan
        return Judged(holds, fails, left, right, np.nan, which)

    return judged
