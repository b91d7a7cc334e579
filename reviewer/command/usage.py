"""The command line's own grammar: options of a command, and what is told of a wrong one."""

import argparse
import re
from collections.abc import Sequence
from datetime import date
from typing import NoReturn

from reviewer.notation.nearest import nearest
from reviewer.notation.plain import plain


class UsageError(Exception):
    """A wrong command line: what is wrong, what was found, what is expected, how to mend it."""

    def __init__(self, what: str, found: str = "", expected: str = "", mend: str = "") -> None:
        """Keep the four of them."""
        super().__init__(what)
        self.what = what
        self.found = found
        self.expected = expected
        self.mend = mend

    def told(self, command: str) -> str:
        """The error in words, in the form of a problem of reading."""
        rows = [("found ", self.found), ("expected ", self.expected), ("mend: ", self.mend)]
        lines = [f"    {word}{plain(text, 400)}" for word, text in rows if text]
        return "\n".join([f"{command}: {plain(self.what)}", *lines])


class Parser(argparse.ArgumentParser):
    """Options of one command. A wrong one is raised as a UsageError, never printed."""

    def __init__(self, name: str, says: str, example: str) -> None:
        """Begin the options of a command, with one real example."""
        super().__init__(
            prog=f"reviewer {name}",
            description=says,
            epilog=f"example: {example}",
            allow_abbrev=False,
        )
        self.example = example

    def add_packs(self) -> None:
        """Take more rules, and a shop's file in place of the nearest."""
        self.add_argument(
            "--rules", action="append", default=[], metavar="FILE", help="more rules; repeatable"
        )
        self.add_argument(
            "--shop", default=None, metavar="FILE",
            help="the shop's file, if not the nearest shop.yaml",
        )  # fmt: skip

    def add_day(self) -> None:
        """Take the day of the review."""
        self.add_argument(
            "--on", type=day, default=None, metavar="DATE",
            help="the day on which concessions must still hold; today where none is named",
        )  # fmt: skip

    def read(self, arguments: Sequence[str]) -> argparse.Namespace:
        """Read a command line. Raises UsageError."""
        options, strange = self.parse_known_args(arguments)
        if strange:
            raise self._unknown(strange[0])
        return options

    def _unknown(self, word: str) -> UsageError:
        names = (name for each in self._actions for name in each.option_strings)
        known = sorted(name for name in names if name.startswith("--"))
        if not word.startswith("-"):
            return UsageError("there is one argument too many", word)
        near = nearest(word.partition("=")[0], known)
        mend = f"write {near}" if near else ""
        return UsageError("there is no such option", word, f"one of {', '.join(known)}", mend)

    def error(self, message: str) -> NoReturn:
        """Raise what argparse finds wrong by itself: a value that is missing, or one too many."""
        match = re.match(r"argument ([^:]+): (expected|ignored)", message)
        if match is None:
            raise UsageError(message)
        name = match[1].rpartition("/")[2]
        if match[2] == "expected":
            raise UsageError("an option lacks its value", name, f"{name} and its value")
        raise UsageError("an option has a value that it does not take", name, f"{name} alone")


class OneOf:
    """A reader of an option's value: one word of a list."""

    def __init__(self, words: Sequence[str]) -> None:
        """Read one of some words."""
        self.words = tuple(words)

    def __call__(self, text: str) -> str:
        """The word. Raises UsageError."""
        if text in self.words:
            return text
        near = nearest(text, self.words)
        mend = f"write {near}" if near else ""
        raise UsageError("there is no such choice", text, f"one of {', '.join(self.words)}", mend)


def one_of(words: Sequence[str]) -> OneOf:
    """A reader of one word of a list."""
    return OneOf(words)


def count(text: str) -> int:
    """A reader of a whole number from 1 on. Raises UsageError."""
    if not re.fullmatch(r"[0-9]{1,4}", text) or not int(text):
        raise UsageError("this is no number of processes", text, "a whole number from 1 to 9999")
    return int(text)


def day(text: str) -> date:
    """A reader of a calendar date. Raises UsageError."""
    try:
        if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
            raise ValueError
        return date.fromisoformat(text)
    except ValueError:
        raise UsageError(
            "this is no calendar date", text, "year, month and day, as in 2026-11-25"
        ) from None
