"""What holds for every set of supports, whatever their number, place, gap or stiffness."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.mechanics.supports import (
    Actions,
    Supports,
    circle,
    overturning_line,
    solve_supports,
    stability_ratio,
    worst_direction,
)

COMMON = settings(max_examples=150, deadline=None)
ratios = st.floats(-1.2, 1.2)
gaps = st.sampled_from([0.0, 1e-5, 3e-4, 2e-3, -1e-4, -1e-3])
stiffnesses = st.floats(3.0, 12.0).map(lambda power: 10.0**power)


@st.composite
def rings(draw):
    """A ring of rollers, perhaps with hold-downs; gaps, preloads, any stiffness."""
    count, held = draw(st.integers(3, 12)), draw(st.integers(0, 6))
    radius = draw(st.floats(0.05, 2.0))
    carry = circle(count, radius, draw(st.floats(0, 6)))
    hold = (
        circle(held, radius * draw(st.sampled_from([0.7, 0.95, 1.0, 1.2])))
        if held
        else (np.empty(0), np.empty(0))
    )
    total = count + held
    return Supports(
        np.append(carry[0], hold[0]),
        np.append(carry[1], hold[1]),
        np.array(draw(st.lists(stiffnesses, min_size=total, max_size=total))),
        np.repeat([1.0, -1.0], [count, held]),
        np.array(draw(st.lists(gaps, min_size=total, max_size=total))),
    ), radius


@st.composite
def loaded_rings(draw):
    supports, radius = draw(rings())
    force = draw(st.floats(1.0, 5000.0))
    return supports, (force, force * radius * draw(ratios), force * radius * draw(ratios))


@COMMON
@given(loaded_rings())
def test_equilibrium(case):
    supports, load = case
    solution = solve_supports(supports, *load)
    if solution.overturns:
        assert np.isnan(solution.forces).all()
        return
    forces = solution.forces
    assert (forces >= 0).all()
    acting = supports.sign * forces
    reach = np.abs(supports.x).max()
    out = [
        acting.sum() - load[0],
        ((acting * supports.x).sum() - load[1]) / reach,
        ((acting * supports.y).sum() - load[2]) / reach,
    ]
    size = np.abs(load[0]) + (abs(load[1]) + abs(load[2])) / reach
    # A preload of a stiff spring is far above the load: equilibrium is then to its last digits.
    assert np.abs(out).max() <= 1e-9 * size + 1e-14 * forces.max()


@COMMON
@given(loaded_rings())
def test_springs_push_as_they_are_pressed(case):
    supports, load = case
    solution = solve_supports(supports, *load)
    if solution.overturns:
        return
    way = solution.sink + solution.slope_x * supports.x + solution.slope_y * supports.y
    pressed = supports.sign * way - supports.gap
    moved = np.abs(solution.sink) + np.abs(solution.slope_x) + np.abs(solution.slope_y)
    hair = 1e-6 * (np.abs(pressed).max() + np.abs(supports.gap).max() + moved)
    given_way = solution.forces / supports.stiffness
    assert (np.abs(np.maximum(pressed, 0.0) - given_way) <= hair).all()


@COMMON
@given(loaded_rings(), st.integers(-8, 8), st.integers(-8, 8))
def test_scaling(case, force_power, length_power):
    """Loads and stiffnesses in another unit of force, lengths in another unit of length."""
    supports, load = case
    force, length = 2.0**force_power, 2.0**length_power
    scaled = Supports(
        supports.x * length,
        supports.y * length,
        supports.stiffness * force / length,
        supports.sign,
        supports.gap * length,
    )
    here = solve_supports(supports, *load)
    there = solve_supports(scaled, load[0] * force, *(m * force * length for m in load[1:]))
    assert here.overturns == there.overturns
    # By powers of two: nothing is rounded otherwise, so that the answer is the same to the bit.
    assert np.array_equal(here.forces * force, there.forces, equal_nan=True)


@COMMON
@given(loaded_rings(), st.randoms(use_true_random=False))
def test_the_order_of_supports_does_not_matter(case, random):
    supports, load = case
    order = list(range(len(supports.x)))
    random.shuffle(order)
    shuffled = Supports(*(field[order] for field in supports))
    here, there = solve_supports(supports, *load), solve_supports(shuffled, *load)
    assert here.overturns == there.overturns
    if here.overturns or np.ptp(np.log10(supports.stiffness)) > 4:
        return  # stiffnesses far apart leave only some digits to the softer ones
    hair = 1e-6 * (sum(np.abs(load)) + here.forces.max())
    assert np.allclose(here.forces[order], there.forces, rtol=0, atol=hair)


@COMMON
@given(loaded_rings(), st.sampled_from(["x", "y", "stiffness", "gap"]), st.integers(0, 2))
def test_unknown_in_unknown_out_for_that_sample_only(case, field, sample):
    supports, load = case
    three = {name: np.tile(part, (3, 1)) for name, part in supports._asdict().items()}
    clean = solve_supports(Supports(**three), *load)
    three[field][sample, -1] = np.nan
    solution = solve_supports(Supports(**three), *load)
    for place in range(3):
        if place == sample:
            assert np.isnan(solution.forces[place]).all()
            assert not solution.overturns[place]
        else:
            assert np.array_equal(solution.forces[place], clean.forces[place], equal_nan=True)
            assert solution.overturns[place] == clean.overturns[place]


@COMMON
@given(loaded_rings())
def test_overturning_line_and_verdict_agree(case):
    supports, load = case
    line, over = overturning_line(supports, *load), solve_supports(supports, *load).overturns
    if over:
        assert line.margin < 0
    else:
        assert line.margin >= -1e-9 * sum(np.abs(load))


@COMMON
@given(loaded_rings(), st.floats(0.0, 3.0))
def test_stability_and_verdict_agree(case, share):
    """The ratio passes one just where the body turns over."""
    supports, load = case
    own, moment = Actions(load[0]), share * load[0] * np.abs(supports.x).max()
    ratio = stability_ratio(supports, own, Actions(0.0, load[1], load[2], moment))
    line = overturning_line(supports, *load, moment)
    if abs(line.margin) < 1e-9 * load[0]:
        return
    assert (ratio.moment > ratio.restoring_moment) == (line.margin < 0)
    assert worst_direction(supports, *load, moment).overturns == (line.margin < 0)


@settings(max_examples=60, deadline=None)
@given(rings(), st.floats(0.0, 1.5), st.lists(st.floats(5.0, 8.0), min_size=18, max_size=18))
def test_no_direction_is_worse_than_the_worst(case, ratio, powers):
    supports, radius = case
    supports = supports._replace(stiffness=10.0 ** np.array(powers[: len(supports.x)]))
    load, moment = 800.0, 800.0 * radius * ratio
    worst = worst_direction(supports, load, 0.03 * moment, 0.0, moment)
    angle = np.linspace(0, 2 * np.pi, 361)
    every = solve_supports(supports, load, (0.03 + np.cos(angle)) * moment, np.sin(angle) * moment)
    if worst.overturns:
        return
    assert not every.overturns.any()
    hair = 1e-9 * every.forces.max()
    assert worst.peak[0] >= every.forces.max() - hair
    assert worst.least[0] <= every.forces.min() + hair
