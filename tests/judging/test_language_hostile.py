"""Texts made to break the reader: each is refused with the language's own error, and nothing else.

None may hang or grow: a slow one would hold up the whole test run.
"""

import random
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.judging.compiled import compile_condition, judge
from reviewer.judging.kinds import TEXT, TRUTH, Collection, Names
from reviewer.judging.language import parse
from reviewer.judging.language_error import LanguageError
from reviewer.judging.template import parse_template
from reviewer.notation.dimension import ANGLE, FORCE, LENGTH, NUMBER

NAMES = Names(
    {
        "a": NUMBER,
        "b": NUMBER,
        "gap": LENGTH,
        "load.force": FORCE,
        "tilt": ANGLE,
        "material": TEXT,
        "rigid": TRUTH,
        "arms.x": Collection(LENGTH, "arms"),
    }
)
NOTHING = {"material": None, "rigid": None}


def unknown(name: str) -> object:
    """An environment of which nothing is known."""
    return NOTHING.get(name, float("nan"))


HOSTILE = {
    "parentheses": "(" * 10_000,
    "parentheses that fit": "(" * 1_999,
    "closed parentheses": "(" * 900 + "1" + ")" * 900,
    "signs": "-" * 1_999 + "1",
    "nots": "not " * 400 + "rigid",
    "everies": "every " * 300 + "rigid",
    "calls": "abs(" * 300 + "a" + ")" * 300,
    "extremes": "max(a, " * 200 + "a" + ")" * 200,
    "a long sum": "+".join("a" * 300),
    "a long and": " and ".join(["rigid"] * 600),
    "a wide list": "max(" + ",".join("a" * 500) + ")",
    "aggregates": "sum of " * 250 + "arms.x",
    "brackets": "a in " + "[" * 1_900,
    "a tower of powers": "9^9^9^9^9",
    "a huge power": "9^999999999",
    "a fine power": "9^1e-300",
    "an endless power": "9^(1/1e-320)",
    "a negative power of zero": "0^(-1/0)",
    "a number without end": "1e999",
    "a number with digits without end": "9" * 1_999,
    "a number of nothing": "1e-999",
    "a fraction without end": "1/0 in",
    "a unit's power": "1 mm^99",
    "a unit without end": "1 " + "mm " * 600,
    "100 kB": "a + " * 25_000 + "a",
    "100 kB of text": '"' + "x" * 100_000 + '"',
    "an attribute of a tuple": "().__class__",
    "an attribute of a text": "''.__class__.__mro__[1]",
    "an attribute of a number": "(1).real",
    "a dunder name": "__import__('os').system('true')",
    "a dunder in a name": "carry.__class__",
    "a lambda": "lambda: a",
    "a comprehension": "[a for a in b]",
    "a list": "[1, 2]",
    "a subscript": "material[0]",
    "an assignment": "a = 1",
    "a walrus": "(a := 1)",
    "a call": "eval('1')",
    "a call of a name": "load.force()",
    "a call of a call": "abs(a)(b)",
    "a format": "f'{a}'",
    "a regular expression": "material ~ '(a+)+$'",
    "a pattern": "material == /(a+)+$/",
    "a statement": "import os; a",
    "a comment": "a # b",
    "a placeholder": "{a}",
    "a shell": "$(true)",
    "a quote": "`a`",
    "a backslash": "a\\\nb",
    "look-alike letters": "ɡap < 1 mm",
    "Cyrillic": "gаp < 1 mm",
    "Greek": "gaρ < 1 mm",
    "full width": "ｇａｐ < 1 mm",
    "digits of another script": "gap < ٣ mm",
    "a zero-width space": "ga\u200bp < 1 mm",
    "right to left": "gap \u202e< 1 mm",
    "a no-break space": "gap\u00a0< 1 mm",
    "combining": "gap\u0301 < 1 mm",
    "NUL": "gap\x00 < 1 mm",
    "NUL in a text": "material == 'a\x00'",
    "an escape of the terminal": "gap < \x1b[31m1 mm",
    "an escape in a text": "material == '\x1b]0;x\x07'",
    "a surrogate": "gap < \ud800",
    "a byte order mark": "\ufeffgap < 1 mm",
    "nothing": "",
    "blanks": " \t\n ",
    "an open text": "material == 'birch",
    "a text over lines": "material == 'birch\nply'",
}


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_text_is_refused_in_words(name: str) -> None:
    text = HOSTILE[name]
    with pytest.raises(LanguageError) as caught:
        parse(text)
    printed = caught.value.with_caret(text)
    assert len(printed) < 2_000
    assert all(line.isprintable() for line in printed.split("\n"))


@pytest.mark.parametrize(
    "text", ["not " * 40 + "rigid", "-" * 40 + "a < 1", "(" * 40 + "rigid" + ")" * 40]
)
def test_what_is_within_the_limits_is_read(text: str) -> None:
    compile_condition(parse(text), NAMES)


@pytest.mark.parametrize(
    ("text", "what", "found", "expected"),
    [
        ("a" * 2_001, "the expression is too long", "2001 characters", "at most 2000"),
        (
            "material in [" + ",".join(["''"] * 400) + "]",
            "the expression is too large",
            "402 values and operators",
            "at most 400",
        ),
        (
            "+".join("a" * 60),
            "the expression is nested too deep",
            "more than 50 levels",
            "at most 50",
        ),
        (
            "(" * 51 + "a" + ")" * 51,
            "the expression is nested too deep",
            "more than 50 levels",
            "at most 50",
        ),
    ],
)
def test_error_of_a_limit_names_the_limit(text: str, what: str, found: str, expected: str) -> None:
    with pytest.raises(LanguageError) as caught:
        parse(text)
    assert (caught.value.what, caught.value.found, caught.value.expected) == (what, found, expected)
    assert caught.value.mend is not None


def test_a_deep_tree_is_inferred_once_over() -> None:
    """Each level of min, max and comparison is seen once: 45 levels seen twice would never end."""
    text = "max(a, " * 45 + "b" + ")" * 45 + " <= 1"
    assert not judge(parse(text), NAMES).judge(unknown).known


WORDS = [
    *("a", "b", "gap", "load.force", "tilt", "material", "rigid", "arms.x", "nobody", "of"),
    *("and", "or", "not", "in", "every", "largest of", "least of", "sum of", "given(", "table("),
    *("min(", "max(", "abs(", "sqrt(", "sin(", "atan(", "(", ")", "[", "]", ",", ":"),
    *("+", "-", "*", "/", "^", "^2", "^(1/3)", "<", "<=", ">", ">=", "==", "!="),
    *("0", "1", "2.5", "18 mm", "3 N", "60 deg", "12 %", "5 degC", "3/4 in", "'birch'", '"ash"'),
    *("1e9", "N/mm", "mm", "é", "=", "!", ".", "_", "'", "\n", "\x00", "{", "}"),
]


def attempt(read: Callable[[], Any]) -> Any:
    """What a reader returns, or the one error that it may raise."""
    try:
        return read()
    except LanguageError as error:
        return error


def is_refused(found: Any, text: str) -> bool:
    """Whether it is an error; then it has a place in the text, and can be printed."""
    if not isinstance(found, LanguageError):
        return False
    start, end = found.span
    assert 0 <= start <= len(text)
    assert start <= end <= len(text) + 1
    assert found.with_caret(text)
    return True


def read_and_judge(text: str) -> bool:
    """Read, check and evaluate; say whether it was an expression at all."""
    tree = attempt(lambda: parse(text))
    if is_refused(tree, text):
        return False
    requirement = attempt(lambda: judge(tree, NAMES))
    if not is_refused(requirement, text):
        requirement.judge(unknown)
    condition = attempt(lambda: compile_condition(tree, NAMES))
    if not is_refused(condition, text):
        condition.test(unknown)
    return True


def test_ten_thousand_strings_of_words_raise_nothing_else() -> None:
    chance = random.Random(4)
    read = 0
    for _ in range(10_000):
        words = chance.choices(WORDS, k=chance.randint(1, 12))
        read += read_and_judge(chance.choice(["", " "]).join(words))
    assert read > 200  # some of them are expressions, or this would test only the first step


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=40))
def test_any_text_at_all_raises_nothing_else(text: str) -> None:
    read_and_judge(text)


@settings(max_examples=300, deadline=None)
@given(st.text(alphabet="{} a.b_1\n'\x1bé", max_size=30))
def test_any_template_at_all_raises_nothing_else(text: str) -> None:
    template = attempt(lambda: parse_template(text))
    assert is_refused(template, text) or len(template.texts) == len(template.names) + 1
