"""The points of a look-up table, as numbers in SI units."""

from collections.abc import Callable
from itertools import pairwise
from typing import Any

import numpy as np

from reviewer.judging.expression import Expression, Negative, Quantity, Table
from reviewer.judging.language_error import LanguageError
from reviewer.judging.writing import write

EDGE = 1e-9  # a value at the end of a table may miss it by rounding


def constant(node: Expression) -> float:
    """Return the SI value of a number that stands in the text, with its sign."""
    if isinstance(node, Negative):
        return -constant(node.operand)
    assert isinstance(node, Quantity)
    return node.value


def check_points(table: Table) -> None:
    """Refuse a table of one point, or whose points do not rise. Raises LanguageError."""
    if len(table.points) < 2:
        raise LanguageError(
            table.span,
            "the table has one point",
            write(table.points[0][0]),
            "at least two, between which to look up",
        )
    for (before, _), (at, _) in pairwise(table.points):
        if constant(at) <= constant(before):
            raise LanguageError(
                at.span,
                "the table's points do not rise",
                f"{write(at)} behind {write(before)}",
                "each point above the one before",
                "sort the points, and give each once",
            )


def look_up(table: Table) -> Callable[[Any], Any]:
    """Return the function that looks a value up between the points of a table, in straight lines.

    Outside the table the value is unknown (NaN), but for 1e-9 of its largest point.
    """
    points = np.array([constant(at) for at, _ in table.points])
    values = np.array([constant(value) for _, value in table.points])
    beyond = EDGE * max(abs(points[0]), abs(points[-1]))
    first, last = points[0] - beyond, points[-1] + beyond

    def looked_up(argument: Any) -> Any:
        inside = (argument >= first) & (argument <= last)
        return np.where(inside, np.interp(argument, points, values), np.nan)

    return looked_up
