"""Internal faults: one line that says what to report, status 3, and no traceback unasked."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from reviewer.judging.in_force import InForce
from reviewer.judging.reviewed import Review
from reviewer.reviewing import review_under

Run = Callable[..., Any]
Write = Callable[..., Path]


@pytest.fixture
def broken(monkeypatch: pytest.MonkeyPatch) -> None:
    """A program that fails on each design called bad.yaml."""

    def review(in_force: InForce, source: bytes, path: str, *more: Any) -> Review:
        if path == "bad.yaml":
            raise ValueError("a formula\nfailed \x1b[2J")
        return review_under(in_force, source, path, *more)

    monkeypatch.setattr("reviewer.command.reading.review_under", review)


@pytest.mark.usefixtures("broken")
def test_a_fault_in_one_design_does_not_stop_the_others(run: Run, design: Write) -> None:
    for name in ("a.yaml", "bad.yaml", "c.yaml"):
        design(name)
    ran = run("check", "a.yaml", "bad.yaml", "c.yaml", "--format", "json")
    assert ran.status == 3
    assert ran.err.startswith(
        "reviewer: an internal fault while reviewing bad.yaml: ValueError: a formula failed "
        "\\x1b[2J. Please report this line with the file (reviewer "
    )
    assert ran.err.count("\n") == 1
    designs = json.loads(ran.out)["designs"]
    assert [len(each["findings"]) for each in designs] == [4, 0, 4]
    assert designs[1]["problems"][0]["what"] == (
        "an internal fault of the program kept this design from being reviewed"
    )


@pytest.mark.usefixtures("broken")
def test_the_traceback_is_there_for_who_asks(
    run: Run, design: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    design("bad.yaml")
    monkeypatch.setenv("REVIEWER_TRACEBACK", "1")
    ran = run("check", "bad.yaml")
    assert ran.status == 3
    assert ran.err.startswith("Traceback (most recent call last):\n")


def test_a_fault_in_the_search_for_remedies_leaves_what_was_found(
    run: Run, design: Write, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: Any) -> None:
        raise ValueError("no way")

    monkeypatch.setattr("reviewer.studying.remedy.with_remedies", fail)
    design(least="9 mm")
    ran = run("check", "lid.yaml")
    assert ran.status == 3
    assert ran.err.startswith(
        "reviewer: an internal fault while reviewing lid.yaml: ValueError: no way. Please report"
    )
    assert "[ ] Change lid.least (9 mm, line 3)\n" in ran.out


def test_a_fault_anywhere_else(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: Any) -> None:
        raise RecursionError("too deep")

    monkeypatch.setattr("reviewer.command.check.packs_of", fail)
    ran = run("check", "a.yaml")
    assert (ran.status, ran.out) == (3, "")
    assert ran.err.startswith(
        "reviewer: an internal fault: RecursionError: too deep. Please report this line"
    )
    assert ran.err.count("\n") == 1
