"""The specimens, each reviewed once, and how a number is read out of a review."""

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from reviewer import review

SPECIMENS = Path(__file__).parents[2] / "specimens"


@cache
def reviewed(name: str) -> Any:
    """The review of a specimen by the name of its file, without the ending."""
    return review(SPECIMENS / f"{name}.yaml")


@pytest.fixture(scope="session")
def review_of():
    """A function from the name of a specimen to its review."""
    return reviewed


@pytest.fixture(scope="session")
def text_of():
    """A function from the name of a specimen to its text."""
    return lambda name: (SPECIMENS / f"{name}.yaml").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def number_of():
    """A function that reads a quantity, in SI, out of a review: part, path, case."""

    def number(found: Any, part: str, path: str, case: str) -> float:
        values, cases = found.derived.values, found.derived.cases
        return values.at(values.plan.slot(part, path), cases.names.index(case))

    return number
