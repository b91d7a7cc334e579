"""The words of a comparison, that text and Markdown share."""

from collections.abc import Sequence
from math import isnan

from reviewer.judging.finding import Finding
from reviewer.notation.plain import plain
from reviewer.notation.show import show
from reviewer.reading.design import Measured
from reviewer.reporting.limits import shown_ratio
from reviewer.reporting.words import counted, sentence
from reviewer.studying.attribution import Explained
from reviewer.studying.changed import Edit
from reviewer.studying.compare import Comparison, Movement, Pair, Turn

TITLES: dict[Turn, str] = {
    "fails now": "fails now and did not",
    "not judged now": "cannot be judged any more",
    "worse": "worse",
    "mended": "mended",
    "better": "better",
    "new": "new",
    "gone": "gone",
}
CLAUSES: tuple[tuple[Turn, str, str], ...] = (
    ("fails now", "fails that did not", "fail that did not"),
    ("not judged now", "cannot be judged any more", "cannot be judged any more"),
    ("worse", "is worse", "are worse"),
    ("mended", "is mended", "are mended"),
    ("better", "is better", "are better"),
    ("new", "is new", "are new"),
    ("gone", "is gone", "are gone"),
)
MOST_PARTS = 3
LEAST_PART = 0.005  # of a utilisation: smaller parts are not told
NOTHING = "-"


def comparison_sentence(found: Comparison) -> str:
    """What a comparison comes to, in one sentence."""
    clauses = []
    for turn, one, many in CLAUSES:
        count = len(found.turned(turn))
        if count:
            clauses.append(f"{counted(count, 'finding')} {one if count == 1 else many}")
    return sentence(", ".join(clauses) or "nothing turned out otherwise")


def verdict_words(finding: Finding | None) -> str:
    """A verdict with its utilisation: `fail 1.25`, `pass 0.80`, `open`."""
    if finding is None:
        return NOTHING
    used = "" if isnan(finding.utilisation) else f" {shown_ratio(finding.utilisation)}"
    return f"{finding.verdict}{used}"


def pair_words(pair: Pair) -> str:
    """A finding before and after."""
    return f"{verdict_words(pair.before)} -> {verdict_words(pair.after)}"


def explained_words(explained: Explained | None) -> str:
    """Which change explains how much of a movement; empty where none does."""
    if explained is None or abs(explained.whole) < LEAST_PART:
        return ""
    told = [
        f"{name} {_signed(effect)}"
        for name, effect in explained.parts[:MOST_PARTS]
        if abs(effect) >= LEAST_PART
    ]
    others = explained.whole - sum(effect for _, effect in explained.parts[: len(told)])
    if abs(others) >= LEAST_PART:
        told.append(f"{'all else' if told else 'other changes'} and together {_signed(others)}")
    return f"{_signed(explained.whole)}: {', '.join(told)}" if told else ""


def _signed(value: float) -> str:
    return f"{'-' if value < 0 else '+'}{abs(value):.2f}"


def edit_words(edit: Edit) -> str:
    """One change of the file: `ring.carry.count 6 -> 10`."""
    if edit.field is None:
        return f"{edit.name}: {edit.note}"
    texts = [plain(each.text) if each else NOTHING for each in (edit.old, edit.new)]
    return f"{edit.name} {texts[0]} -> {texts[1]}"


STALE_TITLE = "tests that have to be made again"


def stale_words(test: Measured, changes: Sequence[Edit]) -> str:
    """A recorded measurement that changes make stale: which it is, and because of what."""
    told = ", ".join(edit_words(each) for each in changes[:MOST_PARTS])
    more = len(changes) - MOST_PARTS
    others = f" and {more} more" if more > 0 else ""
    what = f"{plain(test.name)}, {plain(test.quantity)} by {plain(test.by)} on {test.on}"
    return f"{what}: stale by {told}{others}"


def movement_words(movement: Movement) -> tuple[str, str, str, str]:
    """A quantity that moved: its name, both values, and by how much of the first."""
    before, after = movement.before, movement.after
    share = f"{100 * (after - before) / abs(before):+.0f} %" if before else ""
    return movement.name, show(before, movement.unit), show(after, movement.unit), share


def is_seen(pair: Pair) -> bool:
    """Whether a finding's words before and after are not the same."""
    return verdict_words(pair.before) != verdict_words(pair.after)
