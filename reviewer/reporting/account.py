"""What a review comes to, sorted for a reader: the same for a summary and for a page."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isnan

from reviewer.judging.finding import STAGES, ByShop, Finding, Stage
from reviewer.judging.reviewed import Review
from reviewer.reporting.text_open import by_reason
from reviewer.reporting.text_shop import shop_order
from reviewer.reporting.words import conceded_first, in_order, is_to_change

Reasons = tuple[str, ...]


@dataclass(frozen=True)
class Work:
    """What is to be done at a stage: what to change, and what a person must judge."""

    stage: Stage
    to_change: tuple[Finding, ...]
    to_judge: tuple[Finding, ...]


@dataclass(frozen=True)
class Changed:
    """What a shop changed, and what the rule says all the same where it was silenced."""

    change: ByShop
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class Account:
    """Every finding of a review in its place.

    `work` has the stages at which there is any. `conceded` begins with tipping and crushing,
    `changed` with what was silenced. `not_reviewed` are groups by what keeps them open. `holding`
    begins with what is nearest to its limit; `beside` counts what does not apply.
    """

    work: tuple[Work, ...]
    conceded: tuple[Finding, ...]
    changed: tuple[Changed, ...]
    not_reviewed: tuple[tuple[Reasons, tuple[Finding, ...]], ...]
    holding: tuple[Finding, ...]
    beside: int


def account_of(review: Review) -> Account:
    """Sort the findings of a review."""
    every = in_order(review.findings)
    counting = [each for each in every if not each.is_silenced]
    groups = by_reason(counting)
    return Account(
        work=tuple(filter(_is_any, (_work(stage, counting) for stage in STAGES))),
        conceded=tuple(each for each in conceded_first(counting) if each.concession is not None),
        changed=tuple(_changed(each, every) for each in sorted(review.changes, key=shop_order)),
        not_reviewed=tuple((reasons, tuple(found)) for reasons, found in groups.items()),
        holding=tuple(sorted((each for each in counting if each.verdict == "pass"), key=_nearness)),
        beside=sum(each.verdict == "not applicable" for each in counting),
    )


def _work(stage: Stage, findings: Sequence[Finding]) -> Work:
    here = [each for each in findings if each.stage == stage]
    to_judge = tuple(each for each in here if each.verdict == "review")
    return Work(stage, tuple(each for each in here if is_to_change(each)), to_judge)


def _is_any(work: Work) -> bool:
    return bool(work.to_change or work.to_judge)


def _changed(change: ByShop, findings: Sequence[Finding]) -> Changed:
    of_it = (each for each in findings if change.silences and each.rule == change.name)
    return Changed(change, tuple(of_it))


def _nearness(finding: Finding) -> tuple[bool, float, str, tuple[str, ...]]:
    ratio = finding.utilisation
    return isnan(ratio), -ratio, finding.name, finding.others
