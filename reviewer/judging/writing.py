"""An expression written out again, so that reading it gives the same tree."""

from fractions import Fraction

from reviewer.judging.expression import (
    Aggregate,
    Among,
    Arithmetic,
    Call,
    Comparison,
    Every,
    Expression,
    Given,
    Logical,
    Name,
    Negative,
    Not,
    Power,
    Quantity,
    Table,
    Text,
)
from reviewer.judging.pratt import ADD, AND, COMPARE, MULTIPLY, NEGATE, NOT, OF, OR, RAISE

_VALUE = OF + 10
_LEVELS = {
    Negative: NEGATE,
    Power: RAISE,
    Aggregate: OF,
    Comparison: COMPARE,
    Among: COMPARE,
    Not: NOT,
    Every: NOT,
}


def write(node: Expression) -> str:
    """Write an expression with as few parentheses as it can be read with."""
    match node:
        case Quantity():
            return f"{number(node.number)} {node.unit}".rstrip()
        case Text():
            return f"'{node.text}'" if '"' in node.text else f'"{node.text}"'
        case Name():
            return node.path
        case Negative():
            return f"-{_within(node.operand, NEGATE)}"
        case Arithmetic():
            return _arithmetic(node)
        case Power():
            return f"{_within(node.base, RAISE + 1, alone=True)}^{_exponent(node.exponent)}"
        case Aggregate():
            return f"{node.function} of {_within(node.operand, OF, alone=True)}"
        case Call():
            return f"{node.function}({', '.join(map(write, node.arguments))})"
        case Given():
            return f"given({node.name.path})"
        case Table():
            points = (f"{write(at)}: {write(value)}" for at, value in node.points)
            return f"table({write(node.argument)}, [{', '.join(points)}])"
        case _:
            return _condition(node)


def number(value: float) -> str:
    """Write a number in the fewest digits that give it back."""
    return repr(value).removesuffix(".0")


def _condition(node: Comparison | Among | Not | Every | Logical) -> str:
    match node:
        case Comparison():
            first, *others = (_within(operand, ADD) for operand in node.operands)
            pairs = zip(node.operators, others, strict=True)
            return " ".join([first, *(f"{sign} {operand}" for sign, operand in pairs)])
        case Among():
            texts = ", ".join(write(text) for text in node.texts)
            return f"{_within(node.item, ADD)} in [{texts}]"
        case Logical():
            inner = (_within(operand, _level(node) + 1) for operand in node.operands)
            return f" {node.operator} ".join(inner)
        case _:
            word = "not" if isinstance(node, Not) else "every"
            return f"{word} {_within(node.operand, NOT)}"


def _arithmetic(node: Arithmetic) -> str:
    """The right side of an operator binds tighter than the left: a - (b - c)."""
    level = _level(node)
    by_quantity = node.operator == "/" and isinstance(node.right, Quantity) and node.right.unit
    right = _within(node.right, level + 1, alone=bool(by_quantity))
    return f"{_within(node.left, level)} {node.operator} {right}"


def _level(node: Expression) -> int:
    if isinstance(node, Arithmetic):
        return ADD if node.operator in "+-" else MULTIPLY
    if isinstance(node, Logical):
        return AND if node.operator == "and" else OR
    if isinstance(node, Quantity) and node.number < 0:
        return NEGATE
    return _LEVELS.get(type(node), _VALUE)


def _within(node: Expression, level: int, *, alone: bool = False) -> str:
    """Write a node in parentheses if it binds less tight than `level`, or holds a unit `alone`."""
    unit = alone and isinstance(node, Quantity) and node.unit
    text = write(node)
    return f"({text})" if unit or _level(node) < level else text


def _exponent(power: Fraction) -> str:
    return str(power) if power.denominator == 1 else f"({power})"
