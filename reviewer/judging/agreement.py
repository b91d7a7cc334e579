"""Whether numbers that meet in an expression are of one dimension and one collection."""

from typing import NamedTuple

from reviewer.judging import misfit
from reviewer.judging.expression import Expression, Negative, Quantity, Span
from reviewer.judging.kinds import One
from reviewer.notation.dimension import NUMBER, TEMPERATURE, Dimension


class Seen(NamedTuple):
    """The kind of a node, and the binder that it runs over if it has many values."""

    kind: One
    over: str | None = None


class SeenNumber(NamedTuple):
    """The dimension of a node, and the binder that it runs over if it has many values."""

    kind: Dimension
    over: str | None


def as_number(node: Expression, seen: Seen) -> SeenNumber:
    """Return a node's kind as that of a number, or refuse it."""
    if not isinstance(seen.kind, Dimension):
        raise misfit.not_a_number(node, seen.kind)
    return SeenNumber(seen.kind, seen.over)


def alike(verb: str, numbers: list[tuple[Expression, SeenNumber]], span: Span) -> Seen:
    """Return what numbers are together that must all be of one dimension.

    A bare 0 goes with any dimension but temperature, whose scales have different zeros.
    """
    telling, (kind, over) = next(
        (pair for pair in numbers if not is_zero(pair[0])), (numbers[0][0], numbers[0][1])
    )
    for node, (other, runs_over) in numbers:
        free = is_zero(node) and kind != TEMPERATURE and other == NUMBER
        if other != kind and not free:
            pair = sorted([(telling, kind), (node, other)], key=lambda each: each[0].span)
            raise misfit.dimensions(verb, pair[0], pair[1], span)
        over = together(over, runs_over, span)
    return Seen(kind, over)


def check_from_zero(node: Expression) -> None:
    """Refuse a reading like `5 degC` where values are added up: is it 5 K, or 278.15 K?"""
    if isinstance(node, Quantity) and not node.from_zero:
        raise misfit.point_on_a_scale(node)


def is_zero(node: Expression) -> bool:
    """Whether a node is a bare 0, which fits every dimension."""
    if isinstance(node, Negative):
        node = node.operand
    return isinstance(node, Quantity) and not node.unit and node.number == 0


def together(over: str | None, other: str | None, span: Span) -> str | None:
    """Return the binder that two values run over together; two different ones are refused."""
    if over is not None and other is not None and over != other:
        raise misfit.two_collections(over, other, span)
    return over if other is None else other
