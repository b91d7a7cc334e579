"""What a command judges by: the packs that come with the project, more of them, and shops."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.in_force import InForce, put_in_force
from reviewer.judging.pack import read_packs
from reviewer.judging.shop_packs import in_force_for, shop_of
from reviewer.notation.problem import Problem
from reviewer.parts.registry import KINDS
from reviewer.reading.folder import Folder
from reviewer.reading.noted import Noted, note_all, note_file, noting
from reviewer.reading.source import MAX_BYTES
from reviewer.reviewing import unreadable


class Packs:
    """What is in force for each design of a command line; each shop's file is read once.

    `questions` are those of all rules that were in force so far, by name; where shops differ, those
    of the design that was asked for last.
    """

    def __init__(self, rules: Iterable[str], shop: str | None, *, prove: bool) -> None:
        """Judge by packs at some paths too, and by one shop, or by that of each design.

        `prove` refuses rules that do not show both ways what they say.
        """
        self._begun = (tuple(rules), shop, prove)
        self._prove = prove
        self.questions: dict[str, str] = {}
        self._problems: list[Problem] = []
        self._noted: dict[str | None, Noted] = {}
        self._always: Noted = {}
        with noting(self._always):
            paths = dict.fromkeys(self._begun[0])
            self._more = [source for path in paths if (source := self._read(path))]
        self._shop = shop
        self._known: dict[str | None, InForce] = {}

    def of(self, path: str | None = None, folder: Folder | None = None) -> InForce:
        """What is in force for a design at a path, or where no design is meant."""
        shop = self._shop
        if shop is None and path is not None and folder is not None:
            shop = shop_of(path, folder)
        if shop not in self._known:
            self._noted[shop] = {}
            with noting(self._noted[shop]):
                self._known[shop] = self._in_force(shop)
        note_all({**self._always, **self._noted[shop]})
        self.questions.update(self._known[shop].questions)
        return self._known[shop]

    def __reduce__(self) -> tuple[Any, ...]:
        """To another process goes what to read, not what was read: rules are code by then."""
        return _again, (*self._begun, self.questions)

    def _in_force(self, shop: str | None) -> InForce:
        source = self._read(shop) if shop is not None else None
        if source is None:
            packs = read_packs(self._more, KINDS, builtin_limits())
            return put_in_force(
                (*builtin_packs(), *packs), problems=self._problems, prove=self._prove
            )
        folder = Folder.around(source[1])
        base = builtin_packs()
        return in_force_for(*source, folder, base, self._more, self._problems, prove=self._prove)

    def _read(self, path: str) -> tuple[bytes, str] | None:
        try:
            with Path(path).open("rb") as file:
                content = file.read(MAX_BYTES + 1)
        except OSError as error:
            note_file(path, None)
            self._problems.append(unreadable(path, error))
            return None
        note_file(path, content)
        return content, path


def _again(rules: Iterable[str], shop: str | None, prove: bool, questions: dict[str, str]) -> Packs:
    packs = Packs(rules, shop, prove=prove)
    packs.questions = questions
    return packs


def packs_of(rules: Iterable[str], shop: str | None = None, *, prove: bool = True) -> Packs:
    """What is in force, with packs at some paths and a shop where they are named."""
    return Packs(rules, shop, prove=prove)
