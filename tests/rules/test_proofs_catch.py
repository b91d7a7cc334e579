"""The proofs of the built-in rules catch a number that is a tenth off, and a condition lost."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from reviewer.judging.builtin import builtin_limits, builtin_packs
from reviewer.judging.limits import Limit, Limits
from reviewer.judging.proof import prove
from reviewer.judging.rule import Rule
from reviewer.parts.facts import FACTS, LIMIT
from reviewer.parts.measurement import MEASUREMENT
from reviewer.parts.registry import KINDS

RULES = [rule for pack in builtin_packs() for rule in pack.rules]
LIMITS = builtin_limits()
A_TENTH = (1.1, 1 / 1.1)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_a_rule_asks_a_question(rule: Rule) -> None:
    assert rule.question.endswith("?")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_a_rule_that_is_a_little_wrong_fails_its_own_proof(mutants: Any, rule: Rule) -> None:
    assert list(prove(rule, (), LIMITS)) == []
    wrongs = mutants(rule, LIMITS)
    survived = [what for what, wrong in wrongs if not list(prove(wrong, (), LIMITS))]
    assert survived == []


def of_rules() -> set[str]:
    """The limits that a rule compares with; others are what a kind's own row comes from."""
    names = {name for rule in RULES for name in rule.names if name.startswith(f"{LIMIT}.")}
    return {name.removeprefix(f"{LIMIT}.") for name in names}


def moved(limit: Limit, factor: float) -> Iterator[tuple[str, Limit]]:
    """A limit with one of its values moved, with what it is for."""
    general = replace(limit.general, value=limit.general.value * factor)
    yield "all others", replace(limit, general=general)
    for level, stated in limit.levels.items():
        wrong = replace(stated, value=stated.value * factor)
        yield level, replace(limit, levels={**limit.levels, level: wrong})


@pytest.mark.parametrize("name", sorted(of_rules()))
def test_a_limit_that_is_a_tenth_off_fails_a_proof(name: str) -> None:
    using = [rule for rule in RULES if f"{LIMIT}.{name}" in rule.names]
    for factor in A_TENTH:
        for level, wrong in moved(LIMITS.by_name[name], factor):
            known = Limits({**LIMITS.by_name, name: wrong})
            flaws = [flaw for rule in using for flaw in prove(rule, (), known)]
            assert flaws, f"{name} for {level}, {factor:.2f} times"


def test_every_limit_is_of_a_rule_or_of_a_row() -> None:
    needs = {
        need
        for kind in (*KINDS.values(), FACTS, MEASUREMENT)
        for row in kind.rows
        for need in row.needs.values()
    }
    of_rows = {
        need.removesuffix("?").removeprefix(f"{LIMIT}.")
        for need in needs
        if need.startswith(f"{LIMIT}.")
    }
    assert of_rows <= LIMITS.by_name.keys()
    assert of_rules() | of_rows == LIMITS.by_name.keys()
