"""Reviews of many designs at once: those of one structure are computed and judged together.

Each review is equal, to the last bit, to that of its design alone.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from reviewer.deriving.derived import Derived, derive
from reviewer.deriving.stack import CannotStack, Stack
from reviewer.deriving.structure import Structure, structure_of
from reviewer.judging.concession import with_concessions
from reviewer.judging.finding import Finding
from reviewer.judging.in_force import InForce
from reviewer.judging.judge import judge
from reviewer.judging.judge_stack import judge_stack
from reviewer.judging.reviewed import Review
from reviewer.reading.design import Design
from reviewer.reading.folder import Folder
from reviewer.reading.noted import Noted, noting
from reviewer.reviewing import begin


@dataclass(frozen=True, slots=True)
class Task:
    """A design to review: its text, what it is called, its folder, and what is in force for it.

    What is read beside it is noted in `read`.
    """

    in_force: InForce
    source: bytes
    path: str
    folder: Folder | None = None
    read: Noted = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Begun:
    """A design that has been read, and its place in the list."""

    index: int
    review: Review
    design: Design
    in_force: InForce


def review_many(tasks: Sequence[Task | None], on: date | None = None) -> list[Review | None]:
    """The review of each design, but for those that are to be reviewed alone.

    They are those in which something failed, and those held against load tests.
    """
    found: list[Review | None] = [None] * len(tasks)
    together: dict[tuple[Structure, int], list[_Begun]] = {}
    for index, task in enumerate(tasks):
        if task is None:
            continue
        try:
            with noting(task.read):
                begun, design = begin(task.in_force, task.source, task.path, task.folder)
            if design is None:
                found[index] = begun
                continue
            if design.measured:
                continue
            key = structure_of(design), id(task.in_force.rules)
        except Exception:  # it will be told when the design is reviewed alone
            continue
        together.setdefault(key, []).append(_Begun(index, begun, design, task.in_force))
    for (structure, _), members in together.items():
        try:
            _review(structure, members, on or date.today(), found)
        except Exception:  # as above
            continue
    return found


def _review(
    structure: Structure, members: Sequence[_Begun], on: date, found: list[Review | None]
) -> None:
    """Review designs of one structure under the same rules."""
    if len(members) == 1:
        derived = derive(members[0].design)
        rules = members[0].in_force.rules
        findings = judge(derived.design, derived.values, derived.cases, rules)
        found[members[0].index] = _reviewed(members[0], derived, findings, on)
        return
    designs = [each.design for each in members]
    try:
        stack = Stack(structure, designs)
    except CannotStack as apart:
        for some in apart.groups.members:
            _review(structure, [members[each] for each in some], on, found)
        return
    judged = judge_stack(stack, designs, members[0].in_force.rules)
    for each, (values, findings) in zip(members, judged, strict=True):
        derived = Derived(each.design, structure.cases, values)
        found[each.index] = _reviewed(each, derived, findings, on)


def _reviewed(begun: _Begun, derived: Derived, findings: Sequence[Finding], on: date) -> Review:
    conceded = with_concessions(findings, begun.design, on)
    return replace(begun.review, findings=conceded, derived=derived)
