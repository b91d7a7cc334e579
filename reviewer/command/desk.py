"""The desk: designs are read, reviewed and studied, and put into pieces.

What a design comes to is made of texts and plain data, so that a process of its own may do it.
"""

from argparse import Namespace
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from reviewer.command.fault import FAULT, told_fault
from reviewer.command.inputs import Input, fetched
from reviewer.command.outputs import Report
from reviewer.command.packs import Packs
from reviewer.command.reading import read_review
from reviewer.command.status import status_of
from reviewer.judging.in_force import InForce
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Place, Problem, render

if TYPE_CHECKING:
    from reviewer.reviewing_many import Task

CHUNK = 128  # designs that are reviewed at once, so that memory does not grow with their number
FEW = 4  # designs below which each is reviewed by itself


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
        in_force = None
        try:
            in_force = self.packs.of(each.path, each.folder)
            found = read_review(each, replace(in_force, problems=()), self.options.on)
        except Exception as fault:
            return _with_fault(self._finished(_faulty(each.path), in_force), fault)
        return self._studied(found, in_force)

    def all_done(self, inputs: Sequence[Input]) -> Iterator[Done]:
        """Review some designs in order, those of one structure together where there are many."""
        for start in range(0, len(inputs), CHUNK):
            chunk = [_fetched(each) for each in inputs[start : start + CHUNK]]
            if len(chunk) < FEW:
                yield from map(self.done, chunk)
                continue
            for each, found in zip(chunk, self._reviews(chunk), strict=True):
                if found is None:
                    yield self.done(each)
                else:
                    yield self._studied(found, self.packs.of(each.path, each.folder))

    def fault(self, path: str, fault: Exception) -> Done:
        """What is reported of a design whose process ended."""
        return _with_fault(self._finished(_faulty(path), None), fault)

    def _reviews(self, inputs: Iterable[Input]) -> list[Review | None]:
        """Reviews of several designs at once; none of those to review alone."""
        from reviewer.reviewing_many import review_many  # not wanted for one design

        return review_many([self._task(each) for each in inputs], self.options.on)

    def _task(self, each: Input) -> "Task | None":
        from reviewer.reviewing_many import Task

        if each.problem is not None:
            return None
        try:
            in_force = self.packs.of(each.path, each.folder)
            return Task(replace(in_force, problems=()), each.read(), each.path, each.folder)
        except Exception:  # it will be told when the design is reviewed alone
            return None

    def _studied(self, found: Review, in_force: InForce) -> Done:
        """What a review comes to with what was asked beside it."""
        told = tuple(render(problem) for problem in found.problems)
        try:
            done = self._finished(_studied(found, in_force, self.options), in_force)
        except Exception as fault:  # what was found stands
            return _with_fault(replace(self._finished(found, in_force), told=told), fault)
        return replace(done, told=told)

    def _finished(self, found: Review, in_force: InForce | None) -> Done:
        problems = in_force.problems if in_force else ()
        found = replace(found, problems=(*found.problems, *problems))
        return Done(
            found.path,
            status_of(found, self.options.fail_at, allow_open=self.options.allow_open),
            tuple(report.piece(found) for report in self.reports),
            once=tuple(render(problem) for problem in problems),
        )


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


def _with_fault(done: Done, fault: Exception) -> Done:
    told = (*done.told, told_fault(fault, done.path))
    return replace(done, told=told, status=max(done.status, FAULT))


def _fetched(each: Input) -> Input:
    """A design with its text, where it can be read only once; what fails will fail again."""
    try:
        return fetched(each)
    except OSError:
        return each


def _faulty(path: str) -> Review:
    """What is reported of a design in which the program failed."""
    what = "an internal fault of the program kept this design from being reviewed"
    return Review(path, (Problem(Place(path, 1, 1, 2), what, "", "", None),))
