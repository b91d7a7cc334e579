"""The exit status of a check: what a script or a CI server goes by."""

from reviewer.judging.finding import LEVELS, Finding, Level
from reviewer.judging.reviewed import Review

HOLDS, FAILS, UNREAD = 0, 1, 2


def status_of(review: Review, fail_at: Level, *, allow_open: bool) -> int:
    """0 nothing at or above the level, 1 a fail or an open finding, 2 not read.

    An accepted fail, a question to a person, and a rule that a shop silences do not count.
    """
    if review.problems:
        return UNREAD
    counts = any(_counts(each, fail_at, allow_open) for each in review.findings)
    return FAILS if counts else HOLDS


def _counts(finding: Finding, fail_at: Level, allow_open: bool) -> bool:
    if finding.is_silenced:
        return False
    if LEVELS.index(finding.level) > LEVELS.index(fail_at):
        return False
    if finding.verdict == "fail":
        return finding.concession is None
    return finding.verdict == "open" and not allow_open
