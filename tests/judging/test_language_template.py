"""The texts of rules: their places for names, and the whole message where one is wrong."""

import pytest

from reviewer.judging.kinds import Names
from reviewer.judging.language_error import LanguageError
from reviewer.judging.template import check_names, parse_template
from reviewer.notation.dimension import FORCE

NAMES = Names({"hold_down.peak_load": FORCE, "uplift.force": FORCE})


@pytest.mark.parametrize(
    ("text", "filled"),
    [
        ("", ""),
        ("No place.", "No place."),
        ("{part} lifts under {case}.", "<part> lifts under <case>."),
        ("{hold_down.peak_load}{ case }", "<hold_down.peak_load><case>"),
        ("{{part}} is {part}", "{part} is <part>"),
        ("{{{part}}}", "{<part>}"),
        ("a }} b {{ c", "a } b { c"),
        ("100 % of {demand} (é, ≤)", "100 % of <demand> (é, ≤)"),
    ],
)
def test_names_are_filled_in(text: str, filled: str) -> None:
    assert parse_template(text).render(lambda name: f"<{name}>") == filled


def test_what_is_filled_in_is_not_read_again() -> None:
    assert parse_template("{case}").render(lambda _: "{part}}}") == "{part}}}"


def test_names_come_with_their_places() -> None:
    text = "The {part} takes {hold_down.peak_load}."
    names = parse_template(text).names
    assert [name for name, _ in names] == ["part", "hold_down.peak_load"]
    assert [text[start:end] for _, (start, end) in names] == ["{part}", "{hold_down.peak_load}"]


REFUSED = [
    (
        "takes {demand of it",
        """\
expression:1:7: the brace has no end
    found {
    expected a name in braces, such as {demand}
    mend: write {{ for the brace itself
    takes {demand of it
          ^""",
    ),
    (
        "takes demand} of it",
        """\
expression:1:13: the brace has no beginning
    found }
    expected a name in braces, such as {demand}
    mend: write }} for the brace itself
    takes demand} of it
                ^""",
    ),
    (
        "takes {demand:.2f}",
        """\
expression:1:7: a place holds one dotted name
    found {demand:.2f}
    expected a name in braces, such as {demand}
    mend: write the name of one quantity, as {demand}
    takes {demand:.2f}
          ^^^^^^^^^^^^""",
    ),
    (
        "{part.__class__}",
        """\
expression:1:1: a place holds one dotted name
    found {part.__class__}
    expected a name in braces, such as {demand}
    mend: write the name of one quantity, as {demand}
    {part.__class__}
    ^^^^^^^^^^^^^^^^""",
    ),
    (
        "takes {hold_down.peak_laod}",
        """\
expression:1:7: the name is not known
    found hold_down.peak_laod
    expected the name of a quantity, or one of capacity, case, demand, direction, part, utilisation
    mend: write {hold_down.peak_load}
    takes {hold_down.peak_laod}
          ^^^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "takes {deman}",
        """\
expression:1:7: the name is not known
    found deman
    expected the name of a quantity, or one of capacity, case, demand, direction, part, utilisation
    mend: write {demand}
    takes {deman}
          ^^^^^^^""",
    ),
]


@pytest.mark.parametrize(("text", "message"), REFUSED, ids=[text for text, _ in REFUSED])
def test_error_of_a_template(text: str, message: str) -> None:
    with pytest.raises(LanguageError) as caught:
        check_names(parse_template(text), NAMES)
    assert caught.value.with_caret(text) == message


@pytest.mark.parametrize(
    "text", ["{}", "{ }", "{0}", "{a b}", "{a[0]}", "{a!r}", "{а}", "{a\n}", "{_a}"]
)
def test_a_place_holds_nothing_but_a_name(text: str) -> None:
    with pytest.raises(LanguageError) as caught:
        parse_template(text)
    assert caught.value.what == "a place holds one dotted name"


@pytest.mark.parametrize(
    ("text", "what"),
    [("x" * 2_001, "the text is too long"), ("{case}" * 51, "the text has too many places")],
)
def test_a_template_is_bounded(text: str, what: str) -> None:
    with pytest.raises(LanguageError) as caught:
        parse_template(text)
    assert caught.value.what == what


def test_special_names_and_known_names_pass() -> None:
    text = "{demand} {capacity} {utilisation} {case} {part} {direction} {uplift.force}"
    check_names(parse_template(text), NAMES)
