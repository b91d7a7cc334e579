"""What of the graph matters to a finding: from what can be changed to what is held back."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import networkx as nx

from reviewer.deriving.plan import Plan
from reviewer.judging.finding import Finding
from reviewer.judging.reviewed import Review
from reviewer.studying.trace import Step, bare_steps

FAILS = " fails"


@dataclass(frozen=True, slots=True)
class Route:
    """Quantities on the way to a failed finding, those given first, each with what it feeds.

    `edges` are pairs of names of quantities; `decisive` are those that the rule reads itself.
    `before` are the findings that it stands behind, `held` those that wait behind it, directly or
    one behind the other, each with the name of the one that it waits for.
    """

    steps: tuple[Step, ...]
    edges: tuple[tuple[str, str], ...]
    decisive: tuple[str, ...]
    before: tuple[Finding, ...]
    held: tuple[tuple[str, Finding], ...]


def route_of(review: Review, finding: Finding) -> Route:
    """The shortest ways from the values that could mend a finding to it, and what waits for it.

    The review must have a design.
    """
    assert review.derived is not None
    plan = review.derived.values.plan
    paths = list(_paths(plan, finding))
    slots = dict.fromkeys(slot for path in paths for slot in path)
    order = {slot: place for place, slot in enumerate(plan.order)}
    ordered = sorted({*slots, *finding.slots}, key=lambda slot: order[slot])
    steps = bare_steps(review, ordered, finding.case)
    edges = dict.fromkeys(
        pair for path in paths for pair in pairwise(slot for slot in path if slot in steps)
    )
    return Route(
        tuple(steps.values()),
        tuple((steps[first].name, steps[then].name) for first, then in edges),
        tuple(steps[slot].name for slot in finding.slots if slot in steps),
        tuple(_before(review, finding)),
        tuple(_held(review.findings, finding)),
    )


def _paths(plan: Plan, finding: Finding) -> Iterator[list[int]]:
    """For each value that could mend it the shortest way to what the rule reads."""
    for named in finding.change:
        part, _, path = named.partition(" (")[0].partition(".")
        start = plan.slot(part, path)
        if start is None:
            continue
        lengths: Mapping[int, list[int]] = nx.single_source_shortest_path(plan.graph, start)
        ways = [lengths[slot] for slot in finding.slots if slot in lengths]
        if ways:
            yield min(ways, key=len)


def _before(review: Review, finding: Finding) -> Iterator[Finding]:
    rule = next((each for each in review.rules if each.name == finding.rule), None)
    for name in rule.behind if rule else ():
        yield from (
            each for each in review.findings if each.rule == name and each.part == finding.part
        )


def _held(findings: Sequence[Finding], failed: Finding) -> Iterator[tuple[str, Finding]]:
    """What waits for a finding, and what waits for that."""
    waiting, seen = [failed.name], {failed.name}
    while waiting:
        name = waiting.pop(0)
        for each in findings:
            if f"{name}{FAILS}" in each.open_because and each.name not in seen:
                seen.add(each.name)
                waiting.append(each.name)
                yield name, each
