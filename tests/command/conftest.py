"""Command lines run in this process, in a folder of their own, by rules of the tests' own."""

import io
import os
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from reviewer.command.main import main
from reviewer.judging.pack import Pack, read_pack
from reviewer.parts.registry import KINDS

HERE = Path(__file__).parent

SOUND = "design: Lid\nparts:\n  lid: {kind: gap, least: 30 mm, depth: 20 mm, closing_force: 40 N}\n"


class Ran(NamedTuple):
    """What a command line came to."""

    status: int
    out: str
    err: str


Run = Callable[..., Ran]


@pytest.fixture(scope="session")
def house() -> Pack:
    """The rules of the tests' own."""
    pack = read_pack((HERE / "house.yaml").read_bytes(), "house.yaml", KINDS)
    assert pack.problems == ()
    return pack


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder, which is the working folder."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("REVIEWER_CACHE", "off")
    for name in ("NO_COLOR", "FORCE_COLOR", "COLUMNS", "REVIEWER_TRACEBACK"):
        monkeypatch.delenv(name, raising=False)
    return tmp_path


@pytest.fixture
def run(
    folder: Path, house: Pack, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Run:
    """Run a command line by the rules of the tests' own."""
    monkeypatch.setattr("reviewer.command.packs.builtin_packs", lambda: (house,))

    def run(*words: str, stdin: bytes = b"") -> Ran:
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(stdin), "utf-8"))
        capsys.readouterr()
        status = main(words)
        return Ran(status, *capsys.readouterr())

    return run


@pytest.fixture
def design(folder: Path) -> Callable[..., Path]:
    """Write a design whose one gap has some fields; a sound one where none are given."""

    def write(name: str = "lid.yaml", *, more: str = "", **fields: str) -> Path:
        given = {"least": "30 mm", "depth": "20 mm", "closing_force": "40 N", **fields}
        told = ", ".join(f"{key}: {value}" for key, value in given.items() if value)
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(f"design: Lid\nparts:\n  lid: {{kind: gap, {told}}}\n{more}", "utf-8")
        return path

    return write


@pytest.fixture
def git() -> Callable[..., None]:
    """Run git in a folder, as a person of no machine's settings."""

    def git(folder: Path, *words: str) -> None:
        person = {f"GIT_{who}_{what}": "maker@example.org" if what == "EMAIL" else "A maker"
                  for who in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL")}  # fmt: skip
        hushed = {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull}
        subprocess.run(
            ["git", *words], cwd=folder, check=True, capture_output=True,
            env={**os.environ, **person, **hushed},
        )  # fmt: skip

    return git
