"""A review of one design: read, derive, judge. It prints nothing and keeps no state."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from reviewer.deriving.derived import derive
from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.concession import with_concessions
from reviewer.judging.judge import judge
from reviewer.judging.limits import with_limits
from reviewer.judging.pack import Pack, in_order, limits_of
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Place, Problem
from reviewer.parts.registry import KINDS
from reviewer.reading.read_design import read_design

__all__ = ["Review", "review", "review_source", "unreadable"]

MOST_BYTES = 1 << 20


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
    limits = builtin_limits().beside(limits_of(packs))
    rules, misfits = in_order(packs)
    wrong = (*(problem for pack in packs for problem in pack.problems), *misfits)
    if wrong:
        return Review(path, wrong)
    design, problems = read_design(source, path, KINDS)
    if design is None:
        return Review(path, problems)
    derived = derive(with_limits(design, limits))
    findings = judge(design, derived.values, derived.cases, rules)
    conceded = with_concessions(findings, design, on or date.today())
    return Review(path, problems, conceded, derived)


def unreadable(path: str, error: OSError) -> Problem:
    """A file that could not be opened, as a problem."""
    reason = error.strerror or "it cannot be opened"
    return Problem(Place(path, 1, 1, 2), f"this file cannot be read: {reason}", "", "", None, None)
