"""Git, asked so that nothing of a repository runs: no hook, filter, monitor, pager or transport."""

import os
import subprocess
from pathlib import Path

SECONDS = 60  # that git may take
# Whatever of a repository's own settings names a program to run is overruled or never reached: only
# objects are asked for, and none is fetched from elsewhere.
SAFELY = (
    *("git", "--no-pager", "-c", "core.fsmonitor=false", "-c", f"core.hooksPath={os.devnull}"),
    *("-c", "protocol.allow=never", "-c", "diff.external="),
)
QUIET = {
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_LITERAL_PATHSPECS": "1",
    "LC_ALL": "C",
}


def asked(words: list[str], folder: Path, most: int) -> tuple[int, bytes, str]:
    """What git answers in a folder: its status, one byte more than `most` at most, what it says.

    Raises OSError where git cannot be started.
    """
    ours = {name: text for name, text in os.environ.items() if not name.startswith("GIT_")}
    with subprocess.Popen(
        [*SAFELY, *words],
        cwd=folder,
        env={**ours, **QUIET},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as git:
        assert git.stdout is not None
        assert git.stderr is not None
        found = git.stdout.read(most + 1)
        if len(found) > most:
            git.kill()
            return 0, found, ""
        told = git.stderr.read(2000).decode("utf-8", "replace").strip()
        return git.wait(SECONDS), found, told
