"""How much is asked of how much there is, in words that fit the way a requirement looks."""

from functools import cache
from math import isnan

from reviewer.judging.expression import Comparison, Every, Expression, Logical, names
from reviewer.judging.finding import Finding, Side
from reviewer.judging.language import parse
from reviewer.judging.language_error import LanguageError
from reviewer.notation.show import show

MOST_DIGITS = 6
VAST = 100.0  # a larger utilisation says no more than that
WORDS = {
    "least": "needs {demand}, has {capacity}",
    "most": "is {demand}, may be {capacity}",
    "": "{demand} against {capacity}",
}
AT_THE_LIMIT = {  # of a strict comparison, which fails there
    "least": "needs more than {demand}, has {capacity}",
    "most": "is {demand}, must be less than {capacity}",
    "": "{demand} against {capacity}",
}


def usage(finding: Finding) -> str:
    """Demand, capacity and utilisation of a finding: `needs 10.4 mm, has 9 mm, 1.16 times ...`."""
    if finding.demand is None or finding.capacity is None:
        return ""
    demand, capacity = shown_apart(finding.demand, finding.capacity)
    by_bound = AT_THE_LIMIT if demand == capacity else WORDS
    words = by_bound[bound(finding.requires)].format(demand=demand, capacity=capacity)
    if isnan(finding.utilisation):
        return words
    ratio = "over 100" if finding.utilisation > VAST else shown_ratio(finding.utilisation)
    return f"{words}, {ratio} times as much"


@cache
def bound(requires: str) -> str:
    """Whether a requirement sets a least or a most; neither where it sets both or a range.

    >>> bound("gap >= 2 mm"), bound("sag <= reach / 100"), bound("a <= 1 mm or a >= 9 mm")
    ('least', 'most', '')
    """
    try:
        found = {_bound(each) for each in _comparisons(parse(requires))}
    except LanguageError:
        return ""
    return found.pop() if len(found) == 1 else ""


def _comparisons(node: Expression) -> tuple[Expression, ...]:
    if isinstance(node, Logical):
        return tuple(each for operand in node.operands for each in _comparisons(operand))
    return _comparisons(node.operand) if isinstance(node, Every) else (node,)


def _bound(node: Expression) -> str:
    """The side on which a comparison has its limit: the right one, unless the left is constant."""
    if not isinstance(node, Comparison) or len(node.operators) != 1:
        return ""
    turned = not names(node.operands[0])
    sign = node.operators[0][0]
    if sign not in "<>":
        return ""
    return "most" if (sign == "<") != turned else "least"


def shown_ratio(utilisation: float) -> str:
    """A utilisation to two decimals; to more where it would read 1.00 and is not.

    >>> shown_ratio(0.5), shown_ratio(1.0), shown_ratio(1.0004), shown_ratio(0.99999)
    ('0.50', '1.00', '1.0004', '0.99999')
    """
    for digits in range(2, MOST_DIGITS + 1):
        text = f"{utilisation:.{digits}f}"
        if float(text) != 1.0:
            return text
    return "1.00"


def shown_apart(demand: Side, capacity: Side) -> tuple[str, str]:
    """Demand and capacity with as many digits as it takes to tell them apart."""
    for digits in range(3, MOST_DIGITS + 1):
        pair = show(demand.value, demand.unit, digits), show(capacity.value, capacity.unit, digits)
        if pair[0] != pair[1]:
            break
    return pair
