"""What expressions come to: against Python's own arithmetic, numpy, and Kleene's tables."""

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.judging.compiled import compile_condition, compile_number
from reviewer.judging.kinds import TEXT, TRUTH, Collection, Names
from reviewer.judging.language import parse
from reviewer.notation.dimension import ANGLE, LENGTH, NUMBER

NAN = math.nan
NAMES = Names({"x": NUMBER, "y": NUMBER, "z": NUMBER, "tilt": ANGLE, "material": TEXT})
ARMS = Names(
    {
        "arms.x": Collection(LENGTH, "arms"),
        "arms.wood": Collection(TEXT, "arms"),
        "arms.glued": Collection(TRUTH, "arms"),
        "limit": LENGTH,
        "wood": TEXT,
    }
)


def value(text: str, **environment: Any) -> Any:
    return compile_number(parse(text), NAMES)(environment.get)


# --- single values


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("x / 0", NAN),
        ("0 / 0", NAN),
        ("0^-1", NAN),
        ("sqrt(-1)", NAN),
        ("(-8)^(1/3)", NAN),
        ("asin(1.5) / (1 rad)", NAN),
        ("max(x, y)", NAN),
        ("min(y, 1)", NAN),
        ("sin(30 deg)", 0.5),
        ("cos(60 deg)", 0.5),
        ("tan(45 deg)", 1.0),
        ("asin(0.5) / (30 deg)", 1.0),
        ("acos(0.5) / (60 deg)", 1.0),
        ("atan(1) / (45 deg)", 1.0),
        ("2^-2", 0.25),
        ("2^1.5", 2**1.5),
    ],
)
def test_single_values(text: str, expected: float) -> None:
    assert float(value(text, x=3.0, y=None)) == pytest.approx(expected, rel=1e-15, nan_ok=True)


@settings(max_examples=100, deadline=None)
@given(st.lists(st.floats(-1, 4), min_size=1, max_size=5))
def test_a_table_is_numpys_interpolation_inside_and_unknown_outside(xs: list[float]) -> None:
    """numpy.interp is the outside check; beside the table nothing is said."""
    found = value("table(x, [0: 5, 1: 7, 3: -2])", x=np.array(xs))
    for x, one in zip(xs, found, strict=True):
        inside = -3e-9 <= x <= 3 + 3e-9  # 1e-9 of its largest point
        expected = np.interp(x, [0, 1, 3], [5, 7, -2]) if inside else NAN
        assert one == pytest.approx(expected, nan_ok=True)


def test_the_end_of_a_table_allows_for_rounding() -> None:
    assert value("table(x, [1: 5, 3: 7])", x=3 * (1 + 1e-12)) == 7
    assert math.isnan(value("table(x, [1: 5, 3: 7])", x=3 * (1 + 1e-6)))


# --- conditions: Kleene, Introduction to Metamathematics (1952), section 64, the strong tables

KLEENE = {
    "and": {"tt": "t", "tf": "f", "tu": "u", "ff": "f", "fu": "f", "uu": "u"},
    "or": {"tt": "t", "tf": "t", "tu": "t", "ff": "f", "fu": "u", "uu": "u"},
}
FLAGS = {"t": True, "f": False, "u": None}
SHOWN = {(True, True): "t", (False, True): "f", (False, False): "u"}


@pytest.mark.parametrize("word", ["and", "or"])
@pytest.mark.parametrize("left", "tfu")
@pytest.mark.parametrize("right", "tfu")
def test_unknown_conditions_join_as_kleene_has_it(word: str, left: str, right: str) -> None:
    names = Names({"a": TRUTH, "b": TRUTH})
    pair = left + right
    expected = KLEENE[word].get(pair) or KLEENE[word][pair[::-1]]
    answer = compile_condition(parse(f"a {word} b"), names).test(
        {"a": FLAGS[left], "b": FLAGS[right]}.get
    )
    assert SHOWN[bool(answer.holds), bool(answer.known)] == expected


@pytest.mark.parametrize(("given_flag", "expected"), [("t", "f"), ("f", "t"), ("u", "u")])
def test_the_opposite_of_unknown_is_unknown(given_flag: str, expected: str) -> None:
    answer = compile_condition(parse("not a"), Names({"a": TRUTH})).test(
        {"a": FLAGS[given_flag]}.get
    )
    assert SHOWN[bool(answer.holds), bool(answer.known)] == expected


@pytest.mark.parametrize(
    ("text", "environment", "expected"),
    [
        ("x < 3", {"x": 2}, "t"),
        ("x < 3", {"x": 3}, "f"),
        ("x < 3", {"x": None}, "u"),
        ("x < 3", {"x": NAN}, "u"),
        ("not x < 3", {"x": 3.0}, "t"),
        ("1 < x < 3", {"x": 2.0}, "t"),
        ("1 < x < 3", {"x": 5.0}, "f"),
        ("1 < x < y", {"x": 0.5, "y": None}, "f"),
        ("1 < x < y", {"x": 2.0, "y": None}, "u"),
        ("x == 0.3", {"x": 0.1 + 0.2}, "t"),
        ("x != 0.3", {"x": 0.1 + 0.2}, "f"),
        ("x == 1e6", {"x": 1e6 * (1 + 1e-10)}, "t"),
        ("x == 1e-6", {"x": 1e-6 * (1 + 1e-4)}, "f"),
        ("x == 0", {"x": 1e-12}, "f"),
        ("x == y", {"x": None, "y": None}, "u"),
        ("material == 'beech'", {"material": "beech"}, "t"),
        ("material != 'beech'", {"material": "beech"}, "f"),
        ("material == 'beech'", {"material": "ash"}, "f"),
        ("material == 'beech'", {"material": None}, "u"),
        ("'beech' == material", {"material": "beech"}, "t"),
        ("material in ['ash', 'beech']", {"material": "beech"}, "t"),
        ("material in ['ash', 'beech']", {"material": "oak"}, "f"),
        ("material in ['ash', 'beech']", {"material": None}, "u"),
        ("not material in ['ash', 'beech']", {"material": "oak"}, "t"),
        ("given(x)", {"x": 2.0}, "t"),
        ("given(x)", {"x": NAN}, "f"),
        ("given(x)", {"x": None}, "f"),
        ("given(material)", {"material": "ash"}, "t"),
        ("given(material)", {"material": None}, "f"),
        ("given(x) and x > 3", {"x": None}, "f"),
    ],
)
def test_conditions(text: str, environment: dict[str, Any], expected: str) -> None:
    answer = compile_condition(parse(text), NAMES).test(environment.get)
    assert SHOWN[bool(answer.holds), bool(answer.known)] == expected


def test_conditions_over_arrays() -> None:
    x = np.array([[1.0, NAN, 5.0]])
    answer = compile_condition(parse("x < 3 and y > 0"), NAMES).test({"x": x, "y": 1.0}.get)
    assert answer.holds.tolist() == [[True, False, False]]
    assert answer.known.tolist() == [[True, False, True]]
    there = compile_condition(parse("given(x)"), NAMES).test({"x": x}.get)
    assert there.holds.tolist() == [[True, False, True]]
    assert there.known.all()


# --- collections: axis 0 is the member, the others (sample, case)


def arms(text: str, **environment: Any) -> Any:
    names = {key.replace("arms_", "arms."): each for key, each in environment.items()}
    tree = parse(text)
    if text.startswith(("largest", "least", "sum")):
        return compile_number(tree, ARMS)(names.get)
    return compile_condition(tree, ARMS).test(names.get)


def test_gathering_runs_over_the_members_alone() -> None:
    x = np.arange(24.0).reshape(3, 2, 4)
    assert np.array_equal(arms("largest of arms.x", arms_x=x), np.max(x, axis=0))
    assert np.array_equal(arms("least of arms.x", arms_x=x), np.min(x, axis=0))
    assert np.array_equal(arms("sum of arms.x", arms_x=x), np.sum(x, axis=0))


def test_a_value_of_one_goes_with_the_values_of_many() -> None:
    x, limit = np.array([1.0, 2.0, 3.0]), np.array([[10.0, 20.0]])
    found = arms("largest of (arms.x * limit)", arms_x=x, limit=limit)
    assert found.tolist() == [[30.0, 60.0]]
    cases = arms("sum of (limit - arms.x)", arms_x=x.reshape(3, 1, 1), limit=limit)
    assert cases.tolist() == [[24.0, 54.0]]


def test_one_unknown_member_makes_the_largest_unknown() -> None:
    for word in ("largest", "least", "sum"):
        assert math.isnan(arms(f"{word} of arms.x", arms_x=np.array([1.0, NAN])))
        assert math.isnan(arms(f"{word} of arms.x", arms_x=[1.0, None]))
        assert math.isnan(arms(f"{word} of arms.x", arms_x=None))


def test_of_no_members() -> None:
    assert math.isnan(arms("largest of arms.x", arms_x=np.empty((0, 1))))
    assert arms("sum of arms.x", arms_x=[]) == 0
    assert arms("every arms.x > 1 m", arms_x=np.empty((0, 1))).holds.all()


@pytest.mark.parametrize(
    ("text", "environment", "expected"),
    [
        ("every arms.x > limit", {"arms_x": [2.0, 3.0], "limit": 1.0}, "t"),
        ("every arms.x > limit", {"arms_x": [2.0, 0.5], "limit": 1.0}, "f"),
        ("every arms.x > limit", {"arms_x": [2.0, None], "limit": 1.0}, "u"),
        ("every arms.x > limit", {"arms_x": [0.5, None], "limit": 1.0}, "f"),
        ("every arms.x > limit", {"arms_x": None, "limit": 1.0}, "u"),
        ("every arms.wood == 'ash'", {"arms_wood": ["ash", "ash"]}, "t"),
        ("every arms.wood == 'ash'", {"arms_wood": ["ash", "oak"]}, "f"),
        ("every arms.wood == 'ash'", {"arms_wood": ["ash", None]}, "u"),
        ("every arms.wood == wood", {"arms_wood": ["ash", "ash"], "wood": "ash"}, "t"),
        ("every arms.wood != wood", {"arms_wood": ["ash", "oak"], "wood": "oak"}, "f"),
        ("every arms.wood in ['ash', 'oak']", {"arms_wood": ["ash", "oak"]}, "t"),
        ("every arms.wood in ['ash', 'oak']", {"arms_wood": ["ash", "fir"]}, "f"),
        ("every arms.glued", {"arms_glued": [True, True]}, "t"),
        ("every arms.glued", {"arms_glued": [True, False]}, "f"),
        ("every arms.glued", {"arms_glued": [True, None]}, "u"),
        ("every not arms.glued", {"arms_glued": [False, False]}, "t"),
        ("every given(arms.x)", {"arms_x": [2.0, None]}, "f"),
        ("every given(arms.wood)", {"arms_wood": ["ash", None]}, "f"),
        ("every given(arms.wood)", {"arms_wood": ["ash", "oak"]}, "t"),
    ],
)
def test_every(text: str, environment: dict[str, Any], expected: str) -> None:
    answer = arms(text, **environment)
    assert SHOWN[bool(answer.holds), bool(answer.known)] == expected


def test_a_choice_of_each_member_goes_with_numbers_over_cases() -> None:
    answer = arms(
        "every (arms.wood == 'ash' or arms.x > limit)",
        arms_wood=["ash", "oak"],
        arms_x=np.array([0.0, 5.0]).reshape(2, 1, 1),
        limit=np.array([[3.0, 7.0]]),
    )
    assert answer.holds.tolist() == [[True, False]]
