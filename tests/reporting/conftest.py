"""A pack and designs of the tests' own, so that reports do not move with the built-in rules.

Whole texts are held against recorded ones. `REVIEWER_RECORD=1` writes these again where they have
changed on purpose; look at the difference before you commit it.
"""

import os
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from reviewer.judging.pack import Pack, read_pack
from reviewer.parts.registry import KINDS
from reviewer.reviewing import Review, review, review_source
from reviewer.studying.remedy import with_remedies

HERE = Path(__file__).parent
DAY = date(2026, 11, 25)
EXPECTED = HERE / "expected"
SPECIMENS = HERE.parent.parent / "specimens"
MARK = re.compile(r"(text |\"mark\": \")[0-9a-f]{12}")


@pytest.fixture(scope="session")
def held() -> Callable[[str, str], None]:
    """Hold a text against a recorded one; the marks of packs' texts are no part of it."""

    def hold(name: str, text: str) -> None:
        path = EXPECTED / name
        text = MARK.sub(r"\1............", text)
        if os.environ.get("REVIEWER_RECORD") == "1":
            path.parent.mkdir(exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
        assert text == path.read_text(encoding="utf-8"), "on purpose? REVIEWER_RECORD=1"

    return hold


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


@pytest.fixture(scope="session")
def infested() -> Callable[[Review, str], Review]:
    """Put another text in place of every one that a design, a pack or a shop can give."""
    return with_texts


def with_texts(found: Review, hostile: str) -> Review:
    findings = tuple(
        replace(
            each,
            message=hostile,
            because=hostile,
            source=hostile,
            case=each.case and hostile,
            change=(hostile,),
            open_because=(hostile,),
            numbers=tuple(replace(number, name=hostile, says=hostile) for number in each.numbers),
            concession=each.concession
            and replace(each.concession, by=hostile, why=hostile, until=hostile),
        )
        for each in found.findings
    )
    changes = tuple(replace(each, does=hostile, by=hostile, why=hostile) for each in found.changes)
    return replace(found, findings=findings, changes=changes, path=hostile)


@pytest.fixture(scope="session")
def bench() -> Review:
    """The potting bench at its first revision, with remedies."""
    return specimen("potting_bench/revision_a.yaml")


@pytest.fixture(scope="session")
def bench_c() -> Review:
    """The potting bench at its last revision."""
    return specimen("potting_bench/revision_c.yaml")


@pytest.fixture(scope="session")
def shop() -> Review:
    """A design that belongs to a shop."""
    return specimen("shop/designs/carving_stand.yaml")


def specimen(path: str) -> Review:
    """A specimen's review with remedies, by its path from the folder of the checkout."""
    before = Path.cwd()
    os.chdir(SPECIMENS.parent)
    try:
        found = review(f"specimens/{path}", on=DAY)
        return with_remedies(found, found.rules)
    finally:
        os.chdir(before)
