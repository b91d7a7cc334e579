"""The desk: designs are read, reviewed and studied, and put into pieces.

What a design comes to is made of texts and plain data, so that a process of its own may do it.
"""

from argparse import Namespace
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from reviewer.command.done import Done
from reviewer.command.fault import FAULT, told_fault
from reviewer.command.inputs import Input, fetched
from reviewer.command.outputs import Report
from reviewer.command.packs import Packs
from reviewer.command.reading import read_review
from reviewer.command.status import UNREAD, status_of
from reviewer.judging.finding import LEVELS
from reviewer.judging.in_force import InForce
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Place, Problem, render
from reviewer.reading.noted import Noted, noting

if TYPE_CHECKING:
    from reviewer.command.cache import Cache
    from reviewer.reviewing_many import Task

CHUNK = 112  # designs that are reviewed at once, so that memory does not grow with their number
FEW = 4  # designs below which each is reviewed by itself


class Desk:
    """Where designs are reviewed as a command line asks for it."""

    def __init__(
        self,
        options: Namespace,
        packs: Packs,
        reports: Iterable[Report],
        cache: "Cache | None" = None,
    ) -> None:
        """Review by some packs, for some reports; what comes of it is kept in a cache."""
        self.options = options
        self.cache = cache
        self.packs = packs
        self.reports = tuple(reports)

    def done(self, each: Input) -> Done:
        """Review one design; a fault in it does not stop the others."""
        each, read = self._fetched(each), Noted()
        with noting(read):
            done = self._done(each)
        return self._kept(each, replace(done, read=read))

    def _done(self, each: Input) -> Done:
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
            chunk = [self._fetched(each) for each in inputs[start : start + CHUNK]]
            if len(chunk) < FEW:
                yield from map(self.done, chunk)
                continue
            tasks = [self._task(each) for each in chunk]
            for each, task, found in zip(chunk, tasks, self._reviews(tasks), strict=True):
                if found is None or task is None:
                    yield self.done(each)
                    continue
                in_force = self.packs.of(each.path, each.folder)
                yield self._kept(each, replace(self._studied(found, in_force), read=task.read))

    def fault(self, path: str, fault: Exception) -> Done:
        """What is reported of a design whose process ended."""
        return _with_fault(self._finished(_faulty(path), None), fault)

    def _reviews(self, tasks: Sequence["Task | None"]) -> list[Review | None]:
        """Reviews of several designs at once; none of those to review alone."""
        from reviewer.reviewing_many import review_many  # not wanted for one design

        return review_many(tasks, self.options.on)

    def _task(self, each: Input) -> "Task | None":
        from reviewer.reviewing_many import Task

        if each.problem is not None:
            return None
        read = Noted()
        try:
            with noting(read):
                in_force = replace(self.packs.of(each.path, each.folder), problems=())
            return Task(in_force, each.read(), each.path, each.folder, read)
        except Exception:  # it will be told when the design is reviewed alone
            return None

    def _fetched(self, each: Input) -> Input:
        """A design with its text, where it can be read only once, or is to be kept by its text."""
        try:
            return fetched(each, always=self.cache is not None)
        except OSError:  # it will fail again, where it is told
            return each

    def _kept(self, each: Input, done: Done) -> Done:
        """Keep what a design came to, if nothing was wrong with it."""
        if self.cache is not None and each.source is not None and done.status < UNREAD:
            self.cache.put(self.cache.key(each, each.source), done)
        return done

    def _studied(self, found: Review, in_force: InForce) -> Done:
        """What a review comes to with what was asked beside it."""
        told = tuple(render(problem) for problem in found.problems)
        try:
            done = self._finished(studied(found, in_force, self.options), in_force)
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
            is_dated=found.design is not None and bool(found.design.concessions),
        )


def studied(review: Review, in_force: InForce, options: Namespace) -> Review:
    """The review with what was asked beside it; what is not wanted is not loaded."""
    wanted = LEVELS if options.all or options.fail_at == "note" else LEVELS[:2]
    fails = any(each.verdict == "fail" and each.level in wanted for each in review.findings)
    if fails and not options.no_remedies:
        from reviewer.studying.remedy import with_remedies

        review = with_remedies(review, in_force.rules, in_force.tables, wanted)
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


def _faulty(path: str) -> Review:
    """What is reported of a design in which the program failed."""
    what = "an internal fault of the program kept this design from being reviewed"
    return Review(path, (Problem(Place(path, 1, 1, 2), what, "", "", None),))
