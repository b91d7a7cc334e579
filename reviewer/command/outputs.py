"""Where reports go: standard output, and files that are whole or not there at all."""

import os
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, Protocol

from reviewer.command.terminal import say
from reviewer.command.usage import UsageError
from reviewer.judging.reviewed import Review
from reviewer.notation.nearest import nearest
from reviewer.reporting.words import joined


class Report(Protocol):
    """A report under way: what each design adds to it, and what ends it.

    What a review comes to in it is a piece by itself, made of what JSON has: another process may
    make it, and the cache may keep it.
    """

    def piece(self, review: Review) -> Any:
        """What a review comes to in this report, whatever came before it; nothing else changes."""
        ...

    def put(self, piece: Any) -> str:
        """The text that the piece of a design adds."""
        ...

    def end(self) -> str:
        """The text that comes after the last design."""
        ...


class Printed:
    """A report on standard output."""

    def __init__(self, report: Report) -> None:
        """Print a report as it grows."""
        self.report = report

    def put(self, piece: Any) -> None:
        """Print what a design adds."""
        say(self.report.put(piece))

    def close(self) -> None:
        """Print the end."""
        say(self.report.end())

    def drop(self) -> None:
        """Leave it as it is."""


class Written:
    """A report in a file: written beside it, and moved into its place when it is whole."""

    def __init__(self, path: str, report: Report) -> None:
        """Begin a file. Raises UsageError where it cannot be written."""
        import tempfile  # not wanted where no file is written

        self._path = Path(path)
        self.report = report
        try:
            handle, name = tempfile.mkstemp(prefix=".reviewer-", dir=self._path.parent)
        except OSError as error:
            raise _unwritable(path, error) from None
        self._beside = Path(name)
        self._file = os.fdopen(handle, "w", encoding="utf-8", errors="replace", newline="\n")

    def put(self, piece: Any) -> None:
        """Write what a design adds."""
        self._file.write(self.report.put(piece))

    def close(self) -> None:
        """Write the end, and put the file in its place. Raises UsageError."""
        self._file.write(self.report.end())
        self._file.close()
        try:
            self._beside.chmod(0o666 & ~file_mask())
            self._beside.replace(self._path)
        except OSError as error:
            self._beside.unlink(missing_ok=True)
            raise _unwritable(str(self._path), error) from None

    def drop(self) -> None:
        """Take the unfinished file away."""
        self._file.close()
        self._beside.unlink(missing_ok=True)


Output = Printed | Written


def _unwritable(path: str, error: OSError) -> UsageError:
    reason = error.strerror or "it cannot be opened"
    return UsageError(f"the output cannot be written: {reason}", path, "a file in a folder that is")


def file_mask() -> int:
    """The permissions that new files do not get; it can only be read by setting it."""
    mask = os.umask(0o022)
    os.umask(mask)
    return mask


def format_of(path: str, endings: Mapping[str, str]) -> str:
    """The format of an output file, by its ending. Raises UsageError."""
    ending = "".join(Path(path).suffixes[-2:])
    ending = ending if ending in endings else Path(path).suffix
    if ending not in endings:
        near = nearest(ending, endings)
        mend = f"write {Path(path).with_suffix(near)}" if near else ""
        expected = f"a file ending {joined(list(endings), 'or')}"
        raise UsageError("there is no format with this ending", path, expected, mend)
    return endings[ending]


def output_of(path: str | None, make: Callable[[], Report]) -> Output:
    """An output: standard output, or a file."""
    return Printed(make()) if path is None else Written(path, make())
