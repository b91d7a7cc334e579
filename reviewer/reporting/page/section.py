"""What a sheet tells of one design, ready for the template."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from itertools import count

from reviewer.judging.finding import STAGES, Finding, Stage
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Problem
from reviewer.reporting.account import Account, Changed, account_of
from reviewer.reporting.page.entry import Entry, entry_of
from reviewer.reporting.page.ledger import Ledger, Line
from reviewer.reporting.versions import Version, versions
from reviewer.reporting.words import STAGE_WORDS, cautions, verdict_sentence


@dataclass(frozen=True)
class Station:
    """A stage of the work with what is to be done at it."""

    stage: Stage
    name: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class Drawn:
    """A picture with what stands below it."""

    svg: str
    says: str


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
    drawings: tuple[Drawn, ...] = ()

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
    questions = {rule.name: rule.question for rule in review.rules}
    ledger, numbers = Ledger(review.path), count(1)

    def entries(findings: Sequence[Finding]) -> tuple[Entry, ...]:
        told = []
        for finding in findings:
            number = next(numbers)
            asked = questions.get(finding.rule, "")
            told.append(entry_of(number, finding, review, ledger, asked, f"{mark}-{number}"))
        return tuple(told)

    stations = tuple(Station(*each) for each in _stations(account, entries))
    return Section(
        mark=mark,
        name=design.name if design else _called(review.path),
        revision=design.revision if design else None,
        path=_called(review.path),
        facts=tuple(_facts(review)),
        verdict=verdict_sentence(review.findings) if design else "",
        problems=review.problems,
        stations=stations if design else (),
        conceded=entries(account.conceded),
        changed=account.changed,
        not_reviewed=tuple(Group(*each) for each in account.not_reviewed),
        holding=account.holding,
        beside=account.beside,
        cautions=cautions(review.findings),
        ledger=tuple(ledger.lines),
        versions=versions(review),
        questions=questions,
    )


def _stations(account: Account, entries: object) -> list[tuple[Stage, str, tuple[Entry, ...]]]:
    by_stage = {work.stage: work for work in account.work}
    found = []
    for stage in STAGES:
        work = by_stage.get(stage)
        told = (*work.to_change, *work.to_judge) if work else ()
        found.append((stage, STAGE_WORDS[stage], entries(told)))  # type: ignore[operator]
    return found


def _called(path: str) -> str:
    return "standard input" if path == "-" else path


def _facts(review: Review) -> list[tuple[str, str]]:
    """What stands in the title block beside name, revision and file."""
    design = review.design
    if design is None:
        return []
    given = design.facts.given
    told = [("service", "service"), ("reached_by", "reached by")]
    facts = []
    for key, name in told:
        value = given.get(key)
        if value is not None:
            text = value.value
            facts.append((name, ", ".join(text) if isinstance(text, tuple) else str(text)))
    if review.shop is not None:
        facts.append(("shop", review.shop.name))
    return facts
