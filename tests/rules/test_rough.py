"""Where the source of a rule says that its model is rough, the finding itself says how rough."""

import re

import pytest

from reviewer.judging.builtin import builtin_packs

ROUGH = re.compile(
    r"upper bound|lower bound|\brough|estimate|scatter|within a|may differ|load spreads"
)
SAID = re.compile(
    r"upper bound|lower bound|\brough|estimate|scatter|within (a|about|some)|give or take|too high"
    r"|\{\w+\.(basis|taken)\}|\{basis\}|on top|as is likely"
)
RULES = [
    pytest.param(rule, id=rule.name)
    for pack in builtin_packs()
    for rule in pack.rules
    if ROUGH.search(rule.source)
]


def test_some_models_are_rough() -> None:
    assert len(RULES) > 15


@pytest.mark.parametrize("rule", RULES)
def test_a_rough_model_says_how_rough(rule) -> None:
    told = rule.says.render(lambda name: f"{{{name}}}")
    assert SAID.search(told), rule.source
