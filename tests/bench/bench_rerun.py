"""A folder reviewed again after one design has changed, against a cold check of one design.

    python tests/bench/bench_rerun.py [DESIGNS]

What else there is comes from the cache. Processor time, the least of several runs.
"""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from bench_many import check
from many_designs import write_designs

OPTIONS = ("--format", "json", "--no-remedies")
RUNS = 5


def main() -> None:
    """Print both times and their ratio."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    with TemporaryDirectory() as folder, TemporaryDirectory() as kept, TemporaryDirectory() as code:
        paths = write_designs(Path(folder), count)
        cache = ("--cache", kept)
        check([folder, *OPTIONS, *cache], code)
        alone, again = [], []
        for number in range(RUNS):
            alone.append(check([str(paths[1]), *OPTIONS, "--cache", "off"], code)[0])
            text = paths[1].read_text("utf-8")
            paths[1].write_text(f"{text}# looked at {number}\n", "utf-8")
            again.append(check([folder, *OPTIONS, *cache], code)[0])
    print(f"one design {min(alone) * 1e3:.0f} ms; {count} after a change {min(again) * 1e3:.0f} ms")
    print(f"ratio {min(again) / min(alone):.2f}")


if __name__ == "__main__":
    main()
