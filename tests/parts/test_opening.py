"""Openings end to end: webs, clearances and corners, by geometry on paper."""

from math import hypot, pi, sin

import pytest


def opening(more: str) -> str:
    return f"\n  hole: {{kind: opening, {more}}}\n"


# Six holes of 30 mm on a circle of 200 mm, in a plate of 250 mm around a hole of 150 mm.
ROUND = "width: 30, count: 6, circle: 200"
# Slots of 20 mm by 60 mm along the radius, on the same circle, in a plate of 300 mm.
CORNERED = "shape: cornered, width: 20, length: 60, count: 12, circle: 200"

WEBS = [
    (ROUND, 70.0, "chord of a hexagon, 100 mm, less 30 mm"),
    (ROUND + ", plate: {outer: 250}", 10.0, "125 - 100 - 15"),
    (ROUND + ", plate: {inner: 150}", 10.0, "100 - 15 - 75"),
    (ROUND + ", plate: {outer: 260, inner: 158}", 6.0, "the inner one of 15 and 6"),
    (ROUND + ", web: {edge: 4}", 4.0, "a straight edge is nearer"),
    (ROUND.replace("6", "2"), 170.0, "opposite each other: 200 - 30"),
    ("width: 30, web: {edge: 12}", 12.0, "one hole beside an edge"),
    ("width: 30, count: 1, circle: 200, plate: {outer: 250}", 10.0, "one hole near the rim"),
    (CORNERED, 140 * sin(pi / 12) - 20 * (1 + 3**0.5) / 8**0.5, "at the inner corners, r 70"),
    (CORNERED + ", plate: {outer: 262}", 131 - hypot(130, 10), "outer corner at 130 and 10"),
    (CORNERED + ", plate: {inner: 130}", 5.0, "100 - 30 - 65"),
]


@pytest.mark.parametrize(("more", "web", "source"), WEBS)
def test_webs_by_geometry(asked, more: str, web: float, source: str) -> None:
    found = asked(opening(more))
    assert found("hole.web.least", "own weight") * 1000 == pytest.approx(web, rel=1e-9)


@pytest.mark.parametrize(("edge", "verdict"), [(18.1, "pass"), (17.9, "fail")])
def test_a_web_is_as_wide_as_the_plate_is_thick(asked, edge: float, verdict: str) -> None:
    """Common practice."""
    found = asked(opening(f"width: 30, plate: {{thickness: 18}}, web: {{edge: {edge}}}"))
    assert found.verdict("hole.web") == verdict


def test_a_hole_of_which_no_edge_is_told_is_open(asked) -> None:
    found = asked(opening("width: 30, plate: {thickness: 18}"))
    assert found.verdict("hole.web") == "open"
    assert any("needs a distance to an edge" in each for each in found.reasons("hole.web.least"))


ROOM = [
    ("width: 22, passes: {width: 20}", 1.0, "a shaft in a round hole"),
    ("shape: cornered, width: 24, length: 60, passes: {width: 20, travel: 37}", 1.5, "at the ends"),
    ("shape: cornered, width: 22, length: 60, passes: {width: 20, travel: 30}", 1.0, "at the side"),
    (
        "shape: cornered, width: 30, length: 60, passes: {width: 20, length: 40, travel: 18}",
        1.0,
        "a block of 40 mm",
    ),
    ("width: 22, passes: {width: 20, travel: 3}", -0.5, "it strikes"),
]


@pytest.mark.parametrize(("more", "room", "source"), ROOM)
def test_room_over_the_travel(asked, more: str, room: float, source: str) -> None:
    found = asked(opening(more))
    assert found("hole.room.least", "own weight") * 1000 == pytest.approx(room, rel=1e-9)


@pytest.mark.parametrize(("travel", "verdict"), [(37.9, "pass"), (38.1, "fail")])
def test_room_close_to_the_limit(asked, travel: float, verdict: str) -> None:
    """60 - 20 - 38 leaves 1 mm at each end."""
    more = f"shape: cornered, width: 30, length: 60, passes: {{width: 20, travel: {travel}}}"
    assert asked(opening(more)).verdict("hole.room") == verdict


@pytest.mark.parametrize(("corner", "verdict"), [(3.05, "pass"), (2.95, "fail")])
def test_a_cutter_leaves_its_radius(asked, corner: float, verdict: str) -> None:
    more = f"shape: cornered, width: 20, length: 40, corner: {corner}, cutter: 6"
    assert asked(opening(more)).verdict("hole.corner") == verdict


@pytest.mark.parametrize(
    ("corner", "times", "verdict"),
    [(10, 3.0, "not applicable"), (2.5, 5.0, "review"), (0.4, 11.0, "review")],
)
def test_sharp_corners_are_a_note(asked, corner: float, times: float, verdict: str) -> None:
    """Inglis (1913), from memory: 1 + 2 sqrt(10 / r)."""
    found = asked(opening(f"shape: cornered, width: 20, length: 40, corner: {corner}"))
    assert found("hole.concentration", "own weight") == pytest.approx(times, rel=1e-9)
    assert found.verdict("hole.notch") == verdict


def test_a_round_hole_triples_the_stress(asked) -> None:
    """Kirsch (1898), from memory."""
    assert asked(opening("width: 20"))("hole.concentration", "own weight") == 3.0
