"""A review of one design: read, derive, judge. It prints nothing and keeps no state."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from reviewer.deriving.cases import Cases, cases_of
from reviewer.deriving.evaluate import Values, evaluate
from reviewer.deriving.inputs import given_values
from reviewer.deriving.plan import build_plan
from reviewer.judging.builtin import builtin_packs
from reviewer.judging.concession import with_concessions
from reviewer.judging.finding import Finding
from reviewer.judging.judge import judge
from reviewer.judging.pack import Pack, in_order
from reviewer.notation.problem import Place, Problem
from reviewer.parts.registry import KINDS
from reviewer.reading.design import Design
from reviewer.reading.read_design import read_design

MOST_BYTES = 1 << 20


@dataclass(frozen=True)
class Derived:
    """What was computed of a design: every quantity over every case."""

    design: Design
    cases: Cases
    values: Values


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


def review(
    path_or_text: Path | str, packs: Sequence[Pack] | None = None, on: date | None = None
) -> Review:
    """Review a design file, or a design given as text (a string with a line break in it).

    `packs` are the packs of rules to judge by, those that come with the project where none are
    given; `on` is the day on which concessions must still hold, today where none is given.
    Problems of the file or of a pack are in the result, not raised.
    """
    if isinstance(path_or_text, str) and "\n" in path_or_text:
        return review_source(path_or_text, "design.yaml", packs, on)
    path = Path(path_or_text)
    try:
        with path.open("rb") as file:
            source = file.read(MOST_BYTES + 1)
    except OSError as error:
        return Review(str(path), (unreadable(str(path), error),))
    return review_source(source, str(path), packs, on)


def review_source(
    source: bytes | str,
    path: str,
    packs: Sequence[Pack] | None = None,
    on: date | None = None,
) -> Review:
    """Review a design that has been fetched already; `path` is what places call it."""
    packs = builtin_packs() if packs is None else packs
    rules, misfits = in_order(packs)
    wrong = (*(problem for pack in packs for problem in pack.problems), *misfits)
    if wrong:
        return Review(path, wrong)
    design, problems = read_design(source, path, KINDS)
    if design is None:
        return Review(path, problems)
    derived = derive(design)
    findings = judge(design, derived.values, derived.cases, rules)
    conceded = with_concessions(findings, design, on or date.today())
    return Review(path, problems, conceded, derived)


def derive(design: Design) -> Derived:
    """Compute every quantity of a design."""
    cases = cases_of(design)
    plan = build_plan(design)
    values = evaluate(plan, given_values(design, plan, cases), len(cases.names))
    return Derived(design, cases, values)


def unreadable(path: str, error: OSError) -> Problem:
    """A file that could not be opened, as a problem."""
    reason = error.strerror or "it cannot be opened"
    return Problem(Place(path, 1, 1, 2), f"this file cannot be read: {reason}", "", "", None, None)
