"""A cold `reviewer check` against importing the four fixed libraries, as a ratio in one run.

    python tests/bench/bench_cold_check.py [FILE]

Each is a fresh interpreter that finds its modules compiled, as an installed program does; the
least processor time of several runs counts, user and system together, since other programs on the
machine disturb that less than they disturb a clock.
"""

import os
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

RUNS = 7
BENCH = Path(__file__).parents[2] / "specimens" / "potting_bench" / "revision_c.yaml"
IMPORTS = "import yaml, jsonschema, pint, networkx; pint.UnitRegistry()"
CHECK = "from reviewer.command.main import console; console()"  # as the installed script does


def least_time(arguments: list[str], compiled: str) -> float:
    """The least processor time [s] of a fresh interpreter with these arguments.

    `compiled` is a folder for compiled modules; the first run fills it and does not count.
    """
    environment = {**os.environ, "PYTHONPYCACHEPREFIX": compiled}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    environment["REVIEWER_CACHE"] = "off"
    return min([one_time(arguments, environment) for _ in range(1 + RUNS)][1:])


def one_time(arguments: list[str], environment: dict[str, str]) -> float:
    """The processor time [s] of one fresh interpreter, its output thrown away."""
    process = os.fork()
    if process == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.execve(sys.executable, [sys.executable, *arguments], environment)
    _, status, used = os.wait4(process, 0)
    assert os.waitstatus_to_exitcode(status) == 0
    return used.ru_utime + used.ru_stime


def main() -> None:
    """Print both times and their ratio."""
    path = sys.argv[1] if len(sys.argv) > 1 else str(BENCH)
    with TemporaryDirectory() as compiled:
        imports = least_time(["-c", IMPORTS], compiled)
        check = least_time(["-c", CHECK, "check", path], compiled)
    ratio = check / imports
    print(f"imports {imports * 1e3:.0f} ms, check {check * 1e3:.0f} ms: ratio {ratio:.2f}")


if __name__ == "__main__":
    main()
