"""Texts, yes and no, and whether there is a value: what a condition asks that is no number.

A value is a text, True or False, or NaN where unknown; for many members, an array or a sequence of
them, with None where unknown.
"""

from typing import Any

import numpy as np

from reviewer.judging.comparison import Truth

_is_text = np.frompyfunc(lambda value: isinstance(value, str), 1, 1)
_is_there = np.frompyfunc(lambda value: value is not None and value == value, 1, 1)


def are_texts(value: Any) -> bool:
    """Whether a value is a text or many of them."""
    if isinstance(value, str):
        return True
    return isinstance(value, list | tuple) or np.asarray(value).dtype.kind in "OUT"


def same_text(left: Any, right: Any) -> Truth:
    """Compare texts, one by one where there are many."""
    if isinstance(left, str) and isinstance(right, str):
        return Truth(left == right, left != right)
    first, second = np.asarray(left, object), np.asarray(right, object)
    known = np.asarray(_is_text(first) & _is_text(second), bool)
    same = np.asarray(first == second, bool)
    return Truth(known & same, known & ~same)


def among(value: Any, texts: tuple[str, ...]) -> Truth:
    """Whether a text is one of a list."""
    if isinstance(value, str):
        return Truth(value in texts, value not in texts)
    holds, fails = same_text(value, texts[0])
    for text in texts[1:]:
        one = same_text(value, text)
        holds, fails = holds | one.holds, fails & one.fails
    return Truth(holds, fails)


def is_true(value: Any) -> Truth:
    """Read a yes or no; what is neither is unknown."""
    if isinstance(value, list | tuple):
        value = np.asarray(value, object)
    yes, no = np.equal(value, True), np.equal(value, False)
    return Truth(np.asarray(yes, bool), np.asarray(no, bool))


def has_value(value: Any) -> Truth:
    """Whether there is a value; this is always known."""
    if isinstance(value, str | bool):
        return Truth(True, False)
    if type(value) is float:
        return Truth(value == value, value != value)
    there = np.asarray(_is_there(np.asarray(value, object)), bool)
    return Truth(there, ~there)
