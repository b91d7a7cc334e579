"""A comparison as data for other programs."""

from collections.abc import Sequence
from typing import Any

from reviewer.judging.finding import Finding, Level
from reviewer.judging.reviewed import Review
from reviewer.reading.design import Measured
from reviewer.reporting.data import in_unit, rounded
from reviewer.studying.attribution import Explained
from reviewer.studying.changed import Edit
from reviewer.studying.compare import Comparison, Movement, Pair

FORMAT = 1
Data = dict[str, Any]


def comparison_data(found: Comparison, names: tuple[str, str], level: Level) -> Data:
    """The comparison of two designs, which are called by `names`."""
    return {
        "format": FORMAT,
        "old": _design(names[0], found.old),
        "new": _design(names[1], found.new),
        "step_back": [pair.name for pair in found.regressions(level)],
        "findings": [_pair(each) for each in found.pairs],
        "changed": [_edit(each) for each in found.edits],
        "stale_tests": [_stale(*each) for each in found.stale],
        "moved": [_movement(each) for each in found.movements],
    }


def _design(name: str, review: Review) -> Data:
    design = review.design
    return {
        "path": name,
        "design": design.name if design else None,
        "revision": design.revision if design else None,
    }


def _pair(pair: Pair) -> Data:
    finding = pair.either
    return {
        "rule": finding.rule,
        "part": finding.part,
        "with": list(finding.others),
        "level": finding.level,
        "stage": finding.stage,
        "turn": pair.turn,
        "before": _side(pair.before),
        "after": _side(pair.after),
        "explained": _explained(pair.explained),
    }


def _side(finding: Finding | None) -> Data | None:
    if finding is None:
        return None
    return {"verdict": finding.verdict, "utilisation": rounded(finding.utilisation)}


def _explained(explained: Explained | None) -> Data | None:
    """How far the utilisation moved, by each change alone, and by what is left over."""
    if explained is None:
        return None
    return {
        "whole": rounded(explained.whole),
        "by": [{"change": name, "effect": rounded(effect)} for name, effect in explained.parts],
        "rest": rounded(explained.rest),
    }


def _edit(edit: Edit) -> Data:
    return {
        "name": edit.name,
        "from": edit.old.text if edit.old else None,
        "to": edit.new.text if edit.new else None,
        "line": edit.new.place.line if edit.new else None,
        "note": edit.note or None,
    }


def _stale(test: Measured, changes: Sequence[Edit]) -> Data:
    """A recorded measurement that changes make stale, and which of them."""
    return {
        "test": test.name,
        "quantity": test.quantity,
        "by": test.by,
        "on": test.on,
        "line": test.place.line,
        "because_of": [edit.name for edit in changes],
    }


def _movement(movement: Movement) -> Data:
    return {
        "quantity": movement.name,
        "before": in_unit(movement.before, movement.unit),
        "after": in_unit(movement.after, movement.unit),
        "unit": movement.unit.symbol,
    }
