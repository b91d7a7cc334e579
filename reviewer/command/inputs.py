"""The designs that a command line names: files, folders, and standard input."""

import os
import re
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from reviewer.notation.nearest import nearest
from reviewer.notation.problem import Place, Problem
from reviewer.reading.folder import Folder
from reviewer.reading.source import MAX_BYTES

STANDARD_INPUT = "-"
ENDINGS = (".yaml", ".yml")
# A key at the left edge is a key of the top level, in block style; a file that is one flow table
# begins with its brace. It need not be sound: what is wrong with a design is to be told.
DESIGN = re.compile(
    rb"""^(?:\xef\xbb\xbf)?["']?(?:design|based_on)["']?[ \t]*:(?:[ \t\r\n]|\Z)""", re.M
)
FLOW_DESIGN = re.compile(
    rb"""\A(?:\xef\xbb\xbf)?(?:(?:[ \t]*(?:\#[^\n]*)?|---[ \t]*)\r?\n)*[ \t]*(?:---[ \t]+)?"""
    rb"""\{(?:[^{}\[\]]*,)?\s*["']?(?:design|based_on)["']?[ \t]*:"""
)


@dataclass(frozen=True, slots=True)
class Input:
    """A design to review, by the path that it is called by; or why there is none."""

    path: str
    problem: Problem | None = None
    asked: str | None = None  # the folder of the command line in which it was found
    source: bytes | None = None  # what has been read of it already

    @property
    def folder(self) -> Folder | None:
        """The tree of folders whose files belong to it; none of standard input."""
        return None if self.path == STANDARD_INPUT else Folder.around(self.path, self.asked)

    def read(self) -> bytes:
        """The bytes of the file, one more than the most that is read. Raises OSError."""
        if self.source is not None:
            return self.source
        if self.path == STANDARD_INPUT:
            return sys.stdin.buffer.read(MAX_BYTES + 1)
        with Path(self.path).open("rb") as file:
            return file.read(MAX_BYTES + 1)


def fetched(each: Input, *, always: bool = False) -> Input:
    """A design with its text: where it can be read only once, from standard input, or always.

    Raises OSError.
    """
    if each.path == STANDARD_INPUT or (always and each.problem is None):
        return replace(each, source=each.read())
    return each


def inputs_of(arguments: Iterable[str]) -> Iterator[Input]:
    """The designs of a command line in its order, those of a folder sorted; each once."""
    seen: set[str] = set()
    for argument in arguments:
        for each in _inputs(argument):
            if each.path not in seen or each.problem:
                seen.add(each.path)
                yield each


def _inputs(argument: str) -> Iterator[Input]:
    if argument == STANDARD_INPUT:
        yield Input(argument)
        return
    path = Path(argument)
    if path.is_dir():
        yield from _in_folder(path)
    elif path.exists():
        yield Input(str(path))
    else:
        yield _absent(path)


def _absent(path: Path) -> Input:
    try:
        beside = [each.name for each in path.parent.iterdir()]
    except OSError:
        beside = []
    near = nearest(path.name, beside)
    mend = f"write {path.with_name(near)}" if near else None
    return _without(str(path), "there is no such file", "the path of a design", mend)


def _without(path: str, what: str, expected: str, mend: str | None = None) -> Input:
    return Input(path, Problem(Place(path, 1, 1, 2), what, "", expected, mend))


def _in_folder(folder: Path) -> Iterator[Input]:
    """Every design below a folder, in order of path; hidden folders are passed over."""
    refused: list[OSError] = []
    files = [
        Path(root, name)
        for root, folders, names in os.walk(folder, onerror=refused.append)
        if not _prune(folders)
        for name in names
        if name.endswith(ENDINGS)
    ]
    found = [Input(str(file), asked=str(folder)) for file in sorted(files) if _is_design(file)]
    for error in refused:
        reason = error.strerror or "it cannot be opened"
        yield _without(str(error.filename), f"this folder cannot be read: {reason}", "")
    if not found and not refused:
        expected = "a file ending .yaml with the key design at its top level"
        yield _without(str(folder), "there is no design in this folder", expected)
    yield from found


def _prune(folders: list[str]) -> bool:
    """Take hidden folders out of a walk; it goes on in any case."""
    folders[:] = [name for name in folders if not name.startswith(".")]
    return False


def _is_design(file: Path) -> bool:
    """Whether a file looks like a design; one that cannot be opened does, so that it is told."""
    if not file.is_file():
        return False
    try:
        with file.open("rb") as opened:
            head = opened.read(MAX_BYTES + 1)
    except OSError:
        return True
    return bool(DESIGN.search(head) or FLOW_DESIGN.match(head))
