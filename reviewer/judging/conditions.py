"""Conditions of an expression as closures, in three values: holds, fails, unknown.

What is unknown stays unknown unless the rest decides: nothing is asked of an unknown beside a
failure joined by `and`, or beside one that holds joined by `or` (Kleene's strong logic).
"""

from collections.abc import Callable, Collection
from functools import partial, reduce
from typing import Any

import numpy as np

from reviewer.judging.arithmetic import Environment, Part, joined, named, number
from reviewer.judging.choices import among, are_texts, has_value, is_true, same_text
from reviewer.judging.comparison import COMPARE, Truth, opposite
from reviewer.judging.expression import (
    Among,
    Comparison,
    Every,
    Expression,
    Given,
    Logical,
    Name,
    Not,
    Text,
)
from reviewer.judging.members import aligned


def condition(node: Expression, many: Collection[str]) -> Part:
    """Compile a node that is a condition; its value is a Truth."""
    match node:
        case Comparison():
            return _comparison(node, many)
        case Logical():
            join = all_of if node.operator == "and" else any_of
            parts = [condition(operand, many) for operand in node.operands]
            return reduce(partial(joined_truths, join), parts)
        case Not():
            inner = condition(node.operand, many)
            return Part(lambda environment: opposite(inner.value(environment)), inner.many)
        case Every():
            gathered = condition(node.operand, many).value
            return Part(lambda environment: every(gathered(environment)))
        case Among():
            texts = tuple(text.text for text in node.texts)
            item = side(node.item, many)
            return Part(lambda environment: among(item.value(environment), texts), item.many)
        case Given():
            name = named(node.name, many)
            return Part(lambda environment: has_value(name.value(environment)), name.many)
        case Name():
            flag = named(node, many)
            return Part(lambda environment: is_true(flag.value(environment)), flag.many)
        case _:
            raise TypeError(f"{type(node).__name__} is no condition; infer refuses it")


def _comparison(node: Comparison, many: Collection[str]) -> Part:
    sides = [side(operand, many) for operand in node.operands]
    pairs = zip(sides, node.operators, sides[1:], strict=False)
    parts = [joined(comparing(sign), left, right) for left, sign, right in pairs]
    return reduce(partial(joined_truths, all_of), parts)


def side(node: Expression, many: Collection[str]) -> Part:
    """Compile one side of a comparison: a number or a text."""
    if isinstance(node, Text):
        text = node.text
        return Part(lambda environment: text)
    return number(node, many)


def comparing(sign: str) -> Callable[[Any, Any], Truth]:
    """Return the function that compares two numbers, or two texts by `==` or `!=`."""
    if sign not in {"==", "!="}:
        return COMPARE[sign]

    def compared(left: Any, right: Any) -> Truth:
        if not (are_texts(left) or are_texts(right)):
            return COMPARE[sign](left, right)
        same = same_text(left, right)
        return same if sign == "==" else opposite(same)

    return compared


def joined_truths(join: Callable[[Truth, Truth], Truth], left: Part, right: Part) -> Part:
    """Compile what joins two conditions, member by member if one of them has many."""
    first, second = left.value, right.value
    if not (left.many or right.many):
        return Part(lambda environment: join(first(environment), second(environment)))

    def together(environment: Environment) -> Truth:
        one, other = first(environment), second(environment)
        holds = aligned(one.holds, left.many, other.holds, right.many)
        fails = aligned(one.fails, left.many, other.fails, right.many)
        return join(Truth(holds[0], fails[0]), Truth(holds[1], fails[1]))

    return Part(together, True)


def all_of(left: Truth, right: Truth) -> Truth:
    """Join two conditions by `and`: one that fails decides."""
    return Truth(left.holds & right.holds, left.fails | right.fails)


def any_of(left: Truth, right: Truth) -> Truth:
    """Join two conditions by `or`: one that holds decides."""
    return Truth(left.holds | right.holds, left.fails & right.fails)


def every(truth: Truth) -> Truth:
    """Join the condition of all members by `and`; one unknown answer stands for all of them."""
    if np.ndim(truth.holds) == 0:
        return truth
    holds = np.logical_and.reduce(truth.holds, axis=0)
    return Truth(holds, np.logical_or.reduce(truth.fails, axis=0))
