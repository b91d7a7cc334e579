"""Quantities of a design, asked by name and case."""

from collections.abc import Callable
from pathlib import Path

import pytest

from reviewer.deriving.derived import derive
from reviewer.deriving.unknown import why_open
from reviewer.notation.problem import render
from reviewer.parts.registry import KINDS
from reviewer.reading.read_design import read_design


class Answers:
    """What was derived of a design, given as the sections below its name."""

    def __init__(self, sections: str) -> None:
        text = f"design: hand statics\nlengths: mm\n{sections}"
        design, problems = read_design(text, "bench.yaml", KINDS)
        assert design is not None, "\n".join(render(problem) for problem in problems)
        self.derived = derive(design)
        self.cases = self.derived.cases.names

    def __call__(self, name: str, case: str | None = None) -> float:
        """A number in a case, or in the only one that there is after own weight alone."""
        slot = self.slot(name)
        return float(self.derived.values.at(slot, self.number(case)))

    def slot(self, name: str) -> int:
        part, _, path = name.partition(".")
        slot = self.derived.values.plan.slot(part, path)
        assert slot is not None, name
        return slot

    def number(self, case: str | None) -> int:
        return self.cases.index(case) if case is not None else min(1, len(self.cases) - 1)

    def reasons(self, name: str, case: str | None = None) -> list[str]:
        causes = why_open(self.derived.values, [self.slot(name)], self.number(case))
        return [f"{cause.name} {cause.reason}" for cause in causes]


@pytest.fixture(scope="session")
def answers() -> Callable[[str], Answers]:
    return Answers


FOLDER = Path(__file__).parent.parent.parent / "specimens"
SPECIMENS = [
    path
    for path in sorted([*FOLDER.glob("*.yaml"), *FOLDER.glob("potting_bench/*.yaml")])
    if "\nbased_on:" not in path.read_text("utf-8")  # a text alone is based on no file
]


@pytest.fixture(scope="session", params=SPECIMENS, ids=lambda path: path.stem)
def specimen(request: pytest.FixtureRequest) -> str:
    """A design that comes with the project, as text."""
    path: Path = request.param
    return path.read_text("utf-8")
