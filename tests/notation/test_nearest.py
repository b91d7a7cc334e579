"""The nearest known word: helpful, deterministic, and cheap on hostile words."""

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.notation.nearest import nearest

KEYS = ["diameter", "thickness", "material", "count", "circle", "bearing", "gap", "kind"]


@pytest.mark.parametrize(
    ("word", "known"),
    [
        ("thicknes", "thickness"),
        ("Diameter", "diameter"),
        ("DIAMETRE", "diameter"),
        ("bearings", "bearing"),
        ("knid", "kind"),
        ("colour", None),
        ("", None),
        ("x" * 10_000, None),
    ],
)
def test_nearest(word, known):
    assert nearest(word, KEYS) == known


def test_equally_near_words_give_the_same_answer_in_every_order():
    assert len({nearest("bat", order) for order in permutations(["cat", "hat", "rat"])}) == 1


def test_words_that_differ_in_case_alone():
    for order in permutations(["Mm", "mm", "MM"]):
        assert nearest("mm", order) == "mm"
        assert nearest("mM", order) == "MM"


def test_nothing_known():
    assert nearest("gap", []) is None


@settings(derandomize=True, deadline=None)
@given(st.text(max_size=80), st.lists(st.text(max_size=12), max_size=8))
def test_the_answer_is_always_one_of_the_known(word, known):
    assert nearest(word, known) in {None, *known}
