"""A verdict before it is put into words."""

from dataclasses import dataclass

from reviewer.judging.finding import Verdict
from reviewer.judging.outcome import Outcome


@dataclass(frozen=True, slots=True)
class Judged:
    """A verdict, the case that governs it, and the slots to look at where it is open."""

    verdict: Verdict
    case: int
    outcome: Outcome | None
    unknown: tuple[int, ...] = ()
