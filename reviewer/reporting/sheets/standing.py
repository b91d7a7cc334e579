"""What every sheet says first: whether the review fails, concessions, what is not reviewed."""

from collections.abc import Iterator, Sequence

from reviewer.judging.finding import Finding
from reviewer.judging.reviewed import Review
from reviewer.reporting.limits import usage
from reviewer.reporting.measured_words import calibrations_told
from reviewer.reporting.sheets.sheet import Block, Caution, Section, section_of
from reviewer.reporting.text_open import by_reason
from reviewer.reporting.words import (
    GRAVEST,
    LEVEL_WORDS,
    STAGE_WORDS,
    in_order,
    is_to_change,
    joined,
    sentence,
    verdict_sentence,
)


def standing_of(review: Review) -> tuple[Section, ...]:
    """The sections that a reader needs before any work: never left out, whatever the sheet."""
    findings = [each for each in in_order(review.findings) if not each.is_silenced]
    return (
        Section(
            "the review",
            (*_verdict(review, findings), *calibrations_told(review.tests, review.path)),
        ),
        *section_of("accepted on purpose", _concessions(findings)),
        *section_of("silenced by the shop", _silenced(review)),
        *section_of("not reviewed", _open(findings)),
    )


def _verdict(review: Review, findings: Sequence[Finding]) -> Iterator[Block]:
    fails = [each for each in findings if is_to_change(each) and each.level != "note"]
    told = verdict_sentence(review.findings)
    if not fails:
        remarks = any(is_to_change(each) for each in findings)
        yield f"{told} None of it must or should be changed." if remarks else told
    else:
        yield Caution("this review fails", f"{told} Do not build from this sheet before it holds.")
    for finding in fails:
        when = f"{LEVEL_WORDS[finding.level]} {STAGE_WORDS[finding.stage]}"
        hazard = f" (hazard: {finding.hazard})" if finding.hazard else ""
        measured = usage(finding)
        words = f"{when}{hazard}: {finding.message}"
        numbers = f" {sentence(measured)}" if measured else ""
        yield f"{words}{numbers} {finding.name}, line {finding.place.line}."
    for path in dict.fromkeys(problem.place.path for problem in review.problems):
        yield Caution("incomplete", f"Reviewed without what is wrong in {path}.")


def _concessions(findings: Sequence[Finding]) -> Iterator[Block]:
    """Every failure that somebody accepts, in full, those that tip or crush first."""
    conceded = [each for each in findings if each.concession is not None]
    for finding in sorted(conceded, key=lambda each: each.hazard not in GRAVEST):
        concession = finding.concession
        assert concession is not None
        until = f" until {concession.until}" if concession.until else ", with no end"
        words = f"{concession.by} accepts {finding.name}{until}: {sentence(concession.why)}"
        measured = usage(finding)
        numbers = f" {sentence(measured)}" if measured else ""
        yield Caution(
            finding.hazard or "accepted", f"{words} {finding.message}{numbers} {finding.because}"
        )


def _silenced(review: Review) -> Iterator[Block]:
    """The rules that a shop lets count for nothing, the gravest first."""
    silent = [each for each in review.changes if each.silences]
    for change in sorted(silent, key=lambda each: each.hazard not in GRAVEST):
        hazard = f" (hazard: {change.hazard})" if change.hazard else ""
        yield f"{change.name}{hazard}: {change.by}: {sentence(change.why)}"


def _open(findings: Sequence[Finding]) -> Iterator[Block]:
    """What was not reviewed, by the reason; what is not reviewed is not safe."""
    for reasons, group in by_reason(findings).items():
        names = joined([each.name for each in group])
        yield f"{'; '.join(reasons)}: {names}."
