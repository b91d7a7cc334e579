"""The catalogue of rules and the graph of what stands behind what."""

import re
from collections.abc import Callable
from pathlib import Path
from xml.etree import ElementTree

import pytest

from reviewer.command.main import main
from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.in_force import InForce, put_in_force
from reviewer.judging.pack import read_pack
from reviewer.parts.registry import KINDS
from reviewer.reporting.catalogue import catalogue
from reviewer.reporting.rules_graph import BOX, layout_of, rules_dot, rules_svg

README = Path(__file__).parents[2] / "rules" / "README.md"
MAKE = "reviewer rules --format markdown > rules/README.md"
SVG = "{http://www.w3.org/2000/svg}"
RULE = """\
- rule: gap.{name}
  question: {question}
  behind: [{behind}]
  require: most <= 9 mm
  level: {level}
  stage: cutting
  hazard: crushing
  says: Said.
  because: So.
  source: ours
  proof: {{holds: {{most: 8.9 mm}}, fails: {{most: 9.1 mm}}}}
"""


@pytest.fixture(scope="module")
def ours() -> InForce:
    return put_in_force(builtin_packs())


@pytest.fixture
def of_rules() -> Callable[..., InForce]:
    """What is in force of some rules: name, those it is behind, and its question and level."""

    def make(*rules: tuple[str, str], question: str = "Is it?", level: str = "must") -> InForce:
        told = "".join(
            RULE.format(name=name, behind=behind, question=question, level=level)
            for name, behind in rules
        )
        pack = read_pack(told, "ours.yaml", KINDS, builtin_limits())
        assert pack.problems == ()
        found = put_in_force([pack])
        assert found.problems == ()
        return found

    return make


def test_the_catalogue_beside_the_packs_is_the_one_that_they_make(ours: InForce) -> None:
    assert README.read_text("utf-8") == catalogue(ours), f"make it again: {MAKE}"


def test_every_rule_and_every_limit_is_in_it(ours: InForce) -> None:
    told = catalogue(ours)
    for rule in ours.rules:
        assert f"### {rule.name}\n\n{rule.question}\n" in told.replace("\\", ""), rule.name
    for limit in ours.limits.by_name.values():
        assert f"| **{limit.name}**: " in told
        assert sum(len(each.levels) + 1 for each in ours.limits.by_name.values()) == len(
            re.findall(r"^\| (?!limit \||---)", told, re.MULTILINE)
        )


def test_one_rule_of_the_catalogue(of_rules: Callable[..., InForce]) -> None:
    told = catalogue(of_rules(("one", ""), ("two", "gap.one")))
    assert (
        "### gap.two\n"
        "\n"
        "Is it?\n"
        "\n"
        "- **must**, before cutting, hazard: crushing\n"
        "- requires `most <= 9 mm`\n"
        "- behind gap.one\n"
        "- because: So.\n"
        "- source: ours\n"
    ) in told


def test_words_of_a_pack_do_not_become_markdown(of_rules: Callable[..., InForce]) -> None:
    question = '"Is <script> | [it](http://x) *so* \\u202e?"'
    told = catalogue(of_rules(("one", ""), question=question))
    assert "Is \\<script\\> \\| \\[it\\](http://x) \\*so\\* \\\\u202e?\n" in told
    assert "\u202e" not in told


def test_the_command_prints_it(ours: InForce, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", "--format", "markdown"]) == 0
    assert capsys.readouterr().out == catalogue(ours)


def test_the_graph_in_dot(of_rules: Callable[..., InForce]) -> None:
    rules = of_rules(("one", ""), ("two", "gap.one"), ("three", "gap.one, gap.two")).rules
    assert rules_dot(rules) == (
        "digraph rules {\n"
        "  rankdir=LR;\n"
        "  node [shape=box];\n"
        '  subgraph "cluster_gap" {\n'
        '    label="gap";\n'
        '    "gap.one";\n'
        '    "gap.three";\n'
        '    "gap.two";\n'
        "  }\n"
        '  "gap.one" -> "gap.three";\n'
        '  "gap.two" -> "gap.three";\n'
        '  "gap.one" -> "gap.two";\n'
        "}\n"
    )


def test_a_rule_stands_to_the_right_of_what_it_is_behind(of_rules: Callable[..., InForce]) -> None:
    rules = of_rules(
        ("one", ""), ("two", "gap.one"), ("three", "gap.one, gap.two"), ("a", "")
    ).rules
    corners = layout_of({rule.name: rule for rule in rules}).corners
    columns = {name: x for name, (x, _) in corners.items()}
    assert columns["gap.one"] < columns["gap.two"] < columns["gap.three"]
    assert columns["gap.a"] == columns["gap.one"]


def test_no_two_boxes_of_the_built_in_rules_touch_and_all_are_on_the_sheet(ours: InForce) -> None:
    layout = layout_of({rule.name: rule for rule in ours.rules})
    corners = sorted(layout.corners.values())
    assert len(corners) == len(ours.rules)
    for index, (x, y) in enumerate(corners):
        assert 0 <= x <= layout.width - BOX[0]
        assert 0 <= y <= layout.height - BOX[1]
        for other, below in corners[index + 1 :]:
            assert abs(other - x) > BOX[0] or abs(below - y) > BOX[1]


def test_the_graph_in_svg_has_a_box_for_each_rule_and_a_line_for_each_behind(ours: InForce) -> None:
    root = ElementTree.fromstring(rules_svg(ours.rules))
    assert root.tag == f"{SVG}svg"
    assert root.get("role") == "img"
    assert root.find(f"{SVG}title") is not None
    boxes = root.findall(f"{SVG}rect")
    assert len(boxes) == 1 + len(ours.rules)  # the sheet, and one a rule
    lines = root.findall(f"{SVG}polyline")
    assert len(lines) == 2 * sum(len(rule.behind) for rule in ours.rules)  # each with a point
    words = {each.text for each in root.findall(f"{SVG}text")}
    assert {rule.name.partition(".")[2] for rule in ours.rules} <= words


@pytest.mark.parametrize(("name", "begins"), [("g.svg", "<svg "), ("g.dot", "digraph rules {\n")])
def test_the_command_draws_it(tmp_path: Path, name: str, begins: str) -> None:
    assert main(["rules", "--graph", str(tmp_path / name)]) == 0
    assert (tmp_path / name).read_text("utf-8").startswith(begins)


def test_a_graph_in_no_known_format(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", "--graph", str(tmp_path / "g.png")]) == 2
    assert "there is no format with this ending\n" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []
