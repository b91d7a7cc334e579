"""Peak memory of reviewing many designs, against a hundredth of them.

    python tests/bench/bench_memory.py [DESIGNS]

Of the largest process of each run: the one that prints, or one of two that review.
"""

import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from many_designs import write_designs

CHECK = """
import os, resource, sys
from reviewer.command.main import main
shown = os.dup(2)
nothing = os.open(os.devnull, os.O_WRONLY)
os.dup2(nothing, 1)
main(["check", sys.argv[1], "--format", "json", "--no-remedies", "-j", "2", "--cache", "off"])
users = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
os.write(shown, b"%d" % max(resource.getrusage(each).ru_maxrss for each in users))
os._exit(0)
"""


def peak(folder: str) -> int:
    """Peak memory of a check of a folder [KiB]."""
    done = subprocess.run([sys.executable, "-c", CHECK, folder], capture_output=True, check=True)
    return int(done.stderr)


def main() -> None:
    """Print both and their ratio."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    found = []
    for number in (count // 100, count):
        with TemporaryDirectory() as folder:
            write_designs(Path(folder), number)
            found.append(peak(folder))
            print(f"{number} designs: {found[-1] / 1024:.0f} MiB")
    print(f"ratio {found[1] / found[0]:.2f}")


if __name__ == "__main__":
    main()
