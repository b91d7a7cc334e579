"""Proofs: a rule shown both ways, and every way in which a proof can fail to show it."""

import pytest

from reviewer.judging.builtin import builtin_packs
from reviewer.judging.pack import Pack, read_pack
from reviewer.judging.proof import prove_all
from reviewer.notation.problem import render
from reviewer.parts.registry import KINDS


def pack_of(body: str, first: str, second: str, *, asks: bool = False) -> Pack:
    """A pack of one rule on gaps, or on what its body says, whose proof is on line 9."""
    sides = ("asks", "rests") if asks else ("holds", "fails")
    text = (
        f"- rule: gap.one\n  level: must\n  stage: cutting\n  says: Said.\n  because: So.\n"
        f"  source: shop\n  question: Does it?\n"
        f"  proof:\n  # the two sides\n    {sides[0]}: {{{first}}}\n    {sides[1]}: {{{second}}}\n"
        f"  {body}\n"
    )
    pack = read_pack(text, "shop.yaml", KINDS)
    assert pack.problems == ()
    return pack


@pytest.mark.parametrize(
    ("body", "holds", "fails"),
    [
        ("require: least >= 25 mm", "least: 30 mm", "least: 9 mm"),
        ("require: least >= 25 mm", "least: 25 mm", "least: 24.9 mm"),
        ("require: least >= 1 in", "least: 25.4 mm", "least: 25.3 mm"),
        (
            "when: moves\n  require: most <= 5 mm or least >= 25 mm",
            "moves: true, most: 60 mm, least: 30 mm",
            "moves: true, most: 60 mm, least: 9 mm",
        ),
        (
            "when: given(closing_force) and closing_force > 0 N\n  require: least >= 25 mm",
            "closing_force: 9 N, least: 30 mm",
            "closing_force: 9 N, least: 9 mm",
        ),
        (
            "for: {gaps: every gap}\n  require: largest of gaps.least <= 25 mm",
            "gaps.least: [9 mm, 25 mm]",
            "gaps.least: [9 mm, 30 mm, 2 mm]",
        ),
        (
            "for: {gaps: every gap}\n  require: every (gaps.least <= gaps.most)",
            "gaps.least: [1 mm, 2 mm], gaps.most: [2 mm, 3 mm]",
            "gaps.least: [1 mm, 4 mm], gaps.most: [2 mm, 3 mm]",
        ),
    ],
)
def test_a_proof_that_shows_both_ways(body: str, holds: str, fails: str) -> None:
    assert prove_all([pack_of(body, holds, fails)]) == ()


def test_a_question_that_is_asked_and_rests() -> None:
    pack = pack_of("when: must_close", "must_close: true", "must_close: false", asks=True)
    assert prove_all([pack]) == ()
    pack = pack_of("when: given(depth) and depth > 9 mm", "depth: 10 mm", "", asks=True)
    assert prove_all([pack]) == ()


@pytest.mark.parametrize(
    ("body", "holds", "fails", "told"),
    [
        (
            "require: least >= 25 mm",
            "least: 24 mm",
            "least: 9 mm",
            [("holds", "a fail", "a pass")],
        ),
        (
            "require: least >= 25 mm",
            "least: 30 mm",
            "least: 26 mm",
            [("fails", "a pass", "a fail")],
        ),
        (
            "when: moves\n  require: least >= 25 mm",
            "moves: false, least: 30 mm",
            "moves: false, least: 9 mm",
            [
                ("holds", "a rule that does not apply", "a pass"),
                ("fails", "a rule that does not apply", "a fail"),
            ],
        ),
        (
            "when: given(depth)\n  require: least >= 25 mm",
            "least: 30 mm, depth: 1 mm",
            "least: 9 mm",
            [("fails", "a rule that does not apply", "a fail")],
        ),
        (
            "require: 1 mm <= 2 mm",
            "least: 30 mm",
            "least: 9 mm",
            [("fails", "a pass", "a fail")],
        ),
        (
            "require: least / most >= 0.5",
            "least: 30 mm, most: 40 mm",
            "least: 9 mm, most: 0 mm",
            [("fails", "a requirement that is unknown", "a fail")],
        ),
    ],
)
def test_a_proof_that_shows_something_else(
    body: str, holds: str, fails: str, told: list[tuple[str, str, str]]
) -> None:
    found = prove_all([pack_of(body, holds, fails)])
    assert [(each.what, each.found, each.expected) for each in found] == [
        (
            f"the proof of gap.one does not show what it says under {side}",
            found_there,
            expected,
        )
        for side, found_there, expected in told
    ]


@pytest.mark.parametrize(
    ("asks", "rests", "told"),
    [
        ("must_close: false", "must_close: false", [("asks", "no question", "a question")]),
        ("must_close: true", "must_close: true", [("rests", "a question", "no question")]),
    ],
)
def test_a_question_that_shows_something_else(
    asks: str, rests: str, told: list[tuple[str, str, str]]
) -> None:
    found = prove_all([pack_of("when: must_close", asks, rests, asks=True)])
    assert [(each.what.split()[-1], each.found, each.expected) for each in found] == told


def test_a_question_without_when_never_rests() -> None:
    found = prove_all([pack_of("hazard: crushing", "", "", asks=True)])
    assert [(each.found, each.expected) for each in found] == [("a question", "no question")]


@pytest.mark.parametrize(
    ("body", "holds", "fails", "told"),
    [
        ("require: least >= 25 mm", "least: 30 mm", "", [("fails", "no least")]),
        (
            "when: moves\n  require: least >= 25 mm",
            "least: 30 mm",
            "least: 9 mm",
            [("holds", "no moves"), ("fails", "no moves")],
        ),
        (
            'when: design.service == "public"\n  require: least + depth >= 25 mm',
            "least: 30 mm, depth: 0 mm",
            "design.service: public, depth: 0 mm",
            [("holds", "no design.service"), ("fails", "no least")],
        ),
    ],
)
def test_a_proof_must_give_all_that_decides(
    body: str, holds: str, fails: str, told: list[tuple[str, str]]
) -> None:
    found = prove_all([pack_of(body, holds, fails)])
    assert [(each.what, each.found) for each in found] == [
        (f"the proof of gap.one lacks a value under {side}", name) for side, name in told
    ]


def test_lists_of_one_kind_have_one_length() -> None:
    pack = pack_of(
        "for: {gaps: every gap}\n  require: every (gaps.least <= gaps.most)",
        "gaps.least: [1 mm, 2 mm], gaps.most: [2 mm]",
        "gaps.least: [3 mm], gaps.most: [2 mm]",
    )
    (found,) = prove_all([pack])
    assert (found.what, found.found, found.expected) == (
        "the proof of gap.one has lists of different lengths under holds",
        "1 and 2",
        "one length for all of gaps",
    )


def test_a_flaw_is_told_at_its_place() -> None:
    (found,) = prove_all([pack_of("require: least >= 25 mm", "least: 24 mm", "least: 9 mm")])
    assert (found.place.path, found.place.line) == ("shop.yaml", 10)
    assert render(found).startswith(f"shop.yaml:10:{found.place.column}: the proof of gap.one ")
    assert "        holds: {least: 24 mm}\n" in render(found)


def test_every_built_in_rule_proves_itself() -> None:
    packs = builtin_packs()
    assert sum(len(pack.rules) for pack in packs) >= 30
    assert [problem for pack in packs for problem in pack.problems] == []
    assert [render(each) for each in prove_all(packs)] == []
