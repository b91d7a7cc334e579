"""A requirement with its limits moved: tightened or loosened by a factor."""

from collections.abc import Iterator
from dataclasses import replace

from reviewer.judging.expression import (
    Arithmetic,
    Comparison,
    Every,
    Expression,
    Logical,
    Negative,
    Quantity,
    names,
)
from reviewer.notation.dimension import NUMBER
from reviewer.parts.facts import LIMIT

_MOST = {"<": 1, "<=": 1, ">": -1, ">=": -1}  # of the right side: a most, or a least


def scaled(node: Expression, factor: float) -> Expression:
    """The requirement that allows `factor` times what it did: of a most so many times, of a least
    one so many-th. Below one it is tighter, above one looser. What compares no sizes stays.
    """
    match node:
        case Logical():
            return replace(node, operands=tuple(scaled(each, factor) for each in node.operands))
        case Every():
            return replace(node, operand=scaled(node.operand, factor))
        case Comparison():
            return _compared(node, factor)
        case _:
            return node


def _compared(node: Comparison, factor: float) -> Expression:
    operands = list(node.operands)
    for index, sign in _limits(node):
        operands[index] = _times(operands[index], factor if sign > 0 else 1 / factor)
    return replace(node, operands=tuple(operands))


def _limits(node: Comparison) -> Iterator[tuple[int, int]]:
    """Which operands are limits: index, and 1 for a most or -1 for a least.

    Of two it is the right one, unless only the left one is without a quantity of the design; of a
    range it is both ends.
    """
    signs = [_MOST.get(sign, 0) for sign in node.operators]
    if 0 in signs:
        return
    if len(signs) > 1:
        yield 0, -signs[0]
        yield len(signs), signs[-1]
    elif _is_fixed(node.operands[0]) and not _is_fixed(node.operands[1]):
        yield 0, -signs[0]
    else:
        yield 1, signs[0]


def _is_fixed(node: Expression) -> bool:
    return all(name.startswith(f"{LIMIT}.") for name, _ in names(node))


def _times(node: Expression, factor: float) -> Expression:
    """A limit times a factor; of one below zero, what is farther from zero allows less."""
    if isinstance(node, Quantity) and node.value == 0:
        return node
    if _is_negative(node):
        factor = 1 / factor
    number = Quantity(factor, "", factor, NUMBER, True, node.span)
    return Arithmetic("*", node, number, node.span)


def _is_negative(node: Expression) -> bool:
    if isinstance(node, Negative):
        return not _is_negative(node.operand)
    return isinstance(node, Quantity) and node.value < 0
