"""The hook of .pre-commit-hooks.yaml, installed and run by the real pre-commit."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CONFIG = """\
repos:
  - repo: {repository}
    rev: {revision}
    hooks:
      - id: review-designs
"""
WHOLE = ("reviewer", "rules", "pyproject.toml", "README.md", "LICENSE", ".pre-commit-hooks.yaml")
SOUND = (ROOT / "specimens" / "first_design.yaml").read_text("utf-8")
TIPPING = SOUND.replace("circle: 400}", "circle: 120}")


def git(folder: Path, *words: str) -> str:
    """What git prints, run in a folder by a person of the test's own."""
    who = ["-c", "user.name=A. Test", "-c", "user.email=test@example.org"]
    command = ["git", *who, *words]
    ran = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=True)
    return ran.stdout.strip()


@pytest.fixture(scope="module")
def hooks(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """This project as a repository of hooks, and its revision."""
    folder = tmp_path_factory.mktemp("hooks")
    for name in WHOLE:
        source = ROOT / name
        if source.is_dir():
            left_out = shutil.ignore_patterns("__pycache__")
            shutil.copytree(source, folder / name, ignore=left_out)
        else:
            shutil.copy(source, folder / name)
    git(folder, "init", "-q")
    git(folder, "add", "-A")
    git(folder, "commit", "-q", "-m", "hooks")
    return folder, git(folder, "rev-parse", "HEAD")


@pytest.fixture
def designs(hooks: tuple[Path, str], tmp_path: Path) -> Path:
    """A repository of designs that names the hook."""
    repository, revision = hooks
    folder = tmp_path / "designs"
    folder.mkdir()
    git(folder, "init", "-q")
    config = CONFIG.format(repository=repository, revision=revision)
    (folder / ".pre-commit-config.yaml").write_text(config, "utf-8")
    return folder


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The environment of pre-commit; what it installs is kept for the tests of this file."""
    home = tmp_path_factory.mktemp("pre-commit")
    return {**os.environ, "PRE_COMMIT_HOME": str(home), "PRE_COMMIT_COLOR": "never"}


def ran(folder: Path, environment: dict[str, str]) -> "subprocess.CompletedProcess[str]":
    """Run the hooks on what is staged."""
    git(folder, "add", "-A")
    return subprocess.run(
        [sys.executable, "-m", "pre_commit", "run", "--show-diff-on-failure"],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


def test_a_commit_is_reviewed(designs: Path, environment: dict[str, str]) -> None:
    """A sound design may be committed; one that tips is held, and told what to change."""
    (designs / "stand.yaml").write_text(SOUND, "utf-8")
    found = ran(designs, environment)
    assert "review designs" in found.stdout
    assert found.returncode == 0, found.stdout + found.stderr
    (designs / "stand.yaml").write_text(TIPPING, "utf-8")
    found = ran(designs, environment)
    assert found.returncode == 1
    assert "box.stands" in found.stdout
    (designs / "stand.yaml").write_text(SOUND, "utf-8")
    (designs / "notes.txt").write_text("nothing to review", "utf-8")
    assert ran(designs, environment).returncode == 0
