"""A watch tells what has changed since the last look, and nothing else."""

import os
import select
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from reviewer.command.check import parser
from reviewer.command.looking import Watcher
from reviewer.reporting.sheet import Style

Run = Callable[..., Any]
Write = Callable[..., Path]
LONGEST = 60.0  # s that anything may take on a busy machine; nothing waits that long


@pytest.fixture
def watcher(folder: Path, run: Run) -> Callable[..., Watcher]:
    """A watch of some paths, by the rules of the tests' own."""

    def begin(*words: str) -> Watcher:
        return Watcher(parser().read([*words, "--watch"]), Style())

    return begin


def seen(watcher: Watcher) -> str:
    return "".join(watcher.look())


def test_the_first_look_tells_all_and_the_next_nothing(
    watcher: Callable[..., Watcher], run: Run, design: Write
) -> None:
    design(least="9 mm")
    watch = watcher("lid.yaml")
    assert seen(watch) == run("check", "lid.yaml").out
    assert seen(watch) == ""


def test_what_fails_now_and_what_is_mended(watcher: Callable[..., Watcher], design: Write) -> None:
    design()
    watch = watcher(".")
    seen(watch)
    design(least="9 mm", closing_force="30 N")
    assert seen(watch) == (
        "lid.yaml: one finding fails that did not, one finding is better.\n"
        "    changed lid.least 30 mm -> 9 mm\n"
        "    changed lid.closing_force 40 N -> 30 N\n"
        "fails now and did not: lid.wide, pass 0.83 -> fail 2.78\n"
        "    It closes to 9 mm; 25 mm is safe.\n"
        "    +1.94: lid.least +1.94\n"
        "better: lid.light, pass 0.27 -> pass 0.20\n"
        "    -0.07: lid.closing_force -0.07\n"
    )
    design()
    told = seen(watch)
    assert told.startswith("lid.yaml: one finding is worse, one finding is mended.\n")
    assert "mended: lid.wide, fail 2.78 -> pass 0.83\n" in told


def test_what_moves_by_less_than_is_shown(watcher: Callable[..., Watcher], design: Write) -> None:
    design()
    watch = watcher(".")
    seen(watch)
    design(closing_force="40.01 N")
    assert seen(watch) == (
        "lid.yaml: one finding is worse.\n"
        "    changed lid.closing_force 40 N -> 40.01 N\n"
        "worse: 1 by less than a hundredth\n"
    )


def test_a_save_that_changes_no_finding(watcher: Callable[..., Watcher], design: Write) -> None:
    path = design()
    watch = watcher(".")
    seen(watch)
    path.write_text(f"{path.read_text('utf-8')}# a remark\n", "utf-8")
    assert seen(watch) == "lid.yaml: nothing turned out otherwise.\n"
    path.touch()
    assert seen(watch) == ""


def test_a_half_written_file_is_told_once_and_what_was_found_stands(
    watcher: Callable[..., Watcher], design: Write
) -> None:
    path = design()
    watch = watcher("lid.yaml")
    seen(watch)
    whole = path.read_text("utf-8")
    path.write_text(whole[: len(whole) // 2], "utf-8")
    told = seen(watch)
    assert told.startswith("lid.yaml:3:")
    assert told.endswith("lid.yaml cannot be read now; what was found before still stands.\n")
    assert seen(watch) == ""
    path.write_text(whole.replace("30 mm", "9 mm"), "utf-8")
    assert "fails now and did not: lid.wide, pass 0.83 -> fail 2.78\n" in seen(watch)


def test_designs_that_come_and_go(watcher: Callable[..., Watcher], run: Run, design: Write) -> None:
    design("a.yaml")
    watch = watcher(".")
    seen(watch)
    path = design("below/b.yaml")
    assert seen(watch) == run("check", "below/b.yaml").out
    path.unlink()
    assert seen(watch) == "below/b.yaml is gone.\n"


def test_what_a_design_depends_on(
    watcher: Callable[..., Watcher], design: Write, folder: Path
) -> None:
    (folder / ".git").mkdir()
    design("far/base.yaml")
    (folder / "own").mkdir()
    (folder / "own" / "own.yaml").write_text("based_on: ../far/base.yaml\ndesign: Own\n", "utf-8")
    watch = watcher("own")
    seen(watch)
    assert {"own", "far", "."} <= watch.folders
    design("far/base.yaml", least="9 mm")
    assert "own/own.yaml: one finding fails that did not.\n" in seen(watch)
    (folder / "shop.yaml").write_text(
        "shop: Ours\nrules: {gap.wide: {silence: true, by: Ada Marsh, why: a trial}}\n", "utf-8"
    )
    assert seen(watch).startswith("own/own.yaml: ")
    (folder / "shop.yaml").write_text("shop: [\n", "utf-8")
    assert "shop.yaml:" in seen(watch)


@pytest.mark.parametrize(
    "words",
    [("--output", "o.txt"), ("--since", "HEAD"), ("--format", "json"), ("-",)],
)
def test_what_a_watch_does_not_go_with(run: Run, design: Write, words: tuple[str, ...]) -> None:
    design()
    ran = run("check", *(words if words == ("-",) else ("lid.yaml", *words)), "--watch")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == (
        "reviewer check: a watch tells what changes as text, on standard output, of files\n"
        f"    found {words[0]} with --watch\n    expected one or the other\n"
    )


class Watching:
    """A watch in a process of its own, of which the output is read as it comes."""

    def __init__(self, folder: Path) -> None:
        program = "from reviewer.command.main import console; console()"
        self.process = subprocess.Popen(
            [sys.executable, "-c", program, "check", ".", "--watch", "--no-remedies"],
            cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
        )  # fmt: skip
        self.told = ""

    def until(self, text: str) -> str:
        """Read on until a text has come; what came since the last."""
        assert self.process.stdout is not None
        while text not in self.told:
            ready, _, _ = select.select([self.process.stdout], [], [], LONGEST)
            more = os.read(self.process.stdout.fileno(), 65536) if ready else b""
            assert more, f"{text!r} did not come after {self.told!r}"
            self.told += more.decode()
        seen, _, self.told = self.told.partition(text)
        return seen + text


@pytest.fixture
def watching(folder: Path, design: Write) -> Iterator[Watching]:
    design()
    watch = Watching(folder)
    yield watch
    watch.process.kill()
    watch.process.wait()
    assert watch.process.stdout is not None
    watch.process.stdout.close()


def test_a_process_tells_each_save_and_leaves_cleanly(
    watching: Watching, folder: Path, design: Write
) -> None:
    watching.until("watching one design and what they depend on; Ctrl-C ends it\n")
    (folder / "lid.yaml").write_text("design: L\nparts: {lid", "utf-8")
    watching.until("lid.yaml cannot be read now; what was found before still stands.\n")
    beside = design("beside.txt", least="4 mm")
    os.replace(beside, folder / "lid.yaml")  # as an editor saves
    watching.until("changed lid.least 30 mm -> 4 mm\n")
    design("below/more.yaml")
    watching.until("below/more.yaml\n")
    design("below/more.yaml", least="4 mm")  # in a folder that was not there at first
    watching.until("below/more.yaml: ")
    watching.until("changed lid.least 30 mm -> 4 mm\n")
    watching.process.send_signal(signal.SIGINT)
    assert watching.process.wait(LONGEST) == 0
    assert watching.process.stdout is not None
    assert "Traceback" not in watching.told + watching.process.stdout.read().decode()
