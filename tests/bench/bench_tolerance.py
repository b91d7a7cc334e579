"""100,000 samples of the potting bench against as many whole reviews, extrapolated from 200.

Prints how many times faster the tolerance study is, and its largest memory. Run from the folder of
the project: python tests/bench/bench_tolerance.py
"""

import resource
import sys
import time
from pathlib import Path

from reviewer.judging.builtin import builtin_packs
from reviewer.judging.pack import in_order
from reviewer.reviewing import review_source
from reviewer.studying.bands import bands_of
from reviewer.studying.tolerance import with_scatter

SAMPLES = 100_000
WHOLE = 200
BENCH = Path(__file__).parents[2] / "specimens" / "potting_bench" / "revision_c.yaml"
BANDS = (
    ("thickness: 24,", "thickness: 24 ± 0.5,"),
    ("gap: 0.15", "gap: 0.15 ± 0.1"),
    ("diameter: 20\n", "diameter: 20 ± 0.05\n"),
    ("mass: 60 kg", "mass: 60 kg ± 2 kg"),
    ("reach: 360", "reach: 360 ± 2"),
)
AT_LEAST = 200.0  # times faster
GIBIBYTE = 1 << 20  # in the kibibytes that the system counts


def main() -> int:
    """Time both, and print the ratio."""
    text = BENCH.read_text(encoding="utf-8")
    for nominal, band in BANDS:
        text = text.replace(nominal, band)
    rules, _ = in_order(builtin_packs())
    review = review_source(text, "bench.yaml")
    assert review.derived is not None, review.problems
    print(f"{len(bands_of(review.derived))} values with a tolerance")
    start = time.perf_counter()
    for _ in range(WHOLE):
        review_source(text, "bench.yaml")
    whole = (time.perf_counter() - start) / WHOLE
    start = time.perf_counter()
    with_scatter(review, rules, SAMPLES)
    study = time.perf_counter() - start
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    ratio = whole * SAMPLES / study
    print(f"a whole review {whole * 1e3:.1f} ms; {SAMPLES} samples {study:.1f} s")
    print(f"{ratio:.0f} times faster (at least {AT_LEAST:.0f}); {memory / GIBIBYTE:.2f} GiB")
    return 0 if ratio >= AT_LEAST and memory < 2 * GIBIBYTE else 1


if __name__ == "__main__":
    sys.exit(main())
