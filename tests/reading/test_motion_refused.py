"""Travels, moves and outlines that cannot be: what is wrong, found, and would be right."""

import pytest

from reviewer import review

TOP = "kind: top, carried_by: base, material: birch plywood, thickness: 18, diameter: 300"
START = """design: tried
lengths: mm
{travels}
parts:
  base: {{kind: base, feet: {{length: 600, width: 600}}, height: 600, mass: 24 kg}}
  lid: {{{lid}}}
{rest}
"""
OPEN = "travels: {open: {}}"


def refused(travels: str = OPEN, lid: str = TOP, rest: str = "") -> list[tuple[str, str, str]]:
    found = review(START.format(travels=travels, lid=lid, rest=rest))
    return [(each.what, each.found, each.expected) for each in found.problems]


TRAVELS = [
    ("{a: {follows: b}}", "no travel has this name", "b", "the name of a travel"),
    ("{a: {follow: a}}", "a travel has no field follow", "follow", None),
    ("{a: {from: 0.2}}", "a follows no travel", "0.2", "follows: and the name of a travel"),
    (
        "{a: {}, b: {follows: a, from: 0.6, to: 0.4}}",
        "b ends where it begins, or before",
        "0.4",
        "to: a place beyond from:",
    ),
    (
        "{a: {}, b: {follows: a, after: a}}",
        "b follows one travel and comes after one",
        "a",
        "follows: or after:, not both",
    ),
    (
        "{a: {follows: b}, b: {follows: a}}",
        "travels lead each other in a circle",
        "a and b",
        "a travel that none leads, at their head",
    ),
    ("{a: {}, b: {after: a}, c: {after: a}}", "b comes after a already", "a", "after: b"),
    ("{a: {position: 2}}", "position is out of its bounds", "2", "at least 0 and at most 1"),
]


@pytest.mark.parametrize(("text", "what", "found", "expected"), TRAVELS, ids=str)
def test_a_travel_is_refused(text: str, what: str, found: str, expected: str | None) -> None:
    ((said, seen, due),) = refused(f"travels: {text}")
    assert (said, seen) == (what, found)
    assert expected is None or due == expected


LIDS = [
    (
        "moves: {lift: {height: 20}}",
        "the lift of lid is driven by no travel",
        "no by",
        "by: and the name of a travel",
    ),
    (
        "moves: {lift: {by: open}}",
        "how far is the lift of lid?",
        "no height, profile or ramp",
        "one of height, profile or ramp",
    ),
    (
        "moves: {lift: {by: open, height: 20, profile: [[0, 0], [1, 20]]}}",
        "the lift of lid is told in two ways",
        "height and profile",
        "one of height, profile or ramp",
    ),
    (
        "moves: {slide: {by: open, slot: {inner: 100, outer: 200}}}",
        "the slot of lid lacks a measure",
        "no turn",
        "slot: with inner, outer and turn",
    ),
    (
        "moves: {lift: {by: open, height: 20, least: 10, most: 5}}",
        "the stops of the lift of lid leave no way",
        "5",
        "most: beyond least:",
    ),
    ("moves: {lift: {by: opens, height: 20}}", "no travel has this name", "opens", None),
    (
        "outline: {disc: {diameter: 40}, ring: {diameter: 60, hole: 20}}",
        "the outline of lid has 2 forms",
        "disc and ring",
        "one of disc, ring, sector, rectangle, regular_polygon, slot or polygon",
    ),
    (
        "outline: {sector: {inner: 40}}",
        "the outline of lid lacks a measure",
        "no outer or angle",
        "sector: with outer and angle",
    ),
    (
        "outline: {ring: {diameter: 60, hole: 80}}",
        "the outline of lid has nothing inside",
        "80",
        "hole less than diameter",
    ),
    (
        "outline: {polygon: [[0, 0], [10, 10], [10, 0], [0, 10]]}",
        "the sides of the outline of lid cross or touch",
        "4 points",
        "corners in order round the outline",
    ),
]


@pytest.mark.parametrize(("text", "what", "found", "expected"), LIDS, ids=str)
def test_a_move_or_an_outline_is_refused(
    text: str, what: str, found: str, expected: str | None
) -> None:
    ((said, seen, due),) = refused(lid=f"{TOP}, {text}")
    assert (said, seen) == (what, found)
    assert expected is None or due == expected


def test_no_file_gives_what_follows_from_others() -> None:
    ((said, seen, due),) = refused(lid="kind: moving_pair")
    assert (said, seen) == ("no kind of part has this name", "moving_pair")
    assert "moving_pair" not in due


def test_a_configuration_sets_only_what_leads() -> None:
    travels = "travels: {open: {}, rise: {follows: open}}"
    rest = "configurations: {half: {rise: 0.5}}"
    ((said, seen, due),) = refused(travels, rest=rest)
    assert (said, seen, due) == ("rise follows open", "rise", "a travel that follows none")


def test_a_part_cannot_have_the_name_of_a_travel() -> None:
    ((said, seen, _),) = refused("travels: {lid: {}}")
    assert (said, seen) == ("a part cannot have the name of a travel", "lid")
