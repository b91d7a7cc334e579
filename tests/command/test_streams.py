"""Standard output and error as a terminal and a pipe see them, in a process of their own."""

import os
import pty
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

Write = Callable[..., Path]
PROGRAM = "import sys; from reviewer.command.main import main; sys.exit(main())"
COMMAND = (sys.executable, "-c", PROGRAM)
RULES = ("--rules", str(Path(__file__).parent / "house.yaml"))


def ran(folder: Path, *words: str, **environment: str) -> "subprocess.CompletedProcess[bytes]":
    return subprocess.run(
        [*COMMAND, *words],
        cwd=folder,
        env={**os.environ, **environment},
        capture_output=True,
        check=False,
        timeout=120,
    )


def on_terminal(folder: Path, columns: int, *words: str, **environment: str) -> str:
    """What a command prints on a terminal of so many columns."""
    import fcntl
    import struct
    import termios

    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    with subprocess.Popen(
        [*COMMAND, *words], cwd=folder, stdout=theirs, env={**os.environ, **environment}
    ):
        os.close(theirs)
        told = b""
        while piece := _read(ours):
            told += piece
    os.close(ours)
    return told.decode().replace("\r\n", "\n")


def _read(handle: int) -> bytes:
    try:
        return os.read(handle, 65536)
    except OSError:  # the other side has gone
        return b""


def test_findings_on_standard_output_and_problems_on_standard_error(
    folder: Path, design: Write
) -> None:
    design("a.yaml", least="9 mm")
    design("b.yaml", least="9 mn")
    done = ran(folder, "check", "a.yaml", "b.yaml")
    assert done.returncode == 2
    assert done.stderr.startswith(b"b.yaml:3:29: ")
    assert b"a.yaml:3" in done.stdout
    assert b"a.yaml" not in done.stderr


def test_json_on_standard_output_is_json_alone(folder: Path, design: Write) -> None:
    import json

    design("b.yaml", least="9 mn")
    done = ran(folder, "check", "b.yaml", "--format", "json")
    assert json.loads(done.stdout)["designs"][0]["problems"]


@pytest.mark.parametrize(
    ("environment", "on", "coloured", "source"),
    [
        ({}, "terminal", True, "a terminal"),
        ({}, "pipe", False, "no terminal"),
        ({"NO_COLOR": "1"}, "terminal", False, "no-color.org"),
        ({"NO_COLOR": ""}, "terminal", True, "no-color.org: when not an empty string"),
        ({"FORCE_COLOR": "1"}, "pipe", True, "force-color.org"),
        ({"FORCE_COLOR": ""}, "pipe", False, "force-color.org: when not an empty string"),
        ({"NO_COLOR": "1", "FORCE_COLOR": "1"}, "pipe", False, "NO_COLOR before FORCE_COLOR"),
        ({"NO_COLOR": "1", "FORCE_COLOR": "1"}, "terminal", False, "NO_COLOR before FORCE_COLOR"),
        ({"TERM": "dumb"}, "terminal", False, "a terminal without colour"),
    ],
)
def test_colour(
    folder: Path,
    design: Write,
    environment: dict[str, str],
    on: str,
    coloured: bool,
    source: str,
) -> None:
    design(least="9 mm", depth="20 mm")
    environment = {"TERM": "xterm", **environment}
    if on == "terminal":
        told = on_terminal(folder, 80, "check", "lid.yaml", *RULES, **environment)
    else:
        told = ran(folder, "check", "lid.yaml", *RULES, **environment).stdout.decode()
    assert ("\x1b[" in told) is coloured, source
    assert "Change lid.least" in told


@pytest.mark.parametrize(("columns", "widest"), [(40, 40), (72, 72), (20, 40), (300, 100)])
def test_width_is_the_terminals(folder: Path, design: Write, columns: int, widest: int) -> None:
    design(least="9 mm", depth="90 mm")
    told = on_terminal(folder, columns, "check", "lid.yaml", NO_COLOR="1")
    lines = [line for line in told.splitlines() if " " in line]
    assert max(map(len, lines)) == widest  # the rule beside a heading


def test_a_pipe_is_80_columns_wide(folder: Path, design: Write) -> None:
    design(least="9 mm")
    told = ran(folder, "check", "lid.yaml", COLUMNS="50").stdout.decode()
    assert max(map(len, told.splitlines())) == 80


def test_a_reader_that_goes_away_is_no_fault(folder: Path, design: Write) -> None:
    for number in range(30):
        design(f"{number}.yaml", least="9 mm")
    with subprocess.Popen(
        [*COMMAND, "check", ".", *RULES, "--output", "a.json"],
        cwd=folder,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.readline()
        process.stdout.close()
        complaints = process.stderr.read()
    assert (process.returncode, complaints) == (1, b"")
    assert (folder / "a.json").read_text("utf-8").endswith("]}\n")  # the file is whole all the same


def test_nobody_reads_at_all(folder: Path, design: Write) -> None:
    design()
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [*COMMAND, "check", "lid.yaml"],
        cwd=folder,
        stdout=writer,
        stderr=subprocess.PIPE,
        check=False,
        timeout=120,
    )
    os.close(writer)
    assert done.stderr == b""


def test_an_ascii_locale_replaces_what_it_cannot_print(folder: Path, design: Write) -> None:
    path = design(least="9 mm")
    path.write_text(
        "design: B\u00fchne \u6728\nparts:\n  lid: {kind: gap, least: 9 mm \u00b1 0.1 mm}\n",
        "utf-8",
    )
    done = ran(folder, "check", "lid.yaml", LC_ALL="C", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert done.stderr == b""
    assert done.stdout.startswith(b"B?hne ?\nlid.yaml\n")
    assert done.stdout.isascii()


def test_ctrl_c_is_quiet(folder: Path) -> None:
    import signal

    with subprocess.Popen(
        [*COMMAND, "check", "-"],
        cwd=folder,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as process:
        assert process.stdin is not None
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdin.write(b"design: Lid\n")
        process.stdin.flush()
        _wait_until_it_reads(process.pid)
        process.send_signal(signal.SIGINT)
        complaints = process.stderr.read()
    assert (process.returncode, complaints) == (130, b"")


def _wait_until_it_reads(process: int) -> None:
    """Wait until a process has loaded all that it needs and sleeps on its standard input."""
    import time

    for _ in range(600):
        state = Path(f"/proc/{process}/wchan")
        if state.exists() and "pipe" in state.read_text():
            return
        time.sleep(0.05)


def test_what_is_not_needed_is_not_loaded(folder: Path, design: Write) -> None:
    design()
    program = (
        "import sys; from reviewer.command.main import main; main(['check', 'lid.yaml']);"
        "print(*sys.modules, file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=folder, capture_output=True, check=True, timeout=120
    )
    loaded = set(done.stderr.decode().split())
    assert "reviewer.reporting.text" in loaded
    never = {"jsonschema", "pint", "scipy", "reviewer.reporting.data"}
    assert loaded & never == set()
