"""Files made to break the program are refused with words: in bounded time, without a fault.

One process reads them all, each in a fork that the system ends after a second of reckoning.
"""

import json
import subprocess
import sys
from pathlib import Path
from runpy import run_path
from typing import Any

import pytest

HERE = Path(__file__).parent
MOST_MEBIBYTES = 200
# Large, but nothing is wrong with them: they are reviewed.
SOUND = {"design: rollers without end"}


def names() -> list[str]:
    """The names of the inputs; they are run by their path, as no folder of tests is a package."""
    return [each.name for each in run_path(str(HERE / "inputs.py"))["hostile"]()]


NAMES = names()


@pytest.fixture(scope="module")
def results() -> dict[str, Any]:
    """What became of each input, by its name."""
    done = subprocess.run(
        [sys.executable, str(HERE / "driver.py")], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    lines = [json.loads(line) for line in done.stdout.splitlines()]
    return {line["name"]: line for line in lines}


def test_each_has_a_name_of_its_own() -> None:
    assert len(set(NAMES)) == len(NAMES) > 150


@pytest.mark.parametrize("name", NAMES)
def test_it_is_refused_with_words_and_soon(results: dict[str, Any], name: str) -> None:
    result = results[name]
    assert result["ended"] == 0, "a fault, or more than a second"
    assert result["mebibytes"] <= MOST_MEBIBYTES
    assert result["strange"] == [], "something that steers a terminal"
    assert (result["problems"] > 0) == (name not in SOUND)
    assert "Traceback" not in result["told"]
    assert "a secret" not in result["told"]
    assert "root:" not in result["told"]
