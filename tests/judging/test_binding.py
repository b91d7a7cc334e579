"""What a rule ranges over: a part, pairs of parts, every part of a kind."""

import pytest

CRATES = """
parts:
  a: {kind: crate, length: 300}
  b: {kind: crate, length: 400}
  c: {kind: crate, length: 500}
  lid_of_b: {kind: lid, carried_by: b, length: 350}
"""
PROOF = "proof: {holds: {a.length: 1 m, b.length: 1 m}, fails: {a.length: 2 m, b.length: 1 m}}"
SAME = f"""
rule: crate.alike
for: {{a: crate, b: crate}}
pairs: HOW
require: a.length <= 1.1 * b.length
says: "{{part}} has {{a.length}}, its neighbour {{b.length}}."
change: [a.length, b.length]
{PROOF}
"""


def pairs(found) -> list[tuple[str, ...]]:
    return [(finding.part, *finding.others) for finding in found.values()]


def test_each_pair_of_one_kind_once(judge_crates, pack_of) -> None:
    found = judge_crates(pack_of(SAME.replace("HOW", "each")), CRATES)
    assert pairs(found) == [("a", "b"), ("a", "c"), ("b", "c")]


def test_neighbours_by_name_go_round(judge_crates, pack_of) -> None:
    """The last and the first are neighbours too: like parts stand around an axis."""
    found = judge_crates(pack_of(SAME.replace("HOW", "neighbours")), CRATES)
    assert pairs(found) == [("a", "b"), ("b", "c"), ("c", "a")]
    assert {name: finding.verdict for name, finding in found.items()} == {
        "a.alike/b": "pass",
        "b.alike/c": "pass",
        "c.alike/a": "fail",
    }


def test_two_neighbours_are_one_pair(judge_crates, pack_of) -> None:
    text = CRATES.replace("  c: {kind: crate, length: 500}\n", "")
    assert pairs(judge_crates(pack_of(SAME.replace("HOW", "neighbours")), text)) == [("a", "b")]


def test_one_part_has_no_neighbour(judge_crates, pack_of) -> None:
    text = "parts: {a: {kind: crate, length: 300}}"
    for how in ("each", "neighbours"):
        assert judge_crates(pack_of(SAME.replace("HOW", how)), text) == {}


def test_a_pair_tells_both_and_what_to_change_on_both(judge_crates, pack_of) -> None:
    finding = judge_crates(pack_of(SAME.replace("HOW", "neighbours")), CRATES)["c.alike/a"]
    assert finding.message == "c has 500 mm, its neighbour 300 mm."
    assert finding.change == ("c.length (500, line 7)", "a.length (300, line 5)")
    assert finding.place.line == 7


FITS = f"""
rule: lid.fits
for: {{a: lid, b: crate}}
pairs: HOW
require: a.length <= b.length
{PROOF}
"""


def test_each_pair_of_two_kinds(judge_crates, pack_of) -> None:
    found = judge_crates(pack_of(FITS.replace("HOW", "each")), CRATES)
    assert {(each.part, *each.others): each.verdict for each in found.values()} == {
        ("lid_of_b", "a"): "fail",
        ("lid_of_b", "b"): "pass",
        ("lid_of_b", "c"): "pass",
    }


@pytest.mark.parametrize(("name", "other"), [("a_lid", "b_box"), ("b_lid", "a_box")])
def test_neighbours_of_two_kinds_whichever_comes_first(
    judge_crates, pack_of, name: str, other: str
) -> None:
    text = f"parts: {{{name}: {{kind: lid, length: 300}}, {other}: {{kind: crate, length: 400}}}}"
    assert pairs(judge_crates(pack_of(FITS.replace("HOW", "neighbours")), text)) == [(name, other)]


@pytest.mark.parametrize(
    ("require", "verdict", "demand", "capacity"),
    [
        ("largest of boxes.length <= 600 mm", "pass", 0.5, 0.6),
        ("largest of boxes.length <= 450 mm", "fail", 0.5, 0.45),
        ("least of boxes.length >= 200 mm", "pass", 0.2, 0.3),
        ("sum of boxes.length <= 1.3 m", "pass", 1.2, 1.3),
        ("every (boxes.length <= 450 mm)", "fail", 0.5, 0.45),
        ("every (boxes.length >= 200 mm)", "pass", 0.2, 0.3),
    ],
)
def test_every_part_of_a_kind_at_once(
    judge_crates, pack_of, require: str, verdict: str, demand: float, capacity: float
) -> None:
    rule = f"""
    rule: crate.together
    for: {{boxes: every crate}}
    require: {require}
    says: "They are {{boxes.length}} long."
    proof: {{holds: {{boxes.length: [1 m]}}, fails: {{boxes.length: [2 m]}}}}
    """
    found = judge_crates(pack_of(rule), CRATES)
    finding = found["design.together/a/b/c"]
    assert finding.verdict == verdict
    assert finding.demand is not None
    assert finding.capacity is not None
    assert finding.demand.value == pytest.approx(demand, rel=1e-12)
    assert finding.capacity.value == pytest.approx(capacity, rel=1e-12)
    assert finding.message == "They are 300 mm, 400 mm, 500 mm long."


def test_one_unknown_member_leaves_all_open(judge_crates, pack_of) -> None:
    rule = """
    rule: crate.together
    for: {boxes: every crate}
    require: sum of boxes.length <= 1.3 m
    proof: {holds: {boxes.length: [1 m]}, fails: {boxes.length: [2 m]}}
    """
    text = CRATES.replace("b: {kind: crate, length: 400}", "b: {kind: crate}")
    finding = judge_crates(pack_of(rule), text)["design.together/a/b/c"]
    assert finding.verdict == "open"
    assert finding.open_because == ("b.length is not given: its length",)


def test_members_vary_over_the_cases(judge_crates, pack_of) -> None:
    """Each crate's own load in its own case: the governing one is where the sum is largest."""
    rule = """
    rule: crate.together
    for: {boxes: every crate}
    require: sum of boxes.bears.force <= 1000 N
    proof: {holds: {boxes.bears.force: [1 N]}, fails: {boxes.bears.force: [2 kN]}}
    """
    text = """
parts:
  a: {kind: crate, mass: 0 kg}
  b: {kind: crate, mass: 0 kg}
loads:
  one: {force: 300 N, on: a}
  two: {force: 500 N, on: b}
"""
    finding = judge_crates(pack_of(rule), text)["design.together/a/b"]
    assert finding.case == "all loads"
    assert finding.utilisation == pytest.approx(0.8, rel=1e-12)


def test_a_collection_beside_the_design(judge_crates, pack_of) -> None:
    rule = """
    rule: crate.together
    for: {boxes: every crate}
    when: design.service == "public"
    require: largest of boxes.length <= 450 mm
    proof: {holds: {boxes.length: [1 m]}, fails: {boxes.length: [2 m]}}
    """
    found = judge_crates(pack_of(rule), "service: public" + CRATES)
    assert found["design.together/a/b/c"].verdict == "fail"
    assert judge_crates(pack_of(rule), CRATES)["design.together/a/b/c"].verdict == "not applicable"
