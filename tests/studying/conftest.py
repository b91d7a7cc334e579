"""Designs of the tests' own, and the rules in force."""

from collections.abc import Callable
from datetime import date

import pytest

from reviewer.judging.builtin import builtin_packs
from reviewer.judging.pack import in_order
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.reviewing import review_source

DAY = date(2026, 11, 25)
Reviewed = Callable[[str], Review]


@pytest.fixture(scope="session")
def rules() -> tuple[Rule, ...]:
    """The rules that come with the project, in order."""
    found, problems = in_order(builtin_packs())
    assert not problems
    return found


@pytest.fixture(scope="session")
def reviewed() -> Reviewed:
    """Review a text that has to be a sound file."""

    def review(text: str) -> Review:
        found = review_source(text, "design.yaml", None, DAY)
        assert found.problems == ()
        return found

    return review
