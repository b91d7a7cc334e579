"""How many distances the search for the least clearance computes, against brute force.

Run it by itself: python -m tests.bench.bench_clearance. Random mechanisms (the same ones that the
test compares with brute force) and three that are hard: a gap that never changes. It prints counts,
their ratio to the 20,000 steps of brute force, and times; nothing here is a test. The ratio has to
be 20 or more.
"""

from time import perf_counter

import numpy as np

from reviewer.geometry.bounds import Mover, meet
from reviewer.geometry.chain import Fixed, Slide, Turn
from reviewer.geometry.clearance import least_clearance
from reviewer.geometry.course import Course, Table
from reviewer.geometry.edges import edges_of
from reviewer.geometry.outline import Rectangle, Ring, Sector
from tests.geometry.mechanisms import any_mechanism, encounter_of

STEPS, MANY = 20_000, 500


def hard():
    """Gaps that never change: nothing is to be left out by being far."""
    course = Course(0, Table(((0.0, 0.0), (1.0, 1.0))))
    sector = Mover(edges_of(Sector(0.4, 0.3, 1.0)), (Turn(course),))
    rail = Mover(edges_of(Rectangle(0.6, 0.02)), (Fixed(0.0, 0.062),))
    drawer = Mover(edges_of(Rectangle(0.3, 0.1)), (Slide(course),))
    yield "sector in a ring", meet(Mover(edges_of(Ring(0.5, 0.42)), ()), sector, 1)
    yield "sector about a sector", meet(Mover(edges_of(Sector(0.28, 0.1, 1.0)), ()), sector, 1)
    yield "drawer on a rail", meet(rail, drawer, 1)


def main() -> None:
    """Print the table."""
    random = np.random.default_rng(2026)
    encounters = [encounter_of(any_mechanism(random)) for _ in range(MANY)]
    start = perf_counter()
    counts = [least_clearance(each).evaluations for each in encounters]
    each = (perf_counter() - start) / MANY
    mean, most = np.mean(counts), max(counts)
    print(f"{MANY} random mechanisms: {mean:.0f} distances each on average, {most} at most")
    print(f"  {STEPS / mean:.0f} times fewer than brute force, {STEPS / most:.0f} at the worst")
    print(f"  {1000 * each:.1f} ms each")
    for name, encounter in hard():
        found = least_clearance(encounter)
        count = found.evaluations
        print(f"{name}: {1000 * found.clearance:.2f} mm, {count} distances, {STEPS / count:.0f}")


if __name__ == "__main__":
    main()
