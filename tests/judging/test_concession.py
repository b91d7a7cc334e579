"""Concessions: failures accepted on purpose, and those that no longer stand."""

import pytest

SHORT = "rule: crate.short\nrequire: length <= 0.5 m"
NARROW = "rule: crate.narrow\nbehind: [crate.short]\nrequire: width <= 0.4 m"
BOX = "parts: {{box: {{kind: crate, length: {length}, width: {width}}}}}\n"
ACCEPTED = """concessions:
  - {{rule: {rule}, part: {part}, by: the owner of the shed, why: it stands in a corner{until}}}
"""


def conceded(
    length: int = 600,
    width: int = 300,
    rule: str = "crate.short",
    part: str = "box",
    until: str = "",
) -> str:
    until = f", until: {until}" if until else ""
    return BOX.format(length=length, width=width) + ACCEPTED.format(
        rule=rule, part=part, until=until
    )


@pytest.mark.parametrize("rule", ["crate.short", "box.short"])
@pytest.mark.parametrize("until", ["", "2026-11-25", "2027-01-31"])
def test_a_fail_that_is_accepted_stays_a_fail_with_its_concession(
    judge_crates, pack_of, rule: str, until: str
) -> None:
    """By the rule's name or by the name that it has on the part; on its last day it still holds."""
    found = judge_crates(pack_of(SHORT), conceded(rule=rule, until=until), on="2026-11-25")
    assert list(found) == ["box.short"]
    finding = found["box.short"]
    assert finding.verdict == "fail"
    assert finding.concession is not None
    assert finding.concession.by == "the owner of the shed"
    assert finding.concession.why == "it stands in a corner"
    assert finding.concession.until == (until or None)


@pytest.mark.parametrize(
    ("sections", "reason"),
    [
        (
            conceded(until="2026-11-24"),
            "The concession of box, crate.short by the owner of the shed does not stand: "
            "it ended on 2026-11-24.",
        ),
        (
            conceded(length=400),
            "The concession of box, crate.short by the owner of the shed does not stand: "
            "nothing fails there any more, so that it can go.",
        ),
        (
            conceded(rule="crate.shot"),
            "The concession of box, crate.shot by the owner of the shed does not stand: "
            "there is no such rule on that part; the nearest is crate.short.",
        ),
        (
            conceded(part="bax"),
            "The concession of bax, crate.short by the owner of the shed does not stand: "
            "there is no such rule on that part; the nearest part is box.",
        ),
        (
            conceded(length=400, until="2026-11-24"),
            "The concession of box, crate.short by the owner of the shed does not stand: "
            "nothing fails there any more, so that it can go.",
        ),
    ],
)
def test_a_concession_that_does_not_stand_is_a_finding_of_its_own(
    judge_crates, pack_of, sections: str, reason: str
) -> None:
    found = judge_crates(pack_of(SHORT), sections, on="2026-11-25")
    stale = [each for each in found.values() if each.rule == "design.concession_stands"]
    assert [each.message for each in stale] == [reason]
    assert (stale[0].verdict, stale[0].level) == ("fail", "must")
    assert (stale[0].place.path, stale[0].place.line) == ("bench.yaml", 5)
    assert stale[0].concession is None
    assert found["box.short"].concession is None


def test_a_stale_concession_cannot_be_conceded(judge_crates, pack_of) -> None:
    sections = conceded(length=400) + (
        "  - {rule: design.concession_stands, part: box, by: the owner of the shed, why: so}\n"
    )
    found = judge_crates(pack_of(SHORT), sections)
    assert all(each.concession is None for each in found.values())
    assert sum(each.rule == "design.concession_stands" for each in found.values()) == 2


def test_an_accepted_fail_holds_back_what_stands_behind_it(judge_crates, pack_of) -> None:
    """That it is accepted makes it no pass: there is still no verdict on what it holds up."""
    found = judge_crates(pack_of(SHORT, NARROW), conceded())
    assert found["box.narrow"].verdict == "open"


@pytest.mark.parametrize("width", ["300", "900"])
def test_what_nobody_can_judge_now_is_not_stale(judge_crates, pack_of, width: str) -> None:
    """Held back by another fail, or open for want of a field: it may fail again tomorrow."""
    sections = conceded(rule="crate.narrow").replace("width: 300", f"width: {width}")
    assert list(judge_crates(pack_of(SHORT, NARROW), sections)) == ["box.short", "box.narrow"]
    missing = conceded().replace("length: 600, ", "")
    assert list(judge_crates(pack_of(SHORT), missing)) == ["box.short"]


def test_a_concession_is_for_one_part_only(judge_crates, pack_of) -> None:
    sections = conceded().replace(
        "parts: {box:", "parts: {crate_two: {kind: crate, length: 700}, box:"
    )
    found = judge_crates(pack_of(SHORT), sections)
    assert found["box.short"].concession is not None
    assert found["crate_two.short"].concession is None


ALIKE = """rule: crate.alike
for: {one: crate, other: crate}
pairs: each
require: one.length == other.length
proof: {holds: {one.length: 1 m, other.length: 1 m}, fails: {one.length: 1 m, other.length: 2 m}}
"""
THREE = """parts:
  low: {kind: crate, length: 400}
  middle: {kind: crate, length: 500}
  top: {kind: crate, length: 600}
concessions: [{rule: crate.alike, part: low, WITHby: the owner of the shed, why: they nest}]
"""


@pytest.mark.parametrize(
    ("other", "accepted"),
    [
        ("", [("low", "middle"), ("low", "top")]),
        ("with: top, ", [("low", "top")]),
        ("with: lid, ", []),
    ],
)
def test_a_concession_of_a_pair_may_name_both_parts(
    judge_crates, pack_of, other: str, accepted: list[tuple[str, ...]]
) -> None:
    found = judge_crates(pack_of(ALIKE), THREE.replace("WITH", other))
    conceded = [each for each in found.values() if each.concession is not None]
    assert [(each.part, *each.others) for each in conceded] == accepted
    stale = [each for each in found.values() if each.rule == "design.concession_stands"]
    assert len(stale) == (0 if accepted else 1)
