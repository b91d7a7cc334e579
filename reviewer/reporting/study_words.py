"""What studies found of a finding, in words and as data: what moves it, and how it scatters."""

from collections.abc import Sequence
from math import isnan
from typing import Any

from reviewer.judging.finding import Finding
from reviewer.judging.influence import Influence
from reviewer.judging.scatter import Scatter
from reviewer.reporting.limits import shown_ratio
from reviewer.reporting.sheet import Sheet

Data = dict[str, Any]

MOST = 5  # influences that are told
INDENT = 4
NEAREST = 3  # findings that are named where nothing fails
PERCENT = 100.0
DIGITS = 12


def influence_words(finding: Finding) -> str:
    """What moves a finding most, by one per cent more of each."""
    if not finding.influences:
        return ""
    told = [f"{each.name} {_signed(each.elasticity)} %" for each in finding.influences[:MOST]]
    return f"One per cent more of each moves it so: {', '.join(told)}."


def _signed(value: float) -> str:
    return f"{'-' if value < 0 else '+'}{abs(value):.2g}"


def scatter_words(scatter: Scatter | None) -> str:
    """How a finding scatters within the tolerances of the file."""
    if scatter is None:
        return ""
    at_worst = "cannot be judged at its worst"
    if scatter.corner_fails is not None:
        used = "" if isnan(scatter.corner) else f" ({shown_ratio(scatter.corner)} of the limit)"
        at_worst = f"{'fails' if scatter.corner_fails else 'holds'} at its worst{used}"
    share = f"fails in {percent(scatter.share)} of {scatter.samples} samples"
    unknown = f", unknown in {percent(scatter.unknown)}" if scatter.unknown else ""
    band = f"; {scatter.band} makes {percent(scatter.part)} of it" if scatter.band else ""
    return f"Within its tolerances it {at_worst} and {share}{unknown}{band}."


def percent(share: float) -> str:
    """A share of samples: to a tenth of a per cent, and never 0 % or 100 % where it is not.

    >>> percent(0.0), percent(0.0004), percent(0.0707), percent(0.99996)
    ('none', 'less than 0.1 %', '7.1 %', 'more than 99.9 %')
    """
    if share == 0.0:
        return "none"
    if share == 1.0:
        return "all"
    value = round(PERCENT * share, 1)
    if value == 0.0:
        return "less than 0.1 %"
    return "more than 99.9 %" if value == PERCENT else f"{value:g} %"


def may_fail(finding: Finding) -> bool:
    """Whether a finding that holds does so only in part of its tolerances."""
    scatter = finding.scatter
    return (
        finding.verdict == "pass"
        and scatter is not None
        and (scatter.corner_fails is not False or scatter.share > 0 or scatter.unknown > 0)
    )


def put_scatter(sheet: Sheet, findings: Sequence[Finding]) -> None:
    """What holds as drawn and may fail as it is made; where nothing may, what is nearest to it."""
    found = [finding for finding in findings if may_fail(finding)]
    if not found:
        _put_nearest(sheet, findings)
        return
    sheet.heading("what tolerances may break")
    for finding in found:
        used = "" if isnan(finding.utilisation) else f", {shown_ratio(finding.utilisation)} nominal"
        sheet.put(f"{finding.name}{used}", look="strong")
        sheet.put(scatter_words(finding.scatter), INDENT)
        sheet.gap()


def _put_nearest(sheet: Sheet, findings: Sequence[Finding]) -> None:
    """What comes nearest to its limit at its worst, of what tolerances move."""
    moved = [
        (each, each.scatter)
        for each in findings
        if each.verdict == "pass" and each.scatter is not None and each.scatter.corner > 0
    ]
    if not moved:
        return
    sheet.heading("within its tolerances")
    sheet.put("Nothing that holds fails anywhere within its tolerances. Nearest to it come:")
    sheet.gap()
    for finding, scatter in sorted(moved, key=lambda each: -each[1].corner)[:NEAREST]:
        nominal = shown_ratio(finding.utilisation)
        band = f", by {scatter.band}" if scatter.band else ""
        sheet.put(
            f"{finding.name}: {nominal}, at its worst {shown_ratio(scatter.corner)}{band}", INDENT
        )
    sheet.gap()


def put_influences(sheet: Sheet, findings: Sequence[Finding]) -> None:
    """What moves the findings that hold, but nearly do not."""
    found = [each for each in findings if each.verdict == "pass" and each.influences]
    if not found:
        return
    sheet.heading("what moves what nearly fails")
    for finding in found:
        sheet.put(f"{finding.name}, {shown_ratio(finding.utilisation)}", look="strong")
        sheet.put(influence_words(finding), INDENT)
        sheet.gap()


def influences_data(influences: Sequence[Influence] | None) -> list[Data] | None:
    """What moves a finding, the strongest first; None where it was not computed."""
    if influences is None:
        return None
    return [
        {
            "part": each.part,
            "field": each.field,
            "value": each.text,
            "line": each.place.line,
            "column": each.place.column,
            "effect": _rounded(each.effect),
            "elasticity": _rounded(each.elasticity),
        }
        for each in influences
    ]


def scatter_data(scatter: Scatter | None) -> Data | None:
    """How a finding scatters; None where it was not sampled, or no tolerance touches it."""
    if scatter is None:
        return None
    return {
        "corner": None if isnan(scatter.corner) else _rounded(scatter.corner),
        "corner_fails": scatter.corner_fails,
        "fails": _rounded(scatter.share),
        "unknown": _rounded(scatter.unknown),
        "samples": scatter.samples,
        "band": scatter.band,
        "part": _rounded(scatter.part),
    }


def _rounded(value: float) -> float:
    return float(f"{value:.{DIGITS}g}")


def told_of(finding: Finding) -> list[str]:
    """What studies have to say of a fail."""
    return [words for words in (influence_words(finding), scatter_words(finding.scatter)) if words]
