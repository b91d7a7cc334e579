"""How far each of many sizes can be moved until a finding fails, all of them in one batch.

First a little to either side, which tells which finding a size reaches first; then as far as that
one lets it; then judged by all rules once more.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import expm1, inf, log

import networkx as nx
import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.plan import Node
from reviewer.notation.dimension import ENERGY, LENGTH
from reviewer.parts.kind import Kind
from reviewer.parts.row import Measure
from reviewer.reading.due import is_within
from reviewer.studying.governing import on_cases
from reviewer.studying.search import Search, Target
from reviewer.studying.study import FAILS, OPEN, PASSES, Course, Field, Key, courses, vary

FIRST = 0.01  # of a value: how far it is moved to see which rule it reaches first
FIRST_LENGTH = 0.05e-3  # m, but a length at least so far
FARTHEST = 0.1  # of a value: a limit that is farther off needs no inspection
FARTHEST_TORQUE = 0.6  # of a torque, which a hand is a third off
FARTHEST_LENGTH = 5e-3  # m, but of a length at least so far
FARTHEST_READ = 20e-3  # m, of what a gauge reads
ROUNDS = 16
MOST_RULES = 4  # that may take over from each other on one side
NEARLY_ALL = 1 - 1e-5
CLOSE = 1e-4  # of the way to a limit: a search ends that has it as closely
JUST_WITHIN = 1e-3  # of the way to a limit by which it is judged again inside it
SAME = 1e-9

Array = NDArray[np.float64]


@dataclass(slots=True)
class Side:
    """A size on one side: how far it can be moved, and which finding then fails first."""

    node: Node
    now: float
    sign: float
    target: Target | None = None
    passes: float = 0.0
    used_there: float = 0.0
    fails: float = inf
    used_beyond: float = inf
    distance: float = inf


def move_out(search: Search, sides: Sequence[Side]) -> None:
    """Move every side as far as the rules that must or should hold, and hold now, let it."""
    _reach(search, sides)
    waiting = [side for side in sides if side.target is not None]
    for _ in range(MOST_RULES):
        _approach(search, waiting)
        waiting = _look_again(search, [side for side in waiting if side.target is not None])


def _first(side: Side) -> float:
    least = FIRST_LENGTH if side.node.row.dimension == LENGTH else 0.0
    return max(FIRST * abs(side.now), least)


def _farthest(side: Side) -> float:
    row = side.node.row
    share = FARTHEST_TORQUE if row.dimension == ENERGY else FARTHEST
    least = FARTHEST_LENGTH if row.dimension == LENGTH else 0.0
    return max(share * abs(side.now), least, FARTHEST_READ if row.read else 0.0)


def _numbers(sides: Sequence[Side], distances: Sequence[float]) -> dict[Field, Array]:
    """Columns in which each sample moves one size alone."""
    numbers: dict[Field, Array] = {}
    for index, (side, distance) in enumerate(zip(sides, distances, strict=True)):
        field = side.node.part, side.node.row.path
        column = numbers.setdefault(field, np.full(len(sides), side.now))
        value = side.now + side.sign * distance
        entry = side.node.row.given
        outside = isinstance(entry, Measure) and not is_within(entry, value)
        column[index] = side.now if outside else value
    return numbers


def _judged(search: Search, sides: Sequence[Side], distances: Sequence[float]) -> list[Course]:
    some = on_cases(search.derived, sorted(search.breaking))
    numbers = _numbers(sides, distances)
    values = vary(some, numbers, {}, _followed(search))
    return list(courses(some, values, search.rules))


def _followed(search: Search) -> frozenset[int]:
    """The slots that are computed again: all but what is searched for over a travel.

    A motion is looked at in a review of its own; here it stays as it is.
    """
    plan = search.derived.values.plan
    parts = search.derived.design.parts
    travels = frozenset(
        node.slot
        for node in plan.nodes
        if node.part in parts and _is_of_travel(node, parts[node.part].kind)
    )
    return frozenset(range(len(plan.nodes))) - travels - plan.below(travels)


def _is_of_travel(node: Node, kind: Kind) -> bool:
    return kind.implied or (node.row.searches and not kind.carries_load)


def _reach(search: Search, sides: Sequence[Side]) -> None:
    """Find which finding each side reaches first, in a straight line from a first small step.

    A size on which a search for the worst direction hangs is moved up alone, and what it does
    downward is taken for the opposite: the ends that are found are judged by every rule anyway. The
    others are moved as far as anybody looks too: what tells no share of its limit fails there.
    """
    slow = _slow(search)
    far = [side for side in sides if side.node.slot not in slow]
    _step_out(search, [side for side in sides if side.node.slot in slow])
    _step_out(search, far)
    found = _judged(search, far, [_farthest(side) for side in far]) if far else []
    for course in found:
        if not _may_break(search, course.key) or course.rule.is_silenced:
            continue
        before = float(search.now[course.key].utilisation[0])
        for index, side in enumerate(far):
            first, last = _first(side), _farthest(side)
            silent = not before > 0.0  # a limit of zero: it tells no share of itself
            if silent and course.verdict[index] == FAILS and (first + last) / 2 < side.distance:
                side.target = search.target(course.rule, course.key)
                side.distance = (first + last) / 2
                side.passes, side.used_there = 0.0, before
                side.fails, side.used_beyond = last, inf


def _step_out(search: Search, sides: Sequence[Side]) -> None:
    """Move some sizes a little, and take for each side the finding that seems to come first."""
    slow = _slow(search)
    moved = [side for side in sides if side.sign > 0 or side.node.slot not in slow]
    place = {(side.node.slot, side.sign): index for index, side in enumerate(moved)}
    for course in _judged(search, moved, [_first(side) for side in moved]) if moved else []:
        if not _may_break(search, course.key) or course.rule.is_silenced:
            continue
        target = search.target(course.rule, course.key)
        before = float(search.now[course.key].utilisation[0])
        for side in sides:
            at = place.get((side.node.slot, side.sign))
            up = place[side.node.slot, 1.0]
            used = float(course.utilisation[up if at is None else at])
            used = 2 * before - used if at is None else used  # the opposite
            broken = at is not None and course.verdict[at] in (FAILS, OPEN)
            _consider(side, target, before, used, broken=broken)


def _slow(search: Search) -> set[int]:
    """The slots on which a search for the worst direction hangs."""
    plan = search.derived.values.plan
    searching = [node.slot for node in plan.nodes if node.row.searches and not node.given]
    return set().union(*(nx.ancestors(plan.graph, slot) for slot in searching))


def _consider(side: Side, target: Target, before: float, used: float, *, broken: bool) -> None:
    """Take a finding for that which a side reaches first, if it does so before any other."""
    step = _first(side)
    distance = step if broken else _ahead(side, step, before, used)
    if distance >= min(side.distance, _farthest(side)) * (1 - SAME):
        return
    side.distance, side.target = distance, target
    side.passes, side.used_there = 0.0, before
    side.fails, side.used_beyond = (step, used) if broken else (inf, inf)


def _ahead(side: Side, step: float, before: float, used: float) -> float:
    """How far off a limit seems, in a straight line or by a power of the size: the nearer one."""
    straight = step * (1.0 - before) / (used - before) if used - before > SAME else inf
    size = side.now + side.sign * step
    if not (before > 0.0 and used > before and side.now > 0.0 and size > 0.0):
        return straight
    way = -log(before) * log(size / side.now) / log(used / before)  # on a scale of logarithms
    return min(straight, abs(side.now * expm1(way))) if abs(way) < 1.0 else straight


def _may_break(search: Search, key: Key) -> bool:
    return int(search.now[key].verdict[0]) == PASSES and search.now[key].rule.level != "note"


def _approach(search: Search, sides: Sequence[Side]) -> None:
    """Move each side to where its finding just holds, all of them together."""
    for _ in range(ROUNDS):
        open_sides = [side for side in sides if side.target is not None and not _is_close(side)]
        if not open_sides:
            return
        for side in open_sides:
            side.distance = _next(side)
        targets = list(
            {side.target.key: side.target for side in open_sides if side.target}.values()
        )
        wanted = _followed(search) & frozenset().union(*(target.wanted for target in targets))
        cases = set().union(*(search.governing[target.key] for target in targets))
        some = on_cases(search.derived, sorted(cases))
        numbers = _numbers(open_sides, [side.distance for side in open_sides])
        values = vary(some, numbers, {}, wanted)
        rules = list({target.rule.name: target.rule for target in targets}.values())
        found = {course.key: course for course in courses(some, values, rules)}
        for index, side in enumerate(open_sides):
            assert side.target is not None
            _note(side, found[side.target.key], index)


def _is_close(side: Side) -> bool:
    return side.fails < inf and side.fails - side.passes <= CLOSE * side.fails


def _next(side: Side) -> float:
    """The next distance to try: in a straight line where both ends are known, else farther out."""
    if side.fails == inf:
        return min(side.distance * 1.02, _farthest(side))
    told = np.isfinite(side.used_beyond) and side.used_beyond > max(1.0, side.used_there)
    if not told:
        return (side.passes + side.fails) / 2
    share = (1.0 - side.used_there) / (side.used_beyond - side.used_there)
    return side.passes + min(max(share, 0.02), NEARLY_ALL) * (side.fails - side.passes)


def _note(side: Side, course: Course, index: int) -> None:
    used = float(course.utilisation[index])
    if course.verdict[index] in (FAILS, OPEN):
        side.fails, side.used_beyond = side.distance, used
        return
    if side.distance >= _farthest(side) * (1 - SAME):  # it holds as far as anybody looks
        side.target = None
        return
    further = side.distance - side.passes
    rise = used - side.used_there
    side.passes, side.used_there = side.distance, used
    if side.fails == inf:
        ahead = further * (1.0 - used) / rise if rise > SAME else inf
        side.distance = min(side.distance + ahead, _farthest(side))


def _look_again(search: Search, sides: Sequence[Side]) -> list[Side]:
    """Judge each end by every rule: the sides on which another fails before it, which sets it."""
    if not sides:
        return []
    again: dict[int, Side] = {}
    inside = [side.passes * (1 - JUST_WITHIN) for side in sides]
    for course in _judged(search, sides, inside):
        if not _may_break(search, course.key) or course.rule.is_silenced:
            continue
        for index, side in enumerate(sides):
            assert side.target is not None
            broken = course.verdict[index] in (FAILS, OPEN)
            if broken and side.target.key != course.key and inside[index] > 0.0:
                used = float(search.now[course.key].utilisation[0])
                side.target = search.target(course.rule, course.key)
                side.fails, side.used_beyond = inside[index], float(course.utilisation[index])
                side.passes, side.used_there = 0.0, used
                again[index] = side
    return list(again.values())


def limit_of(side: Side) -> float:
    """Where the finding just holds, between the last distance that passes and the first that fails.

    Where it has no number that could tell, it is the last that passes.
    """
    rise = side.used_beyond - side.used_there
    if not np.isfinite(rise) or rise <= SAME:
        return side.passes
    share = min(max((1.0 - side.used_there) / rise, 0.0), 1.0)
    return side.passes + share * (side.fails - side.passes)
