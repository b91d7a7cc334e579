"""The whole message, with its caret, of numbers, units and powers that the language refuses."""

import pytest

from reviewer.judging.language import parse
from reviewer.judging.language_error import LanguageError


def refusal(text: str) -> LanguageError:
    with pytest.raises(LanguageError) as caught:
        parse(text)
    return caught.value


REFUSED = [
    (
        "1 000 mm",
        """\
expression:1:3: '000 mm' cannot stand here
    found 000 mm
    expected an operator, or the end of the expression
    mend: write 1000 mm
    1 000 mm
      ^^^^^^""",
    ),
    (
        "5 ft 6 in",
        """\
expression:1:6: '6 in' cannot stand here
    found 6 in
    expected an operator, or the end of the expression
    mend: write 5 ft + 6 in
    5 ft 6 in
         ^^^^""",
    ),
    (
        ".5 mm",
        """\
expression:1:1: the number begins with a point
    found .5
    expected digits on both sides of the point
    mend: write 0.5
    .5 mm
    ^""",
    ),
    (
        "5. mm",
        """\
expression:1:2: the number ends in a point
    found .
    expected digits on both sides of the point
    mend: write the digits behind it, or no point
    5. mm
     ^""",
    ),
    (
        "2 * 3/4 in",
        """\
expression:1:5: the text could be a fraction or a quotient
    found 3/4 in
    expected one or the other
    mend: write (3/4 in) for the fraction, or 3/(4 in) for the quotient
    2 * 3/4 in
        ^^^^^^""",
    ),
    (
        "3 / 4 in",
        """\
expression:1:1: the text could be a fraction or a quotient
    found 3 / 4 in
    expected one or the other
    mend: write (3/4 in) for the fraction, or 3/(4 in) for the quotient
    3 / 4 in
    ^^^^^^^^""",
    ),
    (
        "1-1/2 in",
        """\
expression:1:1: the text could be a difference or a mixed number
    found 1-1/2 in
    expected one or the other
    mend: write 1 1/2 in for a mixed number
    1-1/2 in
    ^^^^^^^^""",
    ),
    (
        "3/0 in",
        """\
expression:1:1: the fraction divides by zero
    found 3/0 in
    expected a number that is not zero below the line
    3/0 in
    ^^^^^^""",
    ),
    (
        "5 mm ^2",
        """\
expression:1:1: the power could be that of the unit or of the quantity
    found 5 mm ^
    expected one or the other
    mend: write (5 mm)^ for the quantity's
    5 mm ^2
    ^^^^^^""",
    ),
    (
        "gap < 5 thickness",
        """\
expression:1:9: the unit is not known
    found thickness
    expected a unit, as in 18 mm
    mend: write 5 * thickness to multiply by a quantity of that name
    gap < 5 thickness
            ^^^^^^^^^""",
    ),
    (
        "5 Mm",
        """\
expression:1:3: the unit is not known
    found Mm
    expected a unit, as in 18 mm
    mend: write 5 mm
    5 Mm
      ^^""",
    ),
    (
        "tilt < 60°",
        """\
expression:1:10: the unit is not known
    found °
    expected a unit, as in 18 mm
    mend: write deg
    tilt < 60°
             ^""",
    ),
    (
        'gap < 3/4"',
        """\
expression:1:10: the unit is not known
    found "
    expected a unit, as in 18 mm
    mend: write in
    gap < 3/4"
             ^""",
    ),
    (
        "5 mm^9",
        """\
expression:1:3: a power must be from 1 to 6, or from -1 to -6
    found mm^9
    expected a unit
    5 mm^9
      ^^^^""",
    ),
    (
        "1e999 mm",
        """\
expression:1:1: the number is too large or too small
    found 1e999 mm
    expected a number between 1e-300 and 1e300
    1e999 mm
    ^^^^^^^^""",
    ),
    (
        "a^5",
        """\
expression:1:3: a power must be a small constant number
    found 5
    expected a number from -4 to 4 with at most three decimals, such as 2 or (1/3)
    mend: multiply, or use sqrt or a table
    a^5
      ^""",
    ),
    (
        "a^b",
        """\
expression:1:3: a power must be a small constant number
    found b
    expected a number from -4 to 4 with at most three decimals, such as 2 or (1/3)
    mend: multiply, or use sqrt or a table
    a^b
      ^""",
    ),
    (
        "a^2^2",
        """\
expression:1:3: a power must be a small constant number
    found 2^
    expected a number from -4 to 4 with at most three decimals, such as 2 or (1/3)
    mend: multiply, or use sqrt or a table
    a^2^2
      ^^""",
    ),
]


@pytest.mark.parametrize("text", ["3/ 4 in", "3 /4 in", "1 3 / 4 in", "a / 3/4 in"])
def test_error_of_a_fraction_that_could_be_a_quotient(text: str) -> None:
    assert refusal(text).what == "the text could be a fraction or a quotient"


@pytest.mark.parametrize(("text", "message"), REFUSED, ids=[text for text, _ in REFUSED])
def test_error_of_a_number(text: str, message: str) -> None:
    assert refusal(text).with_caret(text) == message


def test_error_of_an_unknown_unit_has_the_span_in_the_whole_text() -> None:
    text = "gap <= 2 mm + 5 mm^9"
    assert text[slice(*refusal(text).span)] == "mm^9"


@pytest.mark.parametrize("text", ["1e-400", "1e400", "9" * 400, "1e308 km"])
def test_error_of_a_number_that_no_float_holds(text: str) -> None:
    assert refusal(text).what == "the number is too large or too small"
