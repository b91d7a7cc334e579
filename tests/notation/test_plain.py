"""Untrusted text cannot steer a terminal."""

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.notation.plain import plain

EVERYTHING = st.text(st.characters(), max_size=400) | st.text(
    st.sampled_from("\x00\x07\x1b[2J\x9b\u202e\u2066\u200b\ud800\n\r\t a\u3042"), max_size=50
)


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("18 mm ± 0.3 mm", "18 mm ± 0.3 mm"),
        ("\x1b[31mred\x1b[0m", r"\x1b[31mred\x1b[0m"),
        ("\x9b31m", r"\x9b31m"),
        ("bell\x07", r"bell\x07"),
        ("one\ntwo", "one two"),
        ("one\r\ntwo", "one two"),
        ("one\u2028two\u2029three\x85four", "one two three four"),
        ("tab\there", "tab here"),
        ("a\u202eb\u2066c\u200fd", r"a\u202eb\u2066c\u200fd"),
        ("zero\u200bwidth\ufeff", r"zero\u200bwidth\ufeff"),
        ("lone \ud800 surrogate", r"lone \ud800 surrogate"),
        ("tag\U000e0041", r"tag\U000e0041"),
        ("no\u00a0break", "no break"),
        ("日本 é ½ 😀", "日本 é ½ 😀"),
        ("\x7f", r"\x7f"),
        ("", ""),
    ],
)
def test_plain(text, printed):
    assert plain(text) == printed


def test_cut_at_the_limit():
    assert plain("x" * 200) == "x" * 200
    assert plain("x" * 201) == "x" * 199 + "…"
    assert plain("\r\n" * 10**6, 10) == " " * 6 + "…"
    assert plain("x" * 10**6, 40) == "x" * 39 + "…"


def test_an_escape_is_never_cut_in_two():
    assert plain("abc\x1bdef", 6) == "abc…"
    assert plain("abc\x1b", 7) == r"abc\x1b"


@settings(derandomize=True, deadline=None, max_examples=400)
@given(EVERYTHING, st.integers(min_value=10, max_value=300))
def test_nothing_that_is_printed_steers_or_overflows(text, limit):
    printed = plain(text, limit)
    assert len(printed) <= limit
    assert not {unicodedata.category(each) for each in printed} & {"Cc", "Cf", "Cs", "Zl", "Zp"}
    printed.encode("utf-8")
