"""Random expressions: against Python's own arithmetic, and written out and read again."""

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.judging.compiled import compile_number
from reviewer.judging.expression import (
    Aggregate,
    Among,
    Arithmetic,
    Call,
    Comparison,
    Every,
    Expression,
    Given,
    Logical,
    Name,
    Negative,
    Not,
    Power,
    Quantity,
    Table,
    Text,
)
from reviewer.judging.kinds import Names
from reviewer.judging.language import parse
from reviewer.judging.writing import write
from reviewer.notation.dimension import NUMBER

NAN = math.nan
NAMES = Names({"x": NUMBER, "y": NUMBER, "z": NUMBER})


# --- random numbers: a text beside what Python makes of it


def _divided(above: float, below: float) -> float:
    return above / below if below else NAN


def _power(base: float, power: int) -> float:
    return float(base**power) if base or power >= 0 else NAN


VALUES = {"x": 2.5, "y": -0.75, "z": 1e3}

leaves = st.one_of(
    st.sampled_from(list(VALUES.items())),
    st.floats(0, 1e6).map(lambda number: (repr(number), number)),
    st.integers(0, 50).map(lambda number: (str(number), float(number))),
)


def combined(inner: st.SearchStrategy[tuple[str, float]]) -> st.SearchStrategy[tuple[str, float]]:
    pair = st.tuples(inner, inner)
    return st.one_of(
        pair.map(lambda p: (f"({p[0][0]} + {p[1][0]})", p[0][1] + p[1][1])),
        pair.map(lambda p: (f"({p[0][0]}) - ({p[1][0]})", p[0][1] - p[1][1])).map(
            lambda p: (f"({p[0]})", p[1])
        ),
        pair.map(lambda p: (f"({p[0][0]}*{p[1][0]})", p[0][1] * p[1][1])),
        pair.map(lambda p: (f"({p[0][0]} / {p[1][0]})", _divided(p[0][1], p[1][1]))),
        pair.map(lambda p: (f"max({p[0][0]}, {p[1][0]})", _extreme(max, *p))),
        pair.map(lambda p: (f"min({p[0][0]}, {p[1][0]})", _extreme(min, *p))),
        inner.map(lambda p: (f"(-{p[0]})", -p[1])),
        inner.map(lambda p: (f"abs({p[0]})", abs(p[1]))),
        inner.map(lambda p: (f"sqrt(abs({p[0]}))", math.sqrt(abs(p[1])))),
        inner.map(lambda p: (f"({p[0]})^3", p[1] * p[1] * p[1])),
        inner.map(lambda p: (f"({p[0]})^-1", _divided(1.0, p[1]))),
        inner.map(lambda p: (f"atan({p[0]}) / (1 rad)", math.atan(p[1]))).map(
            lambda p: (f"({p[0]})", p[1])
        ),
    )


def _extreme(
    choose: Any, left: tuple[str, float], right: tuple[str, float]
) -> float:  # Python's max drops a NaN that stands second; an unknown must stay unknown
    both = (left[1], right[1])
    return NAN if any(map(math.isnan, both)) else choose(*both)


@settings(max_examples=300, deadline=None)
@given(st.recursive(leaves, combined, max_leaves=12))
def test_numbers_are_pythons(pair: tuple[str, float]) -> None:
    text, expected = pair
    found = float(compile_number(parse(text), NAMES)(VALUES.get))
    assert found == pytest.approx(expected, rel=1e-12, nan_ok=True)


@settings(max_examples=100, deadline=None)
@given(st.recursive(leaves, combined, max_leaves=12))
def test_one_at_a_time_and_batched_agree_to_the_bit(pair: tuple[str, float]) -> None:
    compiled = compile_number(parse(pair[0]), NAMES)
    columns = {name: number * np.linspace(-1.0, 1.0, 7) for name, number in VALUES.items()}
    batch = np.broadcast_to(compiled(columns.get), (7,))
    for row in range(7):
        alone = compiled({name: column[row : row + 1] for name, column in columns.items()}.get)
        one = np.broadcast_to(alone, (1,))
        assert batch[row : row + 1].tobytes() == one.tobytes() or np.isnan([batch[row], *one]).all()


# --- random trees: written out and read again

words = st.sampled_from(["a", "b_2", "carry.peak_load", "arms.x", "t", "min_gap", "N.x"])
numbers = st.one_of(
    st.tuples(
        st.floats(0, 1e12), st.sampled_from(["", " mm", " kN/m", " %", " deg", " N m", " in"])
    )
    .map(lambda pair: parse(f"{pair[0]!r}{pair[1]}"))
    .filter(lambda node: isinstance(node, Quantity)),
    words.map(lambda word: Name(word, (0, 0))),
)
texts = st.sampled_from(["birch plywood", 'an "M8"', "it's", "é"]).map(
    lambda text: Text(text, (0, 0))
)


def number_trees(inner: st.SearchStrategy[Expression]) -> st.SearchStrategy[Expression]:
    at = (0, 0)
    points = st.lists(st.tuples(literals, literals), min_size=1, max_size=3).map(tuple)
    return st.one_of(
        inner.map(lambda x: Negative(x, at)),
        st.tuples(st.sampled_from("+-*/"), inner, inner).map(lambda x: Arithmetic(*x, at)),
        st.tuples(inner, st.fractions(-4, 4, max_denominator=9)).map(lambda x: Power(*x, at)),
        inner.map(lambda x: Call("sqrt", (x,), at)),
        st.tuples(inner, inner, inner).map(lambda x: Call("max", x, at)),
        st.tuples(inner, points).map(lambda x: Table(*x, at)),
        st.tuples(st.sampled_from(["largest", "least", "sum"]), inner).map(
            lambda x: Aggregate(*x, at)
        ),
    )


literals = st.one_of(
    st.integers(0, 99).map(lambda number: parse(f"{number} mm")),
    st.integers(0, 99).map(lambda number: Negative(parse(f"{number} N"), (0, 0))),
)
number_tree = st.recursive(numbers, number_trees, max_leaves=8)
signs = st.sampled_from(["<", "<=", ">", ">=", "==", "!="])
at = (0, 0)
conditions = st.one_of(
    st.tuples(number_tree, signs, number_tree).map(lambda x: Comparison((x[0], x[2]), (x[1],), at)),
    st.tuples(number_tree, number_tree, number_tree).map(lambda x: Comparison(x, ("<", "<="), at)),
    st.tuples(number_tree, st.lists(texts, min_size=1, max_size=3).map(tuple)).map(
        lambda x: Among(*x, at)
    ),
    words.map(lambda word: Given(Name(word, at), at)),
    texts.map(lambda text: Comparison((Name("material", at), text), ("==",), at)),
)


def condition_trees(inner: st.SearchStrategy[Expression]) -> st.SearchStrategy[Expression]:
    several = st.lists(inner, min_size=2, max_size=3).map(tuple)
    return st.one_of(
        inner.map(lambda x: Not(x, at)),
        inner.map(lambda x: Every(x, at)),
        st.tuples(st.sampled_from(["and", "or"]), several).map(lambda x: Logical(*x, at)),
        st.tuples(inner, number_tree).map(lambda x: Comparison(x, ("==",), at)),
    )


@settings(max_examples=500, deadline=None)
@given(st.recursive(conditions, condition_trees, max_leaves=5))
def test_what_is_written_out_is_read_again(tree: Expression) -> None:
    assert parse(write(tree)) == tree
