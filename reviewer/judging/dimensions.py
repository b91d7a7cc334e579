"""What kind of value an expression gives, and whether its parts fit together.

The whole expression is inferred from its names and units, before any value is known: a length
compared with a force is an error of the rule, whatever the design.
"""

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import lru_cache
from typing import Any, NamedTuple

from reviewer.judging import misfit
from reviewer.judging.agreement import Seen, SeenNumber, alike, as_number, check_from_zero, together
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
    Span,
    Table,
    Text,
)
from reviewer.judging.kinds import TEXT, TRUTH, Collection, Kind, Texts, Vocabulary
from reviewer.judging.tables import check_points
from reviewer.notation.dimension import ANGLE, NUMBER, Dimension

_VERBS = {"+": "adds", "-": "subtracts"}
_OF_ANGLES = frozenset({"sin", "cos", "tan"})


@lru_cache(maxsize=1024)
def product(left: Dimension, right: Dimension) -> Dimension:
    """Return the dimension of a product."""
    return left * right


@lru_cache(maxsize=1024)
def quotient(left: Dimension, right: Dimension) -> Dimension:
    """Return the dimension of a quotient."""
    return left / right


class Inferred(NamedTuple):
    """What the inference of an expression found.

    `names` are the names in it, each once and in order, and `many` those of a collection.
    `dimensions` are what its comparisons of numbers compare, by the span of the comparison.
    """

    kind: Kind
    names: tuple[str, ...]
    many: frozenset[str]
    dimensions: Mapping[Span, Dimension]


def infer(expression: Expression, lookup: Vocabulary) -> Kind:
    """Return what kind of value an expression gives.

    Raises LanguageError for a name that is not known, for values that do not fit together, and for
    a collection where one value is due. A bare 0 fits every dimension but temperature.

    >>> from reviewer.judging.kinds import Names
    >>> from reviewer.judging.language import parse
    >>> infer(parse("18 mm * 2 N"), Names()) == infer(parse("1 J"), Names())
    True
    """
    return inferred(expression, lookup).kind


def inferred(expression: Expression, lookup: Vocabulary) -> Inferred:
    """Infer an expression, and keep what was found on the way. Raises LanguageError as `infer`."""
    inference = _Inference(lookup)
    kind, over = inference.see(expression)
    return Inferred(
        kind if over is None else Collection(kind, over),
        tuple(inference.names),
        frozenset(name for name, many in inference.names.items() if many),
        inference.compared,
    )


def check_condition(expression: Expression, lookup: Vocabulary) -> Inferred:
    """Infer an expression that must be one condition, not one for each of a collection."""
    found = inferred(expression, lookup)
    if isinstance(found.kind, Collection):
        raise misfit.not_gathered(expression, found.kind)
    if found.kind != TRUTH:
        raise misfit.not_a_condition(expression, found.kind)
    return found


class _Inference:
    """One walk over an expression with a vocabulary, in which each node is seen once."""

    def __init__(self, lookup: Vocabulary) -> None:
        self.lookup = lookup
        self.names: dict[str, bool] = {}
        self.compared: dict[Span, Dimension] = {}

    def see(self, node: Expression) -> Seen:
        """Return the kind of a node."""
        return _SEE[type(node)](self, node)

    def name(self, node: Name) -> Seen:
        kind = self.lookup(node.path)
        if kind is None:
            raise misfit.unknown_name(node, self.lookup)
        self.names[node.path] = isinstance(kind, Collection)
        return Seen(kind.of, kind.over) if isinstance(kind, Collection) else Seen(kind)

    def number(self, node: Expression) -> SeenNumber:
        """See a node that must be a number to reckon with."""
        number = as_number(node, self.see(node))
        check_from_zero(node)
        return number

    def condition(self, node: Expression) -> Seen:
        """See a node that must be a condition."""
        seen = self.see(node)
        if seen.kind != TRUTH:
            raise misfit.not_a_condition(node, seen.kind)
        return seen

    def negative(self, node: Negative) -> Seen:
        return Seen(*self.number(node.operand))

    def arithmetic(self, node: Arithmetic) -> Seen:
        left, right = self.number(node.left), self.number(node.right)
        if node.operator in _VERBS:
            verb = _VERBS[node.operator]
            return alike(verb, [(node.left, left), (node.right, right)], node.span)
        multiplied = node.operator == "*"
        kind = (product if multiplied else quotient)(left.kind, right.kind)
        return Seen(kind, together(left.over, right.over, node.span))

    def power(self, node: Power) -> Seen:
        base, over = self.number(node.base)
        return Seen(base**node.exponent, over)

    def call(self, node: Call) -> Seen:
        if node.function in {"min", "max"}:
            return self.chain(node.arguments, node.span)
        kind, over = self.number(node.arguments[0])
        if node.function == "abs":
            return Seen(kind, over)
        if node.function == "sqrt":
            return Seen(kind ** Fraction(1, 2), over)
        takes, gives = (ANGLE, NUMBER) if node.function in _OF_ANGLES else (NUMBER, ANGLE)
        if kind != takes:
            raise misfit.argument(node.function, node.arguments[0], kind, takes)
        return Seen(gives, over)

    def chain(self, nodes: tuple[Expression, ...], span: Span) -> Seen:
        """See numbers that are compared with each other."""
        numbers = [(node, as_number(node, self.see(node))) for node in nodes]
        return alike("compares", numbers, span)

    def table(self, node: Table) -> Seen:
        check_points(node)
        argument = self.chain((node.argument, *(at for at, _ in node.points)), node.span)
        values = self.chain(tuple(value for _, value in node.points), node.span)
        return Seen(values.kind, argument.over)

    def aggregate(self, node: Aggregate) -> Seen:
        kind, over = self.number(node.operand)
        if over is None:
            raise misfit.no_collection(f"{node.function} of", node.operand)
        return Seen(kind)

    def every(self, node: Every) -> Seen:
        if self.condition(node.operand).over is None:
            raise misfit.no_collection("every", node.operand)
        return Seen(TRUTH)

    def logical(self, node: Logical) -> Seen:
        over = None
        for operand in node.operands:
            over = together(over, self.condition(operand).over, node.span)
        return Seen(TRUTH, over)

    def comparison(self, node: Comparison) -> Seen:
        seen = [(operand, self.see(operand)) for operand in node.operands]
        if any(isinstance(each.kind, Texts) for _, each in seen):
            return self.texts(node, [each for _, each in seen])
        numbers = [(operand, as_number(operand, each)) for operand, each in seen]
        if any(isinstance(operand, Arithmetic) for operand in node.operands):
            for operand in node.operands:
                check_from_zero(operand)
        kind, over = alike("compares", numbers, node.span)
        if isinstance(kind, Dimension):
            self.compared[node.span] = kind
        return Seen(TRUTH, over)

    def texts(self, node: Comparison, seen: list[Seen]) -> Seen:
        """Check a comparison of texts: equal or not, and with a word that it can be."""
        (left, over), (right, other) = seen[:2]
        if not isinstance(left, Texts) or not isinstance(right, Texts) or len(seen) > 2:
            raise misfit.text_with_other(node, left, right)
        if node.operators[0] not in {"==", "!="}:
            raise misfit.texts_in_order(node)
        for kind, operand in ((left, node.operands[1]), (right, node.operands[0])):
            if isinstance(operand, Text):
                misfit.check_word(operand, kind)
        return Seen(TRUTH, together(over, other, node.span))

    def among(self, node: Among) -> Seen:
        kind, over = self.see(node.item)
        if not isinstance(kind, Texts):
            raise misfit.not_a_text(node.item, kind)
        for text in node.texts:
            misfit.check_word(text, kind)
        return Seen(TRUTH, over)

    def given(self, node: Given) -> Seen:
        return Seen(TRUTH, self.name(node.name).over)


_SEE: dict[type, Callable[[_Inference, Any], Seen]] = {
    Quantity: lambda _, node: Seen(node.dimension),
    Text: lambda _, node: Seen(TEXT),
    Name: _Inference.name,
    Negative: _Inference.negative,
    Arithmetic: _Inference.arithmetic,
    Power: _Inference.power,
    Call: _Inference.call,
    Table: _Inference.table,
    Aggregate: _Inference.aggregate,
    Comparison: _Inference.comparison,
    Among: _Inference.among,
    Given: _Inference.given,
    Not: lambda inference, node: inference.condition(node.operand),
    Every: _Inference.every,
    Logical: _Inference.logical,
}
