"""A problem as it is printed: place first, then what was found, what is expected, the caret."""

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.notation.problem import Place, Problem, problems_in_order, render


def problem(line_text, column, end_column, **changes):
    values = {
        "place": Place("bench.yaml", 3, column, end_column),
        "what": "the unit is not known",
        "found": "18 mn",
        "expected": "a unit of length",
        "mend": "write 18 mm",
        "source_line": line_text,
    }
    return Problem(**{**values, **changes})


def test_the_whole_message():
    assert render(problem("  thickness: 18 mn  # ply", 14, 19)) == (
        "bench.yaml:3:14: the unit is not known\n"
        "    found 18 mn\n"
        "    expected a unit of length\n"
        "    mend: write 18 mm\n"
        "      thickness: 18 mn  # ply\n"
        "                 ^^^^^"
    )


def test_what_is_not_known_is_left_out():
    bare = Problem(Place("bench.yaml", 1, 1, 1), "the file is empty", "", "")
    assert render(bare) == "bench.yaml:1:1: the file is empty"


CARETS = [
    # line, column, end column, printed line, printed carets
    ("\tgap: 1,5 mm", 7, 10, "    gap: 1,5 mm", "         ^^^"),
    ("a:\t\t18 mn", 5, 10, "a:        18 mn", "          ^^^^^"),
    ("桜: 18 mn", 4, 9, "桜: 18 mn", "    ^^^^^"),  # UAX 11: a wide character takes two columns
    ("Ｇ: 18 mn", 4, 9, "Ｇ: 18 mn", "    ^^^^^"),  # and so does a full-width one
    ("e\u0301t: 18 mn", 6, 11, "e\u0301t: 18 mn", "    ^^^^^"),  # a combining mark takes none
    ("\x1b[2J: 18 mn", 7, 12, r"\x1b[2J: 18 mn", "         ^^^^^"),
    ("gap: \x07", 6, 7, r"gap: \x07", "     ^^^^"),
    ("gap:", 5, 5, "gap:", "    ^"),  # something is missing at the end
    ("gap: 5", 6, 3, "gap: 5", "     ^"),  # the end is on another line
    ("gap: 5", 99, 120, "gap: 5", "      ^"),  # beyond the line
    ("gap: 5\r\n", 6, 7, "gap: 5", "     ^"),
    ("", 1, 1, "", "^"),
]


@pytest.mark.parametrize(("line", "column", "end", "printed", "carets"), CARETS)
def test_carets(line, column, end, printed, carets):
    lines = render(problem(line, column, end)).split("\n")
    assert lines[4:] == [("    " + printed).rstrip() or "    ", "    " + carets]


def test_a_long_line_is_cut_around_the_caret():
    line = "a" * 300 + "18 mn" + "b" * 300
    source, carets = render(problem(line, 301, 306)).split("\n")[4:]
    assert len(source) == 100
    assert source.startswith("    …a")
    assert source.endswith("b…")
    assert source[carets.index("^") : carets.rindex("^") + 1] == "18 mn"


def test_a_long_run_is_cut_at_the_end():
    source, carets = render(problem("x" * 500, 1, 501)).split("\n")[4:]
    assert source == "    " + "x" * 94 + "…"
    assert carets == "    " + "^" * 94


def test_the_end_of_a_long_line_has_no_ellipsis():
    source, carets = render(problem("a" * 300 + "18 mn", 301, 306)).split("\n")[4:]
    assert source.startswith("    …a")
    assert source.endswith("a18 mn")
    assert carets.endswith(" ^^^^^")
    assert len(carets) == len(source) <= 100


def test_untrusted_text_is_made_plain_everywhere():
    evil = "\x1b[2J\n\u202e"
    printed = render(Problem(Place(evil, 1, 1, 2), evil, evil, evil, evil, evil))
    assert printed.count("\n") == 5
    assert "\x1b" not in printed
    assert "\u202e" not in printed


@settings(derandomize=True, deadline=None, max_examples=400)
@given(
    st.text(max_size=300) | st.text("ab\t桜\x1be\u0301", max_size=300),
    st.integers(min_value=0, max_value=320),
    st.integers(min_value=0, max_value=320),
)
def test_every_line_fits_and_every_caret_is_under_the_line(line, column, end):
    for each in render(problem(line, column, end)).split("\n"):
        widths = (
            0 if unicodedata.combining(x) else 2 if unicodedata.east_asian_width(x) in "WF" else 1
            for x in each
        )
        assert sum(widths) <= 100


def test_problems_are_sorted_by_place_and_told_once():
    places = [
        Place("b.yaml", 1, 1, 2),
        Place("a.yaml", 10, 1, 2),
        Place("a.yaml", 9, 5, 6),
        Place("a.yaml", 9, 1, 6),
    ]
    made = [Problem(place, "what", "found", "expected") for place in places]
    assert [each.place for each in problems_in_order([*made, *made])] == [
        *(places[3], places[2], places[1], places[0])
    ]


def test_order_does_not_depend_on_the_order_given():
    place = Place("a.yaml", 1, 1, 2)
    made = [
        Problem(place, what, "found", "expected", mend, source)
        for what in ("b", "a")
        for mend in (None, "mend")
        for source in (None, "line")
    ]
    assert problems_in_order(made) == problems_in_order(reversed(made))
    assert problems_in_order(iter([])) == []
