"""Guides end to end: jamming by the textbook, reactions and droop by hand."""

import pytest

INCH = 0.0254
GUIDE = """
  guide: {{kind: guide, carried_by: base, mass: 0 kg, {more}}}
  drawer: {{kind: top, carried_by: guide, mass: 0 kg, diameter: 300}}
loads: {{tools: {{force: 100 N, on: drawer}}}}
"""


def guide(more: str) -> str:
    return GUIDE.format(more=more)


@pytest.mark.parametrize(
    ("length", "friction", "largest", "source"),
    [
        ("6 in", 0.25, 12 * INCH, "Beer and Johnston, Vector Mechanics, 8.1, print"),
        ("100 mm", 0.25, 0.200, "the two-to-one rule of the trade, print"),
        ("100 mm", 0.10, 0.500, "a/L = 5.0, computed"),
        ("100 mm", 0.20, 0.250, "a/L = 2.5, computed"),
        ("100 mm", 0.40, 0.125, "a/L = 1.25, computed"),
        ("100 mm", 0.50, 0.100, "a/L = 1.0, computed"),
    ],
)
def test_the_offset_at_which_it_jams(asked, length, friction, largest, source) -> None:
    more = f"length: {length}, friction: {{largest: {friction}}}"
    assert asked(guide(more))("guide.largest_offset") == pytest.approx(largest, rel=1e-9)
    for offset, verdict in ((0.99 * largest, "pass"), (1.01 * largest, "fail")):
        found = asked(guide(f"{more}, offset: {offset * 1000!r}"))
        assert found.verdict("guide.does_not_jam") == verdict


def test_pulled_out_it_jams_sooner(asked) -> None:
    """L / (2 mu) of what is still engaged: 120 mm of 300."""
    found = asked(guide("length: 300, travel: 180, friction: {largest: 0.3}"))
    assert found("guide.largest_offset") == pytest.approx(0.120 / 0.6, rel=1e-12)


@pytest.mark.parametrize(
    ("travel", "front", "rear", "source"),
    [
        (0, 100, 0, "all of it inside"),
        (150, 100, 0, "its middle at the end of the guide"),
        (180, 125, 25, "30 mm beyond, 120 mm engaged: F (1 + a/L) and F a/L"),
        (200, 150, 50, "50 mm beyond, 100 mm engaged"),
        (225, 200, 100, "75 mm beyond, 75 mm engaged"),
    ],
)
def test_forces_at_the_ends(asked, travel, front, rear, source) -> None:
    found = asked(guide(f"length: 300, travel: {travel}, friction: {{largest: 0.3}}"))
    assert found("guide.front") == pytest.approx(front, abs=1e-9)
    assert found("guide.rear") == pytest.approx(rear, abs=1e-9)
    assert found("guide.drag") == pytest.approx(0.3 * (front + rear), rel=1e-9)
    assert found("guide.moment") == pytest.approx(100 * max(travel - 150, 0) / 1000, abs=1e-9)


def test_the_hand_gives_more_than_the_drag_beside_the_middle(asked) -> None:
    """Share 1 - 2 mu a/L = 1 - 0.6 * 100/300 = 0.8 arrives of the push."""
    found = asked(guide("length: 300, offset: 100, friction: {largest: 0.3}"))
    assert found("guide.hand_force") == pytest.approx(30 / 0.8, rel=1e-9)


def test_where_it_jams_no_force_is_told(asked) -> None:
    found = asked(guide("length: 300, offset: 500, friction: {largest: 0.3}"))
    assert found.reasons("guide.hand_force") == [
        "guide.hand_force is pushed so far beside its middle that it jams"
    ]
    assert found.verdict("guide.by_hand") == "open"


@pytest.mark.parametrize(
    ("travel", "verdict"), [(0, "pass"), (200, "pass"), (202, "fail"), (300, "fail"), (400, "fail")]
)
def test_enough_stays_in(asked, travel: int, verdict: str) -> None:
    """A third of 300 mm; beyond 300 mm it lies on the floor."""
    found = asked(guide(f"length: 300, travel: {travel}"))
    assert found.verdict("guide.stays_in") == verdict
    assert found("guide.engaged") == pytest.approx(0.3 - travel / 1000, abs=1e-12)


def test_the_position_belongs_to_the_configuration(asked) -> None:
    found = asked(guide("length: 300"), "configurations: {closed: {}, open: {guide.travel: 180}}")
    assert found("guide.rear", "tools, closed") == 0
    assert found("guide.rear", "tools, open") == pytest.approx(25, rel=1e-9)


def test_play_becomes_droop(asked) -> None:
    """0.4 mm over 120 mm engaged, 180 mm out: c/2 + c/L travel = 0.2 + 0.6 mm."""
    found = asked(guide("length: 300, travel: 180, clearance: 0.4"))
    assert found("guide.droop") == pytest.approx(0.8e-3, rel=1e-9)
    assert found.verdict("guide.droops") == "pass"
    assert (
        asked(guide("length: 300, travel: 180, clearance: 1.6")).verdict("guide.droops") == "fail"
    )


def test_each_pair_of_surfaces_has_its_range(asked) -> None:
    """Wood on wood 0.2 sliding to 0.5 at rest: Serway, table 5.1, from memory."""
    found = asked(guide("length: 300"))
    assert (found("guide.friction.least"), found("guide.friction.largest")) == (0.2, 0.5)
    slick = asked(guide("length: 300, rubs: UHMW-PE on steel"))
    assert (slick("guide.friction.least"), slick("guide.friction.largest")) == (0.12, 0.20)
