"""Progress is one line on a terminal, and nothing is left of it; elsewhere there is none."""

import os
import pty
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

Write = Callable[..., Path]
CHECK = "from reviewer.command.main import console; console()"


def on_terminal(folder: Path, *words: str, **environment: str) -> tuple[bytes, bytes]:
    """What a command prints to standard output, and to a terminal as standard error."""
    ours, theirs = pty.openpty()
    with subprocess.Popen(
        [sys.executable, "-c", CHECK, *words],
        cwd=folder,
        stdout=subprocess.PIPE,
        stderr=theirs,
        env={**os.environ, "TERM": "xterm", "COLUMNS": "60", **environment},
    ) as process:
        os.close(theirs)
        assert process.stdout is not None
        told = b""
        while True:
            try:
                more = os.read(ours, 65536)
            except OSError:  # the other end is closed
                break
            if not more:
                break
            told += more
        shown = process.stdout.read()
    os.close(ours)
    return shown, told


def screen(told: bytes) -> list[str]:
    """The lines that a terminal shows in the end, which knows CR and LF and nothing else."""
    lines, column = [[]], 0  # type: list[list[str]], int
    for each in told.decode():
        assert each >= " " or each in "\r\n", f"a terminal may not know {each!r}"
        if each == "\r":
            column = 0
        elif each == "\n":
            lines.append([])
            column = 0
        else:
            lines[-1] += [" "] * (column + 1 - len(lines[-1]))
            lines[-1][column] = each
            column += 1
    return ["".join(line).rstrip() for line in lines]


@pytest.fixture
def many(design: Write, folder: Path) -> Path:
    for number in range(9):
        design(f"a/d{number}.yaml", least="9 mn" if number == 4 else "30 mm")
    return folder


@pytest.mark.parametrize("workers", ["1", "2"])
def test_one_line_that_is_cleaned_away(many: Path, workers: str) -> None:
    words = ("check", "a", "--format", "json", "-j", workers)
    shown, told = on_terminal(many, *words)
    assert b"\r0 of 9 designs reviewed" in told
    assert b"\r8 of 9 designs reviewed" in told
    plainly = subprocess.run(
        [sys.executable, "-c", CHECK, *words], cwd=many, capture_output=True, check=False
    )
    assert shown == plainly.stdout
    # all that stays on the terminal is what is told without one
    assert [line for line in screen(told) if line] == plainly.stderr.decode().split("\n")[:-1]
    assert screen(told)[-1] == ""
    assert max(len(line) for line in told.decode().replace("\n", "\r").split("\r")) < 80


def test_it_fits_on_a_narrow_terminal(many: Path) -> None:
    (many / "a" / "d4.yaml").unlink()
    _, told = on_terminal(many, "check", "a", COLUMNS="20")
    assert b"0 of 8 designs revi" in told
    assert max(len(line) for line in told.decode().split("\r")) < 20


def test_a_study_of_tolerances_tells_of_its_samples(folder: Path, design: Write) -> None:
    design("lid.yaml", least="30 mm \u00b1 2 mm")
    _, told = on_terminal(folder, "check", "lid.yaml", "--tolerance")
    assert b"reviewing lid.yaml: 0 of " in told
    assert screen(told) == [""]


def test_a_map_of_sizes_tells_of_what_it_tries(folder: Path) -> None:
    specimen = Path(__file__).parents[2] / "specimens" / "first_design.yaml"
    (folder / "d.yaml").write_bytes(specimen.read_bytes())
    _, told = on_terminal(folder, "size", "d.yaml", "ring.carry.count", "ring.plate.thickness")
    assert b"sizes of d.yaml: " in told
    assert screen(told) == [""]


@pytest.mark.parametrize("environment", [{"TERM": "dumb"}])
def test_a_terminal_that_cannot_go_back_sees_none(many: Path, environment: dict[str, str]) -> None:
    (many / "a" / "d4.yaml").unlink()
    assert on_terminal(many, "check", "a", **environment)[1] == b""


def test_no_colour_is_asked_for_and_none_is_shown(many: Path) -> None:
    _, told = on_terminal(many, "check", "a", NO_COLOR="1")
    assert b"\x1b" not in told
    assert b"designs reviewed" in told
