"""A rule that stands behind another: no verdict on what the other has already refused."""

import math

import pytest

STACK = """
parts:
  floor: {{kind: crate, length: {floor}}}
  box: {{kind: crate, carried_by: floor, length: {box}}}
  cover: {{kind: lid, carried_by: box, length: 300}}
  top: {{kind: lid, carried_by: cover, length: 200}}
"""
SHORT = "rule: crate.short\nrequire: length <= 0.5 m"
NARROW = "rule: crate.narrow\nbehind: [crate.short]\nrequire: width <= 0.4 m"
FITS = "rule: lid.fits\nbehind: [crate.short]\nrequire: length <= 1 m"
FLAT = "rule: lid.flat\nbehind: [lid.fits]\nrequire: length <= 1 m"


def stack(floor: int, box: int) -> str:
    return STACK.format(floor=floor, box=box)


def verdicts(found) -> dict[str, str]:
    return {name: finding.verdict for name, finding in found.items()}


def test_a_finding_is_held_back_on_its_own_part(judge_crates, pack_of) -> None:
    found = judge_crates(
        pack_of(SHORT, NARROW), "parts: {box: {kind: crate, length: 600, width: 300}}"
    )
    held = found["box.narrow"]
    assert held.verdict == "open"
    assert held.message == "Not judged, because box.short fails."
    assert held.open_because == ("box.short fails",)
    assert math.isnan(held.utilisation)
    assert (held.demand, held.capacity, held.case) == (None, None, None)


@pytest.mark.parametrize(
    ("before", "behind"),
    [("pass", "pass"), ("fail", "open"), ("open", "pass"), ("not applicable", "pass")],
)
def test_only_a_fail_holds_others_back(judge_crates, pack_of, before: str, behind: str) -> None:
    length = {"pass": "length: 400, ", "fail": "length: 600, "}.get(before, "")
    rule = SHORT + ("\nwhen: slats > 5" if before == "not applicable" else "")
    found = judge_crates(
        pack_of(rule, NARROW), f"parts: {{box: {{kind: crate, {length}width: 300}}}}"
    )
    assert verdicts(found) == {"box.short": before, "box.narrow": behind}


@pytest.mark.parametrize(
    ("floor", "box", "held"),
    [
        (600, 600, "Not judged, because box.short fails."),
        (400, 600, "Not judged, because box.short fails."),
        (600, 400, None),
        (400, 400, None),
    ],
)
def test_the_nearest_carrier_of_that_kind_holds_back(
    judge_crates, pack_of, floor: int, box: int, held: str | None
) -> None:
    """The cover stands on the box; that the floor below the box fails is the box's own matter."""
    found = judge_crates(pack_of(SHORT, FITS), stack(floor, box))
    assert found["cover.fits"].verdict == ("open" if held else "pass")
    assert found["top.fits"].verdict == ("open" if held else "pass")
    if held:
        assert found["cover.fits"].message == held
        assert found["top.fits"].message == held


def test_what_is_held_back_holds_back(judge_crates, pack_of) -> None:
    found = judge_crates(pack_of(FLAT, FITS, SHORT), stack(400, 600))
    assert found["cover.fits"].open_because == ("box.short fails",)
    assert found["cover.flat"].open_because == ("cover.fits fails",)


def test_rules_are_judged_in_the_order_in_which_they_stand(judge_crates, pack_of) -> None:
    """Whatever their order in the pack."""
    for pack in (pack_of(SHORT, FITS, FLAT), pack_of(FLAT, FITS, SHORT)):
        found = judge_crates(pack, stack(400, 400))
        order = [finding.rule for finding in found.values()]
        assert list(dict.fromkeys(order)) == ["crate.short", "lid.fits", "lid.flat"]


def test_any_of_several_rules_holds_back(judge_crates, pack_of) -> None:
    wide = "rule: crate.wide\nrequire: width >= 0.1 m"
    behind = "rule: crate.square\nbehind: [crate.wide, crate.short]\nrequire: area <= 1 m^2"
    found = judge_crates(
        pack_of(SHORT, wide, behind), "parts: {box: {kind: crate, length: 600, width: 300}}"
    )
    assert found["box.square"].open_because == ("box.short fails",)


@pytest.mark.parametrize(("left", "right"), [(600, 400), (400, 600), (600, 600)])
def test_every_one_of_several_carriers_counts(judge_crates, pack_of, left, right) -> None:
    text = f"""
parts:
  left: {{kind: crate, length: {left}}}
  right: {{kind: crate, length: {right}, at: {{x: 500}}}}
  cover: {{kind: lid, carried_by: [left, right], length: 300}}
"""
    finding = judge_crates(pack_of(SHORT, FITS), text)["cover.fits"]
    assert finding.verdict == "open"
    assert finding.open_because == (f"{'left' if left > 500 else 'right'}.short fails",)


def test_a_pair_that_fails_holds_back_although_another_passes(judge_crates, pack_of) -> None:
    """Crate a is too long beside b, not beside c."""
    apart = """
    rule: crate.alike
    for: {a: crate, b: crate}
    pairs: each
    require: a.length <= 1.5 * b.length
    proof: {holds: {a.length: 1 m, b.length: 1 m}, fails: {a.length: 2 m, b.length: 1 m}}
    """
    narrow = "rule: crate.narrow\nbehind: [crate.alike]\nrequire: width <= 0.4 m"
    text = """
parts:
  a: {kind: crate, length: 600, width: 300}
  b: {kind: crate, length: 300, width: 300}
  c: {kind: crate, length: 600, width: 300}
"""
    found = judge_crates(pack_of(apart, narrow), text)
    assert found["a.alike/b"].verdict == "fail"
    assert found["a.alike/c"].verdict == "pass"
    assert found["a.narrow"].open_because == ("a.alike fails",)
    assert found["c.narrow"].verdict == "pass"


def test_a_part_without_such_a_carrier_is_judged(judge_crates, pack_of) -> None:
    found = judge_crates(pack_of(SHORT, FITS), "parts: {cover: {kind: lid, length: 300}}")
    assert found["cover.fits"].verdict == "pass"
