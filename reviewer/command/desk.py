"""The desk: one design after the other is read, reviewed and studied, and put into pieces.

What a design comes to is made of texts and plain data, so that a process of its own may do it.
"""

from argparse import Namespace
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from reviewer.command.fault import FAULT, told_fault
from reviewer.command.inputs import Input
from reviewer.command.outputs import Report
from reviewer.command.packs import Packs
from reviewer.command.reading import read_review
from reviewer.command.status import status_of
from reviewer.judging.in_force import InForce
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Place, Problem, render


@dataclass(frozen=True, slots=True)
class Done:
    """What a design came to: its piece of each report, what is told of it, and the exit status.

    `once` are problems of packs and shops, which are told once however many designs have them.
    """

    path: str
    status: int
    pieces: tuple[Any, ...]
    told: tuple[str, ...] = ()
    once: tuple[str, ...] = ()


class Desk:
    """Where designs are reviewed as a command line asks for it."""

    def __init__(self, options: Namespace, packs: Packs, reports: Iterable[Report]) -> None:
        """Review by some packs, for some reports."""
        self.options = options
        self.packs = packs
        self.reports = tuple(reports)

    def done(self, each: Input) -> Done:
        """Review one design; a fault in it does not stop the others."""
        faults: list[str] = []
        problems: tuple[Problem, ...] = ()
        found, in_force = _faulty(each.path), None
        try:
            in_force = self.packs.of(each.path, each.folder)
            found = read_review(each, replace(in_force, problems=()), self.options.on)
            problems = found.problems
            found = _studied(found, in_force, self.options)
        except Exception as fault:  # what was found stands
            faults.append(told_fault(fault, each.path))
        done = self._finished(found, in_force)
        told = (*(render(problem) for problem in problems), *faults)
        return replace(done, told=told, status=max(done.status, FAULT if faults else 0))

    def fault(self, path: str, fault: Exception) -> Done:
        """What is reported of a design whose process ended."""
        done = self._finished(_faulty(path), None)
        return replace(done, told=(told_fault(fault, path),), status=max(done.status, FAULT))

    def _finished(self, found: Review, in_force: InForce | None) -> Done:
        problems = in_force.problems if in_force else ()
        found = replace(found, problems=(*found.problems, *problems))
        return Done(
            found.path,
            status_of(found, self.options.fail_at, allow_open=self.options.allow_open),
            tuple(report.piece(found) for report in self.reports),
            once=tuple(render(problem) for problem in problems),
        )

    def all_done(self, inputs: Iterable[Input]) -> Iterator[Done]:
        """Review some designs, one after the other."""
        for each in inputs:
            yield self.done(each)


def _studied(review: Review, in_force: InForce, options: Namespace) -> Review:
    """The review with what was asked beside it; what is not wanted is not loaded."""
    fails = any(each.verdict == "fail" and each.level != "note" for each in review.findings)
    if fails and not options.no_remedies:
        from reviewer.studying.remedy import with_remedies

        review = with_remedies(review, in_force.rules, in_force.tables)
    if options.what_matters:
        from reviewer.studying.sensitivity import with_influences

        review = with_influences(review, in_force.rules)
    asking = None if options.tolerance else frozenset(_asking(in_force))
    if review.design is not None and review.design.has_bands and asking != frozenset():
        from reviewer.studying.tolerance import with_scatter

        review = with_scatter(review, in_force.rules, of=asking)
    return review


def _asking(in_force: InForce) -> Iterator[str]:
    """The rules that ask for a study of the tolerances each time."""
    return (rule.name for rule in in_force.rules if rule.tolerance)


def _faulty(path: str) -> Review:
    """What is reported of a design in which the program failed."""
    what = "an internal fault of the program kept this design from being reviewed"
    return Review(path, (Problem(Place(path, 1, 1, 2), what, "", "", None),))
