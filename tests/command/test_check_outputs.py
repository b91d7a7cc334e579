"""Files beside standard output: their formats, and that they are whole or not there."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
Write = Callable[..., Path]


def test_several_files_in_one_run(run: Run, design: Write, folder: Path) -> None:
    design(least="9 mm")
    alone = run("check", "lid.yaml")
    ran = run("check", "lid.yaml", "--output", "a.json", "--output", "b.txt", "--format", "json")
    assert ran.status == 1
    assert (folder / "b.txt").read_text("utf-8") == alone.out
    assert (folder / "a.json").read_text("utf-8") == ran.out
    assert json.loads(ran.out)["designs"][0]["findings"][0]["verdict"] == "fail"


def test_every_format_in_one_run(run: Run, design: Write, folder: Path) -> None:
    design(least="9 mm")
    names = ["a.txt", "a.json", "a.sarif", "b.sarif.json", "a.md", "a.html"]
    ran = run("check", "lid.yaml", *(word for name in names for word in ("--output", name)))
    assert ran.status == 1
    texts = {name: (folder / name).read_text("utf-8") for name in names}
    assert texts["a.sarif"] == texts["b.sarif.json"]
    assert json.loads(texts["a.sarif"])["version"] == "2.1.0"
    assert texts["a.md"].startswith("## Lid\n")
    for kind, name in (
        ("sarif", "a.sarif"),
        ("markdown", "a.md"),
        ("json", "a.json"),
        ("page", "a.html"),
    ):
        assert run("check", "lid.yaml", "--format", kind).out == texts[name]


def test_a_text_file_holds_the_problems_of_reading(run: Run, design: Write, folder: Path) -> None:
    design(least="9 mn")
    ran = run("check", "lid.yaml", "--output", "b.txt")
    text = (folder / "b.txt").read_text("utf-8")
    assert ran.err in text
    assert "one problem, told on standard error" in ran.out
    assert "on standard error" not in text


def test_a_file_is_replaced_whole(run: Run, design: Write, folder: Path) -> None:
    design()
    (folder / "a.json").write_text("old", "utf-8")
    run("check", "lid.yaml", "--output", "a.json")
    assert json.loads((folder / "a.json").read_text("utf-8"))["format"] == 1
    assert sorted(each.name for each in folder.iterdir()) == ["a.json", "lid.yaml"]


def test_a_file_may_be_read_by_whom_other_files_may(run: Run, design: Write, folder: Path) -> None:
    usual = design().stat().st_mode
    run("check", "lid.yaml", "--output", "a.json")
    assert (folder / "a.json").stat().st_mode == usual


def test_nothing_is_left_of_an_output_that_was_stopped(
    run: Run, design: Write, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    design()
    (folder / "a.json").write_text("old", "utf-8")

    def stopped(*_: Any) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("reviewer.command.reading.review_under", stopped)
    ran = run("check", "lid.yaml", "--output", "a.json")
    assert (ran.status, ran.out, ran.err) == (130, "", "")
    assert (folder / "a.json").read_text("utf-8") == "old"
    assert sorted(each.name for each in folder.iterdir()) == ["a.json", "lid.yaml"]


def test_colour_never_goes_into_a_file(
    run: Run, design: Write, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    design(least="9 mm")
    monkeypatch.setenv("FORCE_COLOR", "1")
    ran = run("check", "lid.yaml", "--output", "b.txt")
    assert "\x1b[1;31m" in ran.out
    assert "\x1b" not in (folder / "b.txt").read_text("utf-8")


@pytest.mark.parametrize(
    ("name", "mend"), [("a.jsn", "    mend: write a.json\n"), ("a", ""), ("a.pdf", "")]
)
def test_another_ending_is_refused_before_anything_is_done(
    run: Run, folder: Path, name: str, mend: str
) -> None:
    ran = run("check", "lid.yaml", "--output", name)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == (
        "reviewer check: there is no format with this ending\n"
        f"    found {name}\n    expected a file ending .txt, .json, .sarif, .sarif.json, .md or "
        f".html\n{mend}"
    )
    assert list(folder.iterdir()) == []


def test_a_folder_that_is_not_there(run: Run, design: Write) -> None:
    design()
    ran = run("check", "lid.yaml", "--output", "nowhere/a.json")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith(
        "reviewer check: the output cannot be written: No such file or directory\n"
        "    found nowhere/a.json\n"
    )
