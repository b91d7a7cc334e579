"""Two designs compared: against whole reviews of the old one with each change made alone."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from reviewer.judging.builtin import builtin_limits
from reviewer.judging.pack import Pack, in_order, read_pack
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.parts.registry import KINDS
from reviewer.reviewing import review_source
from reviewer.studying.compare import Comparison, compare

Reviewed = Callable[[str], Review]
DESIGNS = Path(__file__).parent / "designs"
BENCH = Path(__file__).parents[2] / "specimens" / "potting_bench"
STACK = """\
- rule: gap.stack
  question: Does the stack of three fit?
  require: least + most + depth <= 100 mm
  level: must
  stage: cutting
  says: The stack is {demand}; {capacity} is allowed.
  because: It has to go in.
  source: geometry
  proof:
    holds: {least: 20 mm, most: 30 mm, depth: 40 mm}
    fails: {least: 40 mm, most: 30 mm, depth: 40 mm}
"""
OLD = """\
design: Stack
revision: A
parts:
  stack: {kind: gap, least: 20 mm, most: 30 mm, depth: 55 mm}
"""
EDITS = {
    "arm.reach": ("reach: 700", "reach: 420"),
    "arm.section.height": ("[30, 30, 1.5]", "[30, 50, 1.5]"),
    "arm.material": ("6063-T5", "S235"),
    "lamp.force": ("200 N", "260 N"),
    "post.feet.count": ("count: 4", "count: 6"),
}


@pytest.fixture(scope="session")
def stack() -> Pack:
    """A rule on the sum of three lengths."""
    pack = read_pack(STACK, "stack.yaml", KINDS, builtin_limits())
    assert pack.problems == ()
    return pack


def compared(old: str, new: str, pack: Pack) -> Comparison:
    reviews = [review_source(each, "x.yaml", [pack], date(2026, 11, 25)) for each in (old, new)]
    return compare(reviews[0], reviews[1], in_order([pack])[0])


def test_a_sum_is_explained_to_the_last_part(stack: Pack) -> None:
    # 105 mm to 98 mm: -10 mm of the depth and +3 mm of the least, of 100 mm; nothing is left over.
    new = OLD.replace("depth: 55", "depth: 45").replace("least: 20", "least: 23")
    found = compared(OLD, new, stack)
    (pair,) = found.pairs
    assert (pair.name, pair.turn) == ("stack.stack", "mended")
    assert pair.explained is not None
    assert pair.explained.whole == pytest.approx(-0.07)
    assert [name for name, _ in pair.explained.parts] == ["stack.depth", "stack.least"]
    assert [effect for _, effect in pair.explained.parts] == pytest.approx([-0.10, 0.03])
    assert pair.explained.rest == pytest.approx(0, abs=1e-12)


@pytest.mark.parametrize(
    ("old", "new", "turn", "regresses"),
    [
        ("55 mm", "45 mm", "mended", False),
        ("45 mm", "55 mm", "fails now", True),
        ("45 mm", "49 mm", "worse", False),
        ("45 mm", "41 mm", "better", False),
        ("55 mm", "60 mm", "worse", False),
        ("45 mm", "45 mm", "same", False),
    ],
)
def test_the_turn_of_a_finding(stack: Pack, old: str, new: str, turn: str, regresses: bool) -> None:
    found = compared(OLD.replace("55 mm", old), OLD.replace("55 mm", new), stack)
    assert found.pairs[0].turn == turn
    assert bool(found.regressions("must")) == regresses


def test_what_cannot_be_judged_any_more_is_a_step_back(stack: Pack) -> None:
    old = OLD.replace("55 mm", "45 mm")
    found = compared(old, old.replace(", depth: 45 mm", ""), stack)
    assert found.pairs[0].turn == "not judged now"
    assert found.regressions("must") == found.pairs
    assert [(edit.name, edit.new) for edit in found.edits] == [("stack.depth", None)]


def test_a_level_below_the_one_asked_for_is_no_step_back(stack: Pack) -> None:
    weak = read_pack(
        STACK.replace("level: must", "level: note"), "stack.yaml", KINDS, builtin_limits()
    )
    found = compared(OLD.replace("55 mm", "45 mm"), OLD, weak)
    assert found.pairs[0].turn == "fails now"
    assert found.regressions("should") == ()
    assert found.regressions("note") == found.pairs


def test_what_moved_most_comes_first(stack: Pack) -> None:
    new = OLD.replace("depth: 55", "depth: 44").replace("least: 20", "least: 19")
    moved = compared(OLD, new, stack).movements
    assert [each.name for each in moved] == ["stack.depth", "stack.least"]
    assert (moved[0].before, moved[0].after) == pytest.approx((0.055, 0.044))


def test_each_change_alone_is_a_whole_review_with_that_change(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    old = (DESIGNS / "weak_arm.yaml").read_text(encoding="utf-8")
    new = old
    for before, after in EDITS.values():
        assert new.count(before) == 1
        new = new.replace(before, after)
    found = compare(reviewed(old), reviewed(new), rules)
    assert {edit.name for edit in found.edits} == set(EDITS)
    was = {each.name: each.utilisation for each in reviewed(old).findings}
    checked = 0
    for name, (before, after) in EDITS.items():
        alone = {each.name: each for each in reviewed(old.replace(before, after)).findings}
        for pair in found.pairs:
            parts = dict(pair.explained.parts) if pair.explained else {}
            whole = alone[pair.name]
            if name in parts and whole.verdict in ("pass", "fail"):
                assert parts[name] == pytest.approx(
                    whole.utilisation - was[pair.name], rel=1e-6, abs=1e-9
                )
                checked += 1
    assert checked > 5
    for pair in found.pairs:
        if pair.explained is not None:
            told = sum(effect for _, effect in pair.explained.parts) + pair.explained.rest
            assert told == pytest.approx(pair.explained.whole)


def test_a_part_added_or_of_another_kind_is_told_as_a_whole(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    old = (DESIGNS / "weak_arm.yaml").read_text(encoding="utf-8")
    more = old.replace(
        "loads:", "  lid: {kind: top, carried_by: arm, mass: 2 kg, diameter: 300}\nloads:"
    )
    found = compare(reviewed(old), reviewed(more), rules)
    assert [(edit.name, edit.note) for edit in found.edits] == [("lid", "added")]
    back = compare(reviewed(more), reviewed(old), rules)
    assert [(edit.name, edit.note) for edit in back.edits] == [("lid", "taken out")]
    assert any(pair.turn == "gone" for pair in back.pairs)


def test_an_override_that_changed(rules: tuple[Rule, ...], reviewed: Reviewed) -> None:
    old = (DESIGNS / "late_slide.yaml").read_text(encoding="utf-8")
    new = old.replace("trays.offset: 190", "trays.offset: 100")
    found = compare(reviewed(old), reviewed(new), rules)
    assert [edit.name for edit in found.edits] == ["trays.offset (open)"]
    pair = next(each for each in found.pairs if each.name == "trays.stays_on_arm")
    assert pair.turn == "mended"
    assert pair.explained is not None
    assert [name for name, _ in pair.explained.parts] == ["trays.offset (open)"]
    assert pair.explained.rest == pytest.approx(0, abs=1e-9)


def test_the_bench_from_its_first_revision_to_the_sound_one(
    rules: tuple[Rule, ...], reviewed: Reviewed
) -> None:
    first, sound = (
        reviewed((BENCH / f"revision_{each}.yaml").read_text(encoding="utf-8")) for each in "ac"
    )
    found = compare(first, sound, rules)
    assert found.regressions("should") == ()
    failing = {each.name for each in first.findings if each.verdict == "fail"}
    there = {each.name for each in sound.findings}
    mended = {pair.name for pair in found.turned("mended")}
    assert {name for name in failing & there if name in mended} >= {
        "ring.roller_load", "ring.rim_sinks", "base.stands", "arms.bending", "lift.lifts_level",
        "near_clamp.long_enough", "far_clamp.holds", "trays.stays_on_arm", "ring.rim_play",
    }  # fmt: skip
    assert {edit.name for edit in found.edits} >= {
        "base.mass", "ring.carry.count", "ring.carry.bearing", "trays.offset (open)", "pot_ring",
    }  # fmt: skip
    assert compare(sound, first, rules).regressions("must") != ()
