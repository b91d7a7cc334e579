"""What moves in a design: clearances by hand, from the text of a small file to the number."""

from math import cos, hypot, pi, sin

import pytest

from reviewer import review

NEAR = 1e-5  # a hundredth of a millimetre
START = """design: tried
lengths: mm
travels: {{{travels}}}
parts:
  base: {{kind: base, feet: {{length: 600, width: 600}}, height: 600, mass: 24 kg}}
  {parts}
"""
BOARD = "kind: top, carried_by: base, material: birch plywood, thickness: 18, diameter: 100"


def told(parts: str, travels: str = "go: {}"):
    found = review(START.format(travels=travels, parts=parts))
    assert not found.problems, found.problems

    def value(part: str, path: str, case: int = 0):
        values = found.derived.values
        return values.at(values.plan.slot(part, path), case)

    return found, value


def test_a_disc_that_slides_past_another() -> None:
    """Middles 120 mm apart where they pass, radii 50 mm each: 20 mm."""
    _, value = told(
        f"post: {{{BOARD}, at: {{x: 100, y: 120}}}}\n"
        f"  slide: {{{BOARD}, moves: {{slide: {{by: go, distance: 200}}}}}}"
    )
    assert value("post_and_slide", "clearance") == pytest.approx(0.02, abs=NEAR)
    assert value("post_and_slide", "travel") == pytest.approx(0.5, abs=0.01)
    assert value("post_and_slide", "ends") == pytest.approx(hypot(0.1, 0.12) - 0.1, abs=NEAR)
    assert value("post_and_slide", "touches") is False


def test_slide_clear_lift_in_one_turn() -> None:
    """Out by 0.4, at rest until 0.6, then up: the lift never meets what stands in its way."""
    travels = "turn: {}, out: {follows: turn, to: 0.4}, up: {follows: turn, from: 0.6}"
    lid = f"{BOARD}, heights: {{bottom: 600}}"
    moves = "moves: {slide: {by: out, distance: 130}, lift: {by: up, height: 200}}"
    shelf = f"{BOARD}, heights: {{bottom: 640, top: 660}}"
    _, value = told(f"lid: {{{lid}, {moves}}}\n  shelf: {{{shelf}}}", travels)
    assert value("lid_and_shelf", "clearance") == pytest.approx(0.022, abs=NEAR)
    early = moves.replace("by: up", "by: out")
    _, value = told(f"lid: {{{lid}, {early}}}\n  shelf: {{{shelf}}}", travels)
    assert value("lid_and_shelf", "clearance") == 0.0


def test_five_sectors_that_open_radially() -> None:
    """Neighbours part by 2 s sin(pi / 5); closed, their sides leave half a degree between them."""
    tray = (
        "kind: tray, carried_by: base, count: 5, material: birch plywood, thickness: 15, "
        "inner: 200, depth: 300, width: 400, outline: {sector: {inner: 200, outer: 500, "
        "angle: 72 deg}}, moves: {slide: {by: go, profile: [[0, 10], [1, 100]]}}"
    )
    _, value = told(f"trays: {{{tray}}}")
    expected = 2 * 0.01 * sin(pi / 5)
    assert value("trays_and_trays", "clearance") == pytest.approx(expected, abs=NEAR)


def test_travels_one_after_the_other_are_no_free_combination() -> None:
    """The gate turns only after the slide is out; anywhere else the two would meet."""
    parts = (
        f"slide: {{{BOARD}, moves: {{slide: {{by: out, distance: 300}}}}}}\n"
        f"  gate: {{{BOARD}, at: {{x: 0, y: 200}}, outline: {{disc: {{diameter: 40}}, "
        "at: {x: 0, y: -200}}, moves: {turn: {by: swing, angle: 90 deg, about: {x: 0, y: 0}}}}"
    )
    free, order = "out: {}, swing: {}", "out: {}, swing: {after: out}"
    gate = parts.replace("at: {x: 0, y: -200}}", "at: {x: -200, y: 0}}")
    _, value = told(gate, free)
    assert value("gate_and_slide", "clearance") == 0.0
    _, value = told(gate, order)
    assert value("gate_and_slide", "clearance") > 0.05


@pytest.mark.parametrize(
    ("opening", "expected"),
    [
        (
            "shape: cornered, width: 60, length: 80",
            0.04 * cos(pi / 9) - 0.078 * sin(pi / 9) - 0.006,
        ),
        ("shape: cornered, width: 24, length: 80", 0.002),  # at its sides, all the way
        ("shape: cornered, width: 60, length: 40", 0.0),  # strikes on its way to either end
    ],
)
def test_a_lever_in_its_opening(opening: str, expected: float) -> None:
    """A bar 12 by 20 mm swings 20 degrees about an axis 60 mm under a plate of 18 mm; by hand."""
    found, value = told(
        "plate: {kind: top, carried_by: base, material: birch plywood, thickness: 18, "
        "length: 600, width: 600, heights: {bottom: 660}}\n"
        "  lever: {kind: top, carried_by: base, material: birch plywood, thickness: 20, "
        "length: 360, width: 12, outline: {polygon: [[-6, 540], [6, 540], [6, 900], [-6, 900]], "
        "standing: true}, heights: {bottom: -10, top: 10}, moves: {swing: {by: go, "
        "profile: [[0, -20 deg], [1, 20 deg]], about: {out: 0, height: 600}}}}\n"
        f"  hole: {{kind: opening, on: plate, passes: {{part: lever}}, {opening}}}"
    )
    assert value("lever_and_plate", "clearance") == pytest.approx(expected, abs=NEAR)
    assert value("hole", "room.swept") == value("lever_and_plate", "clearance")
    rule = next(each for each in found.findings if each.name == "hole.room_on_the_way")
    assert rule.verdict == ("pass" if expected > 0.001 else "fail")


def test_what_slides_off_its_carrier() -> None:
    """A disc of 100 mm on a board 400 mm long: its middle comes within 20 mm of the end."""
    board = "kind: top, carried_by: base, material: birch plywood, thickness: 18"
    top = f"{BOARD}, at: {{x: 0}}".replace("carried_by: base", "carried_by: board")
    _, value = told(
        f"board: {{{board}, length: 400, width: 300}}\n"
        f"  slide: {{{top}, moves: {{slide: {{by: go, distance: 180}}}}}}"
    )
    assert value("board_and_slide", "rest.margin") == pytest.approx(0.02, abs=NEAR)
    assert value("board_and_slide", "touches") is True


def test_stops_and_reach() -> None:
    """Driven 90 mm up against a stop at 80 mm: it rises 80, and the drive goes on by 10."""
    found, value = told(
        f"lid: {{{BOARD}, moves: {{lift: {{by: go, height: 90, most: 80, wanted: 85}}}}}}"
    )
    assert value("lid_lift", "reach") == pytest.approx(0.08)
    assert value("lid_lift", "beyond") == pytest.approx(0.01)
    verdicts = {each.name: each.verdict for each in found.findings}
    assert verdicts["lid_lift.ends_at_its_stop"] == "fail"
    assert verdicts["lid_lift.goes_far_enough"] == "fail"


def test_a_base_is_weighed_at_every_break_of_the_travel() -> None:
    """A heavy slide goes out and back: with 60 kg at 400 mm the base tips half way, at no end.

    Feet 300 mm from the middle, 24 kg at the middle: 60 (400 - 300) = 6000 < 24 x 300 = 7200 holds
    with all of its weight; at 450 mm, 9000 > 7200, it tips.
    """
    for out, verdict in ((400, "pass"), (450, "fail")):
        slide = f"{BOARD}, mass: 60 kg, moves: {{slide: {{by: go, profile: "
        found, value = told(f"slide: {{{slide}[[0, 0], [0.5, {out}], [1, 0]]}}}}}}")
        names = found.derived.cases.names
        middle = next(k for k, name in enumerate(names) if "go at 0.5" in name)
        assert value("slide", "place.x", middle) == pytest.approx(out / 1000)
        stands = next(each for each in found.findings if each.name == "base.stands")
        assert stands.verdict == verdict


def test_a_design_without_travels_has_no_pairs() -> None:
    found = review(START.replace("travels: {{{travels}}}\n", "").format(parts=f"a: {{{BOARD}}}"))
    assert sorted(found.derived.design.parts) == ["a", "base"]
    assert len(found.derived.design.configurations) == 1
