"""A body that bends between its supports: continuous beams from handbooks, and scipy."""

import numpy as np
import pytest
from scipy.optimize import minimize

from reviewer.mechanics.supports import Supports, circle, solve_supports, worst_direction

SPAN, STIFF = 1.0, 1e13
MODULUS = 2.0e4  # E I of the beam [N m^2]


def sag_of_simple_beam(at, load_at, length):
    """Sag at one point of a simply supported beam under a unit load at another:
    P b x (L^2 - b^2 - x^2) / (6 E I L), common to handbooks (from memory: Roark, beam tables)."""
    x, a = np.minimum(at, load_at), np.maximum(at, load_at)
    b = length - a
    return b * x * (length**2 - b**2 - x**2) / (6 * MODULUS * length)


def beam(positions, sign=1.0, stiffness=STIFF, gap=0.0):
    """Supports along a beam, and its compliance as a beam on the first and the last of them."""
    at = np.asarray(positions, float)
    compliance = sag_of_simple_beam(at[:, None], at[None, :], at[-1])
    return Supports(at, np.zeros_like(at), stiffness, sign, gap), compliance


def test_two_equal_spans_under_a_uniform_load():
    """3/8, 10/8, 3/8 of w l: the common handbook table of continuous beams (from memory: Roark;
    Manual of Steel Construction, beam diagrams)."""
    supports, compliance = beam([0.0, SPAN, 2 * SPAN])
    w, length = 100.0, 2 * SPAN
    sag = np.array([0.0, 5 * w * length**4 / (384 * MODULUS), 0.0])
    solution = solve_supports(supports, w * length, w * length * SPAN, 0.0, compliance, sag)
    assert solution.forces / (w * SPAN) == pytest.approx([3 / 8, 10 / 8, 3 / 8], rel=1e-6)


def test_three_equal_spans_under_a_uniform_load():
    """0.4, 1.1, 1.1, 0.4 of w l: as above (from memory)."""
    supports, compliance = beam([0.0, SPAN, 2 * SPAN, 3 * SPAN])
    w, length = 100.0, 3 * SPAN
    x = np.asarray(supports.x)
    sag = w * x * (length**3 - 2 * length * x**2 + x**3) / (24 * MODULUS)
    solution = solve_supports(supports, w * length, w * length**2 / 2, 0.0, compliance, sag)
    assert solution.forces / (w * SPAN) == pytest.approx([0.4, 1.1, 1.1, 0.4], rel=1e-6)


@pytest.mark.parametrize(
    ("far_end", "shares"),
    [
        # 13/32, 22/32 and -3/32 P with the load in the middle of one of two equal spans: as above
        # (from memory). The far end lifts; a hold-down there takes the 3/32.
        ("held down", [13 / 32, 22 / 32, 0.0, 3 / 32]),
        # Not held, it lifts off, and the loaded span is a simple beam.
        ("free", [1 / 2, 1 / 2, 0.0]),
    ],
)
def test_a_load_on_one_of_two_spans(far_end, shares):
    at = [0.0, SPAN, 2 * SPAN]
    supports, compliance = beam(at)
    if far_end == "held down":
        supports = Supports([*at, at[-1]], [0.0] * 4, STIFF, [1.0, 1.0, 1.0, -1.0])
        compliance = np.pad(compliance, (0, 1))
    load = 64.0
    sag = load * sag_of_simple_beam(np.asarray(supports.x), SPAN / 2, 2 * SPAN)
    solution = solve_supports(supports, load, load * SPAN / 2, 0.0, compliance, sag)
    assert solution.forces / load == pytest.approx(shares, abs=1e-6)


def test_a_sunken_middle_support():
    """With the middle support lower by its whole free sag it does not touch: a simple beam."""
    w, length = 100.0, 2 * SPAN
    sag = 5 * w * length**4 / (384 * MODULUS)
    for gap, middle in ((sag * 1.001, 0.0), (sag / 2, 10 / 16)):
        supports, compliance = beam([0.0, SPAN, length], gap=np.array([0.0, gap, 0.0]))
        solution = solve_supports(
            supports, w * length, w * length * SPAN, 0.0, compliance, [0.0, sag, 0.0]
        )
        assert solution.forces[1] / (w * SPAN) == pytest.approx(middle, abs=1e-6)


def random_case(random):
    count = int(random.integers(4, 9))
    x, y = random.normal(size=(2, count)) * 0.3
    sign = random.choice([1.0, 1.0, -1.0], count)
    gap = random.choice([0.0, 1e-4, 5e-4, -2e-4], count)
    supports = Supports(x, y, 10 ** random.uniform(5, 7, count), sign, gap)
    half = random.normal(size=(count, count - 2)) * 10 ** random.uniform(-4, -3)
    load = random.uniform(50, 2000)
    at = random.normal(size=2) * 0.1
    sag = random.normal(size=count) * 3e-4
    return supports, np.array([load, *(load * at)]), half @ half.T, sag


def minimised(supports, load, compliance, sag):
    """Forces that minimise the complementary energy, by scipy's SLSQP: they balance the load, none
    pulls, and sum f^2 / 2k + f C f / 2 + gap . f - sag . f is least."""
    x, y, stiffness, sign, gap = (np.broadcast_to(f, np.shape(supports.x)) for f in supports)
    action = np.array([sign, sign * x, sign * y])
    flexibility = np.diag(1 / stiffness) + compliance * np.outer(sign, sign)
    way = gap - sign * sag
    unit = np.abs(load).sum()
    scale = np.abs(flexibility).max() * unit

    found = minimize(
        lambda f: (0.5 * f @ flexibility @ f * unit + way @ f) / scale,
        np.full(len(x), 0.5),
        jac=lambda f: (flexibility @ f * unit + way) / scale,
        method="SLSQP",
        bounds=[(0.0, None)] * len(x),
        constraints={
            "type": "eq",
            "fun": lambda f: action @ f - load / unit,
            "jac": lambda f: action,
        },
        options={"ftol": 1e-15, "maxiter": 2000},
    )
    return found.x * unit, found.success


def test_against_scipy():
    """SLSQP stops within some 1e-7 of the load; the answer found here is never the worse one."""
    random = np.random.default_rng(31)
    compared = 0
    for _ in range(120):
        supports, load, compliance, sag = random_case(random)
        solution = solve_supports(supports, *load, compliance, sag)
        if solution.overturns:
            continue
        forces, success = minimised(supports, load, compliance, sag)
        if success:
            scale = max(np.abs(load).sum(), forces.max())
            assert solution.forces == pytest.approx(forces, abs=1e-5 * scale)
            compared += 1
    assert compared > 40


def test_contact_and_equilibrium_hold_exactly():
    """f = k max(0, s w - gap) with w of the flexible body, and the load is carried."""
    random = np.random.default_rng(32)
    checked = 0
    for _ in range(200):
        supports, load, compliance, sag = random_case(random)
        solution = solve_supports(supports, *load, compliance, sag)
        if solution.overturns:
            continue
        x, y, stiffness, sign, gap = supports
        acting = sign * solution.forces
        sink = solution.sink + solution.slope_x * x + solution.slope_y * y
        sink = sink + sag - compliance @ acting
        expected = stiffness * np.maximum(sign * sink - gap, 0.0)
        scale = np.abs(load).sum() + expected.max()
        assert solution.forces == pytest.approx(expected, abs=1e-9 * scale)
        held = [acting.sum(), (acting * x).sum(), (acting * y).sum()]
        assert held == pytest.approx(load, abs=1e-12 * scale)
        checked += 1
    assert checked > 80


def test_no_compliance_is_a_stiff_body():
    random = np.random.default_rng(33)
    for _ in range(60):
        supports, load, compliance, _ = random_case(random)
        stiff = solve_supports(supports, *load)
        flexible = solve_supports(supports, *load, 0.0 * compliance)
        assert stiff.overturns == flexible.overturns
        scale = np.abs(load).sum()
        assert flexible.forces == pytest.approx(stiff.forces, abs=1e-9 * scale, nan_ok=True)
        assert flexible.sink == pytest.approx(stiff.sink, rel=1e-7, nan_ok=True)


def test_one_at_a_time_and_batched_agree_to_the_bit():
    random = np.random.default_rng(34)
    x, y = circle(8, 0.25)
    half = random.normal(size=(30, 1, 8, 5)) * 3e-4
    compliance = np.einsum("...ij,...kj->...ik", half, half)
    supports = Supports(
        x, y, 10 ** random.uniform(5, 8, (30, 1, 8)), [1, 1, 1, 1, 1, 1, -1, -1], 0.0
    )
    force, moment = random.uniform(100, 900, (30, 4)), random.normal(size=(2, 30, 4)) * 20
    sag = random.normal(size=(30, 4, 8)) * 1e-4
    together = solve_supports(supports, force, *moment, compliance, sag)
    for sample in range(0, 30, 4):
        own = supports._replace(stiffness=supports.stiffness[sample, 0])
        for case in range(4):
            at = (sample, case)
            load = (force[at], *moment[(slice(None), *at)])
            alone = solve_supports(own, *load, compliance[sample, 0], sag[at])
            for one, many in zip(alone, together, strict=True):
                assert np.array_equal(one, many[at], equal_nan=True)


def test_an_unknown_compliance_or_sag_makes_only_its_item_unknown():
    x, y = circle(4, 0.2)
    compliance = np.zeros((3, 1, 4, 4))
    compliance[1, 0, 2, 2] = np.nan
    sag = np.zeros((3, 2, 4))
    sag[2, 1, 0] = np.nan
    solution = solve_supports(Supports(x, y, 1e6), 100.0, 5.0, 0.0, compliance, sag)
    unknown = np.isnan(solution.forces).all(axis=-1)
    assert unknown.tolist() == [[False, False], [True, True], [False, True]]


def test_two_supports_almost_at_one_point():
    """On the way the body is tried on those two alone: more than sixteen digits can invert."""
    at = np.array([0.0, 5e-9, 0.4, -0.3, 0.1])
    supports = Supports(at, [0.0, 2e-9, 0.1, 0.2, -0.4], 1e12, 1.0, [0.0, 0.0, 1e-3, 1e-3, 1e-3])
    half = np.random.default_rng(8).normal(size=(5, 2)) * 1e-3
    for x in np.linspace(-0.01, 0.2, 22):
        solution = solve_supports(supports, 500.0, 500.0 * x, 0.0, half @ half.T)
        assert solution.forces.sum() == pytest.approx(500.0, rel=1e-9)
        assert (solution.forces * at).sum() == pytest.approx(500.0 * x, abs=1e-9 * 500)


# The worst direction of a flexible body


def disc(count=6, radius=0.25):
    """Supports under a ring-like body, and a compliance that only depends on the angle between."""
    x, y = circle(count, radius)
    apart = 2 * np.pi * (np.arange(count)[:, None] - np.arange(count)) / count
    compliance = 2e-7 * (1 + np.cos(2 * apart)) + 1e-7 * (1 + np.cos(3 * apart))
    return Supports(x, y, 3e6), compliance


def test_worst_direction_with_compliance_and_a_sag_that_turns():
    supports, compliance = disc()
    azimuth = np.arctan2(supports.y, supports.x)

    def sag(cosine, sine, item):
        around = np.arctan2(sine, cosine)[:, None] - azimuth
        return 5e-5 * np.cos(2 * around) + 2e-5 * np.cos(3 * around) + 0.0 * item[:, None]

    result = worst_direction(
        supports,
        800.0,
        4.0,
        0.0,
        70.0,
        compliance=compliance,
        free_sag=sag,
        groups=([0], [1, 2, 3]),
    )
    angle = np.linspace(0, 2 * np.pi, 20001)
    every = solve_supports(
        supports,
        800.0,
        4.0 + 70.0 * np.cos(angle),
        70.0 * np.sin(angle),
        compliance,
        sag(np.cos(angle), np.sin(angle), np.zeros(20001, int)),
    )
    tilt = np.hypot(every.slope_x, every.slope_y)
    for value, sampled in (
        (result.peak[0], every.forces[:, 0].max()),
        (result.peak[1], every.forces[:, 1:4].max()),
        (-result.least[1], -every.forces[:, 1:4].min()),
        (result.sink, every.sink.max()),
        (result.tilt, tilt.max()),
    ):
        assert value == pytest.approx(sampled, rel=1e-7)
        assert value >= sampled - 1e-12 * abs(sampled)


def test_worst_direction_of_a_sag_that_stays():
    """A sag that does not turn is the same as gaps that differ."""
    supports, compliance = disc()
    sag = np.array([1e-4, -5e-5, 0.0, 3e-5, -1e-4, 2e-5])
    with_sag = worst_direction(supports, 800.0, 4, 0, 70.0, compliance=compliance, free_sag=sag)
    gapped = supports._replace(gap=-sag)
    with_gap = worst_direction(gapped, 800.0, 4, 0, 70.0, compliance=compliance)
    for one, other in zip(with_sag, with_gap, strict=True):
        assert np.array_equal(one, other, equal_nan=True)


def on_a_line(seed):
    """Random supports under a flexible body, loaded between two of them: all others stand lower."""
    random = np.random.default_rng(seed)
    count = int(random.integers(2, 9))
    x, y = random.normal(size=(2, count)) * 0.3
    one, other = random.choice(count, 2, replace=False)
    share = random.uniform(0.1, 0.9)
    half = random.normal(size=(count, max(count - 2, 1))) * 10 ** random.uniform(-6, -3)
    gap = np.full(count, 0.05)
    gap[[one, other]] = 0.0
    supports = Supports(x, y, 10 ** random.uniform(4, 8), 1.0, gap)
    place = share * np.array([x[one], y[one]]) + (1 - share) * np.array([x[other], y[other]])
    return supports, half @ half.T, place, {one: share, other: 1 - share}


@pytest.mark.parametrize("seed", range(40))
def test_two_supports_in_line_with_the_load_carry_all_of_it(seed):
    """The lever rule, whatever the body's compliance; and no other support is pressed in."""
    supports, compliance, place, shares = on_a_line(seed)
    load = 500.0
    solution = solve_supports(supports, load, *(load * place), compliance)
    wanted = np.zeros(len(supports.x))
    for support, share in shares.items():
        wanted[support] = load * share
    assert not solution.overturns
    assert solution.forces == pytest.approx(wanted, rel=1e-9, abs=1e-9 * load)
    sink = solution.sink + solution.slope_x * supports.x + solution.slope_y * supports.y
    way = sink - compliance @ solution.forces - supports.gap
    if np.isfinite(sink).all():  # else the others' lever is too short for sixteen digits
        assert (way[wanted == 0] <= 1e-5).all()
        pressed = way[wanted > 0]
        assert pressed == pytest.approx(wanted[wanted > 0] / supports.stiffness, abs=1e-5)
