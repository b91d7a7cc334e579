"""The packs of rules that a command judges by: those that come with the project, and more."""

from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.pack import Pack, in_order, read_pack
from reviewer.notation.problem import Problem, problems_in_order
from reviewer.parts.registry import KINDS
from reviewer.reading.source import MAX_BYTES
from reviewer.reviewing import unreadable


class Packs(NamedTuple):
    """The packs to judge by, and what is wrong with those that are left out."""

    sound: tuple[Pack, ...]
    problems: tuple[Problem, ...]

    @property
    def questions(self) -> dict[str, str]:
        """The question of each rule, by its name."""
        return {rule.name: rule.question for pack in self.sound for rule in pack.rules}


def packs_of(paths: Iterable[str]) -> Packs:
    """The packs that come with the project and those at some paths.

    A pack that cannot be read, or does not fit with those before it, is left out whole.
    """
    packs = [*builtin_packs(), *(_read(path) for path in dict.fromkeys(paths))]
    problems = [problem for pack in packs for problem in pack.problems]
    sound = [pack for pack in packs if not pack.problems]
    while misfits := in_order(sound)[1]:
        problems += misfits
        at_fault = {problem.place.path for problem in misfits}
        sound = [pack for pack in sound if pack.path not in at_fault]
    return Packs(tuple(sound), tuple(problems_in_order(problems)))


def _read(path: str) -> Pack:
    try:
        with Path(path).open("rb") as file:
            source = file.read(MAX_BYTES + 1)
    except OSError as error:
        return Pack(path, (), (unreadable(path, error),))
    return read_pack(source, path, KINDS, builtin_limits())
