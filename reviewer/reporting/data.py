"""Reviews as data for other programs: JSON of format 1, the same text on every run.

One finding stands on a line, so that two reports can be compared line by line.
"""

import json
from math import isfinite
from typing import Any

from reviewer.judging.finding import ByShop, Finding, Side
from reviewer.judging.measured import Explanation, Tested
from reviewer.judging.reviewed import Review
from reviewer.notation.problem import Problem
from reviewer.notation.units import Unit
from reviewer.reporting.remedy_words import rejected_data, remedies_data
from reviewer.reporting.study_words import influences_data, scatter_data
from reviewer.reporting.versions import versions
from reviewer.reporting.words import cautions, in_order

FORMAT = 1
DIGITS = 12

Data = dict[str, Any]


class JsonReport:
    """Reports in JSON, one design after the other within one document."""

    def __init__(self, version: str | None = None) -> None:
        """Begin a document of a version of the program."""
        self.version = version
        self._count = 0

    def piece(self, review: Review) -> str:
        """One design, as it stands in any document."""
        pieces = [
            f"{dumped(key)}: {_listed(value) if isinstance(value, list) else dumped(value)}"
            for key, value in review_data(review, self.version).items()
        ]
        return "{" + ", ".join(pieces) + "}"

    def put(self, piece: str) -> str:
        """The next design of the document."""
        self._count += 1
        return (f'{{"format": {FORMAT}, "designs": [\n' if self._count == 1 else ",\n") + piece

    def add(self, review: Review) -> str:
        """The next design of the document, from its review."""
        return self.put(self.piece(review))

    def end(self) -> str:
        """The end of the document."""
        return "\n]}\n" if self._count else f'{{"format": {FORMAT}, "designs": []}}\n'


def dumped(value: Any) -> str:
    """A value in JSON: ASCII alone, and never an infinity or NaN."""
    return json.dumps(value, allow_nan=False)


def _listed(values: list[Data]) -> str:
    return "[" + ",".join(f"\n{dumped(value)}" for value in values) + "\n]" if values else "[]"


def review_data(review: Review, version: str | None = None) -> Data:
    """A review as the contract has it; every finding is in it, passes too."""
    design = review.design
    return {
        "path": review.path,
        "design": design.name if design else None,
        "revision": design.revision if design else None,
        "findings": [finding_data(finding) for finding in in_order(review.findings)],
        "problems": [problem_data(problem) for problem in review.problems],
        "shop": _shop(review),
        "cautions": list(cautions(review.findings)),
        "reviewed_under": {
            "reviewer": version,
            "texts": [
                {"name": each.name, "path": each.path, "mark": each.mark}
                for each in versions(review)
            ],
        },
        "measured": [tested_data(test) for test in review.tests],
    }


def finding_data(finding: Finding) -> Data:
    """One finding; `remedies` is null where none were searched."""
    concession = finding.concession
    return {
        "rule": finding.rule,
        "part": finding.part,
        "with": list(finding.others),
        "verdict": finding.verdict,
        "level": finding.level,
        "stage": finding.stage,
        "hazard": finding.hazard,
        "utilisation": rounded(finding.utilisation),
        "demand": _side(finding.demand),
        "capacity": _side(finding.capacity),
        "case": finding.case,
        "path": finding.place.path,
        "line": finding.place.line,
        "column": finding.place.column,
        "message": finding.message,
        "calibrated": list(finding.calibrated),
        "remedies": remedies_data(finding.remedies),
        "rejected": rejected_data(finding.remedies),
        "no_remedy": (finding.remedies and finding.remedies.why) or None,
        "influences": influences_data(finding.influences),
        "tolerance": scatter_data(finding.scatter),
        "open_because": list(finding.open_because) if finding.verdict == "open" else None,
        "silenced": _by_shop(finding.by_shop) if finding.is_silenced else None,
        "concession": concession
        and {"by": concession.by, "why": concession.why, "until": concession.until},
    }


def _shop(review: Review) -> Data | None:
    """The shop that a design belongs to, and what it changed."""
    if review.shop is None:
        return None
    changes = [_by_shop(change) for change in review.changes]
    return {"name": review.shop.name, "path": review.shop.path, "changes": changes}


def _by_shop(change: ByShop | None) -> Data | None:
    """A change of a rule or of a limit."""
    if change is None:
        return None
    return {
        "subject": change.subject,
        "name": change.name,
        "does": change.does,
        "by": change.by,
        "why": change.why,
        "path": change.place.path,
        "line": change.place.line,
    }


def tested_data(test: Tested) -> Data:
    """One measurement and what became of it; numbers in the unit that is told."""
    measured, done = test.measured, test.calibration
    numbers = {
        "read": test.read,
        "predicted": test.predicted,
        "least": test.least,
        "most": test.most,
        "allowed_difference": test.allowed,
    }
    return {
        "test": measured.name,
        "quantity": measured.quantity,
        "loading": test.loading,
        "by": measured.by,
        "on": measured.on,
        "proven": measured.proven,
        **{name: in_unit(value, test.unit) for name, value in numbers.items()},
        "unit": test.unit.symbol,
        "agrees": test.agrees,
        "changed": list(test.stale.changes),
        "unknown": test.stale.unknown or None,
        "explained_by": None
        if test.explanations is None
        else [_explanation(each) for each in test.explanations],
        "calibrates": done
        and {
            "value": done.name,
            "from": in_unit(done.before, done.unit),
            "to": in_unit(done.after, done.unit),
            "unit": done.unit.symbol,
        },
        "path": measured.place.path,
        "line": measured.place.line,
    }


def _explanation(each: Explanation) -> Data:
    """A value that would explain a reading; `line` is null where no file gives it."""
    return {
        "value": each.name,
        "from": in_unit(each.now, each.unit),
        "to": in_unit(each.needed, each.unit),
        "unit": each.unit.symbol,
        "line": each.place.line if each.place else None,
    }


def problem_data(problem: Problem) -> Data:
    """One problem of reading."""
    return {
        "path": problem.place.path,
        "line": problem.place.line,
        "column": problem.place.column,
        "what": problem.what,
        "found": problem.found,
        "expected": problem.expected,
        "mend": problem.mend,
    }


def _side(side: Side | None) -> Data | None:
    if side is None:
        return None
    return {"value": in_unit(side.value, side.unit), "unit": side.unit.symbol}


def in_unit(value: float, unit: Unit) -> float | None:
    """An SI value as a plain number in a unit."""
    return rounded((value - unit.offset) / unit.factor)


def rounded(value: float) -> float | None:
    """A number to 12 significant digits, null where it is none, and never a negative zero.

    >>> rounded(0.1 + 0.2), rounded(float("nan")), rounded(-0.0)
    (0.3, None, 0.0)
    """
    return float(f"{value:.{DIGITS}g}") + 0.0 if isfinite(value) else None
