"""One finding on a sheet of text: what to change first, the rule's name last."""

from collections.abc import Mapping

from reviewer.judging.concession import RULE as STALE
from reviewer.judging.finding import Finding
from reviewer.judging.remedies import Remedies
from reviewer.notation.problem import on_line
from reviewer.notation.show import show
from reviewer.reporting.limits import usage
from reviewer.reporting.remedy_words import reached_words, remedy_words, wanting_words
from reviewer.reporting.sheet import Sheet, columns
from reviewer.reporting.study_words import told_of
from reviewer.reporting.words import HOLD_WORDS, LEVEL_WORDS, STAGE_WORDS, joined, sentence

NOT_SEARCHED = Remedies(())
INDENT = 4
TICK = "[ ] "
MEASURED = "measurement."
MEASURED_DO = {
    f"{MEASURED}still_stands": "Test it again, or take the measurement out",
    f"{MEASURED}agrees": "Find out what makes the reading differ",
    f"{MEASURED}calibrates": "Calibrate by another measurement, or take calibrates: out",
}
LEAST_COLUMN = 24  # columns that are left for what a number is


class FindingText:
    """Puts findings on a sheet; `questions` are those of the rules, by name.

    `own` is the path of the design: a value that stands in another file is told with that file.
    """

    def __init__(self, sheet: Sheet, questions: Mapping[str, str], own: str) -> None:
        """Write on a sheet."""
        self.sheet = sheet
        self.questions = questions
        self.own = own

    def to_change(self, finding: Finding) -> None:
        """A fail: what to change, what happens, why, how much, and where."""
        self.sheet.put(what_to_change(finding, self.own), lead=TICK, look=finding.level)
        remedies = finding.remedies or NOT_SEARCHED
        for other in remedies.offered[1:]:
            self.sheet.put(remedy_words(other, self.own), INDENT, lead="or ")
        self._body(finding)
        self._verdict(f"{LEVEL_WORDS[finding.level]}{hazard_of(finding)}", finding)
        told = reached_words(remedies), *wanting_words(remedies, self.own), *told_of(finding)
        for words in told:
            if words:
                self.sheet.put(words, INDENT)
        self._place(finding)

    def conceded(self, finding: Finding) -> None:
        """A fail that is accepted on purpose: by whom, why, until when, and all that it is."""
        concession = finding.concession
        assert concession is not None
        until = f" until {concession.until}" if concession.until else ", with no end"
        self.sheet.put(
            f"{concession.by} accepts {finding.name}{until}: {concession.why}", look="strong"
        )
        self._body(finding)
        holds = f"{HOLD_WORDS[finding.level]} {STAGE_WORDS[finding.stage]}"
        self._verdict(f"Accepted although it {holds}{hazard_of(finding)}", finding)
        self._place(finding)

    def silenced(self, finding: Finding) -> None:
        """What a rule says that a shop has silenced."""
        self._body(finding)
        self.sheet.put(sentence(f"{HOLD_WORDS[finding.level]}{hazard_of(finding)}"), INDENT)
        if finding.verdict == "fail":
            self._numbers(finding)
        self.sheet.put(f"{where(finding)} {finding.name}", INDENT)

    def to_judge(self, finding: Finding) -> None:
        """A question to a person."""
        head = self.questions.get(finding.rule) or f"Judge {finding.name}"
        self.sheet.put(head, lead=TICK, look="strong")
        self._body(finding)
        self.sheet.put(f"A person must judge this{hazard_of(finding)}.", INDENT)
        self._place(finding)

    def _body(self, finding: Finding) -> None:
        self.sheet.put(finding.message, INDENT)
        if finding.because:
            self.sheet.put(f"Why: {finding.because}", INDENT)

    def _verdict(self, words: str, finding: Finding) -> None:
        self.sheet.put(sentence(": ".join(filter(None, [words, measure(finding)]))), INDENT)
        self._numbers(finding)

    def _numbers(self, finding: Finding) -> None:
        """The numbers that matter, one on a line: name, value, and what it is if there is room."""
        rows = [(each.name, show(each.value, each.unit), each.says) for each in finding.numbers]
        names = max((columns(name) for name, _, _ in rows), default=0)
        values = max((columns(value) for _, value, _ in rows), default=0)
        room = self.sheet.style.width - INDENT - names - values - 4
        for name, value, says in rows:
            lead = f"{name:<{names}}  {value:>{values}}"
            if room >= LEAST_COLUMN:
                self.sheet.put(says, INDENT, lead=f"{lead}  ")
            else:
                self.sheet.put(f"{name} {value}", INDENT)

    def _place(self, finding: Finding) -> None:
        self.sheet.put(f"{where(finding)} {finding.name}", INDENT)
        self.sheet.gap()


def what_to_change(finding: Finding, own: str) -> str:
    """The smallest change that mends it; else the values that could, with their lines; else where.

    Where remedies were searched, it is the first of them.
    """
    if finding.rule == STALE:
        return f"Take the concession on {on_line(finding.place, own)} out, or renew it"
    if finding.rule.startswith(MEASURED):
        return f"{MEASURED_DO[finding.rule]} ({finding.part}, {on_line(finding.place, own)})"
    if finding.remedies and finding.remedies.offered:
        return f"Change {remedy_words(finding.remedies.offered[0], own)}"
    if finding.change:
        return f"Change {joined(finding.change, 'or')}"
    return f"Change {finding.part} ({on_line(finding.place, own)})"


def measure(finding: Finding) -> str:
    """How much is asked of how much there is, and the case if the message does not name it."""
    told = finding.case is None or finding.case in finding.message
    case = "" if told else f'under "{finding.case}"'
    return ", ".join(filter(None, [usage(finding), case]))


def hazard_of(finding: Finding) -> str:
    """The hazard in brackets."""
    return f" (hazard: {finding.hazard})" if finding.hazard else ""


def where(finding: Finding) -> str:
    """File and line, as the GNU coding standards have it."""
    return f"{finding.place.path}:{finding.place.line}"
