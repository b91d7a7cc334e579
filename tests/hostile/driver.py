"""Reads every hostile input in a process of its own, and prints a line of JSON about each.

A process is ended by the system after one second of reckoning. What it took is told by the system.
"""

import json
import os
import resource
import signal
import sys
import tempfile
from pathlib import Path
from runpy import run_path
from typing import Any

from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.in_force import put_in_force
from reviewer.judging.pack import read_packs
from reviewer.judging.shop_packs import in_force_for
from reviewer.notation.problem import Problem, render
from reviewer.parts.registry import KINDS
from reviewer.reading.folder import Folder
from reviewer.reporting.sheet import Style
from reviewer.reporting.text import TextReport
from reviewer.reviewing import review, review_source

SECONDS = 1.0
STUCK = 60
MEBIBYTE = 1 << 20


def read(each: Any, folder: Path) -> tuple[tuple[Problem, ...], str]:
    """What is told of an input: its problems, and the report if there is one."""
    if each.kind == "pack":
        packs = read_packs([(each.text, "pack.yaml")], KINDS, builtin_limits())
        return put_in_force((*builtin_packs(), *packs), prove=True).problems, ""
    if each.kind == "shop":
        return in_force_for(each.text, "shop.yaml", Folder(folder)).problems, ""
    if each.kind == "folder":
        (folder / "design.yaml").write_bytes(each.text)
        found = review("design.yaml")
    else:
        found = review_source(each.text, "design.yaml")
    return found.problems, TextReport(Style(), {}, problems=True).add(found)


def child(each: Any, folder: Path, pipe: int) -> None:
    """Read one input with what it may take, and send what is told."""
    signal.setitimer(signal.ITIMER_PROF, SECONDS)  # SIGPROF ends a process that has no handler
    signal.alarm(STUCK)  # what waits for something outside reckons nothing
    problems, report = read(each, folder)
    told = "\n".join([*(render(problem) for problem in problems), report])
    strange = sorted({c for c in told if not (c.isprintable() or c == "\n")})
    line = {"problems": len(problems), "told": told[:300], "strange": strange}
    os.write(pipe, json.dumps(line).encode()[:60_000])


def run(each: Any, folder: Path) -> dict[str, Any]:
    """Fork a process for one input, and tell how it ended and what it took."""
    reading, writing = os.pipe()
    process = os.fork()
    if process == 0:
        os.close(reading)
        status = 1
        try:
            child(each, folder, writing)
            status = 0
        finally:
            os._exit(status)
    os.close(writing)
    with os.fdopen(reading, "rb") as file:
        line = file.read()
    _, status, used = os.wait4(process, 0)
    return {
        "name": each.name,
        "ended": os.waitstatus_to_exitcode(status),
        "mebibytes": round(used.ru_maxrss * 1024 / MEBIBYTE),
        **(json.loads(line) if line else {}),
    }


def prepare(folder: Path) -> None:
    """A folder with things in it that no design should follow."""
    outside = folder.parent / f"{folder.name}_outside.yaml"
    outside.write_text("design: a secret\n", "utf-8")
    (folder / "leaves.yaml").symlink_to(outside)
    (folder / "circle.yaml").symlink_to(folder / "circle.yaml")
    (folder / "folder.yaml").mkdir()
    (folder / "large.yaml").write_bytes(b"# " + b"x" * (64 * MEBIBYTE))
    os.mkfifo(folder / "pipe.yaml")


def main() -> None:
    """Read all, or those whose name holds a word."""
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    builtin_packs()
    review_source("design: d\nparts: {b: {kind: base, mass: 1 kg}}\n", "warm.yaml")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name, "work").resolve()
        folder.mkdir()
        prepare(folder)
        inputs = run_path(str(Path(__file__).resolve().with_name("inputs.py")))
        os.chdir(folder)
        for each in inputs["hostile"]():
            if len(sys.argv) < 2 or sys.argv[1] in each.name:
                print(json.dumps(run(each, folder)), flush=True)


if __name__ == "__main__":
    main()
