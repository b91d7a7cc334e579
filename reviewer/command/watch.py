"""reviewer check --watch: look again on each save, until it is interrupted."""

import os
import sys
from argparse import Namespace
from collections.abc import Iterator

from reviewer.command.looking import Watcher, watched
from reviewer.command.terminal import complain, say, style_of
from reviewer.command.usage import UsageError
from reviewer.reading.folder import ENDINGS
from reviewer.reporting.words import counted

PATIENCE = 1000  # ms after which all is looked at even if nothing was heard
SETTLED = 200  # ms within which several saves are one


def watch(options: Namespace) -> int:
    """Watch until interrupted, which is no failure. Raises UsageError."""
    unfit = watched(options)
    if unfit:
        raise UsageError(
            "a watch tells what changes as text, on standard output, of files",
            f"{unfit[0]} with --watch", "one or the other",
        )  # fmt: skip
    watcher = Watcher(options, style_of(sys.stdout, os.environ))
    try:
        for text in watcher.look():
            say(text)
        for folders in _rounds(watcher):
            for _ in _woken(folders):
                for text in watcher.look():
                    say(f"\n{text}")
                if watcher.folders != folders:
                    break
    except KeyboardInterrupt:
        return 0
    return 0


def _rounds(watcher: Watcher) -> Iterator[set[str]]:
    """The folders to watch, again each time they have become others."""
    designs = counted(watcher.count, "design")
    complain(f"reviewer check: watching {designs} and what they depend on; Ctrl-C ends it")
    while True:
        yield watcher.folders


def _woken(folders: set[str]) -> Iterator[None]:
    """Wake once at first, for what was saved before anybody listened; then on each save."""
    from watchfiles import watch as saves  # it takes long to load

    yield None
    for _ in saves(
        *sorted(folders),
        watch_filter=lambda _, path: path.endswith(ENDINGS) or os.path.isdir(path),
        debounce=SETTLED,
        rust_timeout=PATIENCE,
        yield_on_timeout=True,
        recursive=False,
    ):
        yield None
