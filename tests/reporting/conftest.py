"""A pack and designs of the tests' own, so that reports do not move with the built-in rules."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from reviewer.judging.pack import Pack, read_pack
from reviewer.parts.registry import KINDS
from reviewer.reviewing import Review, review_source

HERE = Path(__file__).parent
DAY = date(2026, 11, 25)


@pytest.fixture(scope="session")
def house() -> Pack:
    """The rules of the tests' own."""
    pack = read_pack((HERE / "house.yaml").read_bytes(), "house.yaml", KINDS)
    assert pack.problems == ()
    return pack


@pytest.fixture(scope="session")
def questions(house: Pack) -> dict[str, str]:
    """What the rules ask, by name."""
    return {rule.name: rule.question for rule in house.rules}


@pytest.fixture(scope="session")
def reviewed(house: Pack) -> Callable[..., Review]:
    """Review a text by the tests' own rules, or by those of another pack."""

    def review(text: str, path: str = "stage.yaml", pack: Pack = house) -> Review:
        return review_source(text, path, [pack], DAY)

    return review


@pytest.fixture(scope="session")
def stage(reviewed: Callable[..., Review]) -> Review:
    """A design in which every verdict comes up."""
    return reviewed((HERE / "stage.yaml").read_text(encoding="utf-8"))
