"""reviewer size: sizes of a value, maps and scaled designs, as a command line asks for them."""

import json
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
GAPS = """\
design: Lid
parts:
  lid: {kind: gap, least: 10 mm, most: 40 mm, depth: 6 mm, closing_force: 40 N}
"""
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture
def lid(folder: Path) -> Path:
    """A design in which a gap is too narrow."""
    path = folder / "lid.yaml"
    path.write_text(GAPS, encoding="utf-8")
    return path


def test_a_value_over_its_sizes(run: Run, lid: Path) -> None:
    ran = run("size", "lid.yaml", "lid.least", "--from", "20 mm", "--to", "30 mm")
    assert (ran.status, ran.err) == (0, "")
    lines = ran.out.splitlines()
    assert lines[:3] == [
        "lid.least of Lid",
        "lid.yaml:3, now 10 mm",
        "All that must or should hold and depends on it holds from 25 mm on.",
    ]
    assert any(line.startswith("lid.wide") and "1.25*" in line for line in lines)


def test_the_same_as_data(run: Run, lid: Path) -> None:
    ran = run(
        "size", "lid.yaml", "lid.least", "--from", "20 mm", "--to", "30 mm", "--format", "json"
    )
    told = json.loads(ran.out)
    assert told["format"] == 1
    assert told["field"] == "lid.least"
    assert told["holds"] == [{"from": "25 mm", "to": "30 mm"}]
    rule = next(each for each in told["rules"] if each["rule"] == "lid.wide")
    assert len(rule["utilisations"]) == len(rule["verdicts"]) == len(told["sizes"])
    assert rule["utilisations"][0] == pytest.approx(25 / 20)


@pytest.mark.parametrize("fields", [("lid.least",), ("lid.least", "lid.depth")])
def test_a_picture(run: Run, lid: Path, folder: Path, fields: tuple[str, ...]) -> None:
    ran = run("size", "lid.yaml", *fields, "--output", "lid.svg")
    assert ran.status == 0
    root = ElementTree.fromstring((folder / "lid.svg").read_text(encoding="utf-8"))
    assert root.tag == f"{SVG}svg"
    assert root.get("role") == "img"
    assert root.find(f"{SVG}title") is not None
    assert root.find(f"{SVG}desc") is not None
    assert not list(root.iter(f"{SVG}script"))
    texts = [each.text or "" for each in root.iter(f"{SVG}text")]
    assert any("lid.wide" in text for text in texts)


def test_a_hostile_name_stays_text(run: Run, folder: Path) -> None:
    hostile = GAPS.replace("design: Lid", "design: \"</title><script>alert('x')</script>&\"")
    (folder / "lid.yaml").write_text(hostile, encoding="utf-8")
    assert run("size", "lid.yaml", "lid.least", "--output", "lid.svg").status == 0
    root = ElementTree.fromstring((folder / "lid.svg").read_text(encoding="utf-8"))
    assert not list(root.iter(f"{SVG}script"))
    title = root.find(f"{SVG}title")
    assert title is not None
    assert "<script>" in (title.text or "")


def test_a_scaled_design(run: Run, lid: Path) -> None:
    ran = run("size", "lid.yaml", "--scale", "1..3")
    assert ran.status == 0
    assert "1 times: lid.wide governs at 2.50*" in ran.out
    assert "2.5 times: lid.wide governs at 1.00" in ran.out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("lid.yaml", "a size needs a design, and one or two values or a scale"),
        ("lid.yaml lid.least --scale 1..2", "a size needs a design, and one or two values or a"),
        ("lid.yaml lid.laest", "mend: write lid.least"),
        ("lid.yaml --scale 2..1", "this is no range of factors"),
        ("lid.yaml --scale 0..1", "two factors from 0.1 to 10, such as 0.8..1.6"),
        ("lid.yaml lid.least --from 3", "expected a length"),
        ("lid.yaml lid.least lid.most lid.depth", "a map has two values"),
        ("lid.yaml lid.least --stock", "there is nothing of this in the stock tables"),
        ("lid.yaml --scale 1..2 --format svg", "a scaled design has no picture"),
        ("lid.yaml lid.least --output lid.png", "there is no format with this ending"),
    ],
)
def test_a_wrong_command_line(run: Run, lid: Path, words: str, told: str) -> None:
    ran = run("size", *words.split())
    assert ran.status == 2
    assert told in ran.err
    assert ran.out == ""


def test_a_design_that_cannot_be_read(run: Run, folder: Path) -> None:
    (folder / "lid.yaml").write_text(GAPS.replace("10 mm", "10 mn"), encoding="utf-8")
    ran = run("size", "lid.yaml", "lid.least")
    assert (ran.status, ran.out) == (2, "")
    assert "lid.yaml:3:" in ran.err
