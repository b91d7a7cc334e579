"""Packs: files of rules, read and checked whole; untrusted text, whatever it says."""

import string
from collections.abc import Mapping
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewer.judging.builtin import builtin_packs
from reviewer.judging.pack import in_order, read_pack
from reviewer.parts.kind import Kind

RULE = {
    "rule": "crate.short",
    "question": "Is it short enough?",
    "behind": ["crate.narrow"],
    "when": "sealed",
    "require": "length <= 0.5 m",
    "level": "should",
    "stage": "loading",
    "hazard": "tipping",
    "says": "It is {demand} of {capacity}.",
    "because": "It tips.",
    "change": ["length", "width"],
    "source": "statics",
    "proof": {
        "holds": {"sealed": True, "length": "400 mm"},
        "fails": {"sealed": True, "length": "600 mm"},
    },
    "note": "as agreed in spring",
}


class Plain(yaml.SafeDumper):
    """Writes the same value twice, where others would write an alias."""

    def ignore_aliases(self, data: Any) -> bool:
        return True


def text_of(*rules: Mapping[str, Any]) -> str:
    return yaml.dump([dict(rule) for rule in rules], Dumper=Plain, sort_keys=False)


def test_a_rule_with_all_its_keys(kinds: Mapping[str, Kind]) -> None:
    pack = read_pack(text_of(RULE), "pack.yaml", kinds)
    assert pack.problems == ()
    (rule,) = pack.rules
    assert (rule.name, rule.level, rule.stage) == ("crate.short", "should", "loading")
    assert (rule.question, rule.hazard) == ("Is it short enough?", "tipping")
    assert (rule.because, rule.source) == ("It tips.", "statics")
    assert rule.behind == ("crate.narrow",)
    assert rule.change == ("length", "width")
    assert rule.requires == "length <= 0.5 m"
    assert rule.names == ("length", "sealed")
    assert rule.scope.binders == (("", "crate"),)
    assert (rule.place.path, rule.place.line) == ("pack.yaml", 1)


@pytest.mark.parametrize(
    "source", [text_of(RULE), text_of(RULE).encode(), "\ufeff" + text_of(RULE)]
)
def test_text_or_bytes(kinds: Mapping[str, Kind], source: str | bytes) -> None:
    assert len(read_pack(source, "pack.yaml", kinds).rules) == 1


def test_a_pack_may_have_a_heading(kinds: Mapping[str, Kind]) -> None:
    heading = {"pack": "shop", "about": "our own", "note": "2026", "rules": [RULE]}
    pack = read_pack(yaml.safe_dump(heading), "pack.yaml", kinds)
    assert pack.problems == ()
    assert [rule.name for rule in pack.rules] == ["crate.short"]


def test_a_sound_rule_beside_a_faulty_one_is_read(kinds: Mapping[str, Kind]) -> None:
    pack = read_pack(text_of({**RULE, "level": "shall"}, RULE), "pack.yaml", kinds)
    assert [rule.name for rule in pack.rules] == ["crate.short"]
    assert len(pack.problems) == 1


def test_rules_come_after_those_that_they_stand_behind(kinds: Mapping[str, Kind]) -> None:
    """Else by name; over several packs, whatever the order of the packs."""

    def named(name: str, *behind: str) -> dict[str, Any]:
        return {**RULE, "rule": f"crate.{name}", "behind": [f"crate.{each}" for each in behind]}

    first = read_pack(text_of(named("d", "a"), named("b", "d", "c")), "one.yaml", kinds)
    second = read_pack(text_of(named("a", "c"), named("c"), named("e")), "two.yaml", kinds)
    for packs in ((first, second), (second, first)):
        rules, problems = in_order(packs)
        assert problems == ()
        assert [rule.name[-1] for rule in rules] == ["c", "a", "d", "b", "e"]


def test_no_pack_is_no_rule() -> None:
    assert in_order([]) == ((), ())


def test_the_packs_that_come_with_reviewer_are_sound() -> None:
    assert [problem for pack in builtin_packs() for problem in pack.problems] == []
    rules, problems = in_order(builtin_packs())
    assert problems == ()
    assert len(rules) == sum(len(pack.rules) for pack in builtin_packs()) > 20


DEEP = "[" * 200 + "]" * 200


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\x00",
        "\x85\u2028- rule: 1",
        DEEP,
        "- rule: " + DEEP,
        "- " * 500 + "x",
        "a: &a [*a]",
        "- &a [*a, *a]",
        "<<: {rule: crate.short}",
        "- {<<: {rule: crate.short}, level: must}",
        "- !!python/object/apply:os.system ['date']",
        "- ? [rule]\n  : crate.short",
        "- {? {rule: 1} : 2}",
        "-\n  rule:\n  level:\n  stage:\n  says:\n  because:\n  source:\n  proof:\n",
        text_of({**RULE, "require": "length <= 9^9^9 m"}),
        text_of({**RULE, "require": "length <= 1e999 m"}),
        text_of({**RULE, "require": "(" * 300 + "length" + ")" * 300 + " <= 1 m"}),
        text_of({**RULE, "require": " and ".join(["length <= 1 m"] * 5000)}),
        text_of({**RULE, "require": "length.__class__.__mro__ <= 1 m"}),
        text_of({**RULE, "require": "__import__('os').system('date') == 1"}),
        text_of({**RULE, "require": "\u217b <= 1 m"}),
        text_of({**RULE, "says": "{" * 5000}),
        text_of({**RULE, "says": "{length.__class__}"}),
        text_of({**RULE, "says": "{length!r:>9999999}"}),
        text_of({**RULE, "says": "x" * 100_000}),
        text_of({**RULE, "rule": "crate." + "x" * 100_000}),
        text_of({**RULE, "rule": "crate.\n\x1b[31mred"}),
        text_of({**RULE, "behind": ["x" * 10_000] * 50}),
        text_of({**RULE, "change": [["length"]]}),
        text_of({**RULE, "for": {f"b{n}": "crate" for n in range(300)}, "pairs": "each"}),
        text_of({**RULE, "for": {"design": "crate", "carrier": "lid"}, "pairs": "each"}),
        text_of({**RULE, "proof": {"holds": {"length": "9" * 500 + " m"}, "fails": {}}}),
        "- rule: crate.short\n" * 5000,
        "x" * (1 << 20) + "y",
    ],
    ids=range(34),
)
def test_hostile_packs_are_refused_in_words(kinds: Mapping[str, Kind], text: str) -> None:
    pack = read_pack(text, "pack.yaml", kinds)
    _, misfits = in_order([pack])
    assert pack.problems or misfits
    assert len(pack.problems) <= 101
    for problem in (*pack.problems, *misfits):
        assert problem.place.path == "pack.yaml"
        assert problem.what


def test_bytes_that_are_no_text(kinds: Mapping[str, Kind]) -> None:
    pack = read_pack(b"- rule: \xff\xfe", "pack.yaml", kinds)
    assert pack.rules == ()
    assert len(pack.problems) == 1


scalars = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-5, 5),
    st.text(string.printable, max_size=20),
    st.sampled_from([value for value in RULE.values() if isinstance(value, str)]),
)
values = st.recursive(
    scalars,
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.sampled_from([*RULE, "holds", "length", "x"]), inner, max_size=3)
    ),
    max_leaves=6,
)


@settings(max_examples=150, deadline=None)
@given(
    st.dictionaries(st.sampled_from(sorted(RULE)), values, max_size=4),
    st.sets(st.sampled_from(sorted(RULE))),
)
def test_any_value_of_any_key_is_read_or_refused(
    kinds, changes: dict[str, Any], out: set[str]
) -> None:
    """Nothing is raised, and a rule with a problem is no rule."""
    rule = {key: value for key, value in {**RULE, **changes}.items() if key not in out}
    pack = read_pack(text_of(rule), "pack.yaml", kinds)
    assert bool(pack.rules) != bool(pack.problems)
    in_order([pack])


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(kinds, text: str) -> None:
    pack = read_pack(text, "pack.yaml", kinds)
    assert pack.rules == ()
    in_order([pack])
