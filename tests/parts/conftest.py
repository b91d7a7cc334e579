"""Quantities and verdicts of a design, asked by name and case, under the limits in force."""

from collections.abc import Callable

import pytest

from reviewer import review
from reviewer.deriving.unknown import why_open
from reviewer.notation.problem import render

BASE = "base: {kind: base, feet: {length: 2000, width: 2000}, height: 500, mass: 400 kg}"


class Asked:
    """The review of a design whose parts stand on a heavy base, given as lines of `parts`."""

    def __init__(self, parts: str, rest: str = "") -> None:
        text = f"design: by hand\nlengths: mm\n{rest}\nparts:\n  {BASE}\n{parts}"
        self.found = review(text)
        assert not self.found.problems, "\n".join(render(each) for each in self.found.problems)
        self.values = self.found.derived.values
        self.cases = self.found.derived.cases.names

    def __call__(self, name: str, case: str | None = None) -> float:
        """A number in a case, or in the only one that there is after own weight alone."""
        return self.values.at(self._slot(name), self._case(case))

    def verdict(self, name: str) -> str:
        """The verdict of a rule on a part, as `arms.bending`."""
        return next(each.verdict for each in self.found.findings if each.name == name)

    def says(self, name: str) -> str:
        """The message of a rule on a part."""
        return next(each.message for each in self.found.findings if each.name == name)

    def reasons(self, name: str, case: str | None = None) -> list[str]:
        """Why a quantity is unknown."""
        causes = why_open(self.values, [self._slot(name)], self._case(case))
        return [f"{cause.name} {cause.reason}" for cause in causes]

    def _slot(self, name: str) -> int:
        part, _, path = name.partition(".")
        return self.values.plan.slots[part, path]

    def _case(self, case: str | None) -> int:
        return self.cases.index(case) if case is not None else min(1, len(self.cases) - 1)


@pytest.fixture(scope="session")
def asked() -> Callable[..., Asked]:
    return Asked
