"""Lines of text: width, wrapping, indents, colour."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewer.reporting.sheet import Sheet, Style, columns, wrapped

WORDS = st.lists(st.text("abc木1 \u0301", min_size=1, max_size=12).map(str.strip), max_size=30)


@given(WORDS.map(" ".join), st.integers(1, 60))
def test_wrapping_keeps_every_word_and_the_width(text: str, room: int) -> None:
    lines = wrapped(text, room)
    assert " ".join(lines).split() == text.split()
    for line in lines:
        assert columns(line) <= room or len(line.split()) == 1


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("it needs 18 mm of it", ["it needs", "18 mm of", "it"]),
        ("it takes 5 N m here", ["it takes", "5 N m", "here"]),
        ("12 ways", ["12 ways"]),
        ("is 30 MPa", ["is 30 MPa"]),
    ],
)
def test_a_number_stays_with_its_unit(text: str, expected: list[str]) -> None:
    assert wrapped(text, 9) == expected


@pytest.mark.parametrize(
    ("text", "expected", "source"),
    [
        ("18 mm", 5, "ASCII"),
        ("木工", 4, "UAX 11: ideographs are wide"),
        ("\uff11", 2, "UAX 11: fullwidth forms are wide"),
        ("e\u0301", 1, "UAX 11: combining marks take no column of their own"),
    ],
)
def test_columns_of_a_terminal(text: str, expected: int, source: str) -> None:
    assert columns(text) == expected, source


def test_an_indent_leaves_room_for_text() -> None:
    sheet = Sheet(Style(40))
    sheet.put("one two three four five", indent=60)
    assert sheet.lines == [" " * 24 + "one two three", " " * 24 + "four five"]


def test_lines_go_on_below_the_end_of_their_lead() -> None:
    sheet = Sheet(Style(20))
    sheet.put("one two three four", lead="[ ] ")
    assert sheet.lines == ["[ ] one two three", "    four"]


def test_colour_is_beside_the_words_and_never_alone() -> None:
    sheet = Sheet(Style(20, colour=True))
    sheet.put("Must change", lead="[ ] ", look="must")
    assert sheet.lines == ["[ ] \x1b[1;31mMust change\x1b[0m"]
