"""Reviews in Markdown, for the description of a merge request: what to change, the rest folded.

It is readable as the text that it is, and nothing of a design or a shop is anything but text in it.
"""

from collections.abc import Iterator, Mapping, Sequence
from math import isnan

from reviewer.judging.finding import Finding
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Problem
from reviewer.notation.show import show
from reviewer.reporting.account import Account, Changed, Work, account_of
from reviewer.reporting.limits import VAST, shown_ratio
from reviewer.reporting.markdown_text import folded, marked, table
from reviewer.reporting.measured_words import calibrations_told
from reviewer.reporting.remedy_words import reached_words, remedy_words, wanting_words
from reviewer.reporting.study_words import told_of
from reviewer.reporting.text import Counted, Piece, counted_words
from reviewer.reporting.text_finding import NOT_SEARCHED, hazard_of, measure, what_to_change, where
from reviewer.reporting.text_shop import WOULD_SAY
from reviewer.reporting.versions import version_words, versions
from reviewer.reporting.words import (
    HOLD_WORDS,
    LEVEL_WORDS,
    STAGE_WORDS,
    cautions,
    counted,
    is_to_change,
    sentence,
    verdict_sentence,
)

Questions = Mapping[str, str]


class MarkdownReport:
    """Reports in Markdown, a section a design, and a count of them at the end."""

    def __init__(self, version: str) -> None:
        """Begin a report of a version of the program."""
        self.version = version
        self.counted = Counted()

    def piece(self, review: Review) -> Piece:
        """The section of a design; whether it was read, and whether something is to change."""
        lines = list(_unread(review) if review.design is None else _section(review))
        lines += _under(review, self.version)
        changing = any(is_to_change(each) for each in review.findings)
        return "\n".join(lines) + "\n", review.design is not None, changing

    def put(self, piece: Piece) -> str:
        """A section below those before it."""
        text, read, changing = piece
        before = "\n" if self.counted.designs else ""
        self.counted.add(read=read, changing=changing)
        return before + text

    def end(self) -> str:
        """How the designs came out, where there are several."""
        words = counted_words(self.counted)
        return f"\n---\n\n{words}\n" if words else ""


def _unread(review: Review) -> Iterator[str]:
    yield f"## {marked(review.path)}"
    yield ""
    yield f"**Not reviewed: {counted(len(review.problems), 'problem')}.**"
    yield ""
    yield from _problems(review.problems)


def _problems(problems: Sequence[Problem]) -> Iterator[str]:
    """What is wrong with files: where, what, and how to mend it."""
    for each in problems:
        place = f"{each.place.path}:{each.place.line}:{each.place.column}"
        told = (
            f"- {marked(place)}: {marked(each.what)}",
            f"found {marked(each.found)}" if each.found else "",
            f"expected {marked(each.expected)}" if each.expected else "",
            f"mend: {marked(each.mend)}" if each.mend else "",
        )
        yield "; ".join(filter(None, told))


def _section(review: Review) -> Iterator[str]:
    """All of a design that was reviewed."""
    design, account = review.design, account_of(review)
    assert design is not None
    questions = {rule.name: rule.question for rule in review.rules}
    revision = f", revision {design.revision}" if design.revision else ""
    yield f"## {marked(f'{design.name}{revision}')}"
    yield ""
    yield f"**{marked(verdict_sentence(review.findings))}** {marked(review.path)}"
    for words in calibrations_told(review.tests, review.path):
        yield ""
        yield marked(words)
    if review.problems:
        yield ""
        yield "**Reviewed without what could not be read:**"
        yield ""
        yield from _problems(review.problems)
    yield from _conceded(account)
    for work in account.work:
        yield from _work(work, review.path, questions)
    yield from _not_reviewed(account, questions)
    yield from _changed(account.changed)
    yield from _holding(account)


def _work(work: Work, own: str, questions: Questions) -> Iterator[str]:
    """A stage: a table of what to change, questions to a person, and the details folded."""
    words = STAGE_WORDS[work.stage]
    yield from ("", f"### {words.capitalize()}", "")
    if work.to_change:
        heads = ("what to change", "of the limit", "finding")
        yield from table(heads, [_row(each, own) for each in work.to_change])
    if work.to_change and work.to_judge:
        yield ""
    for finding in work.to_judge:
        asked = questions.get(finding.rule) or f"Judge {finding.name}"
        yield f"- [ ] {marked(asked)} {marked(finding.message)} ({marked(finding.name)})"
    lines = [line for each in work.to_change for line in _details(each, own)]
    if lines:
        yield ""
        yield from folded(f"Why, and by how much, {words}", lines[:-1])


def _row(finding: Finding, own: str) -> tuple[str, str, str]:
    ratio = finding.utilisation
    times = "over 100" if ratio > VAST else shown_ratio(ratio)
    used = measure(finding) if isnan(ratio) else f"{times} times"
    change = what_to_change(finding, own).removeprefix("Change ")
    return change, used, f"{finding.name}{hazard_of(finding)}"


def _details(finding: Finding, own: str) -> Iterator[str]:
    """A finding in full."""
    yield f"**{marked(finding.name)}**: {marked(finding.message)}"
    remedies = finding.remedies or NOT_SEARCHED
    others = (f"Or {remedy_words(each, own)}." for each in remedies.offered[1:])
    level = f"{LEVEL_WORDS[finding.level]}{hazard_of(finding)}"
    told = (
        finding.because,
        sentence(": ".join(filter(None, [level, measure(finding)]))),
        *others,
        reached_words(remedies),
        *wanting_words(remedies, own),
        *told_of(finding),
        f"Source: {finding.source}" if finding.source else "",
        where(finding),
    )
    yield ""
    yield from (f"- {marked(each)}" for each in told if each)
    for each in finding.numbers:
        yield f"- {marked(each.name)} = {marked(show(each.value, each.unit))}: {marked(each.says)}"
    yield ""


def _conceded(account: Account) -> Iterator[str]:
    """What is accepted on purpose, tipping and crushing first, in full."""
    if account.conceded:
        yield from ("", "### Accepted on purpose", "")
    for finding in account.conceded:
        concession = finding.concession
        assert concession is not None
        until = f"until {concession.until}" if concession.until else "with no end"
        holds = f"{HOLD_WORDS[finding.level]} {STAGE_WORDS[finding.stage]}{hazard_of(finding)}"
        head = f"{concession.by} accepts {finding.name} {until}: {concession.why}"
        used = measure(finding)
        told = (finding.message, finding.because, f"It {holds}: {used}" if used else f"It {holds}")
        body = " ".join(sentence(each) for each in told if each)
        yield f"- **{marked(head)}** {marked(body)} {marked(where(finding))}"


def _not_reviewed(account: Account, questions: Questions) -> Iterator[str]:
    """What was not reviewed, by what keeps it open; never folded."""
    if account.not_reviewed:
        yield from ("", "### Not reviewed", "")
    for reasons, findings in account.not_reviewed:
        asked = (
            f"{questions.get(each.rule) or each.rule} ({each.name}, {each.level})"
            for each in findings
        )
        yield f"- **{marked('; '.join(reasons))}**: {marked(' '.join(asked))}"


def _changed(changed: Sequence[Changed]) -> Iterator[str]:
    """What the shop changed, the silenced first; of these what they would say."""
    if changed:
        yield from ("", "### Changed by the shop", "")
    for each in changed:
        change = each.change
        head = f"{change.subject.capitalize()} {change.name}: {change.does}"
        place = f"{change.place.path}:{change.place.line}"
        reason = f"{sentence(f'{change.by}: {change.why}')} {place}"
        yield f"- **{marked(head)}**. {marked(reason)}"
        for finding in each.findings:
            said = f"On {finding.part} {WOULD_SAY[finding.verdict]}{hazard_of(finding)}."
            message = finding.message if finding.verdict in ("fail", "review") else ""
            yield f"  - {marked(' '.join(filter(None, [said, message, measure(finding)])))}"


def _holding(account: Account) -> Iterator[str]:
    """What holds, folded, nearest to its limit first."""
    if not account.holding and not account.beside:
        return
    holds = counted(len(account.holding), "rule holds", "rules hold")
    beside = counted(account.beside, "does", "do")
    words = f"{holds}, {beside} not apply" if account.beside else holds
    rows = [
        (each.name, "" if isnan(each.utilisation) else shown_ratio(each.utilisation))
        for each in account.holding
    ]
    yield ""
    if rows:
        yield from folded(
            sentence(words), table(("finding", "part of the limit that is used"), rows)
        )
    else:
        yield sentence(words)


def _under(review: Review, version: str) -> Iterator[str]:
    """Cautions, and what it was reviewed under."""
    told = [f"> {marked(caution)}" for caution in cautions(review.findings)]
    yield from ("", "\n>\n".join(told)) if told else ()
    under = "; ".join(version_words(each) for each in versions(review))
    yield from ("", f"Reviewed by reviewer {marked(version)} under {marked(under)}.")
