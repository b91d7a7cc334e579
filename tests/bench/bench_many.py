"""A folder of distinct designs reviewed on two cores, against composing the same YAML on one.

    python tests/bench/bench_many.py [DESIGNS]

No remedies are searched, and the report is JSON. Processor time counts, shared by the two
processes, since other programs disturb that less than they disturb a clock; the clock is told too.
"""

import os
import resource
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

import yaml
from many_designs import write_designs

CHECK = "from reviewer.command.main import console; console()"  # as the installed script does
OPTIONS = ("--format", "json", "--no-remedies", "-j", "2", "--cache", "off")
CORES = 2


def compose_time(paths: list[Path]) -> float:
    """The least processor time [s] in which libyaml composes all files."""
    texts = [path.read_bytes() for path in paths]
    found = []
    for _ in range(3):
        start = time.process_time()
        for text in texts:
            yaml.compose(text, Loader=yaml.CSafeLoader)
        found.append(time.process_time() - start)
    return min(found)


def check(arguments: list[str], compiled: str) -> tuple[float, float, int]:
    """Processor time, time by the clock [s] and peak memory [KiB] of one check.

    The report is thrown away. `compiled` is a folder for compiled modules, as an installed
    program has them.
    """
    environment = {**os.environ, "PYTHONPYCACHEPREFIX": compiled, "OPENBLAS_NUM_THREADS": "1"}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    before, start = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    process = os.fork()
    if process == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.execve(sys.executable, [sys.executable, "-c", CHECK, "check", *arguments], environment)
    _, status, used = os.wait4(process, 0)
    assert os.waitstatus_to_exitcode(status) in (0, 1), "a design could not be read"
    clock = time.perf_counter() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    spent = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return spent, clock, used.ru_maxrss


def main() -> None:
    """Print the times and their ratio."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    with TemporaryDirectory() as folder, TemporaryDirectory() as compiled:
        paths = write_designs(Path(folder), count)
        composing = compose_time(paths)
        check([str(paths[0]), *OPTIONS], compiled)
        spent, clock, _ = min(check([folder, *OPTIONS], compiled) for _ in range(2))
    print(f"{count} designs: composed in {composing:.2f} s; reviewed in {spent:.2f} s of processor")
    print(
        f"time by {CORES} processes, {spent / count * 1e3:.2f} ms each; {clock:.2f} s by the clock"
    )
    print(f"ratio {spent / CORES / composing:.1f} (by the clock {clock / composing:.1f})")


if __name__ == "__main__":
    main()
