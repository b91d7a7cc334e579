"""Packs that a shop adds and that are refused: the whole message of each."""

from collections.abc import Callable

import pytest


def test_two_packs_that_name_the_same_rule(told: Callable[..., str]) -> None:
    rule = (
        "- rule: top.heavy\n  require: mass >= 1 kg\n  level: note\n  stage: cutting\n"
        "  says: Light.\n  because: So.\n  source: ours\n"
        "  proof: {holds: {mass: 2 kg}, fails: {mass: 0.5 kg}}\n"
    )
    assert told("packs: [one.yaml, two.yaml]\n", one=rule, two=rule) == (
        "two.yaml:1:9: two rules have the same name\n"
        "    found top.heavy\n"
        "    expected a name of its own\n"
        "    mend: rename one of them; the other is at one.yaml:1\n"
        "    - rule: top.heavy\n"
        "            ^^^^^^^^^"
    )


def test_a_limit_that_a_pack_states_twice(told: Callable[..., str]) -> None:
    limits = "limits:\n  dent: {says: depth, value: 0.2 mm, why: so, source: ours}\nrules: []\n"
    assert told("packs: [ours.yaml]\n", ours=limits).startswith(
        "ours.yaml:2:3: two limits have the same name\n"
        "    found dent\n"
        "    expected a name of its own\n"
        "    mend: rename one of them; the other is at rules/limits.yaml:"
    )


def test_a_proof_cannot_set_a_limit(told: Callable[..., str]) -> None:
    rule = (
        "- rule: top.thin\n  require: thickness >= limit.track_edge\n  level: note\n"
        "  stage: cutting\n  says: Thin.\n  because: So.\n  source: ours\n  proof:\n"
        "    holds: {thickness: 6 mm, limit.track_edge: 5 mm}\n    fails: {thickness: 4 mm}\n"
    )
    assert told("packs: [ours.yaml]\n", ours=rule) == (
        "ours.yaml:9:30: a proof gives a limit, which the packs state\n"
        "    found limit.track_edge\n"
        "    expected the quantities that the limit is for\n"
        "    mend: take it out\n"
        "        holds: {thickness: 6 mm, limit.track_edge: 5 mm}\n"
        "                                 ^^^^^^^^^^^^^^^^"
    )


def test_a_rule_that_does_not_fail_under_its_own_proof(told: Callable[..., str]) -> None:
    rule = (
        "- rule: top.thin\n  require: thickness >= 6 mm\n  level: note\n"
        "  stage: cutting\n  says: Thin.\n  because: So.\n  source: ours\n  proof:\n"
        "    holds: {thickness: 6.1 mm}\n    fails: {thickness: 6.2 mm}\n"
    )
    assert told("packs: [ours.yaml]\n", ours=rule) == (
        "ours.yaml:10:5: the proof of top.thin does not show what it says under fails\n"
        "    found a pass\n"
        "    expected a fail\n"
        "        fails: {thickness: 6.2 mm}\n"
        "        ^^^^^"
    )


THIN = """\
- rule: top.thin
  require: {require}
  level: must
  stage: cutting
  says: Thin.
  because: So.
  source: ours
  proof:
    holds: {{thickness: 19.1 mm}}
    fails: {{thickness: 18.9 mm}}
"""
EXAMPLES = [
    (
        "thickness >= 19 mm and and",
        """\
ours.yaml:2:35: 'and' cannot stand here
    found and
    expected a number with its unit, a name, a text in quotes or a parenthesis
      require: thickness >= 19 mm and and
                                      ^^^""",
    ),
    (
        "thicknes >= 19 mm",
        """\
ours.yaml:2:12: the name is not known
    found thicknes
    expected the name of a quantity
    mend: write thickness
      require: thicknes >= 19 mm
               ^^^^^^^^""",
    ),
    (
        "thickness >= 19 N",
        """\
ours.yaml:2:12: compares a length with a force
    found thickness, a length, and 19 N, a force
    expected two values of one dimension
      require: thickness >= 19 N
               ^^^^^^^^^^^^^^^^^""",
    ),
]


@pytest.mark.parametrize(("require", "message"), EXAMPLES, ids=["syntax", "name", "dimension"])
def test_a_mistake_in_a_rule(told: Callable[..., str], require: str, message: str) -> None:
    assert told("packs: [ours.yaml]\n", ours=THIN.format(require=require)) == message


@pytest.mark.parametrize("name", ["design", "limit", "carrier", "One", "a.b"])
def test_what_a_rule_calls_a_part_means_nothing_else(told: Callable[..., str], name: str) -> None:
    ours = THIN.format(require="thickness >= 19 mm").replace(
        "  require", f'  for: {{"{name}": top, other: top}}\n  pairs: each\n  require'
    )
    assert told("packs: [ours.yaml]\n", ours=ours).startswith(
        "ours.yaml:2:9: this cannot be what a rule calls a part\n"
        f"    found {name}\n"
        "    expected small letters, digits and _, and no word with a meaning of its own\n"
    )
