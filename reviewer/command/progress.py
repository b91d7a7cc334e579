"""One line on a terminal that tells how far long work is, and is gone when it is done."""

from collections.abc import Mapping
from types import TracebackType
from typing import TextIO

from reviewer.command.terminal import width_of
from reviewer.notation.plain import plain
from reviewer.notation.under_way import telling


class Progress:
    """A line under way. It is written over with spaces, so that no terminal needs more than that.

    Without a terminal, or on one that cannot go back to the start of a line, nothing is shown.
    """

    def __init__(self, stream: TextIO, environment: Mapping[str, str]) -> None:
        """Show progress on a stream, if it is a terminal that can."""
        self._stream = stream
        self._wanted = stream.isatty() and environment.get("TERM") != "dumb"
        self._width = width_of(stream, environment) - 1 if self._wanted else 0
        self._shown = ""
        self._lead = ""
        self._telling = telling(self.tell if self._wanted else None)

    def __enter__(self) -> "Progress":
        """Be told how far work is."""
        self._telling.__enter__()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Leave no line behind."""
        self.clear()
        self._telling.__exit__(kind, error, trace)

    def lead(self, text: str, *, now: bool = True) -> None:
        """Put a text in front of what is told from now on; show it at once, if it is to be."""
        self._lead = text
        if now:
            self._show(text)

    def tell(self, what: str, done: int, total: int) -> None:
        """Show how far work is."""
        told = f"{done:,} of {total:,} {what}"
        self._show(f"{self._lead}: {told}" if self._lead else told)

    def clear(self) -> None:
        """Take the line away, before anything else is printed."""
        if self._shown:
            self._write(f"\r{' ' * len(self._shown)}\r")
            self._shown = ""

    def _show(self, text: str) -> None:
        if not self._wanted:
            return
        line = plain(text)[: self._width]
        rest = " " * (len(self._shown) - len(line))
        self._write(f"\r{line}{rest}")
        self._shown = line

    def _write(self, text: str) -> None:
        try:
            self._stream.write(text)
            self._stream.flush()
        except OSError:  # the terminal has gone
            self._wanted = False
