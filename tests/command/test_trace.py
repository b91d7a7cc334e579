"""reviewer trace: names found and not found, both formats."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
Write = Callable[..., Path]


def test_a_given_value(run: Run, design: Write) -> None:
    design(least="9 mm")
    ran = run("trace", "lid.yaml", "lid.least")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out == (
        "lid.least = 9 mm\n"
        "  smallest width over the whole travel\n"
        '  under "own weight"\n'
        "  lid.yaml:3\n"
    )


def test_a_rule_on_a_part_in_json(run: Run, design: Write) -> None:
    design(least="9 mm")
    ran = run("trace", "lid.yaml", "lid.wide", "--format", "json")
    assert (ran.status, ran.err) == (0, "")
    data = json.loads(ran.out)
    assert data["value"] == round(25 / 9, 11)  # 12 digits
    assert (data["unit"], data["formula"], data["source"]) == (
        "1",
        "fail: least >= 25 mm",
        "the house",
    )
    (inner,) = data["inputs"]
    assert (inner["name"], inner["value"], inner["unit"], inner["line"]) == (
        "lid.least",
        9.0,
        "mm",
        3,
    )


def test_standard_input(run: Run) -> None:
    text = b"design: Lid\nparts:\n  lid: {kind: gap, least: 9 mm}\n"
    assert run("trace", "-", "lid.least", stdin=text).out.startswith("lid.least = 9 mm\n")


@pytest.mark.parametrize(
    ("name", "mend"),
    [
        ("lid.lest", "    mend: write lid.least\n"),
        ("lid.wid", "    mend: write lid.wide\n"),
        ("lids", "    mend: write lid\n"),
        ("", ""),
        ("nothing.like.it", ""),
    ],
)
def test_a_name_that_is_not_there(run: Run, design: Write, name: str, mend: str) -> None:
    design()
    ran = run("trace", "lid.yaml", name)
    found = f"    found {name}\n" if name else ""
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == (
        "reviewer trace: the design has no such quantity and no such rule\n"
        f"{found}    expected PART.NAME, the name of a quantity of a part or of a rule on it\n"
        f"{mend}"
    )


def test_a_design_that_cannot_be_read(run: Run, design: Write) -> None:
    design(least="9 mn")
    ran = run("trace", "lid.yaml", "lid.least")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("lid.yaml:3:")
    ran = run("trace", "absent.yaml", "lid.least")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("absent.yaml:1:1: ")


def test_a_rule_of_another_pack(run: Run, design: Write, folder: Path) -> None:
    design()
    (folder / "ours.yaml").write_text(
        "- rule: gap.ours\n  require: least >= 50 mm\n  level: must\n  stage: cutting\n"
        "  says: Said.\n  because: So.\n  source: shop\n"
        "  proof: {holds: {least: 60 mm}, fails: {least: 9 mm}}\n",
        "utf-8",
    )
    assert run("trace", "lid.yaml", "lid.ours").status == 2
    ran = run("trace", "lid.yaml", "lid.ours", "--rules", "ours.yaml")
    assert ran.status == 0
    assert "  fail: least >= 50 mm [shop]\n" in ran.out


def test_a_part_alone_lists_what_it_has(run: Run, design: Write) -> None:
    """Those of the file first, each with its line, then the derived ones with what they are."""
    design()
    ran = run("trace", "lid.yaml", "lid")
    assert ran.status == 0
    lines = ran.out.splitlines()
    assert lines[0].startswith("lid, a gap: ")
    given = next(index for index, line in enumerate(lines) if "lid.least = " in line)
    assert "line" in lines[given]
    assert not any("lid.acts" in line for line in lines[:given])
    listed = json.loads(run("trace", "lid.yaml", "lid", "--format", "json").out)
    assert listed["value"] == "gap"
    assert {"lid.least", "lid.most"} <= {each["name"] for each in listed["inputs"]}
