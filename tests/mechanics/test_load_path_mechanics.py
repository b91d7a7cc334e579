"""Forces on their way down, by hand statics: resultants, places, shares, weight."""

from math import cos, hypot, pi, radians, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.mechanics.placing import DIRECTIONS, placed_load
from reviewer.mechanics.resultant import Action, Resultant, of_load, of_weight
from reviewer.mechanics.sharing import Member, member_of_ring, shares_of
from reviewer.mechanics.weight import weight

G = 9.80665  # m/s2, ISO 80000-3:2019, 3-9.2
WHOLE = np.array([False])
number = st.floats(-1e4, 1e4).map(lambda value: round(value, 3))
resultants = st.builds(Resultant, *[number] * 10)


@pytest.mark.parametrize(
    ("mass", "count", "force", "source"),
    [
        (1.0, 1, 9.80665, "ISO 80000-3:2019, 3-9.2: standard acceleration of free fall"),
        (20.0, 5, 100 * 9.80665, "n m g"),
        (0.0, 5, 0.0, "n m g"),
    ],
)
def test_weight(mass: float, count: int, force: float, source: str) -> None:
    assert weight(mass, count) == pytest.approx(force, rel=1e-15)


@given(resultants, resultants, resultants)
def test_resultants_add_in_any_order(a: Resultant, b: Resultant, c: Resultant) -> None:
    assert a.plus(b) == b.plus(a)
    assert a.plus(b).plus(c) == pytest.approx(a.plus(b.plus(c)), rel=1e-12, abs=1e-9)
    assert a.plus(Resultant()) == a


@given(resultants, st.floats(0, 10))
def test_a_factor_multiplies_every_component(a: Resultant, factor: float) -> None:
    assert a.times(factor) == tuple(value * factor for value in a)


@pytest.mark.parametrize(
    ("joint", "force", "about_x", "about_y", "source"),
    [
        ((0.0, 0.0, 0.0), 100, 30 + 40 * 0.5, -20, "about the floor under the axis"),
        ((0.3, 0.0, 0.0), 100, 30 + 40 * 0.5 - 100 * 0.3, -20, "V (x - x0)"),
        ((0.0, -0.2, 0.0), 100, 30 + 40 * 0.5, 0, "V (y - y0)"),
        ((0.0, 0.0, 0.5), 100, 30, -20, "H (h - z): at the height of the push"),
        ((0.0, 0.0, 0.7), 100, 30 - 40 * 0.2, -20, "H (h - z): above the push"),
    ],
)
def test_moments_about_a_joint(joint, force, about_x, about_y, source: str) -> None:
    """100 N at (0.3, -0.2) m, and a push of 40 N along x at 0.5 m above the floor."""
    total = Resultant(100.0, 30.0, -20.0, push_x=40.0, tilt_x=20.0)
    found = total.about(*joint)
    assert (found.force, found.moment_round) == (force, 0.0)
    assert found.moment_x == pytest.approx(about_x, abs=1e-12)
    assert found.moment_y == pytest.approx(about_y, abs=1e-12)


def test_a_joint_of_unknown_level_matters_only_to_a_push() -> None:
    still = Resultant(100.0, 30.0, 0.0).about(0.0, 0.0, np.nan)
    pushed = Resultant(100.0, push_x=40.0, tilt_x=20.0).about(0.0, 0.0, np.nan)
    assert (still.moment_x, still.moment_y) == (30.0, 0.0)
    assert np.isnan(pushed.moment_x)
    assert pushed.moment_y == 0.0


@pytest.mark.parametrize(
    ("x", "y", "fixed_x", "fixed_y", "round_", "source"),
    [
        (0.0, 0.0, 0.0, 0.0, 50.0, "100 N at (0.3, 0.4) m: any direction at 0.5 m"),
        (0.3, 0.4, 30.0, 40.0, 0.0, "on the axis on which it turns, it stays"),
        (0.3, 0.0, 30.0, 0.0, 40.0, "0.4 m from that axis"),
    ],
)
def test_a_joint_that_turns_frees_moments_about_its_own_axis(
    x, y, fixed_x, fixed_y, round_, source: str
) -> None:
    turned = Resultant(100.0, 30.0, 40.0, moment_round=7.0).turned_freely(x, y)
    assert turned.force == 100.0
    assert (turned.moment_x, turned.moment_y) == pytest.approx((fixed_x, fixed_y), abs=1e-12)
    assert turned.moment_round == pytest.approx(7.0 + round_, rel=1e-12)


def test_a_joint_that_turns_frees_level_forces() -> None:
    turned = Resultant(push_x=3.0, push_y=-4.0, push_round=1.0, tilt_x=6.0, tilt_y=8.0)
    assert turned.turned_freely() == Resultant(push_round=6.0, tilt_round=10.0)


@given(resultants)
def test_turning_again_changes_nothing(total: Resultant) -> None:
    once = total.turned_freely(0.1, -0.2)
    assert once.turned_freely(0.1, -0.2) == pytest.approx(once, rel=1e-9, abs=1e-6)


def test_weights_and_loads_are_kept_apart_and_together() -> None:
    weights, loads = of_weight(Resultant(100.0, 20.0)), of_load(Resultant(50.0, -20.0))
    both = weights.plus(loads).turned_freely()
    assert both.weight.moment_round == 20.0
    assert both.loads.moment_round == 20.0
    assert both.total == Resultant(150.0)


@pytest.mark.parametrize(
    ("direction", "expected", "source"),
    [
        ("down", Resultant(80, 80 * (0.1 + 0.25), 80 * (0.2 + 0.433)), "V x, V y"),
        ("up", Resultant(-80, -80 * (0.1 + 0.25), -80 * (0.2 + 0.433)), "-V x, -V y"),
        (
            "outward",
            Resultant(push_x=40, push_y=69.282, tilt_x=40 * 0.7, tilt_y=69.282 * 0.7),
            "H (cos t, sin t), and times its height",
        ),
        (
            "inward",
            Resultant(push_x=-40, push_y=-69.282, tilt_x=-40 * 0.7, tilt_y=-69.282 * 0.7),
            "towards the axis",
        ),
    ],
)
def test_a_load_at_a_place(direction: str, expected: Resultant, source: str) -> None:
    """80 N at 0.5 m and 60 deg from (0.1, 0.2) m, 0.7 m above the floor."""
    found = placed_load(
        *(80.0, WHOLE, DIRECTIONS[direction], 0.1, 0.2),
        radius=0.5,
        azimuth=radians(60),
        level=0.7,
    )
    assert [float(np.ravel(value)[0]) for value in found] == pytest.approx(expected, abs=0.003)


def test_a_load_from_all_round_has_no_direction() -> None:
    down = placed_load(80.0, WHOLE, DIRECTIONS["down"], 0.1, 0.0, radius=0.5, all_round=True)
    assert (down.moment_x, down.moment_y, down.moment_round) == (8.0, 0.0, 40.0)
    up = placed_load(80.0, WHOLE, DIRECTIONS["up"], 0.1, 0.0, radius=0.5, all_round=True)
    assert (up.moment_x, up.moment_y, up.moment_round) == (-8.0, 0.0, 40.0)
    push = placed_load(80.0, WHOLE, DIRECTIONS["inward"], 0.1, 0.0, level=0.7, all_round=True)
    assert (push.push_x, push.push_round, push.tilt_round) == (0.0, 80.0, 80 * 0.7)


def test_half_of_a_load_on_one_half_of_its_area() -> None:
    """Case by case: the whole at its place, half of it at the middle of any half."""
    found = placed_load(
        *(np.array([[80.0, 80.0]]), np.array([[False, True]]), DIRECTIONS["down"], 0.1, 0.0),
        half_radius=0.3,
    )
    np.testing.assert_allclose(found.force, [[80, 40]])
    np.testing.assert_allclose(found.moment_x, [[8, 4]])
    np.testing.assert_allclose(found.moment_round, [[0, 12]])


def test_what_is_not_asked_may_be_unknown() -> None:
    down = placed_load(80.0, WHOLE, DIRECTIONS["down"], 0.1, 0.0, radius=0.5, level=np.nan)
    assert down.moment_x == 48.0
    push = placed_load(80.0, WHOLE, DIRECTIONS["outward"], 0.1, 0.0, radius=np.nan, level=0.7)
    assert push.tilt_x == pytest.approx(56.0)
    assert np.isnan(placed_load(80.0, WHOLE, DIRECTIONS["down"], 0.1, 0.0, radius=np.nan).moment_x)


SECTION_5 = "bearings.md section 5, computed by two independent solvers"


@pytest.mark.parametrize(
    ("count", "ratio", "share", "source"),
    [
        (1, 0.7, 1.0, "one bears all of it"),
        (3, 0.4, 0.6, SECTION_5),
        (4, 0.6, 0.6, SECTION_5),
        (6, 0.7, 0.4277, SECTION_5),
        (6, 0.8, 0.6, SECTION_5),
    ],
)
def test_the_busiest_of_like_supports(count: int, ratio: float, share: float, source: str) -> None:
    total = Resultant(1000.0, moment_round=1000.0 * ratio * 0.25)
    found = member_of_ring(total, count, 0.25)
    assert float(found.force) == pytest.approx(1000 * share, abs=0.05)


@pytest.mark.parametrize(("count", "ratio"), [(2, 0.1), (3, 0.6), (4, 0.8), (6, 0.9)])
def test_a_body_that_tips_off_like_supports(count: int, ratio: float) -> None:
    found = member_of_ring(Resultant(1000.0, moment_round=250.0 * ratio), count, 0.25)
    assert np.isnan(found.force)
    assert np.isnan(found.moment)


def test_members_add_up() -> None:
    assert Member(3.0, 4.0).plus(Member(1.0, -1.0)) == Member(4.0, 3.0)


PLACES_X, PLACES_Y = (0.1, 0.7), (0.2, 1.0)  # 1 m apart


def action(total: Resultant) -> Action:
    return Action(Resultant(), total, total)


@given(st.floats(-2, 3), st.floats(-2, 2), st.floats(1, 1000))
def test_two_carriers_by_the_lever_rule(along: float, across: float, force: float) -> None:
    """W at a along the line and b beside it: W (1 - a) and W a, and W b / 2 across on each."""
    unit_x, unit_y = 0.6, 0.8
    x = PLACES_X[0] + along * unit_x - across * unit_y
    y = PLACES_Y[0] + along * unit_y + across * unit_x
    first, second = (
        each.total
        for each in shares_of(action(Resultant(force, force * x, force * y)), PLACES_X, PLACES_Y)
    )
    scale = {"rel": 1e-9, "abs": 1e-6}
    assert first.force == pytest.approx(force * (1 - along), **scale)
    assert second.force == pytest.approx(force * along, **scale)
    for share, place_x, place_y in zip((first, second), PLACES_X, PLACES_Y, strict=True):
        own = share.about(place_x, place_y, 0.0)
        assert own.moment_x == pytest.approx(-force * across / 2 * unit_y, **scale)
        assert own.moment_y == pytest.approx(force * across / 2 * unit_x, **scale)


@given(resultants)
def test_two_shares_together_are_the_whole(total: Resultant) -> None:
    """All but what comes from all round, of which each gets the most."""
    total = total._replace(moment_round=0.0)
    first, second = shares_of(action(total), PLACES_X, PLACES_Y)
    assert first.total.plus(second.total) == pytest.approx(total, rel=1e-9, abs=1e-6)


@given(st.floats(0.05, 0.9), st.floats(0.05, 0.9), resultants)
def test_three_shares_together_are_the_whole(u: float, v: float, level: Resultant) -> None:
    """A load within the triangle, at barycentric coordinates; level forces in thirds."""
    places_x, places_y = (0.0, 1.0, 0.2), (0.0, 0.1, 0.9)
    inside = 1.0 / (1.0 + u + v)
    weights = (inside, u * inside, v * inside)
    x = sum(part * place for part, place in zip(weights, places_x, strict=True))
    y = sum(part * place for part, place in zip(weights, places_y, strict=True))
    total = level._replace(force=300.0, moment_x=300 * x, moment_y=300 * y, moment_round=0.0)
    shares = [each.total for each in shares_of(action(total), places_x, places_y)]
    assert [float(each.force) for each in shares] == pytest.approx(
        [300 * part for part in weights], rel=1e-6, abs=1e-6
    )
    whole = shares[0].plus(shares[1]).plus(shares[2])
    assert [float(value) for value in whole] == pytest.approx(total, rel=1e-6, abs=1e-5)


def test_unknown_places_make_unknown_shares() -> None:
    for places in ((0.0, np.nan), (0.0, 1.0, np.nan)):
        shares = shares_of(action(Resultant(100.0, 10.0)), places, (0.0, 0.5, 1.0)[: len(places)])
        assert all(np.isnan(each.total.force) for each in shares)


@pytest.mark.parametrize("carriers", [2, 3, 4])
def test_shares_alone_and_in_batches_agree_to_the_bit(carriers: int) -> None:
    random = np.random.default_rng(3)
    x, y = (random.uniform(-1, 1, (carriers, 5, 1)) for _ in range(2))
    forces = random.uniform(10, 500, (3, 5, 4))
    total = Resultant(forces[0], forces[0] * 0.1, forces[0] * -0.1, forces[1] * 0.1, forces[2])
    together = shares_of(action(total), list(x), list(y))
    for sample in range(5):
        one = Resultant(
            *(value[sample : sample + 1] if np.ndim(value) else value for value in total)
        )
        alone = shares_of(
            action(one), list(x[:, sample : sample + 1]), list(y[:, sample : sample + 1])
        )
        for whole, single in zip(together, alone, strict=True):
            for part, value in zip(whole.total, single.total, strict=True):
                np.testing.assert_array_equal(
                    np.broadcast_to(part, (5, 4))[sample],
                    np.ravel(value) if np.size(value) > 1 else np.full(4, value),
                )


def test_the_directions_of_a_load() -> None:
    assert {name: (each.down, each.out) for name, each in DIRECTIONS.items()} == {
        "down": (1, 0), "up": (-1, 0), "outward": (0, 1), "inward": (0, -1),
    }  # fmt: skip


def test_hypot_of_a_full_turn_is_the_radius() -> None:
    """A load at any azimuth has the same size of moment: statics."""
    for azimuth in np.linspace(0, 2 * pi, 7):
        found = placed_load(
            50.0, WHOLE, DIRECTIONS["down"], 0.0, 0.0, radius=0.4, azimuth=float(azimuth)
        )
        assert hypot(float(found.moment_x[0]), float(found.moment_y[0])) == pytest.approx(20.0)
        assert float(found.moment_x[0]) == pytest.approx(20 * cos(azimuth), abs=1e-12)
        assert float(found.moment_y[0]) == pytest.approx(20 * sin(azimuth), abs=1e-12)
