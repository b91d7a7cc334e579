"""reviewer sheet."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

Run = Callable[..., Any]

BENCH = """design: Bench
revision: 3
lengths: mm
parts:
  box: {kind: base, feet: {count: 4, circle: 400}, height: 80, mass: 5 kg}
"""


def test_sheets_are_printed(run: Run, folder: Path) -> None:
    (folder / "bench.yaml").write_text(BENCH, "utf-8")
    ran = run("sheet", "bench.yaml", "--only", "weight")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith("WEIGHT AND COST\nBench, revision 3\nbench.yaml\n")


def test_a_file_is_written_in_the_format_of_its_ending(run: Run, folder: Path) -> None:
    (folder / "bench.yaml").write_text(BENCH, "utf-8")
    files = ("a.txt", "a.md", "a.html")
    words = (word for file in files for word in ("--output", file))
    ran = run("sheet", "bench.yaml", "--only", "weight", *words)
    assert (ran.status, ran.out, ran.err) == (0, "", "")
    starts = [(folder / file).read_text("utf-8").splitlines()[0] for file in files]
    assert starts == ["WEIGHT AND COST", "## Weight and cost", "<!DOCTYPE html>"]


def test_a_sheet_that_there_is_none_of(run: Run, design: Callable[..., Path]) -> None:
    design()
    ran = run("sheet", "lid.yaml", "--only", "weight")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == (
        "there is no such sheet of lid.yaml: Weight and cost: no part of the design has a mass\n"
    )


def test_a_misspelt_sheet(run: Run) -> None:
    ran = run("sheet", "lid.yaml", "--only", "wieght")
    assert ran.status == 2
    assert ran.err.startswith("reviewer sheet: there is no such choice\n    found wieght\n")
    assert ran.err.endswith("    mend: write weight\n")


def test_no_design_is_named(run: Run) -> None:
    ran = run("sheet")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("reviewer sheet: no design is named\n")


def test_a_design_that_cannot_be_read(run: Run, folder: Path) -> None:
    (folder / "bench.yaml").write_text("design: Bench\n", "utf-8")
    ran = run("sheet", "bench.yaml")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("bench.yaml:1:1: the design has no parts\n")
