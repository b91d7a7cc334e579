"""reviewer compare tells which recorded tests a change makes stale, and because of which value."""

import json
import os
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
LID = """\
design: Lid
parts:
  lid: {{kind: gap, least: {least}, most: {most}, depth: 6 mm, closing_force: 40 N}}
measured:
  - test: closed
    quantity: lid.least
    value: 30 mm ± 0.5 mm
    by: Us
    on: 2026-11-20
"""
STALE = """\
TESTS THAT HAVE TO BE MADE AGAIN -----------------------------------------------

closed, lid.least by Us on 2026-11-20: stale by lid.least 30 mm -> 29 mm

"""


def written(folder: Path, name: str, least: str, most: str, more: str = "") -> None:
    text = LID.format(least=least, most=most) + more
    (folder / name).write_text(text, encoding="utf-8")


def test_a_test_whose_ancestor_moved_is_told_with_it(run: Run, folder: Path) -> None:
    written(folder, "old.yaml", "30 mm", "60 mm")
    written(folder, "new.yaml", "29 mm", "60 mm")
    ran = run("compare", "old.yaml", "new.yaml", "--output", "it.json", "--output", "it.md")
    assert ran.err == ""
    assert "the file" not in ran.out
    told = json.loads((folder / "it.json").read_text(encoding="utf-8"))
    assert told["stale_tests"] == [
        {
            "test": "closed",
            "quantity": "lid.least",
            "by": "Us",
            "on": "2026-11-20",
            "line": 5,
            "because_of": ["lid.least"],
        }
    ]
    marked = (folder / "it.md").read_text(encoding="utf-8")
    assert "### Tests that have to be made again" in marked
    assert r"- closed, lid.least by Us on 2026-11-20: stale by lid.least 30 mm -\> 29 mm" in marked
    assert STALE in run("compare", "old.yaml", "new.yaml").out


@pytest.mark.parametrize(
    ("least", "most", "why"),
    [
        ("30 mm", "70 mm", "what is behind it did not change"),
        ("30 mm ± 1 mm", "60 mm", "a tolerance changes no thing"),
        ("3 cm", "60 mm", "the same size in other words"),
    ],
)
def test_another_change_makes_it_not_stale(
    least: str, most: str, why: str, run: Run, folder: Path
) -> None:
    written(folder, "old.yaml", "30 mm", "60 mm")
    written(folder, "new.yaml", least, most)
    ran = run("compare", "old.yaml", "new.yaml", "--format", "json")
    assert json.loads(ran.out)["stale_tests"] == [], why


def test_a_test_that_was_made_after_the_change_is_not_stale(run: Run, folder: Path) -> None:
    written(folder, "old.yaml", "30 mm", "60 mm")
    written(folder, "new.yaml", "29 mm", "60 mm")
    text = (folder / "new.yaml").read_text(encoding="utf-8")
    (folder / "new.yaml").write_text(text.replace("11-20", "11-24"), encoding="utf-8")
    ran = run("compare", "old.yaml", "new.yaml", "--format", "json")
    assert json.loads(ran.out)["stale_tests"] == []


def test_between_revisions_in_git(run: Run, folder: Path) -> None:
    def git(*words: str) -> None:
        who = {f"GIT_{role}_{what}": "maker@example.org"
               for role in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL")}  # fmt: skip
        hushed = {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull}
        subprocess.run(["git", *words], cwd=folder, check=True, capture_output=True,
                       env={**os.environ, **who, **hushed})  # fmt: skip

    git("init", "--quiet")
    written(folder, "lid.yaml", "30 mm", "60 mm")
    git("add", "lid.yaml")
    git("commit", "--quiet", "-m", "first")
    written(folder, "lid.yaml", "29 mm", "60 mm")
    ran = run("compare", "HEAD:lid.yaml", "lid.yaml")
    assert STALE in ran.out
