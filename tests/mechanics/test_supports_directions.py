"""The worst direction of a turning load: against scipy, brute force and symmetry."""

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from reviewer.mechanics.springs import scan
from reviewer.mechanics.springs.coverage import all_pieces
from reviewer.mechanics.supports import Supports, circle, solve_supports, worst_direction

# Own designs: a ring with hold-downs, four feet of a long table, a lopsided set.
CARRY, HOLD = np.arange(10), np.arange(10, 15)
RING_X, RING_Y = circle(10, 0.23)
DESIGNS = {
    "ring with hold-downs": Supports(
        np.append(RING_X, RING_X[::2]),
        np.append(RING_Y, RING_Y[::2]),
        2e6,
        np.repeat([1.0, -1.0], [10, 5]),
        np.repeat([0.0, 1.5e-4], [10, 5]),
    ),
    "preloaded hold-downs": Supports(
        np.append(RING_X, RING_X[::2]),
        np.append(RING_Y, RING_Y[::2]),
        np.repeat([2e6, 5e5], [10, 5]),
        np.repeat([1.0, -1.0], [10, 5]),
        np.repeat([0.0, -4e-4], [10, 5]),
    ),
    "long table": Supports([0.7, -0.7, -0.7, 0.7], [0.3, 0.3, -0.3, -0.3], 4e6),
    "lopsided": Supports(
        [0.31, 0.02, -0.28, -0.2, 0.15],
        [0.05, 0.33, 0.12, -0.25, -0.22],
        [1e6, 3e6, 2e6, 8e5, 5e6],
        1.0,
        [0.0, 1e-4, 0.0, 5e-5, 0.0],
    ),
}
LOADS = [(700.0, 0.0, 0.0, 40.0), (700.0, 5.0, 3.0, 85.0), (500.0, -20.0, 10.0, 60.0)]
EVERY = [pytest.param(d, load, id=f"{d}-{load[3]:g}") for d in DESIGNS for load in LOADS]


def along(design, load, angle):
    force, fixed_x, fixed_y, moment = load
    return solve_supports(
        design, force, fixed_x + moment * np.cos(angle), fixed_y + moment * np.sin(angle)
    )


def best_by_scipy(function, values, angle):
    """Greatest value by scipy's bounded search around the three highest of many samples."""
    step = angle[1] - angle[0]
    peaks = np.flatnonzero((values >= np.roll(values, 1)) & (values >= np.roll(values, -1)))
    peaks = peaks[np.argsort(-values[peaks])][:3]
    found = [
        minimize_scalar(
            lambda t: -function(t),
            bounds=(angle[p] - step, angle[p] + step),
            method="bounded",
            options={"xatol": 1e-11},
        )
        for p in peaks
    ]
    return max([values.max(), *(-each.fun for each in found)])


@pytest.mark.parametrize(("name", "load"), EVERY)
def test_peaks_against_scipy(name, load):
    design = DESIGNS[name]
    result = worst_direction(design, *load, rim=0.3)
    if result.overturns:
        pytest.skip("overturns: see the test of overturning")
    measures = {
        "peak": lambda s: s.forces.max(-1),
        "least": lambda s: -s.forces.min(-1),
        "sink": lambda s: s.sink + 0.3 * np.hypot(s.slope_x, s.slope_y),
        "tilt": lambda s: np.hypot(s.slope_x, s.slope_y),
        "uplift": lambda s: (s.forces * (np.broadcast_to(design.sign, s.forces.shape) < 0)).sum(-1),
    }
    angle = np.linspace(0.0, 2 * np.pi, 1441)[:-1]
    sampled = along(design, load, angle)
    for field, measure in measures.items():
        expected = best_by_scipy(
            lambda t, m=measure: float(m(along(design, load, t))), measure(sampled), angle
        )
        value = np.ravel(getattr(result, field))[0] * (-1 if field == "least" else 1)
        assert value == pytest.approx(expected, rel=1e-9, abs=1e-9 if field != "tilt" else 0), field


@pytest.mark.parametrize(("name", "load"), EVERY)
def test_the_direction_gives_the_value(name, load):
    """What is said to happen in a direction happens there."""
    design = DESIGNS[name]
    groups = {"first": [0, 1, 2], "all": range(np.size(design.x))}
    result = worst_direction(design, *load, groups=groups)
    if result.overturns:
        assert np.isnan(result.peak).all()
        return
    for group in range(2):
        there = along(design, load, result.direction[group])
        peak = there.forces[result.member[group]]
        assert peak == pytest.approx(result.peak[group], rel=1e-9)
        there = along(design, load, result.least_direction[group])
        members = list(groups.values())[group]
        assert there.forces[list(members)].min() == pytest.approx(result.least[group], abs=1e-9)
    assert along(design, load, result.sink_direction).sink == pytest.approx(result.sink, rel=1e-9)
    there = along(design, load, result.tilt_direction)
    assert np.hypot(there.slope_x, there.slope_y) == pytest.approx(result.tilt, rel=1e-9)
    there = along(design, load, result.uplift_direction)
    assert there.forces[
        np.broadcast_to(design.sign, there.forces.shape) < 0
    ].sum() == pytest.approx(result.uplift, abs=1e-9)


@pytest.mark.parametrize(("name", "load"), EVERY)
def test_overturning_against_many_directions(name, load):
    """Exact in closed form, so that it is at most a hair wider than ever so many directions."""
    design = DESIGNS[name]
    for factor in np.linspace(1.0, 8.0, 29):
        case = (*load[:3], load[3] * factor)
        tips = along(design, case, np.linspace(0, 2 * np.pi, 721)).overturns.any()
        result = worst_direction(design, *case)
        assert result.overturns >= tips
        if result.overturns:
            assert along(design, case, result.overturning_direction).overturns


def test_hold_downs_keep_a_ring_from_turning_over():
    result = worst_direction(DESIGNS["ring with hold-downs"], 300.0, 0, 0, [10.0, 1000.0])
    assert not result.overturns.any()
    assert np.isnan(result.overturning_direction).all()
    assert result.uplift[0] == 0.0
    assert result.uplift_direction[0] == 0.0
    assert result.uplift[1] > 1000.0


def test_uplift_by_statics():
    """Feet and hold-downs at the corners of a long table. The load stands 0.5 m out along x, where
    the feet are at 0.2 m: about their line, 0.4 m from the far hold-downs, H 0.4 = W 0.3. Any other
    direction is nearer to the feet than that."""
    x, y = np.tile([0.2, -0.2, 0.2, -0.2], 2), np.tile([1.5, 1.5, -1.5, -1.5], 2)
    table = Supports(x, y, 1e8, np.repeat([1.0, -1.0], 4), np.repeat([0.0, 1e-6], 4))
    result = worst_direction(table, 100.0, 0.0, 0.0, 50.0)
    assert result.uplift == pytest.approx(75.0, rel=1e-9)
    assert result.uplift_direction == pytest.approx(0.0, abs=1e-6)


def test_without_a_round_moment_there_is_one_direction():
    design = DESIGNS["lopsided"]
    result = worst_direction(design, 600.0, [12.0, 3.0], -5.0, 0.0)
    for place, fixed in enumerate([12.0, 3.0]):
        alone = solve_supports(design, 600.0, fixed, -5.0)
        assert result.peak[0, place] == pytest.approx(alone.forces.max(), rel=1e-12)
        assert result.member[0, place] == alone.forces.argmax()
        assert result.sink[place] == pytest.approx(alone.sink, rel=1e-12)
    assert (result.direction == 0.0).all()


# Ties


@pytest.mark.parametrize("count", [3, 4, 5, 6, 7, 8, 10, 12])
@pytest.mark.parametrize("ratio", [0.2, 0.45])
def test_of_equals_the_first_direction_counts(count, ratio):
    """Every roller has the same peak: the first one, in direction 0, is named."""
    result = worst_direction(Supports(*circle(count, 0.3), 1e6), 500.0, 0, 0, ratio * 0.3 * 500)
    assert result.member[0] == 0
    assert result.direction[0] == pytest.approx(0.0, abs=1e-9)
    assert result.tilt_direction == pytest.approx(0.0, abs=1e-9)


def test_the_order_of_the_supports_changes_nothing():
    design = DESIGNS["lopsided"]
    order = np.array([3, 0, 4, 2, 1])
    shuffled = Supports(*(f if np.ndim(f) == 0 else np.asarray(f)[order] for f in design))
    load = (700.0, 5.0, 3.0, 30.0)
    here, there = worst_direction(design, *load), worst_direction(shuffled, *load)
    assert order[there.member[0]] == here.member[0]
    for field in (
        "peak",
        "direction",
        "least",
        "least_direction",
        "sink",
        "tilt",
        "tilt_direction",
    ):
        assert getattr(there, field) == pytest.approx(getattr(here, field), rel=1e-9)


def test_turning_the_design_turns_the_direction():
    design, load = DESIGNS["ring with hold-downs"], (700.0, 0.0, 0.0, 150.0)
    turn = 0.4
    cosine, sine = np.cos(turn), np.sin(turn)
    turned = design._replace(
        x=design.x * cosine - design.y * sine, y=design.x * sine + design.y * cosine
    )
    here = worst_direction(design, *load, groups=(CARRY, HOLD))
    there = worst_direction(turned, *load, groups=(CARRY, HOLD))
    assert there.peak == pytest.approx(here.peak, rel=1e-9)
    fifth = 2 * np.pi / 5
    off = (there.direction - turn - here.direction) / fifth
    assert off == pytest.approx(np.round(off), abs=1e-6)


# Batches


def batch():
    random = np.random.default_rng(12)
    x, y = circle(10, 0.23 + 0.005 * random.normal(size=(40, 1)))
    design = Supports(
        np.concatenate([x, x[..., ::2]], -1),
        np.concatenate([y, y[..., ::2]], -1),
        2e6 * random.uniform(0.5, 2, (40, 1, 15)),
        np.repeat([1.0, -1.0], [10, 5]),
        np.where(np.arange(15) < 10, 0.0, random.uniform(-1e-4, 3e-4, (40, 1, 15))),
    )
    force, moment = random.uniform(200, 900, (40, 6)), random.uniform(0, 300, (40, 6))
    fixed = random.normal(size=(2, 40, 6)) * 20
    moment[:, 2] = 0.0
    return design, (force, *fixed, moment)


def test_one_at_a_time_and_batched_agree_to_the_bit():
    design, load = batch()
    groups = {"carry": CARRY, "hold_down": HOLD}
    together = worst_direction(design, *load, groups=groups, rim=0.3)
    assert together.peak.shape == (2, 40, 6)
    assert together.sink.shape == (40, 6)
    for sample in range(0, 40, 3):
        own = Supports(*(f if np.ndim(f) < 2 else f[sample].reshape(-1) for f in design))
        for case in range(6):
            at = (sample, case)
            alone = worst_direction(own, *(part[at] for part in load), groups=groups, rim=0.3)
            for name, one, many in zip(together._fields, alone, together, strict=True):
                assert np.array_equal(one, many[(..., *at)], equal_nan=True), name


def test_blocks_do_not_show(monkeypatch):
    from reviewer.mechanics.springs import scan

    design, load = batch()
    whole = worst_direction(design, *load)
    monkeypatch.setattr(scan, "BLOCK", 4000)
    for one, many in zip(worst_direction(design, *load), whole, strict=True):
        assert np.array_equal(one, many, equal_nan=True)


def test_unknown_and_overturning_items_leave_the_others_alone():
    design = Supports(*circle(6, 0.25), 2e6)
    force, moment = np.array([400.0, np.nan, 400.0, 400.0]), np.array([40.0, 40.0, 95.0, np.nan])
    result = worst_direction(design, force, 0.0, 0.0, moment)
    alone = worst_direction(design, 400.0, 0.0, 0.0, 40.0)
    assert result.overturns.tolist() == [False, False, True, False]
    assert np.isnan(result.peak[0]).tolist() == [False, True, True, True]
    assert result.member[0].tolist() == [0, -1, -1, -1]
    assert result.peak[0, 0] == alone.peak[0]
    assert np.isnan(result.overturning_direction).tolist() == [False, True, False, True]


@pytest.mark.parametrize("groups", [([0, 7],), {"carry": [-1]}, {"carry": []}])
def test_error_for_a_group_of_no_supports(groups):
    with pytest.raises(ValueError, match=r"^group .* has to name supports from 0 to 4, not \["):
        worst_direction(DESIGNS["lopsided"], 1, 0, 0, 1, groups=groups)


def test_two_supports_alone_in_the_load_s_line_promise_nothing_beside_it():
    """A load straight over a roller, opposite to a hold-down across a wide gap: two carry it all.

    The worst is over a roller with two hold-downs at 120 degrees from it, by moments about the
    roller: H = (M - W R) / (R + R/2), and W + H on the roller.
    """
    carry, hold = circle(6, 0.25), circle(3, 0.25)
    design = Supports(
        np.append(carry.x, hold.x),
        np.append(carry.y, hold.y),
        np.repeat([1e6, 2.9e6], [6, 3]),
        np.repeat([1.0, -1.0], [6, 3]),
        np.repeat([0.0, 3e-3], [6, 3]),
    )
    force, moment = 571.2576, 220.0
    held = (moment - force * 0.25) / 0.375
    worst = worst_direction(design, force, 0.0, 0.0, moment, [range(6), range(6, 9)])
    assert worst.peak[0] == pytest.approx(force + held, rel=1e-9)
    turns = np.linspace(0, 2 * np.pi, 3601)
    forces = along(design, (force, 0.0, 0.0, moment), turns).forces
    assert worst.peak[1] == pytest.approx(forces[:, 6:].max(), rel=1e-6)


CROWDED = [
    ("a ring of ten", Supports(*circle(10, 0.23), 2e6), 1000.0, 150.0),
    ("a ring at half its radius", Supports(*circle(8, 0.2), 2e6), 800.0, 80.0),
    (
        "two of four with a gap",
        Supports(*circle(4, 0.2), 2e6, 1.0, [0, 1e-3, 0, 1e-3]),
        800.0, 90.0,
    ),
    ("three feet, to their edge", Supports(*circle(3, 0.3), 1e6), 500.0, 74.9),
    (
        "held down with a preload",
        Supports(
            *np.hstack((circle(6, 0.25), circle(3, 0.25))), 2e6, [1.0] * 6 + [-1.0] * 3,
            [0.0] * 6 + [-1e-4] * 3,
        ),
        900.0, 400.0,
    ),
]  # fmt: skip


@pytest.mark.parametrize(("name", "supports", "force", "moment"), CROWDED)
def test_the_circle_is_not_split_without_end(monkeypatch, name, supports, force, moment):
    """A search in which each direction tells of few others would take one piece a rounding."""
    tried = []

    def counted(load, columns, *more):
        pieces = all_pieces(load, columns, *more)
        tried.append((len(columns.item), len(pieces.item)))
        return pieces

    monkeypatch.setattr(scan, "all_pieces", counted)
    worst = worst_direction(supports, force, 0.0, 0.0, moment)
    assert np.isfinite(worst.peak).all()
    assert tried
    for columns, pieces in tried:
        assert columns <= pieces <= 8 * columns, name
