"""README says what is so: its first design is the specimen, its commands are those of CI."""

import re
from pathlib import Path

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text("utf-8")


def test_the_first_design_is_the_specimen() -> None:
    (shown,) = re.findall(r"```yaml\n(design:.*?|# The first.*?)```", README, re.DOTALL)
    assert shown == (ROOT / "specimens" / "first_design.yaml").read_text("utf-8")


def test_ci_runs_the_very_test_command() -> None:
    commands = re.findall(r"^    (python3 -m venv .*)$", README, re.MULTILINE)
    assert len(commands) == 2
    assert commands[1] in (ROOT / ".ci" / "run").read_text("utf-8").splitlines()


def test_readme_opens_with_the_users_job() -> None:
    first = README.split("\n\n")[1]
    assert first.startswith("You design and build things that move")
