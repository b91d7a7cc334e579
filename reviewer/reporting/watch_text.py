"""What has changed in a design since the last look, as a person reads it beside an editor."""

from reviewer.reporting.compare_words import (
    TITLES,
    comparison_sentence,
    edit_words,
    explained_words,
    pair_words,
)
from reviewer.reporting.sheet import Sheet, Style
from reviewer.studying.compare import Comparison

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
        for pair in pairs[:MOST_EACH]:
            look = "must" if turn == "fails now" and pair.either.level == "must" else ""
            sheet.put(f"{title}: {pair.name}, {pair_words(pair)}", look=look)
            for text in (
                pair.either.message if turn in SAID else "",
                explained_words(pair.explained),
            ):
                if text:
                    sheet.put(text, INDENT)
        if len(pairs) > MOST_EACH:
            sheet.put(f"{title}: {len(pairs) - MOST_EACH} more")
    return sheet.text()
