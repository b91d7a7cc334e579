"""Rules made a little wrong: each limit moved by a tenth, each condition left out."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import pytest

from reviewer.judging.compiled import compile_condition, judge
from reviewer.judging.expression import Comparison, Every, Expression, Logical, Not, Quantity
from reviewer.judging.limits import Limits
from reviewer.judging.rule import Rule
from reviewer.judging.ruled import RULED
from reviewer.judging.scaling import scaled
from reviewer.judging.vocabulary import vocabulary
from reviewer.judging.writing import write
from reviewer.parts.registry import KINDS

A_TENTH = (1.1, 1 / 1.1)


@pytest.fixture(scope="session")
def mutants() -> Callable[[Rule, Limits], Iterator[tuple[str, Rule]]]:
    """A function that gives the mutants of a rule, each with what was changed."""
    return mutants_of


def mutants_of(rule: Rule, limits: Limits) -> Iterator[tuple[str, Rule]]:
    """A rule with one of its numbers a tenth off, or with one of its conditions left out."""
    names = vocabulary(rule.scope, {**KINDS, **RULED}, limits)
    if rule.require is not None:
        for wrong in _moved(rule.require.expression):
            yield f"require: {write(wrong)}", replace(rule, require=judge(wrong, names))
    if rule.when is not None:
        for wrong in (*_moved(rule.when.expression), *_left_out(rule.when.expression)):
            yield f"when: {write(wrong)}", replace(rule, when=compile_condition(wrong, names))
        yield "when: always", replace(rule, when=None)


def _moved(node: Expression) -> Iterator[Expression]:
    """The expression with one comparison's limit a tenth up or down."""
    match node:
        case Logical():
            for index, operand in enumerate(node.operands):
                for wrong in _moved(operand):
                    yield _with(node, index, wrong)
        case Every() | Not():
            for wrong in _moved(node.operand):
                yield replace(node, operand=wrong)
        case Comparison():
            counts = [_counted(node, step) for step in (-1, 1)]
            wrongs = counts if all(counts) else [scaled(node, factor) for factor in A_TENTH]
            yield from (wrong for wrong in wrongs if wrong is not None and wrong != node)


def _counted(node: Comparison, step: int) -> Comparison | None:
    """A comparison with a small whole number, with one more or less: a tenth changes no count."""
    last = node.operands[-1]
    if not isinstance(last, Quantity) or last.unit or last.number not in range(1, 10):
        return None
    moved = replace(last, number=last.number + step, value=last.value + step)
    return replace(node, operands=(*node.operands[:-1], moved))


def _left_out(node: Expression) -> Iterator[Expression]:
    """A condition without one of those that it joins."""
    if not isinstance(node, Logical):
        return
    for index, operand in enumerate(node.operands):
        rest = (*node.operands[:index], *node.operands[index + 1 :])
        yield rest[0] if len(rest) == 1 else replace(node, operands=rest)
        for wrong in _left_out(operand):
            yield _with(node, index, wrong)


def _with(node: Logical, index: int, operand: Expression) -> Any:
    operands = list(node.operands)
    operands[index] = operand
    return replace(node, operands=tuple(operands))
