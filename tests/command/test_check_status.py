"""The exit status of a check, row by row of the contract (DESIGN, section 9)."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
Write = Callable[..., Path]

CONCEDED = "concessions:\n  - {rule: gap.wide, part: lid, by: Ann, why: it is felted"
CONTRACT = [
    # fields of the gap, what follows in the file, options, status, which row of the contract
    ({}, "", "", 0, "nothing at or above the level"),
    ({"least": "9 mm"}, "", "", 1, "a fail at the level"),
    ({"depth": "90 mm"}, "", "", 0, "a fail below the level"),
    ({"depth": "90 mm"}, "", "--fail-at should", 1, "a fail at a lower level"),
    ({"closing_force": "400 N"}, "", "--fail-at should", 0, "a fail below a lower level"),
    ({"closing_force": "400 N"}, "", "--fail-at note", 1, "a fail at the lowest level"),
    ({"least": "9 mm"}, "", "--fail-at note", 1, "a fail above the level"),
    ({"least": ""}, "", "", 1, "an open finding at the level"),
    ({"least": ""}, "", "--allow-open", 0, "an open finding that is let pass"),
    ({"depth": ""}, "", "", 0, "an open finding below the level"),
    ({"depth": ""}, "", "--fail-at should", 1, "an open finding at a lower level"),
    ({"least": "9 mm"}, "", "--allow-open", 1, "a fail is not let pass with what is open"),
    ({"must_close": "true"}, "", "", 0, "a question to a person does not count"),
    ({"least": "9 mm"}, f"{CONCEDED}}}\n", "", 0, "a conceded fail does not count"),
    (
        {"least": "9 mm"},
        f"{CONCEDED}, until: 2026-06-30}}\n",
        "--on 2026-06-30",
        0,
        "a concession holds on its last day",
    ),
    (
        {"least": "9 mm"},
        f"{CONCEDED}, until: 2026-06-30}}\n",
        "--on 2026-07-01",
        1,
        "a concession past its day: the fail counts again",
    ),
    ({}, f"{CONCEDED}}}\n", "", 1, "a concession that matches no fail is stale"),
    ({"least": "9 mn"}, "", "", 2, "an input could not be read"),
    ({"least": "9 mn"}, "", "--allow-open --fail-at note", 2, "whatever the level"),
]


@pytest.mark.parametrize(("fields", "more", "options", "status", "row"), CONTRACT)
def test_the_contract(
    run: Run,
    design: Write,
    fields: dict[str, str],
    more: str,
    options: str,
    status: int,
    row: str,
) -> None:
    design(more=more, **fields)
    assert run("check", "lid.yaml", *options.split()).status == status, row


@pytest.mark.parametrize(
    ("names", "status"),
    [
        ("sound.yaml", 0),
        ("sound.yaml failing.yaml", 1),
        ("sound.yaml failing.yaml broken.yaml sound.yaml", 2),
        ("broken.yaml sound.yaml", 2),
        ("absent.yaml failing.yaml", 2),
        ("failing.yaml sound.yaml", 1),
    ],
)
def test_the_highest_wins_and_the_rest_are_reviewed(
    run: Run, design: Write, names: str, status: int
) -> None:
    design("sound.yaml")
    design("failing.yaml", least="9 mm")
    design("broken.yaml", least="9 mn")
    ran = run("check", *names.split())
    assert ran.status == status
    for name in names.split():
        assert f"{name}\n" in ran.out


def test_a_pack_that_cannot_be_read_is_told_and_the_design_reviewed(
    run: Run, design: Write, folder: Path
) -> None:
    design()
    (folder / "ours.yaml").write_text("- rule: gap.extra\n  level: mist\n", "utf-8")
    ran = run("check", "lid.yaml", "--rules", "ours.yaml")
    assert ran.status == 2
    assert ran.err.count("ours.yaml:1:3: a rule lacks stage\n") == 1
    assert "Nothing to change.\nReviewed without what is wrong in ours.yaml.\n" in ran.out


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (None, "ours.yaml:1:1: this file cannot be read: No such file or directory\n"),
        ("", "ours.yaml:1:1: "),
        ("- rule: gap.wide\n", "ours.yaml:1:3: a rule lacks because\n"),
        (
            "- rule: gap.wide\n  require: least >= 25 mm\n  level: must\n  stage: cutting\n"
            "  says: Said.\n  because: So.\n  source: shop\n"
            "  proof: {holds: {least: 30 mm}, fails: {least: 9 mm}}\n",
            "ours.yaml:1:9: two rules have the same name\n",
        ),
    ],
)
def test_no_pack_with_a_mistake_is_judged_by(
    run: Run, design: Write, folder: Path, text: str | None, told: str
) -> None:
    design()
    if text is not None:
        (folder / "ours.yaml").write_text(text, "utf-8")
    ran = run("check", "lid.yaml", "--rules", "ours.yaml", "--format", "json")
    assert ran.status == 2
    assert ran.err.startswith(told)
    assert '"path": "ours.yaml"' in ran.out  # among the problems of the design
    assert '"rule": "gap.shallow"' in ran.out  # by the rules that could be read


def test_another_pack_is_judged_by(run: Run, design: Write, folder: Path) -> None:
    design()
    (folder / "ours.yaml").write_text(
        "- rule: gap.ours\n  require: least >= 50 mm\n  level: must\n  stage: cutting\n"
        "  says: Said.\n  because: So.\n  source: shop\n"
        "  proof: {holds: {least: 60 mm}, fails: {least: 9 mm}}\n",
        "utf-8",
    )
    ran = run("check", "lid.yaml", "--rules", "ours.yaml")
    assert (ran.status, ran.err) == (1, "")
    assert "lid.yaml:3 lid.ours\n" in ran.out
    twice = (folder / "ours.yaml").read_text("utf-8").replace("gap.ours", "gap.wide")
    (folder / "twice.yaml").write_text(twice, "utf-8")
    ran = run("check", "lid.yaml", "--rules", "twice.yaml", "--rules", "ours.yaml")
    assert ran.status == 2
    assert ran.err.startswith("twice.yaml:1:9: two rules have the same name\n")
    assert "lid.yaml:3 lid.ours\n" in ran.out
