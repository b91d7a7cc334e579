"""The whole message, with its caret, of everything that the language refuses to read."""

import pytest

from reviewer.judging.language import parse
from reviewer.judging.language_error import LanguageError


def refusal(text: str) -> LanguageError:
    with pytest.raises(LanguageError) as caught:
        parse(text)
    return caught.value


REFUSED = [
    (
        "gap <= ",
        """\
expression:1:8: the expression ends too early
    found its end
    expected a number with its unit, a name, a text in quotes or a parenthesis
    gap <=
           ^""",
    ),
    (
        "(a + b",
        """\
expression:1:7: the expression ends too early
    found its end
    expected an operator or )
    mend: close with )
    (a + b
          ^""",
    ),
    (
        "a + b)",
        """\
expression:1:6: ')' cannot stand here
    found )
    expected an operator, or the end of the expression
    mend: take ) out, or open it before
    a + b)
         ^""",
    ),
    (
        "gap\n  = 5 mm",
        """\
expression:2:3: the sign is none of the language's
    found =
    expected one of its signs
    mend: write ==
      = 5 mm
      ^""",
    ),
    (
        "a => b",
        """\
expression:1:3: the sign is none of the language's
    found =>
    expected one of its signs
    mend: write >=
    a => b
      ^^""",
    ),
    (
        "a ≤ b",
        """\
expression:1:3: the sign is none of the language's
    found ≤
    expected one of its signs
    mend: write <=
    a ≤ b
      ^""",
    ),
    (
        "a − b",
        """\
expression:1:3: the sign is none of the language's
    found −
    expected one of its signs
    mend: write -
    a − b
      ^""",
    ),
    (
        "a && b",
        """\
expression:1:3: the sign is none of the language's
    found &&
    expected one of its signs
    mend: write and
    a && b
      ^^""",
    ),
    (
        "a ** 2",
        """\
expression:1:4: '*' cannot stand here
    found *
    expected a number with its unit, a name, a text in quotes or a parenthesis
    mend: write ^
    a ** 2
       ^""",
    ),
    (
        "a <> b",
        """\
expression:1:4: '>' cannot stand here
    found >
    expected a number with its unit, a name, a text in quotes or a parenthesis
    mend: write !=
    a <> b
       ^""",
    ),
    (
        "gap is 5 mm",
        """\
expression:1:5: 'is' cannot stand here
    found is
    expected an operator, or the end of the expression
    mend: write ==
    gap is 5 mm
        ^^""",
    ),
    (
        "gap < 5 mm AND 2",
        """\
expression:1:12: 'AND' cannot stand here
    found AND
    expected an operator, or the end of the expression
    mend: write and
    gap < 5 mm AND 2
               ^^^""",
    ),
    (
        "a + not b",
        """\
expression:1:5: 'not' cannot stand here
    found not
    expected a number with its unit, a name, a text in quotes or a parenthesis
    mend: put not and its condition in parentheses
    a + not b
        ^^^""",
    ),
    (
        'm not in ["a"]',
        """\
expression:1:3: 'not' cannot stand here
    found not
    expected an operator, or the end of the expression
    mend: write not before the condition: not material in ["beech"]
    m not in ["a"]
      ^^^""",
    ),
    (
        'm in ("a", "b")',
        """\
expression:1:6: '(' cannot stand here
    found (
    expected a list of texts in brackets
    mend: write the texts in brackets: in ["beech", "ash"]
    m in ("a", "b")
         ^""",
    ),
    (
        "1,5 mm < gap",
        """\
expression:1:2: ',' cannot stand here
    found ,
    expected an operator, or the end of the expression
    mend: write 1.5 mm if that is one number
    1,5 mm < gap
     ^""",
    ),
    (
        "5 mm <= gap >= 2 mm",
        """\
expression:1:1: the comparisons make no range
    found <= >=
    expected one comparison, or a range such as 5 mm <= gap <= 8 mm
    mend: join comparisons by and
    5 mm <= gap >= 2 mm
    ^^^^^^^^^^^^^^^^^^^""",
    ),
    (
        "1 <= a <= 3 <= 4",
        """\
expression:1:1: the comparisons make no range
    found <= <= <=
    expected one comparison, or a range such as 5 mm <= gap <= 8 mm
    mend: join comparisons by and
    1 <= a <= 3 <= 4
    ^^^^^^^^^^^^^^^^""",
    ),
    (
        'open("x")',
        """\
expression:1:1: 'open' is none of the functions
    found open
    expected one of abs, acos, asin, atan, cos, given, max, min, sin, sqrt, table, tan
    open("x")
    ^^^^""",
    ),
    (
        "sum(arms.x) < 2 m",
        """\
expression:1:1: 'sum' is none of the functions
    found sum
    expected one of abs, acos, asin, atan, cos, given, max, min, sin, sqrt, table, tan
    mend: write sum of ...
    sum(arms.x) < 2 m
    ^^^""",
    ),
    (
        "max(arms.x) < 2 m",
        """\
expression:1:1: max has the wrong number of values
    found 1
    expected from 2 to 20
    mend: write largest of ... for a collection
    max(arms.x) < 2 m
    ^^^^^^^^^^^""",
    ),
    (
        "max of arms.x",
        """\
expression:1:1: 'max' cannot be taken of a collection
    found max
    expected one of largest, least, sum
    mend: write largest of
    max of arms.x
    ^^^""",
    ),
    (
        "min < 2",
        """\
expression:1:1: min is a function and needs what it works on
    found min
    expected parentheses behind it
    mend: write min(...)
    min < 2
    ^^^""",
    ),
    (
        "table(x, [y: 2 N, 2 m: 3 N])",
        """\
expression:1:11: a table's points are constant numbers
    found y
    expected a number with its unit
    table(x, [y: 2 N, 2 m: 3 N])
              ^""",
    ),
    (
        'm == "birch',
        """\
expression:1:6: the text has no end
    found "birch
    expected the same quote again before the end of the line
    mend: put " behind the text
    m == "birch
         ^^^^^^""",
    ),
    (
        "().__class__",
        """\
expression:1:3: a name cannot have '.' here
    found .__class__
    expected words of letters, digits and _ that begin with a letter, joined by dots
    ().__class__
      ^""",
    ),
    (
        "__import__",
        """\
expression:1:1: a name cannot have '_' here
    found __import__
    expected words of letters, digits and _ that begin with a letter, joined by dots
    __import__
    ^""",
    ),
    (
        "cаrry.load <= 5 N",
        """\
expression:1:2: the letter is not a plain one, though it may look like it
    found а (U+0430, cyrillic small letter a)
    expected names in the letters a to z and A to Z
    mend: type the name again in plain letters
    cаrry.load <= 5 N
     ^""",
    ),
    (
        "a\x1b[2J",
        """\
expression:1:2: the character is none of the language's
    found (U+001B, a control character)
    expected names, numbers with units, texts in quotes, and the signs + - * / ^ < > = ! ( ) [ ] , :
    a\\x1b[2J
     ^^^^""",
    ),
    (
        "a <\u00a0b",
        """\
expression:1:4: the character is none of the language's
    found (U+00A0, no-break space)
    expected names, numbers with units, texts in quotes, and the signs + - * / ^ < > = ! ( ) [ ] , :
    mend: use a plain blank
    a < b
       ^""",
    ),
    (
        'm == "a\x07"',
        """\
expression:1:6: the text holds a character that does not print
    found "a\\x07"
    expected letters, digits, signs and blanks
    mend: take the character out
    m == "a\\x07"
         ^^^^^^^""",
    ),
]


@pytest.mark.parametrize(("text", "message"), REFUSED, ids=[text for text, _ in REFUSED])
def test_error_of_syntax(text: str, message: str) -> None:
    assert refusal(text).with_caret(text) == message


def test_error_is_data() -> None:
    text = "gap <= 5 mm and and"
    error = refusal(text)
    assert text[slice(*error.span)] == "and"
    assert error.span == (16, 19)
    assert (error.what, error.found) == ("'and' cannot stand here", "and")
    assert str(error) == error.what
