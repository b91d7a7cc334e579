"""What was not reviewed, and why: what is missing, or what must be mended first."""

from collections.abc import Mapping, Sequence

from reviewer.judging.finding import Finding
from reviewer.reporting.sheet import Sheet
from reviewer.reporting.text_finding import INDENT, where
from reviewer.reporting.words import STAGE_WORDS

FAILS = " fails"


def put_not_reviewed(
    sheet: Sheet, findings: Sequence[Finding], questions: Mapping[str, str]
) -> None:
    """Every open finding, those that are open for one reason together."""
    groups = by_reason(findings)
    if not groups:
        return
    sheet.heading("not reviewed")
    for reasons, group in groups.items():
        for reason in reasons:
            sheet.put(reason, look="strong")
        for finding in group:
            question = questions.get(finding.rule) or finding.rule
            sheet.put(question, INDENT, lead="- ")
            level = f"{finding.level}, {STAGE_WORDS[finding.stage]};"
            sheet.put(f"{level} {where(finding)} {finding.name}", INDENT + 2)
        sheet.gap()


def by_reason(findings: Sequence[Finding]) -> dict[tuple[str, ...], list[Finding]]:
    """The open findings by what keeps them open: what is missing first, then what fails."""
    opened = [finding for finding in findings if finding.verdict == "open"]
    held_by = {
        finding.name: reason.removesuffix(FAILS)
        for finding in opened
        for reason in finding.open_because
        if reason.endswith(FAILS)
    }
    missing: dict[tuple[str, ...], list[Finding]] = {}
    held: dict[tuple[str, ...], list[Finding]] = {}
    for finding in opened:
        if finding.name in held_by:
            root = _root(finding.name, held_by)
            held.setdefault((f"Held back until {root} is mended",), []).append(finding)
        else:
            reasons = finding.open_because or ("No reason is known",)
            missing.setdefault(reasons, []).append(finding)
    return {**missing, **held}


def _root(name: str, held_by: Mapping[str, str]) -> str:
    """The failed finding behind which others stand, one behind the other."""
    passed = {name}
    while name in held_by and held_by[name] not in passed:
        name = held_by[name]
        passed.add(name)
    return name
