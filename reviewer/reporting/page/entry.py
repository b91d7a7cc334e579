"""What a sheet tells of one finding that is to be changed or judged, ready for the template."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import isnan

from reviewer.judging.concession import RULE as STALE
from reviewer.judging.finding import Finding
from reviewer.judging.remedies import Remedy
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import on_line
from reviewer.notation.show import show
from reviewer.reporting.limits import VAST, shown_ratio
from reviewer.reporting.page.ledger import Ledger, Line
from reviewer.reporting.page.route import route_svg
from reviewer.reporting.page.tape import tape_svg
from reviewer.reporting.remedy_words import reached_words, wanting_words
from reviewer.reporting.study_words import told_of
from reviewer.reporting.text_finding import NOT_SEARCHED, hazard_of, measure, what_to_change, where
from reviewer.reporting.words import HOLD_WORDS, LEVEL_WORDS, STAGE_WORDS, sentence
from reviewer.studying.route import route_of
from reviewer.studying.trace import trace_of


@dataclass(frozen=True)
class Correction:
    """A value of the file to be struck out, and what to write in its place."""

    field: str
    old: str
    new: str
    place: str


@dataclass(frozen=True)
class Told:
    """A number that matters, with its line of the ledger if it has one."""

    name: str
    value: str
    says: str
    line: Line | None


@dataclass(frozen=True)
class Entry:
    """A finding on the sheet.

    `corrections` are of the first remedy and `others` of the other ones; `look_at` says where to
    look where there is none. `question` heads what a person must judge. `chain` are the lines of
    the ledger that its rule reads.
    """

    number: int
    finding: Finding
    corrections: tuple[Correction, ...]
    others: tuple[tuple[Correction, ...], ...]
    look_at: str
    question: str
    verdict: str
    ratio: str
    numbers: tuple[Told, ...]
    notes: tuple[str, ...]
    chain: tuple[Line, ...]
    where: str
    tape: str = ""
    route: str = ""


def entry_of(
    number: int, finding: Finding, review: Review, ledger: Ledger, question: str, mark: str
) -> Entry:
    """A finding that fails or asks, under its number; `mark` begins the ids of its pictures."""
    chain = tuple(ledger.enter(each) for each in trace_of(review, finding).inputs)
    fails = finding.verdict == "fail"
    remedies = finding.remedies or NOT_SEARCHED
    offered = [tuple(_corrections(each, review.path)) for each in remedies.offered]
    ratio = finding.utilisation
    notes = (reached_words(remedies), *wanting_words(remedies, review.path), *told_of(finding))
    has_way = fails and finding.rule != STALE
    return Entry(
        number=number,
        finding=finding,
        corrections=offered[0] if offered else (),
        others=tuple(offered[1:]),
        look_at="" if offered or not fails else what_to_change(finding, review.path),
        question="" if fails else question or f"Judge {finding.name}",
        verdict=_verdict(finding),
        ratio="" if isnan(ratio) else "over 100" if ratio > VAST else shown_ratio(ratio),
        numbers=tuple(_numbers(finding, ledger)),
        notes=tuple(filter(None, notes)),
        chain=_once(chain),
        where=where(finding),
        tape=tape_svg(finding, f"{mark}-tape") if fails else "",
        route=route_svg(route_of(review, finding), finding, f"{mark}-way") if has_way else "",
    )


def _once(lines: Sequence[Line]) -> tuple[Line, ...]:
    return tuple({line.number: line for line in lines}.values())


def _corrections(remedy: Remedy, own: str) -> Iterator[Correction]:
    for each in remedy.changes:
        yield Correction(f"{each.part}.{each.field}", each.old, each.new, on_line(each.place, own))


def _verdict(finding: Finding) -> str:
    """How binding it is, of what hazard, and how much is asked of how much."""
    hazard = hazard_of(finding)
    if finding.verdict == "review":
        return f"A person must judge this {STAGE_WORDS[finding.stage]}{hazard}."
    holds = f"Accepted although it {HOLD_WORDS[finding.level]}"
    level = holds if finding.concession else LEVEL_WORDS[finding.level]
    words = f"{level} {STAGE_WORDS[finding.stage]}{hazard}"
    return sentence(": ".join(filter(None, [words, measure(finding)])))


def _numbers(finding: Finding, ledger: Ledger) -> Iterator[Told]:
    for each in finding.numbers:
        line = ledger.find(each.name, each.value, each.unit)
        yield Told(each.name, show(each.value, each.unit), each.says, line)
