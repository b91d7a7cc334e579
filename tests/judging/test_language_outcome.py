"""Requirements: demand, capacity and utilisation, and which comparison governs."""

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from reviewer.judging.compiled import Outcome, judge
from reviewer.judging.kinds import TEXT, TRUTH, Collection, Names
from reviewer.judging.language import parse
from reviewer.notation.dimension import FORCE, LENGTH, NUMBER

NAN = math.nan
NAMES = Names(
    {
        "a": NUMBER,
        "b": NUMBER,
        "gap": LENGTH,
        "load": FORCE,
        "material": TEXT,
        "rigid": TRUTH,
        "arms.x": Collection(NUMBER, "arms"),
        "arms.wood": Collection(TEXT, "arms"),
    }
)


def outcome(text: str, **environment: Any) -> Outcome:
    names = {key.replace("arms_", "arms."): each for key, each in environment.items()}
    return judge(parse(text), NAMES).judge(names.get)


@pytest.mark.parametrize(
    ("text", "a", "b", "holds", "demand", "capacity", "used"),
    [
        # EN 1990:2002, 6.4.2: the design effect over the design resistance
        ("a <= b", 3.0, 4.0, True, 3.0, 4.0, 0.75),
        ("a <= b", 5.0, 4.0, False, 5.0, 4.0, 1.25),
        ("a < b", 3.0, 4.0, True, 3.0, 4.0, 0.75),
        # of what must be large enough, the limit is asked
        ("a >= b", 8.0, 2.0, True, 2.0, 8.0, 0.25),
        ("a >= b", 2.0, 8.0, False, 8.0, 2.0, 4.0),
        ("a > b", 8.0, 2.0, True, 2.0, 8.0, 0.25),
        # at the limit
        ("a <= b", 4.0, 4.0, True, 4.0, 4.0, 1.0),
        ("a >= b", 4.0, 4.0, True, 4.0, 4.0, 1.0),
        ("a < b", 4.0, 4.0, False, 4.0, 4.0, NAN),
        ("a > b", 4.0, 4.0, False, 4.0, 4.0, NAN),
        ("a <= b", 0.1 + 0.2, 0.3, True, 0.1 + 0.2, 0.3, 1.0),
        ("a < b", 0.3, 0.1 + 0.2, False, 0.3, 0.1 + 0.2, NAN),
        # nothing is asked
        ("a <= b", 0.0, 4.0, True, 0.0, 4.0, 0.0),
        ("a <= b", -3.0, 4.0, True, -3.0, 4.0, 0.0),
        ("a <= b", -3.0, 0.0, True, -3.0, 0.0, 0.0),
        ("a <= b", 0.0, 0.0, True, 0.0, 0.0, 0.0),
        ("a >= b", 4.0, 0.0, True, 0.0, 4.0, 0.0),
        ("a > b", 4.0, 0.0, True, 0.0, 4.0, 0.0),
        ("a >= b", 4.0, -1.0, True, -1.0, 4.0, 0.0),
        # nothing is there
        ("a <= b", 3.0, 0.0, False, 3.0, 0.0, NAN),
        ("a <= b", 1e-12, 0.0, False, 1e-12, 0.0, NAN),
        ("a <= b", 3.0, -4.0, False, 3.0, -4.0, NAN),
        ("a <= b", 0.0, -4.0, False, 0.0, -4.0, NAN),
        ("a < b", 0.0, 0.0, False, 0.0, 0.0, NAN),
        ("a > b", 0.0, 0.0, False, 0.0, 0.0, NAN),
        ("a >= b", -1e-12, 0.0, False, 0.0, -1e-12, NAN),
        # below zero the further one is the safer one: a camber of -4 mm, at most -3 mm
        ("a <= b", -4.0, -3.0, True, -4.0, -3.0, 0.75),
        ("a <= b", -3.0, -4.0, False, -3.0, -4.0, 4 / 3),
        ("a >= b", -3.0, -4.0, True, -4.0, -3.0, 0.75),
        # equality has no number
        ("a == b", 4.0, 4.0, True, 4.0, 4.0, NAN),
        ("a == b", 4.0, 5.0, False, 4.0, 5.0, NAN),
        ("a != b", 4.0, 5.0, True, 4.0, 5.0, NAN),
        # without end
        ("a <= b", 3.0, math.inf, True, 3.0, math.inf, 0.0),
        ("a <= b", math.inf, 3.0, False, math.inf, 3.0, NAN),
    ],
)
@pytest.mark.parametrize("shape", [None, (2, 3)])
def test_one_comparison(
    shape: tuple[int, ...] | None,
    text: str,
    a: float,
    b: float,
    holds: bool,
    demand: float,
    capacity: float,
    used: float,
) -> None:
    """As floats and as arrays alike."""
    values = {"a": a, "b": b} if shape is None else {"a": np.full(shape, a), "b": np.full(shape, b)}
    found = outcome(text, **values)
    assert np.all(found.known)
    assert np.all(np.equal(found.holds, holds))
    assert np.all(np.equal(found.demand, demand))
    assert np.all(np.equal(found.capacity, capacity))
    assert np.unique(found.utilisation) == pytest.approx([used], rel=1e-12, nan_ok=True)


sizes = st.floats(-1e9, 1e9).filter(lambda size: size == 0 or abs(size) > 1e-9)


@settings(max_examples=500, deadline=None)
@given(sizes, sizes, st.sampled_from(["<=", "<", ">=", ">"]))
def test_utilisation_is_at_most_one_exactly_when_it_holds(a: float, b: float, sign: str) -> None:
    found = outcome(f"a {sign} b", a=a, b=b)
    python = {"<=": a <= b, "<": a < b, ">=": a >= b, ">": a > b}[sign]
    if not math.isclose(a, b, rel_tol=2e-9):
        assert found.holds == python
    if found.holds:
        assert found.utilisation <= 1 + 2e-9
    else:
        assert math.isnan(found.utilisation) or found.utilisation > 1
    assert math.isnan(found.utilisation) or found.utilisation >= 0


@settings(max_examples=200, deadline=None)
@given(sizes, sizes)
def test_a_strict_comparison_holds_where_the_opposite_fails(a: float, b: float) -> None:
    assert outcome("a < b", a=a, b=b).holds is not outcome("a >= b", a=a, b=b).holds
    assert outcome("a > b", a=a, b=b).holds is not outcome("a <= b", a=a, b=b).holds


@settings(max_examples=200, deadline=None)
@given(st.floats(1e-3, 1e6), st.floats(1e-3, 1e6), st.floats(1.001, 100))
def test_more_demand_is_more_utilisation(a: float, b: float, factor: float) -> None:
    assume(a * factor < 1e9)
    less, more = outcome("a <= b", a=a, b=b), outcome("a <= b", a=a * factor, b=b)
    assert more.utilisation > less.utilisation
    assert outcome("b >= a", a=a * factor, b=b).utilisation == more.utilisation


RULES = [
    *(
        "a <= b",
        "a > b",
        "a < 0",
        "0 <= a",
        "a > 0",
        "0 < a <= b",
        "1 <= a <= b",
        "-2 < a < 2",
        "a == b",
    ),
    *("a <= b and a >= -1", "a <= b or b < 0", "a <= b and (b > 1 or a > 1)"),
]


@settings(max_examples=200, deadline=None)
@given(
    st.sampled_from(RULES),
    st.lists(st.tuples(*[st.sampled_from([-3.0, -1.0, 0.0, 0.5, 2.0, 7.0, NAN])] * 2), min_size=1),
)
def test_one_at_a_time_and_batched_agree(text: str, pairs: list[tuple[float, float]]) -> None:
    batch = outcome(text, a=np.array([a for a, _ in pairs]), b=np.array([b for _, b in pairs]))
    columns = [np.broadcast_to(field, (len(pairs),)) for field in batch]
    for row, (a, b) in enumerate(pairs):
        alone = outcome(text, a=a, b=b)
        for column, field in zip(columns, alone, strict=True):
            assert column[row] == field or (np.isnan(column[row]) and np.isnan(field))


# --- ranges, and, or: which governs


@pytest.mark.parametrize(
    ("gap", "holds", "used", "which"),
    [
        (0.006, True, 5 / 6, 0),
        (0.0075, True, 7.5 / 8, 1),
        (0.004, False, 5 / 4, 0),
        (0.010, False, 10 / 8, 1),
        (0.0, False, NAN, 0),
        (NAN, False, NAN, 0),
    ],
)
def test_a_range_is_governed_by_its_nearer_end(
    gap: float, holds: bool, used: float, which: int
) -> None:
    found = outcome("5 mm <= gap <= 8 mm", gap=gap)
    assert (found.holds, found.which) == (holds, which)
    assert found.utilisation == pytest.approx(used, nan_ok=True)
    assert found.known is not math.isnan(gap)


def test_a_range_around_zero_is_governed_on_each_side() -> None:
    used = [outcome("-2 <= a <= 2", a=a).utilisation for a in (-3.0, -2.0, -1.0, 0.0, 1.0, 3.0)]
    assert used == pytest.approx([1.5, 1.0, 0.5, 0.0, 0.5, 1.5])


@pytest.mark.parametrize(
    ("text", "a", "b", "holds", "known", "used", "which"),
    [
        # and: the failing one, else the unknown one, else the one used most
        ("a <= 4 and b <= 4", 3.0, 2.0, True, True, 0.75, 0),
        ("a <= 4 and b <= 4", 2.0, 3.0, True, True, 0.75, 1),
        ("a <= 4 and b <= 4", 3.0, 3.0, True, True, 0.75, 0),
        ("a <= 4 and b <= 4", 5.0, 6.0, False, True, 1.5, 1),
        ("a <= 4 and b <= 4", 5.0, NAN, False, True, 1.25, 0),
        ("a <= 4 and b <= 4", NAN, 5.0, False, True, 1.25, 1),
        ("a <= 4 and b <= 4", 3.0, NAN, False, False, NAN, 1),
        ("a <= 4 and b <= 0", 3.0, 1.0, False, True, NAN, 1),
        ("a <= 4 and b <= 0", 5.0, 1.0, False, True, 1.25, 0),
        ("a == 4 and b <= 4", 4.0, 1.0, True, True, 0.25, 1),
        # or: the one that holds, else the unknown one, else the one used least
        ("a <= 4 or b <= 4", 3.0, 2.0, True, True, 0.5, 1),
        ("a <= 4 or b <= 4", 5.0, 2.0, True, True, 0.5, 1),
        ("a <= 4 or b <= 4", 3.0, 9.0, True, True, 0.75, 0),
        ("a <= 4 or b <= 4", 5.0, 6.0, False, True, 1.25, 0),
        ("a <= 4 or b <= 4", 3.0, NAN, True, True, 0.75, 0),
        ("a <= 4 or b <= 4", NAN, 3.0, True, True, 0.75, 1),
        ("a <= 4 or b <= 4", 5.0, NAN, False, False, NAN, 1),
        ("a <= 4 or b == 4", 5.0, 4.0, True, True, NAN, 1),
        ("a == 4 or b <= 4", 4.0, 2.0, True, True, 0.5, 1),
        # three of them, and one within another
        ("a <= 4 and b <= 4 and a <= 3.5", 3.0, 2.0, True, True, 3 / 3.5, 2),
        ("a <= 4 and (b <= 4 or b >= 8)", 1.0, 9.0, True, True, 8 / 9, 2),
    ],
)
def test_what_governs(
    text: str, a: float, b: float, holds: bool, known: bool, used: float, which: int
) -> None:
    found = outcome(text, a=a, b=b)
    assert (found.holds, found.known, found.which) == (holds, known, which)
    assert found.utilisation == pytest.approx(used, nan_ok=True)
    term = judge(parse(text), NAMES).terms[which]
    assert term.demand is not None


def test_a_tie_goes_to_the_first() -> None:
    found = outcome("a <= 3 and b <= 0.3", a=1.0, b=0.1 * (1 + 1e-12))
    assert found.which == 0


def test_each_case_has_its_own_governing_comparison() -> None:
    found = outcome(
        "a <= 4 and b <= 8", a=np.array([[1.0, 3.0, 5.0]]), b=np.array([[6.0, 2.0, NAN]])
    )
    assert found.which.tolist() == [[1, 0, 0]]
    assert found.utilisation.tolist() == [[0.75, 0.75, 1.25]]
    assert found.demand.tolist() == [[6.0, 3.0, 5.0]]
    assert found.capacity.tolist() == [[8.0, 4.0, 4.0]]
    assert found.holds.tolist() == [[True, True, False]]
    assert found.known.tolist() == [[True, True, True]]


@pytest.mark.parametrize(
    ("text", "environment", "holds", "known"),
    [
        ("material == 'beech'", {"material": "beech"}, True, True),
        ("material in ['ash', 'beech']", {"material": "fir"}, False, True),
        ("material != 'fir'", {"material": None}, False, False),
        ("rigid", {"rigid": True}, True, True),
        ("rigid", {"rigid": None}, False, False),
        ("given(load)", {"load": 3.0}, True, True),
        ("not given(load)", {"load": 3.0}, False, True),
    ],
)
def test_what_is_no_number_has_no_utilisation(
    text: str, environment: dict[str, Any], holds: bool, known: bool
) -> None:
    found = outcome(text, **environment)
    assert (bool(found.holds), bool(found.known)) == (holds, known)
    assert all(math.isnan(field) for field in (found.demand, found.capacity, found.utilisation))


# --- every: the members together


@pytest.mark.parametrize(
    ("x", "holds", "known", "used", "capacity"),
    [
        ([20.0, 16.0, 30.0], True, True, 15 / 16, 16.0),
        ([20.0, 12.0, 10.0], False, True, 15 / 10, 10.0),
        ([20.0, None, 10.0], False, True, 15 / 10, 10.0),
        ([20.0, None, 30.0], False, False, NAN, NAN),
        ([20.0, 20.0], True, True, 0.75, 20.0),
        ([], True, True, NAN, NAN),
    ],
)
def test_every_member(
    x: list[float | None], holds: bool, known: bool, used: float, capacity: float
) -> None:
    found = outcome("every arms.x >= 15", arms_x=x)
    assert (bool(found.holds), bool(found.known)) == (holds, known)
    assert float(found.utilisation) == pytest.approx(used, nan_ok=True)
    assert float(found.capacity) == pytest.approx(capacity, nan_ok=True)


def test_of_members_used_alike_the_first_governs() -> None:
    assert outcome("every arms.x >= 15", arms_x=[30.0, 20.0, 20.0 * (1 - 1e-12)]).capacity == 20.0


def test_every_member_in_each_case() -> None:
    x = np.array([[[20.0, 9.0]], [[16.0, 30.0]]])  # two members, one sample, two cases
    found = outcome("every arms.x >= 15 and a <= 4", arms_x=x, a=np.array([[3.9, 1.0]]))
    assert found.holds.tolist() == [[True, False]]
    assert found.utilisation == pytest.approx(np.array([[3.9 / 4, 15 / 9]]))
    assert found.which.tolist() == [[1, 0]]


def test_every_member_of_a_choice_and_a_number() -> None:
    x = np.array([[[10.0, 20.0]], [[5.0, 30.0]]])
    found = outcome(
        "every (arms.wood == 'ash' or arms.x >= 15)", arms_wood=["ash", "oak"], arms_x=x
    )
    assert found.holds.tolist() == [[False, True]]
    assert found.utilisation == pytest.approx(np.array([[3.0, 0.75]]))


def test_the_largest_of_a_collection_is_compared_once() -> None:
    found = outcome("largest of arms.x <= 40", arms_x=np.array([[10.0], [30.0]]))
    assert found.utilisation == pytest.approx([0.75])
