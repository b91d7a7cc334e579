"""Designs looked at again and again: what has changed since the last look, and nothing else."""

from argparse import Namespace
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from reviewer.command.desk import studied
from reviewer.command.fault import told_fault
from reviewer.command.inputs import Input, inputs_of
from reviewer.command.packs import Packs, packs_of
from reviewer.command.reading import read_review
from reviewer.judging.in_force import InForce
from reviewer.judging.reviewed import Review
from reviewer.notation.plain import plain
from reviewer.notation.problem import Problem, render
from reviewer.reading.noted import Noted, note_file, noting, now
from reviewer.reading.source import MAX_BYTES
from reviewer.reporting.sheet import Style
from reviewer.reporting.text import TextReport
from reviewer.reporting.watch_text import changed_text
from reviewer.studying.compare import compare


@dataclass(frozen=True)
class Look:
    """One look at a design: what was read for it, and the last review that it was fit for."""

    read: Noted
    review: Review | None
    problems: tuple[Problem, ...] = ()


@dataclass
class Watcher:
    """What a command line names, as it was at the last look."""

    options: Namespace
    style: Style
    _looks: dict[str, Look] = field(default_factory=dict)

    @property
    def folders(self) -> set[str]:
        """The folders in which something may change that matters, as far as they are there."""
        found = {str(Path(path).parent) for look in self._looks.values() for path in look.read}
        for asked in map(Path, self.options.paths):
            found.add(str(asked.parent))
            if asked.is_dir():
                below = (each for each in asked.rglob("*") if each.is_dir())
                found |= {str(asked), *(str(each) for each in below if not _is_hidden(each))}
        return {each for each in found if Path(each).is_dir()}

    @property
    def count(self) -> int:
        """How many designs there are."""
        return len(self._looks)

    def look(self) -> Iterator[str]:
        """Look at all that has changed, and tell what came of it; the first look tells all."""
        inputs = {each.path: each for each in inputs_of(self.options.paths)}
        for path in [path for path in self._looks if path not in inputs]:
            del self._looks[path]
            yield f"{plain(path)} is gone.\n"
        changed = [each for path, each in inputs.items() if self._has_changed(path)]
        if not changed:
            return
        packs = packs_of(self.options.rules, self.options.shop)
        for each in changed:
            yield from self._looked(each, self._looks.get(each.path), packs)

    def _has_changed(self, path: str) -> bool:
        last = self._looks.get(path)
        return last is None or any(now(at, MAX_BYTES + 1) != was for at, was in last.read.items())

    def _looked(self, each: Input, last: Look | None, packs: Packs) -> Iterator[str]:
        read: Noted = {}
        before = None if last is None else last.review
        try:
            with noting(read):
                in_force = packs.of(each.path, each.folder)
                review = self._review(each, in_force)
            self._looks[each.path] = Look(
                read,
                review if review.design is not None else before,
                (*in_force.problems, *review.problems),
            )
            yield from self._texts(each.path, last, review, packs)
        except Exception as fault:  # the next save may mend it
            self._looks[each.path] = Look(read, before)
            yield f"{told_fault(fault, each.path)}\n"

    def _review(self, each: Input, in_force: InForce) -> Review:
        """The review of a design, its own text noted as it was read."""
        try:
            each = replace(each, source=None if each.problem else each.read())
        except OSError:
            note_file(each.path, None)
        else:
            note_file(each.path, each.source)
        return read_review(each, replace(in_force, problems=()), self.options.on)

    def _texts(self, path: str, last: Look | None, review: Review, packs: Packs) -> Iterator[str]:
        problems = self._looks[path].problems
        if last is None or problems != last.problems:
            yield from (f"{render(each)}\n" for each in problems)
        if review.design is None:
            if last is not None and last.review is not None:
                yield f"{plain(path)} cannot be read now; what was found before still stands.\n"
        elif last is None or last.review is None:
            in_force = packs.of(path, Input(path).folder)
            report = TextReport(self.style, in_force.questions, everything=self.options.all)
            yield report.add(studied(review, in_force, self.options))
        else:
            yield changed_text(compare(last.review, review, review.rules), path, self.style)


def _is_hidden(folder: Path) -> bool:
    return any(part.startswith(".") and part not in (".", "..") for part in folder.parts)


def watched(options: Namespace) -> Sequence[str]:
    """The options that a watch does not go with, of those that are given."""
    asked = {
        "--output": bool(options.output),
        "--since": options.since is not None,
        "--format": options.format != "text",
        "-": "-" in options.paths,
    }
    return [name for name, given in asked.items() if given]
