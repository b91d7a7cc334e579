"""Remedies: for each failed finding the smallest changes that mend it and break nothing else."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from reviewer.deriving.derived import Derived
from reviewer.judging.finding import Finding, Level
from reviewer.judging.remedies import Remedies, Remedy
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.notation.show import show
from reviewer.reading.shop_stock import Tables
from reviewer.studying.axis import Axis, Option, axes_of
from reviewer.studying.given import changeable
from reviewer.studying.ladders import PROJECT
from reviewer.studying.pairs import best_pair
from reviewer.studying.rewriting import unit_of
from reviewer.studying.search import AxisKey, Search, Target
from reviewer.studying.solving import Side, sides_of, steps_between
from reviewer.studying.study import Key, key_of
from reviewer.studying.why_none import why_none

SEARCHED: tuple[Level, ...] = ("must", "should")
MOST_OFFERED = 4
MOST_REJECTED = 3
ROUNDS = 3  # of solving a side again, each with the cases that were found to govern
MOST_VERIFIED = 3  # options of a side that are judged in every case
FIRST_TRIED = 2  # options of a side that are judged before more of them are


@dataclass(frozen=True, slots=True)
class Tried:
    """One option that was judged in every case: how far from the present, and what it comes to."""

    distance: float
    remedy: Remedy
    broken: tuple[Key, ...] = ()


def with_remedies(
    review: Review,
    rules: Sequence[Rule],
    tables: Tables = PROJECT,
    levels: Sequence[Level] = SEARCHED,
) -> Review:
    """The review with remedies on each fail of some levels that is not conceded.

    `rules` are those that the review was judged by, in order, `tables` the stock to buy from.
    """
    wanted = [each for each in review.findings if is_searched(each, levels)]
    if review.derived is None or not wanted:
        return review
    found = remedies_of(review.derived, rules, wanted, tables)
    told = [replace(each, remedies=found.get(key_of(each))) for each in review.findings]
    return replace(review, findings=tuple(told))


def is_searched(finding: Finding, levels: Sequence[Level] = SEARCHED) -> bool:
    """Whether remedies are searched for a finding, where they are for some levels."""
    return (
        finding.verdict == "fail"
        and finding.level in levels
        and finding.concession is None
        and not finding.is_silenced
        and bool(finding.requires)
    )


def remedies_of(
    derived: Derived,
    rules: Sequence[Rule],
    findings: Sequence[Finding],
    tables: Tables = PROJECT,
) -> dict[Key, Remedies]:
    """Remedies of some failed findings of a design."""
    search = Search(derived, rules, tables)
    by_name = {rule.name: rule for rule in rules}
    targets = [search.target(by_name[each.rule], key_of(each)) for each in findings]
    axes, axes_by_target = _axes(search, targets)
    tried: dict[Key, list[Tried]] = {target.key: [] for target in targets}
    for field, axis in axes.items():
        concerned = [each for each in targets if field in axes_by_target[each.key]]
        for target, found in _solved(search, axis, concerned):
            tried[target.key].append(found)
    return {
        target.key: _told(search, target, tried[target.key], axes, axes_by_target)
        for target in targets
    }


Axes = Mapping[AxisKey, Axis]


def _axes(
    search: Search, targets: Sequence[Target]
) -> tuple[dict[AxisKey, Axis], dict[Key, list[AxisKey]]]:
    """Every axis once, and which of them each target may use."""
    axes: dict[AxisKey, Axis] = {}
    used: dict[Key, list[AxisKey]] = {}
    for target in targets:
        given = changeable(search.derived, target.rule, target.key)
        found = axes_of(search.derived, given, search.tables)
        used[target.key] = [axis.key for axis in found]
        for axis in found:
            axes.setdefault(axis.key, axis)
    return axes, used


def _solved(
    search: Search, axis: Axis, targets: Sequence[Target]
) -> Iterator[tuple[Target, Tried]]:
    """For each side of an axis the smallest option that breaks nothing; else what it breaks.

    Where an option turns out to fail in a case that was not looked at, that case is taken in, and
    the side is solved again.
    """
    settled: set[tuple[Key, bool]] = set()
    for _ in range(ROUNDS):
        sides = [
            side
            for side in sides_of(search, axis, targets)
            if side.options and (side.target.key, side.up) not in settled
        ]
        for side, found in _judge_sides(search, sides):
            settled.add((side.target.key, side.up))
            yield side.target, found
        left = {side.target.key for side in sides if (side.target.key, side.up) not in settled}
        targets = [target for target in targets if target.key in left]
        if not targets:
            return


def _judge_sides(search: Search, sides: Sequence[Side]) -> Iterator[tuple[Side, Tried]]:
    """The first options of all sides in one batch; more of a side where those break something."""
    points = [(side, option) for side in sides for option in side.options[:FIRST_TRIED]]
    if not points:
        return
    judged = search.judged([option.point for _, option in points])
    mending: dict[int, list[Option]] = {id(side): [] for side in sides}
    for index, (side, option) in enumerate(points):
        if judged.mends(side.target, index):
            mending[id(side)].append(option)
    for side in sides:
        good = mending[id(side)] or _farther(search, side)
        yield from ((side, found) for found in _verified(search, side, good))


def _farther(search: Search, side: Side) -> list[Option]:
    """Larger changes of one side that break nothing, the smallest of them refined."""
    options = list(side.options)
    judged = search.judged([option.point for option in options])
    good = [index for index in range(len(options)) if judged.mends(side.target, index)]
    if not good or good[0] == 0:
        return [options[index] for index in good]
    low, high = options[good[0] - 1], options[good[0]]
    between = steps_between(side.axis, low.size, high.size, 12)
    if between:
        inner = search.judged([option.point for option in between])
        nearer = [each for index, each in enumerate(between) if inner.mends(side.target, index)]
        return [*nearer, *(options[index] for index in good)]
    return [options[index] for index in good]


def _verified(search: Search, side: Side, good: Sequence[Option]) -> Iterator[Tried]:
    """The first of some options that mends in every case, and a smaller one that breaks others."""
    mending = None
    for option in good[:MOST_VERIFIED]:
        found = _in_every_case(search, side, option)
        if found is not None and not found.broken:
            mending = found
            break
    for option in side.options[:MOST_VERIFIED]:
        if option in good and mending is not None:
            break
        found = _in_every_case(search, side, option)
        if found is not None:
            yield found
            break
    if mending is not None:
        yield mending


def _in_every_case(search: Search, side: Side, option: Option) -> Tried | None:
    """An option judged in all cases; None where the target does not hold in all of them."""
    judged = search.judged([option.point], every_case=True)
    course = judged.courses[side.target.key]
    if not judged.passes(side.target, 0):
        search.learn(side.target, int(course.case[0]))
        return None
    broken = judged.broken[0]
    remedy = Remedy(
        option.changes,
        float(course.utilisation[0]),
        tuple(sorted(set(broken.values()))),
        _limit(side),
    )
    return Tried(side.axis.distance(option), remedy, tuple(broken))


def _limit(side: Side) -> str:
    quantity = side.axis.given.value.quantity
    if side.limit is None or quantity is None:
        return ""
    return show(math.copysign(side.limit, quantity.value), unit_of(quantity))


def _told(
    search: Search,
    target: Target,
    tried: Sequence[Tried],
    axes: Axes,
    used: Mapping[Key, Sequence[AxisKey]],
) -> Remedies:
    """What is offered of all that was tried, or the best pair, or why there is nothing."""
    ordered = [each.remedy for each in sorted(tried, key=lambda each: each.distance)]
    offered = [each for each in ordered if not each.breaks]
    rejected = [each for each in ordered if each.breaks]
    own = [axes[each] for each in used[target.key]]
    if offered:
        return Remedies(tuple(offered[:MOST_OFFERED]), tuple(rejected[:MOST_REJECTED]))
    pair = best_pair(search, target, own, _partners(search, tried, own)) if own else None
    if pair is not None:
        return Remedies((pair,), tuple(rejected[:MOST_REJECTED]))
    return Remedies(
        (), tuple(rejected[:MOST_REJECTED]), why_none(search, target, own, breaking=bool(rejected))
    )


def _partners(search: Search, tried: Sequence[Tried], own: Sequence[Axis]) -> list[Axis]:
    """What could mend that which a single change breaks, so that the two go together."""
    by_name = {rule.name: rule for rule in search.rules}
    known = {axis.key for axis in own}
    found = [
        axis
        for key in dict.fromkeys(key for each in tried for key in each.broken)
        for axis in axes_of(
            search.derived, changeable(search.derived, by_name[key[0]], key), search.tables
        )
        if axis.key not in known
    ]
    return list({axis.key: axis for axis in found}.values())
