"""Wrong command lines, as whole messages; help and version."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from reviewer.command.main import COMMANDS

Run = Callable[..., Any]
OPTIONS = (
    "--all, --allow-open, --cache, --fail-at, --format, --help, --no-remedies, --on, --output, "
    "--rules, --shop, --since, --tolerance, --watch, --what-matters"
)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (
            "chek a.yaml",
            "reviewer: there is no such command\n    found chek\n"
            "    expected one of check, trace, compare, size, sheet, draw, rules, start, schema, "
            "completion\n"
            "    mend: write reviewer check\n",
        ),
        (
            "--verion",
            "reviewer: there is no such command\n    found --verion\n"
            "    expected one of check, trace, compare, size, sheet, draw, rules, start, schema, "
            "completion\n",
        ),
        (
            "check",
            "reviewer check: no design is named\n    expected the path of a file or folder, or -\n",
        ),
        (
            "check a.yaml --fomat json",
            "reviewer check: there is no such option\n    found --fomat\n"
            f"    expected one of {OPTIONS}\n    mend: write --format\n",
        ),
        (
            "check a.yaml --form=json",
            "reviewer check: there is no such option\n    found --form=json\n"
            f"    expected one of {OPTIONS}\n    mend: write --format\n",
        ),
        (
            "check a.yaml --outptu=review_of_the_bench.json",
            "reviewer check: there is no such option\n"
            "    found --outptu=review_of_the_bench.json\n"
            f"    expected one of {OPTIONS}\n    mend: write --output\n",
        ),
        (
            "check a.yaml --format xml",
            "reviewer check: there is no such choice\n    found xml\n"
            "    expected one of text, json, sarif, markdown, page\n",
        ),
        (
            "check a.yaml --format",
            "reviewer check: an option lacks its value\n    found --format\n"
            "    expected --format and its value\n",
        ),
        (
            "check a.yaml --fail-at shoud",
            "reviewer check: there is no such choice\n    found shoud\n"
            "    expected one of must, should, note\n    mend: write should\n",
        ),
        (
            "check a.yaml --on 30.6.2026",
            "reviewer check: this is no calendar date\n    found 30.6.2026\n"
            "    expected year, month and day, as in 2026-11-25\n",
        ),
        (
            "check a.yaml --on 2026-02-30",
            "reviewer check: this is no calendar date\n    found 2026-02-30\n"
            "    expected year, month and day, as in 2026-11-25\n",
        ),
        (
            "check a.yaml --on 20261125",
            "reviewer check: this is no calendar date\n    found 20261125\n"
            "    expected year, month and day, as in 2026-11-25\n",
        ),
        (
            "check a.yaml --allow-open=yes",
            "reviewer check: an option has a value that it does not take\n"
            "    found --allow-open\n    expected --allow-open alone\n",
        ),
        (
            "trace a.yaml",
            "reviewer trace: a trace needs a design and a name\n    found a.yaml\n"
            "    expected FILE PART.NAME, as in bench.yaml ring.carry.peak_load\n",
        ),
        (
            "trace a.yaml b.c d",
            "reviewer trace: there is one argument too many\n    found d\n",
        ),
    ],
)
def test_a_wrong_command_line(run: Run, words: str, told: str) -> None:
    ran = run(*words.split())
    assert (ran.status, ran.out, ran.err) == (2, "", told)


def test_an_argument_with_escapes_cannot_steer_the_terminal(run: Run) -> None:
    ran = run("check", "--\x1b[2J")
    assert ran.status == 2
    assert "    found --\\x1b[2J\n" in ran.err


@pytest.mark.parametrize("command", COMMANDS)
def test_help_shows_a_real_example(run: Run, folder: Path, command: str) -> None:
    ran = run(command, "--help")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith(f"usage: reviewer {command}")
    assert f"\nexample: reviewer {command} " in ran.out
    assert list(folder.iterdir()) == []


@pytest.mark.parametrize("words", [("--help",), ("-h",), ("help",)])
def test_help_names_every_command(run: Run, words: tuple[str, ...]) -> None:
    ran = run(*words)
    assert (ran.status, ran.err) == (0, "")
    for name, says in COMMANDS.items():
        assert re.search(rf"^  {name} +{re.escape(says)}$", ran.out, re.M)
        assert f"\n  reviewer {name} " in ran.out  # with a real example


def test_no_command_at_all_shows_the_help(run: Run) -> None:
    assert run().status == 2
    assert run().out == run("--help").out


def test_version(run: Run) -> None:
    from importlib.metadata import version

    assert run("--version").out == f"reviewer {version('mechanism-reviewer')}\n"
