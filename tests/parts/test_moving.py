"""Wood that moves with the seasons: species and grain, against the gap that is left.

Wood Handbook FPL-GTR-282 (2021), tables 4-2 and 13-5; plywood: table 13-1, from memory.
"""

import pytest

SOUTH = 2.8  # % of moisture from 50 to 65 % of humidity, table 4-2: 12.0 - 9.2
PARTS = {
    "top": "kind: top, carried_by: base, length: 900, width: 600, span: 800",
    "panel": "kind: panel, carried_by: base, length: 900, width: 600",
    "skirt": "kind: skirt, carried_by: base, diameter: 1200, height: 90, supports: 8",
}


def part(kind: str, material: str, more: str = "") -> str:
    tail = f", {more}" if more else ""
    return f"\n  lid: {{{PARTS[kind]}, material: {material}, thickness: 20{tail}}}\n"


# kind, material, more, mm that lie across the grain, strain for each per cent; source of the strain
GROWN = [
    ("top", "red oak", "", 600, 0.00369, "tangential"),
    ("top", "red oak", "grain: across", 900, 0.00369, "tangential, the other side"),
    ("top", "red oak", "sawn: quarter", 600, 0.00158, "radial"),
    ("panel", "black walnut", "", 600, 0.00274, "tangential"),
    ("skirt", "sugar maple", "", 90, 0.00353, "tangential"),
    ("top", "birch plywood", "", 600, 0.00015, "plywood, from memory"),
    ("top", "6063-T5", "", 600, 0.0, "metal does not"),
]


@pytest.mark.parametrize(("kind", "material", "more", "size", "strain", "source"), GROWN)
def test_growth_in_damp_air(asked, kind, material, more, size, strain, source) -> None:
    found = asked(part(kind, material, more))
    assert found("lid.movement.damp") * 1e3 == pytest.approx(size * strain * SOUTH, rel=0.04)


def test_a_tray_moves_across_its_width_or_its_depth(asked) -> None:
    arms = """
  arms: {kind: arm, carried_by: base, count: 3, section: {tube: [30, 30, 2]}, material: 6063-T5,
    reach: 430}
  trays: {kind: tray, carried_by: arms, count: 3, material: beech, thickness: 20, inner: 100,
    depth: 300, width: 400%s}
"""
    outward, across = (asked(arms % each) for each in ("", ", grain: across"))
    ratio = outward("trays.movement.damp") / across("trays.movement.damp")
    assert ratio == pytest.approx(400 / 300)


@pytest.mark.parametrize(
    ("gap", "verdict"), [("6.4", "pass"), ("5.9", "fail"), (None, "not applicable")]
)
def test_the_gap_that_is_left_takes_the_growth(asked, gap, verdict) -> None:
    """600 x 0.00369 x 2.8 = 6.2 mm."""
    told = f"movement: {{gap: {gap}}}" if gap else ""
    found = asked(part("top", "red oak", told))
    assert found.verdict("lid.room_to_grow") == verdict
    if gap:
        left = float(gap) / 1e3 - found("lid.movement.damp")
        assert found("lid.movement.room_damp") == pytest.approx(left, abs=1e-12)
        assert "Plywood of that size moves 0.5" in found.says("lid.room_to_grow")


def test_damper_air_needs_more_room(asked) -> None:
    found = asked(part("top", "red oak", "movement: {gap: 6.4}"), "humidity: {most: 70 %}")
    assert found.verdict("lid.room_to_grow") == "fail"


@pytest.mark.parametrize(
    ("material", "more", "verdict"),
    [
        ("red oak", "", "review"),
        ("red oak", "movement: {gap: 8}", "not applicable"),
        ("birch plywood", "", "not applicable"),
    ],
)
def test_solid_wood_without_a_gap_asks_a_person(asked, material, more, verdict) -> None:
    assert asked(part("top", material, more)).verdict("lid.free_to_move") == verdict


def test_air_beyond_the_coefficients_leaves_it_open(asked) -> None:
    found = asked(part("top", "red oak", "movement: {gap: 8}"), "humidity: {most: 85 %}")
    assert found.verdict("lid.room_to_grow") == "open"
    assert any("6 % to 14 %" in each for each in found.reasons("lid.movement.damp"))
