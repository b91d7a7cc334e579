"""What a sheet tells of one design, ready for the template."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256

from reviewer.judging.finding import STAGES, Finding, Stage
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Problem
from reviewer.reporting.account import Account, Changed, account_of
from reviewer.reporting.drawings.marks import Mark
from reviewer.reporting.measured_words import calibrations_told
from reviewer.reporting.page.entry import Entry, entry_of
from reviewer.reporting.page.ledger import Ledger, Line
from reviewer.reporting.page.pictures import Drawn, drawings_of
from reviewer.reporting.versions import Version, versions
from reviewer.reporting.words import STAGE_WORDS, cautions, verdict_sentence


@dataclass(frozen=True)
class Station:
    """A stage of the work with what is to be done at it."""

    stage: Stage
    name: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class Group:
    """What was not reviewed for some reasons."""

    reasons: tuple[str, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class Section:
    """A design on a sheet. `mark` begins every id in it."""

    mark: str
    name: str
    revision: str | None
    path: str
    facts: tuple[tuple[str, str], ...]
    verdict: str
    problems: tuple[Problem, ...]
    stations: tuple[Station, ...]
    conceded: tuple[Entry, ...]
    changed: tuple[Changed, ...]
    not_reviewed: tuple[Group, ...]
    holding: tuple[Finding, ...]
    beside: int
    cautions: tuple[str, ...]
    ledger: tuple[Line, ...]
    versions: tuple[Version, ...]
    questions: Mapping[str, str]
    drawings: tuple[Drawn, ...]

    @property
    def entries(self) -> tuple[Entry, ...]:
        """All that is to be done, in order of stage."""
        return tuple(entry for station in self.stations for entry in station.entries)

    @property
    def waiting(self) -> int:
        """How many rules could not be judged."""
        return sum(len(group.findings) for group in self.not_reviewed)


def section_of(review: Review) -> Section:
    """Put a review on a sheet; of a design that could not be read, what is wrong with it."""
    design, account = review.design, account_of(review)
    mark = f"d{sha256(review.path.encode('utf-8', 'surrogatepass')).hexdigest()[:8]}"
    writer = _Writer(review, mark)
    stations = tuple(writer.stations(account)) if design else ()
    conceded = writer.entries(account.conceded)
    return Section(
        mark=mark,
        name=design.name if design else _called(review.path),
        revision=design.revision if design else None,
        path=_called(review.path),
        facts=tuple(_facts(review)),
        verdict=verdict_sentence(review.findings) if design else "",
        problems=review.problems,
        stations=stations,
        conceded=conceded,
        changed=account.changed,
        not_reviewed=tuple(Group(*each) for each in account.not_reviewed),
        holding=account.holding,
        beside=account.beside,
        cautions=cautions(review.findings),
        ledger=tuple(writer.ledger.lines),
        versions=versions(review),
        questions=writer.questions,
        drawings=tuple(drawings_of(review, writer.marks, mark)) if design else (),
    )


class _Writer:
    """Numbers the findings of a sheet and enters what is behind them in its ledger."""

    def __init__(self, review: Review, mark: str) -> None:
        self.review = review
        self.mark = mark
        self.questions = {rule.name: rule.question for rule in review.rules}
        self.ledger = Ledger(review.path)
        self.marks: list[Mark] = []

    def stations(self, account: Account) -> Iterator[Station]:
        """The four stages, also those at which nothing is to be done."""
        by_stage = {work.stage: work for work in account.work}
        for stage in STAGES:
            work = by_stage.get(stage)
            told = (*work.to_change, *work.to_judge) if work else ()
            yield Station(stage, STAGE_WORDS[stage], self.entries(told))

    def entries(self, findings: Sequence[Finding]) -> tuple[Entry, ...]:
        """Some findings under the next numbers."""
        return tuple(self._entry(each) for each in findings)

    def _entry(self, finding: Finding) -> Entry:
        number = len(self.marks) + 1
        self.marks.append(Mark(number, finding))
        asked = self.questions.get(finding.rule, "")
        mark = f"{self.mark}-{number}"
        return entry_of(number, finding, self.review, self.ledger, asked, mark)


def _called(path: str) -> str:
    return "standard input" if path == "-" else path


def _facts(review: Review) -> Iterator[tuple[str, str]]:
    """What stands in the title block beside name, revision and file."""
    given = review.design.facts.given if review.design else {}
    for key in ("service", "reached_by"):
        if key in given:
            value = given[key].value
            words = ", ".join(value) if isinstance(value, tuple) else str(value)
            yield key.replace("_", " "), words
    if review.shop is not None:
        yield "shop", review.shop.name
    for words in calibrations_told(review.tests, review.path):
        yield "calibrated", words.removeprefix("Calibrated: ")
