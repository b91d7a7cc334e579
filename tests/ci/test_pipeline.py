"""The pipeline of README, its steps run by a shell on the repository of a shop."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

ROOT = Path(__file__).parents[2]
SHOP = ROOT / "specimens" / "shop"


def blocks() -> list[Any]:
    """The YAML blocks of README's part on repositories, read."""
    text = (ROOT / "README.md").read_text("utf-8")
    part = text.partition("## In your repository")[2].partition("\n## ")[0]
    return [yaml.safe_load(each) for each in re.findall(r"```yaml\n(.*?)```", part, re.S)]


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    """A checkout of a shop's repository, in which the program is installed."""
    folder = tmp_path / "designs"
    shutil.copytree(SHOP, folder)
    command = folder / ".venv" / "bin" / "reviewer"
    command.parent.mkdir(parents=True)
    command.write_text(
        f"#!{sys.executable}\nfrom reviewer.command.main import console\nconsole()\n", "utf-8"
    )
    command.chmod(0o755)
    return folder


def steps() -> list[str]:
    """The commands of the pipeline, in order."""
    (job,) = blocks()[0]["jobs"].values()
    return [step["run"] for step in job["steps"] if "run" in step]


def ran(folder: Path, step: str) -> "subprocess.CompletedProcess[str]":
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    return subprocess.run(
        step, shell=True, cwd=folder, env=environment, capture_output=True, text=True, check=False
    )


def test_the_first_step_installs_it() -> None:
    assert "pip install" in steps()[0]


def test_sound_designs_go_through(repository: Path) -> None:
    for step in steps()[1:]:
        found = ran(repository, step)
        assert found.returncode == 0, found.stdout + found.stderr
    assert (repository / "review.md").read_text("utf-8").startswith("#")
    assert (repository / "review.sarif").stat().st_size > 1000


def test_a_design_that_fails_stops_it(repository: Path) -> None:
    design = repository / "designs" / "carving_stand.yaml"
    text = design.read_text("utf-8")
    design.write_text(re.sub(r"thickness: \d+", "thickness: 9", text), "utf-8")
    *before, last = steps()[1:]
    assert all(ran(repository, step).returncode == 0 for step in before)
    assert ran(repository, last).returncode == 1


def test_the_hook_of_readme_is_there() -> None:
    (asked,) = blocks()[1]["repos"][0]["hooks"]
    hooks = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"))
    assert asked["id"] in {each["id"] for each in hooks}
