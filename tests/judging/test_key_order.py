"""The order of keys in a file changes no finding: the specimens, shuffled."""

import random
from pathlib import Path
from typing import Any

import pytest
import yaml

from reviewer.judging.finding import Finding
from reviewer.reviewing import review_source

FOLDER = Path(__file__).parent.parent.parent / "specimens"
SPECIMENS = [
    path
    for path in sorted([*FOLDER.glob("*.yaml"), *FOLDER.glob("potting_bench/*.yaml")])
    if "\nbased_on:" not in path.read_text("utf-8")  # a text alone is based on no file
]
TOP = ("design", "lengths")


class Text(yaml.SafeLoader):
    """Reads every scalar as the text that stands there."""


Text.yaml_implicit_resolvers = {}


class Plain(yaml.SafeDumper):
    """Writes texts as they are, in quotes only where YAML needs them for a text."""


Plain.yaml_implicit_resolvers = {}


def shuffled(node: Any, chance: random.Random) -> Any:
    if isinstance(node, dict):
        keys = chance.sample(sorted(node), len(node))
        return {key: shuffled(node[key], chance) for key in keys}
    return [shuffled(each, chance) for each in node] if isinstance(node, list) else node


def told(text: str) -> dict[tuple[Any, ...], tuple[Any, ...]]:
    """What each finding says, but for lines and for units, of which the first in a file leads."""
    found = review_source(text, "bench.yaml")
    assert not found.problems, found.problems
    return {(each.rule, each.part, *each.others): said(each) for each in found.findings}


def said(finding: Finding) -> tuple[Any, ...]:
    sides = (finding.demand, finding.capacity)
    return (
        *(finding.verdict, finding.level, finding.stage, finding.case, finding.open_because),
        repr(finding.utilisation),
        *(None if side is None else side.value for side in sides),
        [number.value for number in finding.numbers],
        sorted(change.partition(" (")[0] for change in finding.change),
    )


@pytest.mark.parametrize("seed", [1, 2])
@pytest.mark.parametrize("path", SPECIMENS, ids=lambda path: path.stem)
def test_findings_do_not_change_when_keys_are_reordered(path: Path, seed: int) -> None:
    text = path.read_text("utf-8")
    tree = shuffled(yaml.load(text, Loader=Text), random.Random(seed))
    again = yaml.dump(tree, Dumper=Plain, sort_keys=False, allow_unicode=True)
    assert told(again) == told(text)
