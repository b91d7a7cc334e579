"""Forces of one-way supports against statics by hand and against scipy."""

import numpy as np
import pytest
from scipy.optimize import linprog, minimize

from reviewer.mechanics.supports import Supports, circle, solve_supports


def resultant(supports, forces):
    acting = np.asarray(supports.sign) * forces
    return np.array([acting.sum(-1), (acting * supports.x).sum(-1), (acting * supports.y).sum(-1)])


def minimised(supports, load):
    """The movement that minimises the springs' energy, by scipy's trust-region Newton method."""
    x, y, stiffness, sign, gap = (np.broadcast_to(f, np.shape(supports.x)) for f in supports)
    action = sign[:, None] * np.stack([np.ones_like(x), x, y], axis=1)
    size = np.abs(load).sum() / stiffness.max()  # so that the search works with numbers near one

    def pressed(u):
        return np.maximum(action @ (u * size) - gap, 0.0)

    def energy(u):
        return (0.5 * stiffness * pressed(u) ** 2).sum() / size - load @ u

    def slope(u):
        return action.T @ (stiffness * pressed(u)) - load

    def bend(u):
        return (action.T * (stiffness * (pressed(u) > 0))) @ action * size

    found = minimize(
        energy, np.zeros(3), jac=slope, hess=bend, method="trust-exact",
        options={"gtol": 1e-11 * np.abs(load).sum(), "maxiter": 2000},
    )  # fmt: skip
    return stiffness * pressed(found.x), slope(found.x)


# By hand: two springs under a beam of 1 m, and others beside and over it.

BY_HAND = [
    ("one spring carries all", [0.2], [0.1], 1e5, 1.0, 0.0, (50.0, 10.0, 5.0), [50.0]),
    ("two share by the lever", [0, 1], [0, 0], 1e5, 1.0, 0.0, (100.0, 30.0, 0.0), [70.0, 30.0]),
    (
        # The outer pair sinks 1 mm under 200 N, then the middle one shares by its stiffness.
        "a gap of 1 mm under the middle one",
        [-1, 0, 1], [0, 0, 0], 1e5, 1.0, [0.0, 1e-3, 0.0], (500.0, 0.0, 0.0), [200.0, 100.0, 200.0],
    ),
    (
        # 150 N on the outer pair is 0.75 mm: the gap stays open.
        "a gap that is not closed",
        [-1, 0, 1], [0, 0, 0], 1e5, 1.0, [0.0, 1e-3, 0.0], (150.0, 0.0, 0.0), [75.0, 0.0, 75.0],
    ),
    (
        # Pressed 1 mm against its hold-down: 100 N each; a load goes half to each of the two.
        "a roller preloaded against a hold-down, at one point",
        [0, 0], [0, 0], 1e5, [1.0, -1.0], [0.0, -1e-3], (60.0, 0.0, 0.0), [80.0, 20.0],
    ),
    (
        # 250 N is more than the preload can share: the hold-down lets go at 100 N more.
        "a load beyond the preload",
        [0, 0], [0, 0], 1e5, [1.0, -1.0], [0.0, -1e-3], (250.0, 0.0, 0.0), [250.0, 0.0],
    ),
    (
        # Load 0.5 m outside the right support, hold-down at the left one: 100 * 0.5 / 1.
        "a hold-down takes the uplift",
        [0, 1, 0], [0, 0, 0], 1e5, [1.0, 1.0, -1.0], [0.0, 0.0, 2e-3],
        (100.0, 150.0, 0.0), [0.0, 150.0, 50.0],
    ),
    (
        "a lifting load hangs on two hold-downs",
        [0, 1, 0, 1], [0, 0, 0, 0], 1e5, [1.0, 1.0, -1.0, -1.0], [0.0, 0.0, 1e-3, 1e-3],
        (-100.0, -25.0, 0.0), [0.0, 0.0, 75.0, 25.0],
    ),
    (
        # Springs of 1 and 3 at -1 and 1 sink by 60/k under 60 and by 20/k under 60.
        "stiffness 1 and 3 with the load in the middle",
        [-1, 1], [0, 0], [1e5, 3e5], 1.0, 0.0, (120.0, 0.0, 0.0), [60.0, 60.0],
    ),
]  # fmt: skip


@pytest.mark.parametrize(
    ("x", "y", "stiffness", "sign", "gap", "load", "forces"),
    [case[1:] for case in BY_HAND],
    ids=[case[0] for case in BY_HAND],
)
def test_by_hand(x, y, stiffness, sign, gap, load, forces):
    solution = solve_supports(Supports(x, y, stiffness, sign, gap), *load)
    assert not solution.overturns
    assert solution.forces == pytest.approx(forces, abs=1e-9)


def test_sink_and_slope_by_hand():
    """70 N and 30 N on 100 N/mm: 0.7 mm at the origin, 0.3 mm a metre on."""
    solution = solve_supports(Supports([0.0, 1.0], [0.0, 0.0], 1e5), 100.0, 30.0, 0.0)
    assert solution.sink == pytest.approx(0.7e-3, rel=1e-12)
    assert solution.slope_x == pytest.approx(-0.4e-3, rel=1e-12)
    assert solution.slope_y == pytest.approx(0.0, abs=1e-15)


def test_movement_is_at_the_origin_wherever_the_supports_stand():
    here = solve_supports(Supports(*circle(5, 0.3), 1e6), 400.0, 40.0, 20.0)
    x, y = circle(5, 0.3)
    there = solve_supports(Supports(x + 2.0, y - 1.0, 1e6), 400.0, 40.0 + 800.0, 20.0 - 400.0)
    assert there.forces == pytest.approx(here.forces, rel=1e-12)
    at_middle = there.sink + 2.0 * there.slope_x - 1.0 * there.slope_y
    assert at_middle == pytest.approx(here.sink, rel=1e-12)


def random_supports(random, hold_downs):
    count = int(random.integers(3, 9))
    x, y = random.normal(size=(2, count)) * 0.3
    stiffness = 10 ** random.uniform(5, 7, count)
    sign = random.choice([1.0, -1.0], count) if hold_downs else np.ones(count)
    gap = random.choice([0.0, 1e-4, 5e-4, -2e-4], count)
    load = random.uniform(50, 2000)
    at = random.normal(size=2) * 0.15
    return Supports(x, y, stiffness, sign, gap), np.array([load, load * at[0], load * at[1]])


@pytest.mark.parametrize("hold_downs", [False, True])
def test_against_scipy_minimize(hold_downs):
    random = np.random.default_rng(20)
    compared = 0
    for _ in range(150):
        supports, load = random_supports(random, hold_downs)
        solution = solve_supports(supports, *load)
        if solution.overturns:
            continue
        forces, out = minimised(supports, load)
        if np.abs(out).max() > 1e-9 * np.abs(load).sum():
            continue  # scipy gave up before its own answer was in equilibrium
        scale = max(np.abs(load).sum(), forces.max())
        assert solution.forces == pytest.approx(forces, abs=1e-9 * scale)
        compared += 1
    assert compared > 30


def test_overturning_against_scipy_linprog():
    """The supports can carry the load if forces of zero or more exist that balance it."""
    random = np.random.default_rng(21)
    verdicts = []
    for turn in range(300):
        supports, load = random_supports(random, hold_downs=turn % 2 == 0)
        action = np.asarray(supports.sign) * [np.ones_like(supports.x), supports.x, supports.y]
        feasible = linprog(np.zeros(len(supports.x)), A_eq=action, b_eq=load).status == 0
        assert solve_supports(supports, *load).overturns == (not feasible)
        verdicts.append(feasible)
    assert 60 < sum(verdicts) < 240


LINES = [
    ("on the line", 0.5, 0.0, False),
    ("at its end", 1.0, 0.0, False),
    ("past its end", 1.0001, 0.0, True),
    ("beside it", 0.5, 0.0001, True),
]


@pytest.mark.parametrize(
    ("at_x", "at_y", "over"), [x[1:] for x in LINES], ids=[x[0] for x in LINES]
)
@pytest.mark.parametrize("turn", [0.0, 0.3, 1.0])
def test_supports_on_one_line(at_x, at_y, over, turn):
    """A row of supports can only carry what stands on it, however the row is turned."""
    along = np.array([0.0, 0.4, 1.0])
    cosine, sine = np.cos(turn), np.sin(turn)
    load_x, load_y = at_x * cosine - at_y * sine, at_x * sine + at_y * cosine
    solution = solve_supports(
        Supports(along * cosine, along * sine, 1e6), 100.0, 100.0 * load_x, 100.0 * load_y
    )
    assert solution.overturns == over
    assert np.isnan(solution.forces).all() == over
    if not over:
        assert solution.forces.sum() == pytest.approx(100.0, rel=1e-12)
        assert (solution.forces * along).sum() == pytest.approx(100.0 * at_x, rel=1e-12)


def test_one_support_and_doubled_supports():
    post = Supports([0.3], [0.2], 1e6)
    assert solve_supports(post, 10.0, 3.0, 2.0).forces == pytest.approx([10.0])
    assert solve_supports(post, 10.0, 3.1, 2.0).overturns
    assert solve_supports(post, -10.0, -3.0, -2.0).overturns
    x, y = circle(3, 0.4)
    double = Supports(np.append(x, x), np.append(y, y), 1e6)
    single = solve_supports(Supports(x, y, 1e6), 90.0, 9.0, 4.0).forces
    assert solve_supports(double, 90.0, 9.0, 4.0).forces == pytest.approx(
        np.append(single, single) / 2, rel=1e-12
    )


def test_overturning_is_never_zero_force():
    solution = solve_supports(Supports(*circle(4, 0.2), 1e6), 100.0, [19.0, 21.0], 0.0)
    assert solution.overturns.tolist() == [False, True]
    assert np.isnan(solution.forces[1]).all()
    assert np.isnan([solution.sink[1], solution.slope_x[1], solution.slope_y[1]]).all()
    assert np.isfinite(solution.forces[0]).all()


def test_without_load_nothing_moves_but_preload_stays():
    still = solve_supports(Supports(*circle(4, 0.2), 1e6), 0.0, 0.0, 0.0)
    assert still.forces.tolist() == [0.0] * 4
    assert not still.overturns
    pinched = Supports([0.0, 0.0], [0.0, 0.0], 1e5, [1.0, -1.0], [0.0, -1e-3])
    assert solve_supports(pinched, 0.0, 0.0, 0.0).forces == pytest.approx([50.0, 50.0])


@pytest.mark.parametrize("stiffness", [1e2, 1e6, 1e9, 1e12, 1e15])
@pytest.mark.parametrize("gap", [0.0, 1e-5, 2e-3])
def test_stiff_and_soft_springs_with_gaps(stiffness, gap):
    """A ring with hold-downs: statics has to hold whatever the stiffness."""
    x, y = circle(6, 0.25)
    supports = Supports(
        np.append(x, x),
        np.append(y, y),
        stiffness,
        np.repeat([1.0, -1.0], 6),
        np.repeat([0, gap], 6),
    )
    ratio = np.linspace(0.0, 3.0, 61)
    solution = solve_supports(supports, 500.0, 500.0 * 0.25 * ratio, 10.0)
    assert np.isfinite(solution.forces).all()
    held = resultant(supports, solution.forces)
    load = np.array([np.full(61, 500.0), 125.0 * ratio, np.full(61, 10.0)])
    assert np.abs(held - load).max() < 1e-9 * 500.0


def test_stiffnesses_nine_orders_apart():
    """Sample 18021 is one that only the careful way brings into equilibrium."""
    random = np.random.default_rng(1)
    x, y = random.normal(size=(2, 20000, 5)) * 0.3
    stiffness = 10 ** random.uniform(3, 12, (20000, 5))
    sign = random.choice([1.0, -1.0], (20000, 5))
    gap = random.uniform(-1e-3, 1e-3, (20000, 5))
    supports = Supports(x, y, stiffness, sign, gap)
    solution = solve_supports(supports, 800.0, 30.0, -60.0)
    fine = ~solution.overturns
    assert fine[18021]
    assert fine.sum() > 5000
    assert np.isfinite(solution.forces[fine]).all()
    load = np.array([[800.0], [30.0], [-60.0]])
    out = np.abs(resultant(supports, solution.forces) - load)[:, fine].max(axis=0)
    assert (out <= 1e-9 * 800.0 + 1e-14 * solution.forces[fine].max(axis=1)).all()


def test_a_load_on_the_line_of_two_stiff_preloaded_supports():
    """Half and half by statics; the others' share is rounding, and has to be none."""
    stiffness = np.array([1.15478198e10, 1e3, 1e3, 1e3, 1e12, 1e3, 1e11, 1e3])
    gap = np.array([-1e-4, 0.0, 0.0, 0.0, -1e-4, 0.0, -1e-4, -1e-4])
    solution = solve_supports(Supports(*circle(8, 1.0), stiffness, 1.0, gap), 1.0, 0.0, 0.0)
    assert solution.forces == pytest.approx([0.5, 0, 0, 0, 0.5, 0, 0, 0], abs=1e-14)


# Shapes, unknowns, and one at a time against all together.


def test_shapes_broadcast():
    x, y = circle(5, 0.3)
    plain = solve_supports(Supports(x, y, 1e6), 100.0, 5.0, 0.0)
    assert plain.forces.shape == (5,)
    assert np.shape(plain.sink) == np.shape(plain.overturns) == ()
    radii = np.array([0.2, 0.3, 0.4])[:, None]
    varied = Supports(*circle(5, radii), np.full((3, 1, 1), 1e6), 1.0, 0.0)
    cases = solve_supports(varied, np.linspace(100, 400, 4), 5.0, 0.0)
    assert cases.forces.shape == (3, 4, 5)
    assert cases.sink.shape == cases.overturns.shape == (3, 4)
    assert cases.forces[1, 0] == pytest.approx(plain.forces, rel=1e-12)


def varied_batch():
    random = np.random.default_rng(3)
    x, y = circle(10, 0.23 + 0.01 * random.normal(size=(400, 1)))
    x, y = np.concatenate([x, x[..., ::2]], -1), np.concatenate([y, y[..., ::2]], -1)
    stiffness = 10 ** random.uniform(5, 12, (400, 1, 15))
    gap = np.where(np.arange(15) < 10, 0.0, random.uniform(-1e-4, 3e-4, (400, 1, 15)))
    sign = np.where(np.arange(15) < 10, 1.0, -1.0)
    supports = Supports(x, y, stiffness, sign, gap)
    return supports, random.uniform(100, 900, (400, 6)), random.normal(size=(2, 400, 6)) * 60


def test_one_at_a_time_and_batched_agree_to_the_bit():
    supports, force, (moment_x, moment_y) = varied_batch()
    together = solve_supports(supports, force, moment_x, moment_y)
    for sample in range(0, 400, 13):
        own = Supports(*(f if np.ndim(f) < 2 else f[sample].reshape(-1) for f in supports))
        for case in range(6):
            place = (sample, case)
            alone = solve_supports(own, force[place], moment_x[place], moment_y[place])
            for one, many in zip(alone, together, strict=True):
                assert np.array_equal(one, many[place], equal_nan=True)


def test_shared_supports_agree_to_the_bit_too():
    random = np.random.default_rng(4)
    x, y = circle(9, 0.3)
    supports = Supports(x, y, random.uniform(1e5, 1e7, 9), 1.0, random.uniform(0, 1e-4, 9))
    force, reach = random.uniform(10, 900, 3000), random.normal(size=(2, 3000)) * 0.15
    together = solve_supports(supports, force, force * reach[0], force * reach[1])
    for place in range(0, 3000, 97):
        at = force[place] * reach[:, place]
        alone = solve_supports(supports, force[place], *at)
        assert np.array_equal(alone.forces, together.forces[place], equal_nan=True)


@pytest.mark.parametrize("field", ["x", "y", "stiffness", "gap"])
def test_an_unknown_support_makes_only_its_sample_unknown(field):
    x, y = circle(4, np.full(3, 0.2))
    fields = {"x": x, "y": y, "stiffness": np.full((3, 4), 1e6), "gap": np.zeros((3, 4))}
    clean = solve_supports(Supports(sign=1.0, **fields), 100.0, 5.0, 0.0)
    fields[field][1, 2] = np.nan
    solution = solve_supports(Supports(sign=1.0, **fields), 100.0, 5.0, 0.0)
    assert np.isnan(solution.forces[1]).all()
    assert np.isnan(solution.sink[1])
    assert not solution.overturns.any()
    assert np.array_equal(solution.forces[[0, 2]], clean.forces[[0, 2]])


def test_an_unknown_load_makes_only_its_case_unknown():
    solution = solve_supports(Supports(*circle(4, 0.2), 1e6), [100.0, np.nan], [[0.0], [np.nan]], 0)
    assert np.isnan(solution.forces).all(axis=-1).tolist() == [[False, True], [True, True]]


@pytest.mark.parametrize("stiffness", [0.0, -1e6, np.inf])
def test_a_stiffness_that_is_none_gives_no_answer(stiffness):
    solution = solve_supports(
        Supports(*circle(4, 0.2), [1e6, 1e6, 1e6, stiffness]), 100.0, 0.0, 0.0
    )
    assert np.isnan(solution.forces).all()


ERRORS = [
    (lambda: circle(0, 1.0), "a circle of supports has at least one point, not 0"),
    (
        lambda: solve_supports(Supports([0, 1, 2], [0, 1], 1e6), 1, 0, 0),
        "the supports' arrays disagree on their number: [2, 3]",
    ),
    (
        lambda: solve_supports(Supports([0, 1], 0.0, 1e6, [1.0, 0.0]), 1, 0, 0),
        "the sign of a support is +1 (pushes up) or -1 (pushes down)",
    ),
    (
        lambda: solve_supports(Supports([0, 1], 0.0, 1e6), 1, 0, 0, np.eye(3)),
        "the compliance is (3, 3) and has to be (2, 2): one row and one column a support",
    ),
]


@pytest.mark.parametrize(("call", "message"), ERRORS)
def test_error(call, message):
    with pytest.raises(ValueError) as raised:  # noqa: PT011
        call()
    assert str(raised.value) == message


def test_circle():
    x, y = circle(4, 2.0)
    assert x.tolist() == [2.0, 0.0, -2.0, 0.0]
    assert y.tolist() == [0.0, 2.0, 0.0, -2.0]
    x, y = circle(3, [[1.0], [2.0]], start=[[0.0], [np.pi / 6]])
    assert x.shape == (2, 1, 3)
    assert np.hypot(x, y)[:, 0] == pytest.approx(np.array([[1.0] * 3, [2.0] * 3]))
    assert np.degrees(np.arctan2(y[1, 0, 0], x[1, 0, 0])) == pytest.approx(30.0)
