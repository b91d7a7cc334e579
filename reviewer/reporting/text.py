"""The report that a maker reads: a list of work, by stage, what to change first."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import isnan

from reviewer.judging.finding import STAGES, Finding
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import render
from reviewer.reporting.limits import shown_ratio
from reviewer.reporting.measured_words import calibrations_told
from reviewer.reporting.sheet import Sheet, Style, columns
from reviewer.reporting.study_words import put_influences, put_scatter
from reviewer.reporting.text_finding import FindingText
from reviewer.reporting.text_open import put_not_reviewed
from reviewer.reporting.text_shop import put_shop
from reviewer.reporting.words import (
    GRAVEST,
    STAGE_WORDS,
    cautions,
    counted,
    in_order,
    is_to_change,
    number,
    sentence,
    verdict_sentence,
)

MOST_PASSES = 10
Piece = tuple[str, bool, bool]  # a text, whether it was read, whether something is to change


@dataclass
class Counted:
    """How many designs there were, and what they came to."""

    designs: int = 0
    read: int = 0
    changing: int = 0

    def add(self, *, read: bool, changing: bool) -> None:
        """Count one design more."""
        self.designs += 1
        self.read += read
        self.changing += changing


def counted_words(found: Counted) -> str:
    """How several designs came out; nothing of one."""
    if found.designs < 2:
        return ""
    unread = found.designs - found.read
    changing = number(found.changing) if found.changing else "none"
    clauses = [
        f"{counted(found.read, 'design')} reviewed",
        f"{changing} of them with something to change" if found.read else "",
        f"{counted(unread, 'file')} not reviewed" if unread else "",
    ]
    return sentence(", ".join(filter(None, clauses)))


class TextReport:
    """Reports in text, one design after the other, and a count of them at the end.

    `questions` are those of the rules, by name. `everything` lists all that holds, not the ten
    rules that are nearest to their limit. `problems` prints the problems of reading in the report
    itself, for where they are not on standard error.
    """

    def __init__(
        self,
        style: Style,
        questions: Mapping[str, str],
        *,
        everything: bool = False,
        problems: bool = False,
    ) -> None:
        """Begin a report."""
        self.style = style
        self.questions = questions
        self.everything = everything
        self.problems = problems
        self.counted = Counted()

    def piece(self, review: Review) -> Piece:
        """The report of one design; whether it was read, and whether it has something to change."""
        sheet = Sheet(self.style)
        if review.design is None:
            self._put_unread(sheet, review)
        else:
            self._put(sheet, review)
        changing = any(is_to_change(each) for each in review.findings)
        return sheet.text(), review.design is not None, changing

    def put(self, piece: Piece) -> str:
        """The report of a design below those before it."""
        text, read, changing = piece
        before = f"\n{'=' * self.style.width}\n\n" if self.counted.designs else ""
        self.counted.add(read=read, changing=changing)
        return before + text

    def add(self, review: Review) -> str:
        """One design more."""
        return self.put(self.piece(review))

    def end(self) -> str:
        """How the designs came out, where there are several."""
        words = counted_words(self.counted)
        if not words:
            return ""
        sheet = Sheet(self.style)
        sheet.lines += ["", "=" * self.style.width, ""]
        sheet.put(words)
        return sheet.text()

    def _put_unread(self, sheet: Sheet, review: Review) -> None:
        sheet.put(_called(review.path), look="strong")
        where = "" if self.problems else ", told on standard error"
        sheet.put(f"Not reviewed: {counted(len(review.problems), 'problem')}{where}.")
        self._put_problems(sheet, review)

    def _put_problems(self, sheet: Sheet, review: Review) -> None:
        if self.problems:
            for problem in review.problems:
                sheet.gap()
                sheet.lines += render(problem).splitlines()

    def _put(self, sheet: Sheet, review: Review) -> None:
        every = in_order(review.findings)
        findings = [each for each in every if not each.is_silenced]
        teller = FindingText(sheet, self.questions, review.path)
        _put_head(sheet, review)
        self._put_problems(sheet, review)
        _put_concessions(sheet, teller, findings)
        put_shop(sheet, review, teller, every)
        for stage in STAGES:
            changing = [each for each in findings if each.stage == stage and is_to_change(each)]
            judging = [
                each for each in findings if each.stage == stage and each.verdict == "review"
            ]
            if changing or judging:
                sheet.heading(STAGE_WORDS[stage])
            for finding in changing:
                teller.to_change(finding)
            for finding in judging:
                teller.to_judge(finding)
        put_not_reviewed(sheet, findings, self.questions)
        put_scatter(sheet, findings)
        put_influences(sheet, findings)
        _put_passes(sheet, findings, len(findings) if self.everything else MOST_PASSES)
        _put_cautions(sheet, findings)


def _put_head(sheet: Sheet, review: Review) -> None:
    design = review.design
    assert design is not None
    revision = f", revision {design.revision}" if design.revision else ""
    sheet.put(f"{design.name}{revision}", look="strong")
    sheet.put(_called(review.path))
    sheet.put(verdict_sentence(review.findings), look="strong")
    for words in calibrations_told(review.tests, review.path):
        sheet.put(words, look="strong")
    lacking = dict.fromkeys(problem.place.path for problem in review.problems)
    for path in lacking:
        sheet.put(f"Reviewed without what is wrong in {path}.", look="must")


def _called(path: str) -> str:
    return "from standard input" if path == "-" else path


def _put_concessions(sheet: Sheet, teller: FindingText, findings: Iterable[Finding]) -> None:
    conceded = [finding for finding in findings if finding.concession is not None]
    if not conceded:
        return
    sheet.heading("accepted on purpose")
    for finding in sorted(conceded, key=lambda each: each.hazard not in GRAVEST):
        teller.conceded(finding)


def _put_passes(sheet: Sheet, findings: Sequence[Finding], most: int) -> None:
    """What holds, most used first, and how much does not apply."""
    passes = sorted(
        (finding for finding in findings if finding.verdict == "pass"),
        key=lambda each: (isnan(each.utilisation), -each.utilisation, each.name, each.others),
    )
    beside = sum(finding.verdict == "not applicable" for finding in findings)
    if not passes and not beside:
        return
    sheet.heading("what holds")
    sheet.put(_holding(len(passes), beside, min(most, len(passes))))
    sheet.gap()
    names = max((columns(_name(each)) for each in passes[:most]), default=0)
    for finding in passes[:most]:
        used = "-" if isnan(finding.utilisation) else shown_ratio(finding.utilisation)
        lead = f"    {used:<4}  {_name(finding):<{names}}  "
        if finding.case and columns(lead) + columns(finding.case) <= sheet.style.width:
            sheet.put(finding.case, lead=lead)
        else:
            sheet.put(_name(finding), lead=f"    {used:<4}  ")


def _holding(passes: int, beside: int, listed: int) -> str:
    """How many rules hold, and what the list below shows of them."""
    holds = counted(passes, "rule holds", "rules hold")
    beside_words = sentence(f"{counted(beside, 'rule does', 'rules do')} not apply here")
    if listed == 0:
        shown = sentence(holds)
    elif listed == passes:
        shown = sentence(f"{holds}, listed below with the part of the limit that is used")
    else:
        shown = sentence(f"{holds}; the {number(listed)} nearest to their limits are listed below "
                         "with the part that is used, and --all lists every one")  # fmt: skip
    return f"{shown} {beside_words}" if beside else shown


def _name(finding: Finding) -> str:
    return " with ".join([finding.name, *finding.others])


def _put_cautions(sheet: Sheet, findings: Iterable[Finding]) -> None:
    told = cautions(findings)
    if told:
        sheet.heading("cautions")
        for caution in told:
            sheet.put(caution)
