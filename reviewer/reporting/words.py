"""The words of the reports: stages, levels, counts, and the verdict on a design in one sentence."""

from collections.abc import Iterable, Sequence

from reviewer.judging.finding import LEVELS, STAGES, Finding, Level, Stage, Verdict

VERDICTS: tuple[Verdict, ...] = ("fail", "open", "review", "pass", "not applicable")
STAGE_WORDS: dict[Stage, str] = {
    "cutting": "before cutting",
    "assembling": "while assembling",
    "loading": "when loading",
    "using": "in use",
}
LEVEL_WORDS: dict[Level, str] = {
    "must": "Must change",
    "should": "Should change",
    "note": "Worth changing",
}
HOLD_WORDS: dict[Level, str] = {
    "must": "must hold",
    "should": "should hold",
    "note": "had better hold",
}
GRAVEST = ("tipping", "crushing")  # hazards whose concessions are told first
CAUTIONS = (
    "This is a computed review of what the file says, not of what stands in the shop. It is no "
    "licence: where people stand on it, sit on it, or are lifted by it, local codes and a licensed "
    "practitioner decide.",
    "Test it with chocked weights, in small steps and from a distance, before anyone trusts it.",
)
COUNTS = (
    *("no", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)


def in_order(findings: Sequence[Finding]) -> list[Finding]:
    """Findings as reports list them: by stage, verdict, level, name, and the rest of a pair."""
    return sorted(
        findings,
        key=lambda each: (
            STAGES.index(each.stage),
            VERDICTS.index(each.verdict),
            LEVELS.index(each.level),
            each.name,
            each.others,
        ),
    )


def conceded_first(findings: Sequence[Finding]) -> list[Finding]:
    """Findings in order, but what is accepted on purpose first, and the gravest of that."""
    return sorted(
        in_order(findings),
        key=lambda each: (
            (each.concession is None, each.hazard not in GRAVEST)
            if each.concession
            else (True, False)
        ),
    )


def is_to_change(finding: Finding) -> bool:
    """Whether a finding is a failure that nobody has accepted, of a rule that counts."""
    return finding.verdict == "fail" and finding.concession is None and not finding.is_silenced


def cautions(findings: Iterable[Finding]) -> tuple[str, ...]:
    """What to be careful of, where any finding is of something that can hurt."""
    hurts = any(each.hazard and each.verdict != "not applicable" for each in findings)
    return CAUTIONS if hurts else ()


def number(count: int) -> str:
    """A count in words up to twelve, then in figures."""
    return COUNTS[count] if count < len(COUNTS) else str(count)


def counted(count: int, one: str, many: str = "") -> str:
    """A count in words, with what it counts.

    >>> counted(1, "thing"), counted(3, "thing"), counted(40, "leaf", "leaves")
    ('one thing', 'three things', '40 leaves')
    """
    return f"{number(count)} {one if count == 1 else many or f'{one}s'}"


def sentence(text: str) -> str:
    """A text with a capital in front and a full stop behind."""
    return f"{text[:1].upper()}{text[1:]}{'' if text.endswith('.') else '.'}"


def joined(parts: Sequence[str], last: str = "and") -> str:
    """Parts in a row: `a, b and c`.

    >>> joined(["a"]), joined(["a", "b"], "or"), joined(["a", "b", "c"])
    ('a', 'a or b', 'a, b and c')
    """
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} {last} {parts[-1]}"


def verdict_sentence(findings: Sequence[Finding]) -> str:
    """What a review comes to: what to change and when, what to judge, what was not reviewed."""
    silenced = sum(each.is_silenced for each in findings)
    findings = [each for each in findings if not each.is_silenced]
    if not findings and not silenced:
        return "No rule is for what this design has: nothing was reviewed."
    by_shop = f"{number(silenced)} silenced by the shop" if silenced else ""
    clauses = [clause for clause in (_changes(findings), *_rest(findings), by_shop) if clause]
    return sentence(", ".join(clauses))


def _changes(findings: Sequence[Finding]) -> str:
    by_stage = [
        (sum(is_to_change(each) and each.stage == stage for each in findings), STAGE_WORDS[stage])
        for stage in STAGES
    ]
    told = [(count, words) for count, words in by_stage if count]
    if not told:
        return "nothing to change"
    first = f"{counted(told[0][0], 'thing')} to change {told[0][1]}"
    return ", ".join([first, *(f"{number(count)} {words}" for count, words in told[1:])])


def _rest(findings: Sequence[Finding]) -> list[str]:
    counts = {
        "to judge": sum(each.verdict == "review" for each in findings),
        "not reviewed": sum(each.verdict == "open" for each in findings),
        "conceded": sum(each.concession is not None for each in findings),
    }
    return [f"{number(count)} {words}" for words, count in counts.items() if count]
