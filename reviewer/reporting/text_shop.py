"""What a shop changed, on a sheet of text: rules and limits, by whom and why, the gravest first."""

from collections.abc import Sequence

from reviewer.judging.finding import ByShop, Finding
from reviewer.judging.reviewed import Review
from reviewer.reporting.sheet import Sheet
from reviewer.reporting.text_finding import FindingText
from reviewer.reporting.words import GRAVEST, sentence

INDENT = 4
WOULD_SAY = {
    "fail": "it would fail",
    "open": "it would be open",
    "review": "it would ask",
    "pass": "it holds all the same",
    "not applicable": "it does not apply",
}


def put_shop(
    sheet: Sheet, review: Review, teller: FindingText, findings: Sequence[Finding]
) -> None:
    """The changes of the shop that a design belongs to; of a silenced rule, what it would say."""
    shop = review.shop
    if shop is None or not review.changes:
        return
    sheet.heading("changed by the shop")
    sheet.put(f"{shop.name} ({shop.path}) has its own way with these:")
    sheet.gap()
    for change in sorted(review.changes, key=shop_order):
        sheet.put(f"{_subject(change)} {change.name}: {change.does}", look="strong")
        sheet.put(sentence(f"{change.by}: {change.why}"), INDENT)
        of_it = [each for each in findings if change.silences and each.rule == change.name]
        for finding in of_it:
            sheet.put(f"On {finding.part} {WOULD_SAY[finding.verdict]}.", INDENT)
            if finding.verdict in ("fail", "review"):
                teller.silenced(finding)
        sheet.put(f"{change.place.path}:{change.place.line}", INDENT)
        sheet.gap()


def _subject(change: ByShop) -> str:
    return "Rule" if change.subject == "rule" else "Limit"


def shop_order(change: ByShop) -> tuple[bool, bool]:
    """Silenced rules first, and of these the gravest hazards; else as the file has them."""
    return not change.silences, change.hazard not in GRAVEST
