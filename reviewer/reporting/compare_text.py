"""A comparison of two designs as a person reads it."""

from reviewer.judging.finding import Level
from reviewer.reporting.compare_words import (
    STALE_TITLE,
    TITLES,
    comparison_sentence,
    edit_words,
    explained_words,
    is_seen,
    movement_words,
    pair_words,
    stale_words,
)
from reviewer.reporting.measured_words import calibrations_told
from reviewer.reporting.sheet import Sheet, Style, columns
from reviewer.studying.compare import Comparison

INDENT = 4
MOST_EACH = 25
MOST_MOVED = 20


def comparison_text(found: Comparison, names: tuple[str, str], level: Level, style: Style) -> str:
    """The comparison of two designs, which are called by `names`."""
    sheet = Sheet(style)
    for name, review in zip(names, (found.old, found.new), strict=True):
        design = review.design
        assert design is not None
        revision = f", revision {design.revision}" if design.revision else ""
        sheet.put(f"{name}: {design.name}{revision}", look="strong")
        for words in calibrations_told(review.tests, review.path):
            sheet.put(words, INDENT)
    sheet.put(comparison_sentence(found), look="strong")
    worse = found.regressions(level)
    if worse:
        sheet.put(f"A step back: {', '.join(pair.name for pair in worse)}.", look="must")
    for turn, title in TITLES.items():
        pairs = found.turned(turn)
        if not pairs:
            continue
        sheet.heading(title)
        seen = [pair for pair in pairs if is_seen(pair)]
        for pair in seen[:MOST_EACH]:
            sheet.put(f"{pair.name}: {pair_words(pair)}")
            sheet.put(explained_words(pair.explained), INDENT)
            if not sheet.lines[-1]:
                sheet.lines.pop()
        if len(seen) > MOST_EACH:
            sheet.put(f"and {len(seen) - MOST_EACH} more")
        if len(pairs) > len(seen):
            sheet.put(f"{'and ' if seen else ''}{len(pairs) - len(seen)} by less than a hundredth")
    if found.stale:
        sheet.heading(STALE_TITLE)
        for test, changes in found.stale:
            sheet.put(stale_words(test, changes))
    _put_edits(sheet, found)
    _put_movements(sheet, found)
    return sheet.text()


def _put_edits(sheet: Sheet, found: Comparison) -> None:
    if found.edits:
        sheet.heading("what was changed")
        for edit in found.edits:
            sheet.put(edit_words(edit))


def _put_movements(sheet: Sheet, found: Comparison) -> None:
    """The quantities that moved, most first, in columns."""
    rows = [movement_words(each) for each in found.movements[:MOST_MOVED]]
    if not rows:
        return
    sheet.heading("what moved most")
    widths = [max(columns(row[place]) for row in rows) for place in range(4)]
    for name, before, after, share in rows:
        line = f"{name:<{widths[0]}}  {before:>{widths[1]}} -> {after:>{widths[2]}}"
        sheet.lines.append(f"{line}  {share:>{widths[3]}}".rstrip())
