"""How fast supports are solved, against the same through scipy.optimize.

Run it by itself: python tests/bench/bench_supports.py. It prints times, their ratio and how far
the two agree; nothing here is a test, as a shared machine has no steady clock.
"""

from time import perf_counter

import numpy as np
from scipy.optimize import minimize

from reviewer.mechanics.supports import Supports, circle, solve_supports, worst_direction

CASES, DIRECTIONS, SHARE = 1000, 36, 150  # of the columns, every SHARE-th goes through scipy


def ring():
    """Ten rollers and five hold-downs with a gap."""
    x, y = circle(10, 0.23)
    return Supports(
        np.append(x, x[::2]),
        np.append(y, y[::2]),
        2e6,
        np.repeat([1.0, -1.0], [10, 5]),
        np.repeat([0.0, 1.5e-4], [10, 5]),
    )


def random_loads():
    """Loads of which the moment goes all round, inside and outside the ring."""
    random = np.random.default_rng(1)
    force = random.uniform(100, 1200, (CASES, 1))
    reach = 0.23 * random.uniform(0.0, 2.0, (CASES, 1))
    angle = 2 * np.pi * np.arange(DIRECTIONS) / DIRECTIONS
    return np.broadcast_arrays(force, force * reach * np.cos(angle), force * reach * np.sin(angle))


def through_scipy(supports, load):
    """The forces of one column, by scipy's trust-region Newton method on the same energy."""
    x, y, stiffness, sign, gap = (np.broadcast_to(f, np.shape(supports.x)) for f in supports)
    action = sign[:, None] * np.stack([np.ones_like(x), x, y], axis=1)
    size = np.abs(load).sum() / stiffness.max()

    def pressed(u):
        return np.maximum(action @ (u * size) - gap, 0.0)

    def energy(u):
        return (0.5 * stiffness * pressed(u) ** 2).sum() / size - load @ u

    def slope(u):
        return action.T @ (stiffness * pressed(u)) - load

    def bend(u):
        return (action.T * (stiffness * (pressed(u) > 0))) @ action * size

    start = np.array([1.0, 0.0, 0.0])
    options = {"gtol": 1e-10 * np.abs(load).sum()}
    found = minimize(energy, start, jac=slope, hess=bend, method="trust-exact", options=options)
    return stiffness * pressed(found.x), np.abs(slope(found.x)).max()


def best_of(times, action):
    best = np.inf
    for _ in range(times):
        start = perf_counter()
        result = action()
        best = min(best, perf_counter() - start)
    return best, result


def against_scipy():
    supports, loads = ring(), random_loads()
    ours, solution = best_of(5, lambda: solve_supports(supports, *loads))
    columns = [load.ravel()[::SHARE] for load in loads]
    start = perf_counter()
    found = [through_scipy(supports, np.array(load)) for load in zip(*columns, strict=True)]
    theirs = (perf_counter() - start) * CASES * DIRECTIONS / len(found)
    forces = solution.forces.reshape(-1, 15)[::SHARE]
    settled = np.array(
        [out < 1e-9 * load for (_, out), load in zip(found, columns[0], strict=True)]
    )
    apart = np.abs(forces - np.array([force for force, _ in found])).max(axis=1) / columns[0]
    print(f"{CASES} cases x {DIRECTIONS} directions: {ours * 1e3:.1f} ms")
    print(f"through scipy.optimize (from {len(found)} of them): {theirs * 1e3:.0f} ms")
    print(f"ratio {theirs / ours:.0f}")
    print(f"largest difference {apart[settled].max():.1e} of the load, {settled.sum()} columns")


def worst_directions():
    supports = ring()
    force, moment = np.linspace(300, 900, 12)[None], np.linspace(20, 400, 12)[None]
    groups = {"carry": range(10), "hold_down": range(10, 15)}

    def one_design():
        return worst_direction(supports, force, 5.0, 3.0, moment, groups=groups)

    print(f"worst direction of 12 cases on 15 supports: {best_of(50, one_design)[0] * 1e3:.2f} ms")
    plain = Supports(*circle(6, 0.4), 2e6)

    def feet():
        return worst_direction(plain, force, 5.0, 3.0, moment * 0.2)

    print(f"worst direction of 12 cases on 6 feet: {best_of(50, feet)[0] * 1e3:.2f} ms")

    def plainly():
        return solve_supports(supports, force, moment, 0.0)

    print(f"forces of 12 cases on 15 supports: {best_of(50, plainly)[0] * 1e3:.2f} ms")
    random = np.random.default_rng(2)
    samples = supports._replace(stiffness=2e6 * random.uniform(0.5, 2.0, (2000, 1, 15)))
    cases = force[:, :6], 5.0, 3.0, moment[:, 4:10]
    time, _ = best_of(1, lambda: worst_direction(samples, *cases, groups=groups))
    print(f"worst direction of 2000 samples x 6 cases: {time:.2f} s")


if __name__ == "__main__":
    against_scipy()
    worst_directions()
