"""What a review found of one design."""

from dataclasses import dataclass

from reviewer.deriving.derived import Derived
from reviewer.judging.finding import ByShop, Finding
from reviewer.judging.measured import Tested
from reviewer.judging.pack import Pack
from reviewer.judging.rule import Rule
from reviewer.notation.problem import Problem
from reviewer.reading.design import Design
from reviewer.reading.shop import Shop


@dataclass(frozen=True)
class Review:
    """What a review found: problems of reading, or findings and what they were derived from.

    `shop` is the one that the design belongs to, `changes` what it made of rules and limits.
    `packs` are the files of rules in force, `rules` what they state as the shop has it.
    `tests` are what became of the measurements of the design.
    """

    path: str
    problems: tuple[Problem, ...]
    findings: tuple[Finding, ...] = ()
    derived: Derived | None = None
    shop: Shop | None = None
    changes: tuple[ByShop, ...] = ()
    packs: tuple[Pack, ...] = ()
    rules: tuple[Rule, ...] = ()
    tests: tuple[Tested, ...] = ()

    @property
    def design(self) -> Design | None:
        """The design that was read, or None where it could not be."""
        return self.derived.design if self.derived else None
