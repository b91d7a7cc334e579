"""reviewer rules, start and schema."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from reviewer.command.main import main
from reviewer.parts.registry import KINDS

Run = Callable[..., Any]

RULE = (
    "- rule: gap.ours\n  require: least >= 50 mm\n  level: must\n  stage: cutting\n"
    "  says: Said.\n  because: So.\n  source: shop\n"
)


def test_rules_are_listed(run: Run) -> None:
    ran = run("rules")
    assert (ran.status, ran.err) == (0, "")
    assert (
        "gap.wide\n    must, before cutting, hazard: crushing\n    Is it wide enough?\n" in ran.out
    )
    assert ran.out.endswith("\nFour rules.\n")


def test_rules_of_another_pack_are_listed(run: Run, folder: Path) -> None:
    (folder / "ours.yaml").write_text(
        f"{RULE}  proof: {{holds: {{least: 60 mm}}, fails: {{least: 9 mm}}}}\n", "utf-8"
    )
    ran = run("rules", "--rules", "ours.yaml")
    assert ran.status == 0
    assert "    stated in   ours.yaml:1\n" in ran.out
    assert ran.out.endswith("\nFive rules.\n")


def test_proofs_that_hold(run: Run) -> None:
    ran = run("rules", "--prove")
    assert (ran.status, ran.out, ran.err) == (0, "Four rules proved both ways, all hold.\n", "")


def test_a_proof_that_does_not_hold(run: Run, folder: Path) -> None:
    (folder / "ours.yaml").write_text(
        f"{RULE}  proof: {{holds: {{least: 60 mm}}, fails: {{least: 70 mm}}}}\n", "utf-8"
    )
    ran = run("rules", "--prove", "--rules", "ours.yaml")
    assert ran.status == 1
    place, _, told = ran.err.partition(": ")
    assert place.startswith("ours.yaml:8:")
    assert told.startswith(
        "the proof of gap.ours does not show what it says under fails\n"
        "    found a pass\n"
        "    expected a fail\n"
        "      proof: {holds: {least: 60 mm}, fails: {least: 70 mm}}\n"
    )
    assert ran.out == "Five rules proved both ways, one proof does not hold.\n"


def test_a_pack_that_cannot_be_read(run: Run, folder: Path) -> None:
    (folder / "ours.yaml").write_text(RULE, "utf-8")
    for words in (("rules",), ("rules", "--prove")):
        ran = run(*words, "--rules", "ours.yaml")
        assert ran.status == 2
        assert ran.err.startswith("ours.yaml:1:3: a rule lacks proof\n")


def test_start_writes_a_design_that_passes_by_the_built_in_rules(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["start"]) == 0
    told = capsys.readouterr()
    assert told.err == ""
    assert "  reviewer check design.yaml\n" in told.out
    text = (folder / "design.yaml").read_text("utf-8")
    assert len([line for line in text.splitlines() if line.strip()]) < 30
    assert main(["check", "design.yaml"]) == 0
    assert "Nothing to change" in capsys.readouterr().out
    assert main(["check", "design.yaml", "--fail-at", "note"]) == 0
    assert main(["trace", "design.yaml", "ring.carry.peak_load"]) == 0


def test_start_takes_a_name_and_never_overwrites(run: Run, folder: Path) -> None:
    assert run("start", "mine.yaml").status == 0
    (folder / "mine.yaml").write_text("mine", "utf-8")
    ran = run("start", "mine.yaml")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == (
        "reviewer start: the file is there already, and is left as it is\n"
        "    found mine.yaml\n"
        "    expected the name of a file that does not exist yet\n"
        "    mend: name another, as in reviewer start second.yaml\n"
    )
    assert (folder / "mine.yaml").read_text("utf-8") == "mine"


@pytest.mark.parametrize("name", ["nowhere/design.yaml", "."])
def test_start_where_nothing_can_be_written(run: Run, name: str) -> None:
    ran = run("start", name)
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("reviewer start: the file ")
    assert f"    found {name}\n" in ran.err


def test_schema_is_one_that_editors_read(run: Run) -> None:
    ran = run("schema")
    assert (ran.status, ran.err) == (0, "")
    schema = json.loads(ran.out)
    Draft202012Validator.check_schema(schema)
    for kind in (name for name, kind in KINDS.items() if not kind.implied):
        assert f"part_{kind}" in schema["$defs"]


@pytest.mark.parametrize("words", [("check", "lid.yaml"), ("trace", "lid.yaml", "lid.least")])
def test_schema_of_what_is_printed_holds_for_it(
    run: Run, design: Callable[..., Path], words: tuple[str, ...]
) -> None:
    design(least="9 mm")
    ran = run("schema", "--of", {"check": "review", "trace": "trace"}[words[0]])
    assert ran.status == 0
    schema = json.loads(ran.out)
    Draft202012Validator.check_schema(schema)
    printed = json.loads(run(*words, "--format", "json").out)
    Draft202012Validator(schema).validate(printed)
    assert not Draft202012Validator(schema).is_valid({**printed, "more": 1})


def test_schema_holds_designs_as_an_editor_does(run: Run, folder: Path) -> None:
    (folder / "lid.yaml").write_text("design: Lid\nparts:\n  lid: {kind: gap, least: 30 mm}\n")
    (folder / "lod.yaml").write_text("design: Lid\nparts:\n  lid: {kind: gap, leest: 30 mm}\n")
    ran = run("schema", "lid.yaml", "lod.yaml")
    assert (ran.status, ran.out) == (2, "lid.yaml fits the schema\n")
    assert ran.err == (
        "lod.yaml:3:3: parts.lid does not fit the schema of a design\n"
        "    found a table\n"
        "    expected what `reviewer schema` describes\n"
        "      lid: {kind: gap, leest: 30 mm}\n"
        "      ^^^\n"
    )


def test_the_names_that_a_rule_may_use(run: Run) -> None:
    """Whoever writes a rule on a kind reads there what there is, with what each stands for."""
    ran = run("rules", "--names", "gap")
    assert (ran.status, ran.err) == (0, "")
    assert "\nleast: a length\n    smallest width over the whole travel\n" in ran.out
    assert "\ndesign.children: a condition\n" in ran.out
    ran = run("rules", "--names", "gapp")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("reviewer rules: there is no such kind of part\n    found gapp\n")
    assert ran.err.endswith("    mend: write gap\n")


def test_names_of_any_part_and_of_the_shop(run: Run) -> None:
    ran = run("rules", "--names", "part")
    assert ran.status == 0
    assert "\nblank.share: a plain number\n" in ran.out
    assert "\nshop.kerf: a length\n" in ran.out
    assert "design.shop" not in ran.out
