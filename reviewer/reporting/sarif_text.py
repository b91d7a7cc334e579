"""Texts and places as SARIF 2.1.0 takes them."""

import os
import re
from collections.abc import Iterable, Mapping
from pathlib import Path, PurePath
from typing import Any
from urllib.parse import quote

from reviewer.notation.plain import plain
from reviewer.notation.problem import Place

Data = dict[str, Any]

LONGEST = 8000
START = "START"  # the folder in which the program was started
OUTSIDE = "OUTSIDE"
FILE = "@file"  # the number of a file in a piece, until the log has its own for it
LINK = re.compile(r"\](?=\()")
SAFE = "/-._~!$'*,;=@"


def message(text: str) -> Data:
    """A plain text message: braces doubled (3.11.5), and nothing in it that reads as a link.

    >>> message("a {b} [c](d)")
    {'text': 'a {{b}} [c] (d)'}
    """
    told = plain(text, LONGEST).replace("{", "{{").replace("}", "}}")
    return {"text": LINK.sub("] ", told)}


def region(place: Place) -> Data:
    """A run of characters on a line, from 1, the end column the one behind it (3.30)."""
    return {
        "startLine": place.line,
        "startColumn": place.column,
        "endColumn": max(place.end_column, place.column),
    }


class Places:
    """The files that one design's piece of a report speaks of, each by its number in the piece.

    A path inside the folder of the start is relative to it. One outside is known by its name in a
    folder of its own, so that no path of the machine is told. `relative` makes texts so too.
    """

    def __init__(self, start: Path, known: Iterable[str] = ()) -> None:
        """Number no file yet; `start` is the folder in which the program was started.

        `known` are paths that texts may name.
        """
        self.start = start
        absolute = {each for each in known if PurePath(each).is_absolute()}
        self._known = sorted(absolute, key=lambda each: (-len(each), each))
        self.files: list[Data] = []
        self._numbers: dict[str, int] = {}

    def number(self, path: str, roles: Iterable[str] = ()) -> int:
        """The number of a file, which is known from now on."""
        if path not in self._numbers:
            self._numbers[path] = len(self.files)
            self.files.append({"location": self._location(path), "roles": []})
        number = self._numbers[path]
        known = self.files[number]["roles"]
        known += [role for role in roles if role not in known]
        return number

    def location(self, place: Place) -> Data:
        """A place in a file."""
        file = {"artifactLocation": {FILE: self.number(place.path)}}
        return {"physicalLocation": {**file, "region": region(place)}}

    def relative(self, text: str) -> str:
        """A text in which no absolute path of a known file is left."""
        for path in self._known:
            text = text.replace(path, self._inside(path) or PurePath(path).name)
        return text

    def _location(self, path: str) -> Data:
        if path == "-":
            return {"description": message("standard input")}
        inside = self._inside(path)
        if inside is not None:
            return {"uri": _uri(inside), "uriBaseId": START}
        folder = os.path.normpath(os.path.join(self.start, path, ".."))
        return {"uri": _uri(PurePath(path).name), "outside": folder}

    def _inside(self, path: str) -> str | None:
        """The path from the folder of the start, or None of a file outside of it."""
        try:
            found = os.path.relpath(os.path.join(self.start, path), self.start)
        except ValueError:  # on another drive
            return None
        return None if found.split(os.sep)[0] == os.pardir else found


def _uri(path: str) -> str:
    return quote(os.fsencode(PurePath(path).as_posix()), safe=SAFE)


def bases(outside: Mapping[str, str]) -> Data:
    """What the names of folders mean, without where they are (3.14.14)."""
    start = {START: {"description": message("the folder in which the review was started")}}
    others = {
        name: {"description": message("a folder outside of the one of the start")}
        for name in outside.values()
    }
    return start | others
