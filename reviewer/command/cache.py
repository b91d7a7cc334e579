"""Reviews kept from one run to the next, by all that they depend on.

An entry is found by the design's text and path, the options, and the program with its tables and
packs; it holds only while every other file that was read for it (a base, the shop's file, packs) is
as it was. It is JSON in a file of its own, written beside its place and moved there, so that runs
may share the folder and any of them may be killed. Whatever is no sound entry is passed over.
"""

import json
import os
import sys
import tempfile
from argparse import Namespace
from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import date
from hashlib import sha256
from pathlib import Path
from typing import Any

import numpy as np

from reviewer.command.done import Done
from reviewer.command.entry import body_of
from reviewer.command.inputs import Input
from reviewer.command.version import version
from reviewer.judging.builtin import builtin_paths
from reviewer.reading.noted import digest, now
from reviewer.reading.source import MAX_BYTES

FORMAT = 1
SHELF_BYTES = 2 << 20  # of each of 256 folders, half a GiB in all
# Options on which no piece depends; the day is looked at by itself.
IDLE = frozenset(("paths", "since", "watch", "workers", "cache", "output", "on", "format"))


@dataclass(frozen=True, slots=True)
class Key:
    """What an entry is found by: its name, and the day on which concessions are held."""

    name: str
    on: str


class Cache:
    """Reviews kept in a folder, under the options of one command line."""

    def __init__(self, folder: Path, options: Namespace, forms: Sequence[str]) -> None:
        """Use a folder, which need not exist; `forms` tell of each report all that shapes it."""
        self._folder = folder
        self._on = (options.on or date.today()).isoformat()
        self._base = sha256(json.dumps(_under(options, forms)).encode())
        self._now: dict[str, str | None] = {}  # what is noted of a path now, asked once a run
        self._roots: dict[str, str] = {}

    def key(self, each: Input, source: bytes) -> Key:
        """The key of a design, as it is called, in its tree of folders, with its text."""
        path, root = each.path, self._root(each)
        name = self._base.copy()
        name.update(f"{len(path)} {path} {len(root)} {root} ".encode("utf-8", "surrogateescape"))
        name.update(source)
        return Key(name.hexdigest(), self._on)

    def found(self, key: Key) -> bytes | None:
        """The entry of a key if it holds still, as it is kept; else nothing."""
        path = self._place(key)
        try:
            with open(path, "rb") as file:
                entry = file.read()
            head, _, body = entry.partition(b"\n")
            told = json.loads(head)
            holds = (
                (told["format"], told["key"], told["body"]) == (FORMAT, key.name, digest(body))
                and told["on"] in (None, key.on)
                and all(self._is_now(each, then) for each, then in told["read"].items())
            )
        except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
            return None
        if not holds:
            return None
        with suppress(OSError):
            os.utime(path)
        return body

    def _root(self, each: Input) -> str:
        """The tree of folders of a design; designs of one folder have the same."""
        home = os.path.dirname(each.path)
        if os.path.islink(each.path):
            return str(each.folder)
        if home not in self._roots:
            self._roots[home] = str(each.folder)
        return self._roots[home]

    def put(self, key: Key, done: Done) -> None:
        """Keep what a design came to, if it can be kept; a full or locked disk is no problem."""
        body = body_of(done)
        on = key.on if done.is_dated else None
        head = {
            "format": FORMAT,
            "key": key.name,
            "body": digest(body),
            "on": on,
            "read": done.read,
        }
        place = self._place(key)
        try:
            place.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
            handle, beside = tempfile.mkstemp(prefix=".", dir=place.parent)
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(json.dumps(head).encode() + b"\n" + body)
                os.replace(beside, place)
            except BaseException:
                os.unlink(beside)
                raise
            _trim(place.parent)
        except (OSError, ValueError):
            return

    def _place(self, key: Key) -> Path:
        return self._folder / key.name[:2] / f"{key.name[2:]}.json"

    def _is_now(self, path: str, then: str | None) -> bool:
        if path not in self._now:
            self._now[path] = now(path, MAX_BYTES + 1)
        return self._now[path] == then


def _under(options: Namespace, forms: Sequence[str]) -> list[Any]:
    """All but the design on which a piece depends, as JSON has it."""
    asked = sorted((name, str(each)) for name, each in vars(options).items() if name not in IDLE)
    program = [FORMAT, version(), sys.version, np.__version__, sorted(_program_files())]
    return [program, os.getcwd(), asked, list(forms)]


def _program_files() -> Iterator[tuple[str, int, int]]:
    """Every file of the program, of its tables and packs, with size and time of change."""
    folders = [str(Path(__file__).resolve().parents[1]), str(builtin_paths()[0].parent)]
    while folders:
        with os.scandir(folders.pop()) as entries:
            for entry in entries:
                if entry.is_dir():
                    if entry.name != "__pycache__":
                        folders.append(entry.path)
                elif entry.name.endswith((".py", ".tsv", ".yaml", ".jinja")):
                    state = entry.stat()
                    yield entry.path, state.st_size, state.st_mtime_ns


def _trim(shelf: Path) -> None:
    """Throw away what has not been used for longest, down to what a shelf may hold."""
    with os.scandir(shelf) as entries:
        files = [(each.stat(), each.path) for each in entries]
    total = sum(state.st_size for state, _ in files)
    for state, path in sorted(files, key=lambda each: (each[0].st_mtime_ns, each[1])):
        if total <= SHELF_BYTES:
            return
        with suppress(OSError):  # another run was first
            os.unlink(path)
        total -= state.st_size
