"""reviewer sheet --templates: files that are whole, the same every time, and nobody else's lost."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]

BENCH = """design: Bench
lengths: mm
parts:
  box: {kind: base, feet: {count: 4, circle: 400}, height: 80, mass: 5 kg}
  lid: {kind: top, carried_by: box, material: birch plywood, thickness: 18, diameter: 300}
  marks: {kind: divided_circle, count: 6, circle: 120, hole: 9}
"""
RUN = "from reviewer.command.main import console; console()"
NAMES = [f"{part}.{kind}" for part in ("lid", "marks") for kind in ("svg", "dxf", "pdf")]


@pytest.fixture
def bench(folder: Path) -> Path:
    (folder / "bench.yaml").write_text(BENCH, "utf-8")
    return folder


def test_three_files_of_each_are_written_and_told(run: Run, bench: Path) -> None:
    ran = run("sheet", "bench.yaml", "--templates", "paper")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.splitlines() == [f"written {Path('paper') / name}" for name in NAMES]
    assert sorted(each.name for each in (bench / "paper").iterdir()) == sorted(NAMES)


def test_what_is_the_same_is_left_and_what_changed_is_told(run: Run, bench: Path) -> None:
    run("sheet", "bench.yaml", "--templates", "paper")
    again = run("sheet", "bench.yaml", "--templates", "paper")
    assert {line.split()[0] for line in again.out.splitlines()} == {"unchanged"}
    (bench / "bench.yaml").write_text(BENCH.replace("300", "320"), "utf-8")
    changed = run("sheet", "bench.yaml", "--templates", "paper").out.splitlines()
    assert [line.split()[0] for line in changed] == ["replaced"] * 3 + ["unchanged"] * 3


@pytest.mark.parametrize("name", ["lid.dxf", "marks.pdf"])
def test_a_file_of_somebody_else_stops_all(run: Run, bench: Path, name: str) -> None:
    (bench / "paper").mkdir()
    (bench / "paper" / name).write_text("drawn by hand", "utf-8")
    ran = run("sheet", "bench.yaml", "--templates", "paper")
    assert (ran.status, ran.out) == (2, "")
    assert "this is no template, and is not overwritten" in ran.err
    assert name in ran.err
    assert [each.name for each in (bench / "paper").iterdir()] == [name]
    assert (bench / "paper" / name).read_text("utf-8") == "drawn by hand"


def test_what_would_take_a_heap_of_paper_is_not_tiled(run: Run, folder: Path) -> None:
    (folder / "bench.yaml").write_text(BENCH.replace("300}", "9000}"), "utf-8")
    ran = run("sheet", "bench.yaml", "--templates", "paper")
    assert ran.status == 0
    assert "there is no PDF of lid: it would take" in ran.err
    assert sorted(each.name for each in (folder / "paper").iterdir()) == sorted(
        name for name in NAMES if name != "lid.pdf"
    )


def test_letter_paper(run: Run, bench: Path) -> None:
    run("sheet", "bench.yaml", "--templates", "a4")
    run("sheet", "bench.yaml", "--templates", "letter", "--paper", "Letter")
    a4, letter = ((bench / each / "lid.pdf").read_bytes() for each in ("a4", "letter"))
    assert b"/MediaBox [ 0 0 595.2756 841.8898 ]" in a4
    assert b"/MediaBox [ 0 0 612 792 ]" in letter
    assert (bench / "a4" / "lid.dxf").read_bytes() == (bench / "letter" / "lid.dxf").read_bytes()


def test_a_misspelt_paper(run: Run, bench: Path) -> None:
    ran = run("sheet", "bench.yaml", "--templates", "paper", "--paper", "A3")
    assert ran.status == 2
    assert "expected one of A4, Letter" in ran.err


def test_nothing_flat(run: Run, folder: Path) -> None:
    (folder / "bench.yaml").write_text("\n".join(BENCH.splitlines()[:4]), "utf-8")
    ran = run("sheet", "bench.yaml", "--templates", "paper")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == "there is no template: no part is flat, and no circle is divided\n"
    assert not (folder / "paper").exists()


def test_a_folder_that_cannot_be_made(run: Run, bench: Path) -> None:
    ran = run("sheet", "bench.yaml", "--templates", "no/such/folder")
    assert ran.status == 2
    assert ran.err.startswith("reviewer sheet: the templates cannot be written:")


def test_sheets_too_where_a_file_is_named_for_them(run: Run, bench: Path) -> None:
    ran = run("sheet", "bench.yaml", "--templates", "paper", "--output", "sheets.md")
    assert ran.status == 0
    assert (bench / "sheets.md").exists()
    assert (bench / "paper" / "lid.svg").exists()


def test_the_same_bytes_in_another_process(bench: Path) -> None:
    """Sets have another order where strings hash otherwise."""
    made = []
    for seed in ("1", "2"):
        command = [sys.executable, "-c", RUN, "sheet", "bench.yaml", "--templates", seed]
        environment = {**os.environ, "PYTHONHASHSEED": seed}
        subprocess.run(command, cwd=bench, env=environment, check=True, capture_output=True)
        made.append({each.name: each.read_bytes() for each in (bench / seed).iterdir()})
    assert made[0] == made[1]
