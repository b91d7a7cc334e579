"""Judging many designs of one structure at once: each rule once for all that agree in choices."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any, NamedTuple

from numpy.typing import NDArray

from reviewer.deriving.evaluate import Values
from reviewer.deriving.groups import Indices
from reviewer.deriving.stack import Numbers, Picker, SampleValues, Stack
from reviewer.judging.binding import Bound, bind
from reviewer.judging.finding import Finding
from reviewer.judging.judge import Hearing, marks, stands_behind, verdict_of
from reviewer.judging.judged import Judged
from reviewer.judging.rule import Rule
from reviewer.judging.telling import Teller
from reviewer.reading.design import Design


class Place(NamedTuple):
    """A rule on a part in all designs of a structure, and the findings that it stands behind."""

    rule: Rule
    bound: Bound
    behind: tuple[tuple[str, str], ...]


def judge_stack(
    stack: Stack, designs: Sequence[Design], rules: Sequence[Rule]
) -> list[tuple[Values, tuple[Finding, ...]]]:
    """Values and findings of each design, as `judge` gives them of each alone."""
    places, _ = stack.structure.noted(
        ("places", id(rules)), lambda: (places_of(stack, designs[0], rules), rules)
    )
    values = [SampleValues(stack, sample, design) for sample, design in enumerate(designs)]
    with_values = list(zip(designs, values, strict=True))
    hearings = [Hearing(Teller(design, own, stack.structure.cases)) for design, own in with_values]
    for place in places:
        bounds = [place.bound.of(design, own) for design, own in with_values]
        verdicts = _verdicts(stack, place, bounds)
        for hearing, bound, judged in zip(hearings, bounds, verdicts, strict=True):
            hearing.hear(place.rule, bound, place.behind, lambda judged=judged: judged)  # type: ignore[misc]
    return [(own, tuple(hearing.findings)) for own, hearing in zip(values, hearings, strict=True)]


def places_of(stack: Stack, design: Design, rules: Sequence[Rule]) -> list[Place]:
    """Every rule on every part of a structure, in the order in which they are judged."""
    plan = stack.structure.plan
    nothing = Values(plan, [], stack.cases)  # places are kept, values are not
    found: list[Place] = []
    judged: set[tuple[str, str]] = set()
    for rule in rules:
        for bound in bind(rule, design, nothing):
            found.append(Place(rule, bound, tuple(stands_behind(rule, bound, design, judged))))
            judged.add((rule.name, bound.part))
    return found


def _verdicts(stack: Stack, place: Place, bounds: Sequence[Bound]) -> list[Judged]:
    """What a rule comes to in each design."""
    apart = list(_marks(stack, place.bound.all_slots(place.rule.names)))
    if not apart:
        return _of_group(stack, place, None, bounds)
    found: dict[int, Judged] = {}
    for members in stack.everyone.finer(apart).members:
        some = [bounds[each] for each in members]
        found.update(zip(members.tolist(), _of_group(stack, place, members, some), strict=True))
    return [found[sample] for sample in range(len(bounds))]


def _marks(stack: Stack, slots: Iterable[int]) -> Iterator[NDArray[Any]]:
    """Marks of the samples that differ in words, or in what there is of numbers."""
    for column in (stack.columns[slot] for slot in slots):
        if isinstance(column, Numbers):
            if column.shape is not None:
                yield column.shape
        elif not column.groups.is_one:
            yield column.groups.which


def _of_group(
    stack: Stack, place: Place, chosen: Indices | None, bounds: Sequence[Bound]
) -> list[Judged]:
    values = Values(stack.structure.plan, Picker(stack, chosen), stack.cases, len(bounds))
    found = marks(place.rule, place.bound.of(place.bound.design, values))
    return [verdict_of(place.rule, each, found, row) for row, each in enumerate(bounds)]
