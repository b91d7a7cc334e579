"""Which designs a command line names: files, folders, standard input."""

import json
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
Write = Callable[..., Path]


def paths_of(run: Run, *words: str, **more: Any) -> list[str]:
    ran = run("check", *words, "--format", "json", **more)
    return [each["path"] for each in json.loads(ran.out)["designs"]]


def test_a_folder_gives_its_designs_in_order(run: Run, design: Write, folder: Path) -> None:
    for name in ("b.yaml", "a.yml", "sub/deep/c.yaml", "sub/b.yaml", ".hidden/d.yaml", "e.txt"):
        design(name)
    (folder / "rules.yaml").write_text("- rule: gap.wide\n", "utf-8")
    (folder / "other.yaml").write_text("parts: {design: 1}\n", "utf-8")
    (folder / "folder.yaml").mkdir()
    assert paths_of(run, ".") == ["a.yml", "b.yaml", "sub/b.yaml", "sub/deep/c.yaml"]
    assert paths_of(run, "sub") == ["sub/b.yaml", "sub/deep/c.yaml"]


@pytest.mark.parametrize(
    ("text", "is_design"),
    [
        ("design: Lid\n", True),
        ("# first\nparts: {}\ndesign: Lid\n", True),
        ('"design": Lid\n', True),
        ("design:\n", True),
        ("\ufeffdesign: Lid\n", True),
        ("parts:\r\n  a: {}\r\ndesign: Lid\r\n", True),
        ("{design: Lid, parts: {}}\n", True),
        ("# a table\n---\n{parts: 3, 'design': Lid}\n", True),
        ("design: [not, sound\n", True),
        ("designs: Lid\n", False),
        ("designer: Lid\n", False),
        ("a:\n  design: Lid\n", False),
        ("# design: Lid\n", False),
        ("- design: Lid\n", False),
        ("{parts: {design: Lid}}\n", False),
        ("", False),
    ],
)
def test_what_is_a_design_in_a_folder(run: Run, folder: Path, text: str, is_design: bool) -> None:
    (folder / "one.yaml").write_bytes(text.encode())
    assert (paths_of(run, ".") == ["one.yaml"]) is is_design


def test_a_file_that_is_named_is_read_whatever_its_ending(run: Run, design: Write) -> None:
    design("lid.txt")
    assert run("check", "lid.txt").status == 0


def test_each_design_once_in_the_order_of_the_command_line(run: Run, design: Write) -> None:
    for name in ("a.yaml", "b.yaml", "c.yaml"):
        design(name)
    assert paths_of(run, "c.yaml", ".", "./a.yaml") == ["c.yaml", "a.yaml", "b.yaml"]


def test_standard_input(run: Run) -> None:
    text = b"design: Lid\nparts:\n  lid: {kind: gap, least: 9 mm}\n"
    ran = run("check", "-", stdin=text)
    assert ran.status == 1
    assert ran.out.startswith("Lid\nfrom standard input\nOne thing to change before cutting")
    assert "    -:3 lid.wide\n" in ran.out
    assert paths_of(run, "-", stdin=text) == ["-"]


def test_problems_of_standard_input(run: Run) -> None:
    ran = run("check", "-", stdin=b"design: \xff\n")
    assert ran.status == 2
    assert ran.err.startswith("-:1:9: ")
    assert ran.out.startswith("from standard input\nNot reviewed")


def test_a_file_that_is_not_there(run: Run, design: Write) -> None:
    design("potting_bench.yaml")
    ran = run("check", "poting_bench.yaml")
    assert ran.status == 2
    assert ran.err == (
        "poting_bench.yaml:1:1: there is no such file\n"
        "    expected the path of a design\n"
        "    mend: write potting_bench.yaml\n"
    )


def test_a_folder_without_designs(run: Run, folder: Path) -> None:
    (folder / "empty").mkdir()
    ran = run("check", "empty")
    assert ran.status == 2
    assert ran.err == (
        "empty:1:1: there is no design in this folder\n"
        "    expected a file ending .yaml with the key design at its top level\n"
    )


@pytest.mark.skipif(os.geteuid() == 0, reason="the administrator may read everything")
def test_a_file_that_may_not_be_read(run: Run, design: Write) -> None:
    design().chmod(0)
    ran = run("check", "lid.yaml")
    assert ran.status == 2
    assert ran.err.startswith("lid.yaml:1:1: this file cannot be read: Permission denied\n")


def test_a_pipe_or_device_in_a_folder_is_passed_over(run: Run, design: Write, folder: Path) -> None:
    design("a.yaml")
    os.mkfifo(folder / "b.yaml")
    assert paths_of(run, ".") == ["a.yaml"]


def test_links_do_not_lead_in_circles(run: Run, design: Write, folder: Path) -> None:
    design("sub/a.yaml")
    (folder / "sub" / "again").symlink_to(folder / "sub")
    (folder / "sub" / "gone.yaml").symlink_to(folder / "nowhere")
    assert paths_of(run, ".") == ["sub/a.yaml"]


def test_a_path_with_escapes_cannot_steer_the_terminal(run: Run) -> None:
    ran = run("check", "\x1b[2J.yaml")
    assert "\x1b" not in ran.out + ran.err
    assert ran.err.startswith("\\x1b[2J.yaml:1:1: there is no such file\n")
