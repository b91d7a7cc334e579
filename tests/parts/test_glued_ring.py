"""Rings of straight pieces, by the geometry of the regular polygon on paper."""

from math import cos, pi, tan

import pytest

# Eight pieces of 80 mm for a ring of 640 by 520 mm; 320 - 260 cos(22.5) = 79.793 mm are needed.
RING = (
    "diameter: 640, opening: 520, sides: 8, layers: 2, "
    "board: {material: birch plywood, thickness: 18, width: 80, length: 2400}, thickness: 35.2"
)
NEEDED = 320 - 260 * cos(pi / 8)


GIVEN = {"sides": "sides: 8", "width": "width: 80", "layers": "layers: 2"}


def ring(changes: str = "", **other: str) -> str:
    text = RING
    for name, after in other.items():
        text = text.replace(GIVEN[name], after)
    return f"\n  rim: {{kind: glued_ring, carried_by: base, {text}{changes}}}\n"


NUMBERS = [
    ("rim.mitre", pi / 8, "180 / 8 degrees"),
    ("rim.board.needed", NEEDED / 1e3, "320 - 260 cos"),
    ("rim.sagitta.inner", 0.26 * (1 - cos(pi / 8)), "260 (1 - cos)"),
    ("rim.outer.flat", (320 + (80 - NEEDED) / 2) / 1e3, "half of what is to spare outside"),
    ("rim.piece.length", 2 * (320 + (80 - NEEDED) / 2) / 1e3 * tan(pi / 8), "2 a tan"),
    ("rim.pieces", 16, "two layers of eight"),
    ("rim.glue.joint", 0.08 * 0.018 / cos(pi / 8), "b t / cos"),
    ("rim.glue.faces", pi * (0.32**2 - 0.26**2), "one face between two layers"),
    ("rim.lap", pi * 0.58 / 2 / 8, "half of a piece at the mean radius of 290 mm"),
    ("rim.wood.outer", 0.320, "the round rim"),
    ("rim.wood.inner", 0.260, "the round inside"),
    ("rim.mass", pi * (0.32**2 - 0.26**2) * 0.0352 * 680, "birch plywood, 680 kg/m3"),
]


@pytest.mark.parametrize(("name", "expected", "source"), NUMBERS)
def test_a_ring_of_eight(asked, name: str, expected: float, source: str) -> None:
    assert asked(ring())(name) == pytest.approx(expected, rel=1e-9), source


def test_a_ring_that_stays_straight_ends_at_its_flats_and_begins_at_its_corners(asked) -> None:
    """Across the flats 640 and 480; the inner corners stand at 240 / cos(22.5) mm."""
    found = asked(ring(", rounded: never"))
    assert found("rim.wood.outer") == pytest.approx(0.320)
    assert found("rim.wood.inner") == pytest.approx(0.240 / cos(pi / 8))
    assert found("rim.board.needed") == pytest.approx(0.06)


VERDICTS = [
    ("board_wide_enough", ring(), "pass"),
    ("board_wide_enough", ring(width="width: 79"), "fail"),
    ("track_on_wood", ring(", bears: {inner: 530, outer: 630}"), "pass"),
    ("track_on_wood", ring(", bears: {inner: 530, outer: 635}"), "fail"),
    ("track_on_wood", ring(", rounded: never, bears: {inner: 525, outer: 630}"), "fail"),
    ("track_on_wood", ring(", rounded: never, bears: {inner: 526, outer: 630}"), "pass"),
    ("layers_staggered", ring(), "pass"),
    ("layers_staggered", ring(", staggered: false"), "fail"),
    ("ends_held", ring(layers="layers: 1"), "fail"),
    ("ends_held", ring(", joint: spline", layers="layers: 1"), "pass"),
    ("grain_runs_along", ring(), "pass"),
    ("grain_runs_along", ring(sides="sides: 7"), "fail"),
    ("grain_runs_along", ring(", grain: across"), "fail"),
    ("glued_before_machined", ring(), "pass"),
    ("glued_before_machined", ring(", rounded: before gluing"), "fail"),
    ("layers_add_up", ring(), "pass"),
    ("faces_parallel", ring(", parallel_within: 0.5"), "fail"),
    ("faces_parallel", ring(", parallel_within: 0.5, faced: true"), "pass"),
]


@pytest.mark.parametrize(("rule", "parts", "verdict"), VERDICTS)
def test_what_is_said_of_a_ring(asked, rule: str, parts: str, verdict: str) -> None:
    """Inner corners of the straight one at 259.8 mm: 3 mm inside a track takes 525.6 mm."""
    assert asked(parts).verdict(f"rim.{rule}") == verdict


def test_boards_for_sixteen_pieces(asked) -> None:
    """A piece and the next, turned, advance L - b tan: 232 mm of 2400 mm, ten to a board."""
    found = asked(ring())
    length = 2 * (320 + (80 - NEEDED) / 2) * tan(pi / 8)
    advance, lost = length - 80 * tan(pi / 8), 80 * tan(pi / 8)
    assert found("rim.board.run") * 1e3 == pytest.approx(16 * advance + lost)
    assert (2400 - lost) // advance == 10
    assert found("rim.board.count") == 2
