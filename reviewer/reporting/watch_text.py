"""What has changed in a design since the last look, as a person reads it beside an editor."""

from reviewer.reporting.compare_words import (
    TITLES,
    comparison_sentence,
    edit_words,
    explained_words,
    is_seen,
    pair_words,
)
from reviewer.reporting.sheet import Sheet, Style
from reviewer.studying.compare import Comparison, Pair

INDENT = 4
MOST_EACH = 10
MOST_EDITS = 5
SAID = frozenset(("fails now", "new"))  # turns of which the finding's own words are told too


def changed_text(found: Comparison, path: str, style: Style) -> str:
    """What became of the findings of a design, and because of which changes of its file."""
    sheet = Sheet(style)
    said = comparison_sentence(found)
    sheet.put(f"{path}: {said[0].lower()}{said[1:]}", look="strong")
    for edit in found.edits[:MOST_EDITS]:
        sheet.put(f"changed {edit_words(edit)}", INDENT)
    if len(found.edits) > MOST_EDITS:
        sheet.put(f"changed {len(found.edits) - MOST_EDITS} more values", INDENT)
    for turn, title in TITLES.items():
        pairs = found.turned(turn)
        shown = [pair for pair in pairs if is_seen(pair)][:MOST_EACH]
        for pair in shown:
            _put(sheet, pair, title)
        if len(pairs) > len(shown):
            more = "more" if shown else "by less than a hundredth"
            sheet.put(f"{title}: {len(pairs) - len(shown)} {more}")
    return sheet.text()


def _put(sheet: Sheet, pair: Pair, title: str) -> None:
    is_grave = pair.turn == "fails now" and pair.either.level == "must"
    sheet.put(f"{title}: {pair.name}, {pair_words(pair)}", look="must" if is_grave else "")
    said = pair.either.message if pair.turn in SAID else ""
    for text in filter(None, (said, explained_words(pair.explained))):
        sheet.put(text, INDENT)
