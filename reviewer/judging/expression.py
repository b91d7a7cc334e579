"""What a rule's expression is, once read: a tree of small frozen nodes that know their place."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from reviewer.notation.dimension import Dimension

Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit as written (`18 mm`), and its SI value and dimension."""

    number: float
    unit: str
    value: float
    dimension: Dimension
    from_zero: bool = field(repr=False)
    """False for a point on a scale with its own zero (`23 degC`), which cannot be reckoned with."""
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Text:
    """A text in quotes."""

    text: str
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Name:
    """A dotted name of a quantity: a key, never an attribute of anything."""

    path: str
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Negative:
    """The negative of a number."""

    operand: "Expression"
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Arithmetic:
    """Two numbers joined by `+`, `-`, `*` or `/`."""

    operator: str
    left: "Expression"
    right: "Expression"
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Power:
    """A number raised to a constant power."""

    base: "Expression"
    exponent: Fraction
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Call:
    """One of the language's own functions of numbers."""

    function: str
    arguments: tuple["Expression", ...]
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Table:
    """A value looked up between the points of a table, in straight lines."""

    argument: "Expression"
    points: tuple[tuple["Expression", "Expression"], ...]
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Aggregate:
    """The `largest`, the `least` or the `sum` of a value over every member of a collection."""

    function: str
    operand: "Expression"
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two values compared (`a <= b`), or three as a range (`a <= b <= c`)."""

    operands: tuple["Expression", ...]
    operators: tuple[str, ...]
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Among:
    """Whether a text is one of a list."""

    item: "Expression"
    texts: tuple[Text, ...]
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Given:
    """Whether a name has a value."""

    name: Name
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Not:
    """The opposite of a condition."""

    operand: "Expression"
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Every:
    """Whether a condition holds for every member of a collection."""

    operand: "Expression"
    span: Span = field(compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Logical:
    """Conditions joined by `and` or by `or`."""

    operator: str
    operands: tuple["Expression", ...]
    span: Span = field(compare=False, repr=False)


Expression = (
    Quantity
    | Text
    | Name
    | Negative
    | Arithmetic
    | Power
    | Call
    | Table
    | Aggregate
    | Comparison
    | Among
    | Given
    | Not
    | Every
    | Logical
)


def children(node: Expression) -> tuple[Expression, ...]:
    """The nodes directly below one, from left to right."""
    return _CHILDREN[type(node)](node)


_CHILDREN: dict[type, Callable[[Any], tuple[Expression, ...]]] = {
    **dict.fromkeys((Quantity, Text, Name), lambda _: ()),
    **dict.fromkeys((Negative, Aggregate, Not, Every), lambda node: (node.operand,)),
    **dict.fromkeys((Comparison, Logical), lambda node: node.operands),
    Arithmetic: lambda node: (node.left, node.right),
    Power: lambda node: (node.base,),
    Call: lambda node: node.arguments,
    Table: lambda node: (node.argument, *(value for point in node.points for value in point)),
    Among: lambda node: (node.item, *node.texts),
    Given: lambda node: (node.name,),
}


def walk(expression: Expression) -> Iterator[Expression]:
    """Every node of an expression, each before those below it, from left to right."""
    waiting: list[Expression] = [expression]
    while waiting:
        node = waiting.pop()
        yield node
        waiting.extend(reversed(children(node)))


def names(expression: Expression) -> tuple[tuple[str, Span], ...]:
    """The dotted names that an expression uses, in order, each with its place in the text."""
    return tuple((node.path, node.span) for node in walk(expression) if isinstance(node, Name))
