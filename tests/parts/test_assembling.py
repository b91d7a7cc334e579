"""Assembly end to end: order, bolts that are trapped, rollers that come out, parts for now."""

import pytest

from reviewer.deriving.joining import joining_order
from reviewer.parts.assembling import is_due
from reviewer.parts.registry import KINDS
from reviewer.reading.read_design import read_design

HEAD = (
    "design: D\nlengths: mm\nparts:\n"
    "  base: {kind: base, feet: {length: 2000, width: 2000}, height: 500, mass: 9 kg}"
)
DISC = "kind: top, material: birch plywood, thickness: 18"


def parts(lower: str = "", upper: str = "", lid: str = "") -> str:
    """A disc of 500 mm on a plate of 600 mm on the base, and a lid of 480 mm upon it."""
    return (
        f"\n  plate: {{{DISC}, diameter: 600, carried_by: base{lower}}}"
        f"\n  disc: {{{DISC}, diameter: 500, carried_by: plate{upper}}}"
        f"\n  lid: {{{DISC}, diameter: 480, carried_by: disc{lid}}}\n"
    )


def order(text: str) -> tuple[str, ...]:
    design, problems = read_design(
        f"{HEAD}{text}",
        "d.yaml",
        KINDS,
    )
    assert design is not None, problems
    return joining_order(design)


ORDERS = [
    (parts(), ("base", "plate", "disc", "lid"), "from the ground up"),
    (parts(lower=", after: [disc]"), ("base", "disc", "plate", "lid"), "on the bench first"),
    (parts(lower=", after: [lid]"), ("base", "disc", "lid", "plate"), "all of it"),
]


@pytest.mark.parametrize(("text", "expected", "why"), ORDERS)
def test_parts_are_joined_in_order(text: str, expected: tuple[str, ...], why: str) -> None:
    assert order(text) == expected, why


def test_parts_that_wait_for_each_other_are_refused() -> None:
    text = parts(lower=", after: [lid]", lid=", after: [plate]")
    _, (problem,) = read_design(
        f"{HEAD}{text}",
        "d.yaml",
        KINDS,
    )
    assert problem.what == "parts wait for each other in a circle"
    assert problem.found == "plate after lid, lid after plate"


BELOW = ", bolts: {from: below, circle: 400}"
ABOVE = ", bolts: {from: above, circle: 400}"
TRAPPED = [
    (parts(upper=ABOVE), "disc", 0, 1, "the lid comes later, and then lies over them"),
    (parts(upper=ABOVE + ", after: [lid]"), "disc", 1, 1, "the lid lies over them already"),
    (parts(upper=", bolts: {from: above, circle: 490}, after: [lid]"), "disc", 0, 0, "outside it"),
    (parts(upper=", bolts: {from: side, circle: 400}, after: [lid]"), "disc", 0, 0, "aside"),
    (parts(lid=BELOW), "lid", 1, 1, "the plate is under the disc; a base has no edge"),
    (parts(lid=BELOW, upper=", after: [lid]"), "lid", 0, 1, "the lid goes on the disc first"),
    (parts(lid=BELOW, lower=", opening: 420"), "lid", 0, 0, "through the opening of the plate"),
]


@pytest.mark.parametrize(("text", "part", "way", "off", "why"), TRAPPED)
def test_what_stands_over_a_bolt(asked, text: str, part: str, way: int, off: int, why: str) -> None:
    found = asked(text)
    assert found(f"{part}.bolts.in_the_way") == way, why
    assert found(f"{part}.bolts.taken_off") == off, why
    assert found.verdict(f"{part}.bolts_go_in") == ("fail" if way else "pass")
    assert found.verdict(f"{part}.bolts_reached_again") == ("fail" if off else "pass")


def test_what_is_in_the_way_is_named(asked) -> None:
    found = asked(parts(upper=ABOVE + ", after: [lid]"))
    assert found.says("disc.bolts_go_in") == (
        "Its bolts go in from above, and there stands already lid."
    )


RING = (
    "\n  ring: {kind: slewing_ring, carried_by: base, plate: {material: birch plywood, "
    "thickness: 18, diameter: 560}, carry: {bearing: '6001', count: 10, circle: 460, taken_out: "
    "%s}, hold_down: {bearing: '6000', count: 5, circle: 460, gap: 0.15, taken_out: %s}, "
    "side: {bearing: '6000', count: 5, gap: 0.05}}"
    "\n  disc: {kind: top, material: birch plywood, thickness: 18, diameter: %d, "
    "carried_by: ring}\n"
)
OUT = [
    (("above", "above", 500), 2, 1, "under the plate and the disc; under the disc"),
    (("above", "above", 440), 1, 0, "the disc ends inside their circle"),
    (("below", "below", 500), 0, 1, "the base is open; over the plate"),
    (("side", "side", 500), 0, 0, "aside"),
]


@pytest.mark.parametrize(("given", "carry", "hold_down", "why"), OUT)
def test_a_roller_comes_out(asked, given, carry: int, hold_down: int, why: str) -> None:
    found = asked(RING % given)
    assert found("ring.carry.behind") == carry, why
    assert found("ring.hold_down.behind") == hold_down, why
    assert found.verdict("ring.carry_comes_out") == ("fail" if carry else "pass")
    assert found.verdict("ring.hold_down_comes_out") == ("fail" if hold_down else "pass")


DUE = [
    ("D", "C", False),
    ("D", "D", True),
    ("D", "E", True),
    ("9", "10", True),
    ("10", "9", False),
    ("Z", "AA", True),
    ("AA", "Z", False),
    ("2", "A", True),
    ("d", "D", True),
    ("D", None, False),
]


@pytest.mark.parametrize(("until", "revision", "due"), DUE)
def test_a_revision_is_reached(until: str, revision: str | None, due: bool) -> None:
    assert is_due(until, revision) is due


@pytest.mark.parametrize(("revision", "verdict"), [("C", "pass"), ("D", "fail")])
def test_what_stands_in_is_replaced_in_time(asked, revision: str, verdict: str) -> None:
    for_now = ", for_now: {until: D, replace_with: a plate of 24 mm}"
    found = asked(parts(lower=for_now), f"revision: {revision}")
    assert found.verdict("plate.replaced_in_time") == verdict
    if verdict == "fail":
        assert found.says("plate.replaced_in_time").endswith(
            "until revision D, then a plate of 24 mm."
        )


def test_only_parts_that_say_something_are_asked(asked) -> None:
    found = asked(parts())
    names = [each.rule for each in found.found.findings if each.rule.startswith("part.")]
    assert set(names) == {"part.fits_on_a_sheet"}
