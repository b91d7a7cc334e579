"""A comparison in Markdown, for the description of a merge request."""

from reviewer.judging.finding import Level
from reviewer.reporting.compare_words import (
    STALE_TITLE,
    TITLES,
    comparison_sentence,
    edit_words,
    explained_words,
    movement_words,
    stale_words,
    verdict_words,
)
from reviewer.reporting.markdown_text import marked, table
from reviewer.reporting.measured_words import calibrations_told
from reviewer.studying.compare import Comparison, Pair

MOST_MOVED = 20


def comparison_markdown(found: Comparison, names: tuple[str, str], level: Level) -> str:
    """The comparison of two designs, which are called by `names`."""
    design = found.new.design
    assert design is not None
    lines = [
        f"## {marked(design.name)}: {marked(names[0])} and {marked(names[1])}",
        "",
        marked(comparison_sentence(found)),
    ]
    for name, review in zip(names, (found.old, found.new), strict=True):
        for words in calibrations_told(review.tests, review.path):
            lines += ["", marked(f"{name}: {words}")]
    worse = found.regressions(level)
    if worse:
        lines += ["", f"**A step back:** {marked(', '.join(pair.name for pair in worse))}"]
    for turn, title in TITLES.items():
        pairs = found.turned(turn)
        if pairs:
            lines += ["", f"### {title[:1].upper()}{title[1:]}", ""]
            lines += table(("finding", "before", "after", "because of"), [_row(p) for p in pairs])
    if found.stale:
        lines += ["", f"### {STALE_TITLE[:1].upper()}{STALE_TITLE[1:]}", ""]
        lines += [f"- {marked(stale_words(test, changes))}" for test, changes in found.stale]
    if found.edits:
        lines += ["", "### What was changed", ""]
        lines += [f"- {marked(edit_words(edit))}" for edit in found.edits]
    if found.movements:
        rows = [movement_words(each) for each in found.movements[:MOST_MOVED]]
        lines += ["", "### What moved most", ""]
        lines += table(("quantity", "before", "after", "by"), rows)
    return "\n".join(lines) + "\n"


def _row(pair: Pair) -> tuple[str, str, str, str]:
    """A finding as a row: its name, before, after, and because of what."""
    verdicts = verdict_words(pair.before), verdict_words(pair.after)
    return pair.name, *verdicts, explained_words(pair.explained)
