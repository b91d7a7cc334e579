"""The steps of assembly: each part joined to what carries it, and what is lifted then."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, isnan, nan

from reviewer.deriving.assembly import standing_on
from reviewer.deriving.tree import Tree
from reviewer.reporting.sheets.quantities import Quantities


@dataclass(frozen=True, slots=True)
class Step:
    """A part joined to its carriers; `lifted` is the mass of all that is lifted with it [kg].

    `above` are the parts that are joined to it already. `count` like parts are lifted one by one.
    """

    part: str
    carriers: tuple[str, ...]
    above: tuple[str, ...]
    count: int
    lifted: float
    people: int | None


def steps_of(values: Quantities) -> Iterator[Step]:
    """The steps in order; the mass that one person lifts is the limit that is in force."""
    tree = Tree(values.design)
    most = values.number("limit", "lift_by_hand")
    for number, part in enumerate(tree.steps):
        above = standing_on(part, tree, frozenset(tree.steps[:number]))
        masses = [values.number(part, "mass")]
        masses += [values.number(each, "mass") * values.count(each) for each in above]
        lifted = nan if any(isnan(each) for each in masses) else sum(masses)
        people = None if isnan(lifted) else max(1, ceil(lifted / most - 1e-9))
        carriers = values.design.parts[part].carried_by
        yield Step(part, carriers, tuple(above), values.count(part), lifted, people)
