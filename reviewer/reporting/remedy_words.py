"""Remedies in words and as data: what to write where, and what was found wanting."""

from collections.abc import Sequence
from math import isfinite
from typing import Any

from reviewer.judging.remedies import Change, Remedies, Remedy
from reviewer.notation.plain import plain
from reviewer.notation.problem import on_line
from reviewer.reporting.limits import shown_ratio
from reviewer.reporting.words import joined

Data = dict[str, Any]


def remedy_words(remedy: Remedy, own: str) -> str:
    """The changes of one remedy: `ring.carry.count from 6 to 11 (line 32)`.

    `own` is the path of the design; of a value that stands in another file that is named.
    """
    count = len(remedy.changes)
    return joined([_change_words(remedy.changes, index, own) for index in range(count)])


def _change_words(changes: Sequence[Change], index: int, own: str) -> str:
    """One change; the line stands behind the last of those that are on it."""
    change = changes[index]
    name = f"{change.part}.{change.field}"
    here = on_line(change.place, own)
    last = index + 1 == len(changes) or on_line(changes[index + 1].place, own) != here
    where = f" ({here})" if last else ""
    return f"{name} from {plain(change.old)} to {plain(change.new)}{where}"


def reached_words(remedies: Remedies) -> str:
    """How far the limit is used after each way, in their order."""
    ratios = [each.utilisation for each in remedies.offered]
    used = [shown_ratio(ratio) for ratio in ratios if isfinite(ratio)]
    used = used[:1] if len(set(used)) == 1 else used
    return f"Then {joined(used, 'or')} of the limit is used." if used else ""


def wanting_words(remedies: Remedies, own: str) -> list[str]:
    """What was tried in vain: changes that break something else, and why nothing is offered."""
    told = [
        f"Not {remedy_words(each, own)}: it would then break {joined(each.breaks)}."
        for each in remedies.rejected
    ]
    return [*told, *([f"No remedy: {remedies.why}."] if remedies.why else [])]


def remedies_data(remedies: Remedies | None) -> list[Data] | None:
    """What is offered; None where none was searched."""
    return None if remedies is None else [_remedy_data(each) for each in remedies.offered]


def rejected_data(remedies: Remedies | None) -> list[Data] | None:
    """What mends the finding and breaks others; None where none was searched."""
    if remedies is None:
        return None
    return [{**_remedy_data(each), "breaks": list(each.breaks)} for each in remedies.rejected]


def _remedy_data(remedy: Remedy) -> Data:
    first, *others = remedy.changes
    used = remedy.utilisation
    return {
        **_change_data(first),
        "utilisation": float(f"{used:.12g}") if isfinite(used) else None,
        "limit": remedy.limit or None,
        "also": [_change_data(each) for each in others],
    }


def _change_data(change: Change) -> Data:
    return {
        "part": change.part,
        "field": change.field,
        "from": change.old,
        "to": change.new,
        "path": change.place.path,
        "line": change.place.line,
        "column": change.place.column,
    }
