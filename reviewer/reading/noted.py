"""What a review has read beside the design itself: noted for who has to know when it changes."""

import hashlib
import os
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar

Noted = dict[str, str | None]
"""By path: a digest of the file's bytes, or of a folder's names; None where there is nothing."""

NO_FILE = "code"  # noted of what is no file: it is never the same again

_NOTED: ContextVar[Noted | None] = ContextVar("noted", default=None)


@contextmanager
def noting(into: Noted) -> Iterator[None]:
    """Note what is read meanwhile."""
    before = _NOTED.set(into)
    try:
        yield
    finally:
        _NOTED.reset(before)


def note_file(path: str, content: bytes | None) -> None:
    """Note a file that was read, or that was looked for and is not there."""
    noted = _NOTED.get()
    if noted is not None:
        noted[path] = None if content is None else digest(content)


def note_names(folder: str, names: Iterable[str]) -> None:
    """Note a folder whose files were looked through."""
    noted = _NOTED.get()
    if noted is not None:
        noted[folder] = digest_of_names(names)


def note_all(others: Mapping[str, str | None]) -> None:
    """Note what was noted before, by whoever read it then."""
    noted = _NOTED.get()
    if noted is not None:
        noted.update(others)


def digest(content: bytes) -> str:
    """A digest of bytes, the same on every machine."""
    return hashlib.sha256(content).hexdigest()


def digest_of_names(names: Iterable[str]) -> str:
    """A digest of the names in a folder."""
    return digest("\0".join(sorted(names)).encode("utf-8", "surrogateescape"))


def now(path: str, most: int) -> str | None:
    """What would be noted of a path now; of a file no more than so many bytes are read."""
    try:
        if os.path.isdir(path):
            return digest_of_names(os.listdir(path))
        with open(path, "rb") as file:
            return digest(file.read(most))
    except OSError:
        return None
