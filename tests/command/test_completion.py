"""Shell completion, in a real bash."""

import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from reviewer.command.completion import SHELLS
from reviewer.command.main import COMMANDS

Run = Callable[..., Any]
ASK = """\
source completion.bash
COMP_WORDS=({words})
COMP_CWORD=$(( ${{#COMP_WORDS[@]}} - 1 ))
_shtab_reviewer
printf '%s\\n' "${{COMPREPLY[@]}}"
"""


def completed(folder: Path, words: str) -> set[str]:
    """What bash offers in place of the last word."""
    ran = subprocess.run(
        ["bash", "-c", ASK.format(words=words)],
        cwd=folder,
        capture_output=True,
        text=True,
        check=True,
    )
    return set(ran.stdout.split())


@pytest.mark.parametrize(
    ("words", "offered"),
    [
        ("reviewer ''", set(COMMANDS)),
        ("reviewer com", {"compare", "completion"}),
        ("reviewer check --fail-at ''", {"must", "should", "note"}),
        ("reviewer check --what", {"--what-matters"}),
        ("reviewer check ben", {"bench.yaml"}),
        ("reviewer rules --gr", {"--graph"}),
        ("reviewer completion ''", set(SHELLS)),
    ],
)
def test_bash(run: Run, folder: Path, words: str, offered: set[str]) -> None:
    (folder / "completion.bash").write_text(run("completion", "bash").out, "utf-8")
    (folder / "bench.yaml").touch()
    found = completed(folder, words)
    assert offered <= found
    if not words.endswith("''"):
        assert found == offered


@pytest.mark.parametrize("shell", SHELLS)
def test_every_shell_is_told_every_command(run: Run, shell: str) -> None:
    ran = run("completion", shell)
    assert (ran.status, ran.err) == (0, "")
    assert all(name in ran.out for name in COMMANDS)


def test_no_shell(run: Run) -> None:
    ran = run("completion")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == (
        "reviewer completion: no shell is named\n    expected one of bash, zsh, tcsh\n"
    )
