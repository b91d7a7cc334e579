"""What a review found of one design."""

from dataclasses import dataclass

from reviewer.deriving.derived import Derived
from reviewer.judging.finding import Finding
from reviewer.notation.problem import Problem
from reviewer.reading.design import Design


@dataclass(frozen=True)
class Review:
    """What a review found: problems of reading, or findings and what they were derived from."""

    path: str
    problems: tuple[Problem, ...]
    findings: tuple[Finding, ...] = ()
    derived: Derived | None = None

    @property
    def design(self) -> Design | None:
        """The design that was read, or None where it could not be."""
        return self.derived.design if self.derived else None
