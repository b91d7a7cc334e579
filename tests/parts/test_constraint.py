"""Constraints end to end: the textbook's bodies on their contacts, told in words.

Blanding, Exact Constraint (1999), from memory; Maxwell's three grooves; statics by hand.
"""

from math import sqrt

import pytest

from reviewer import review

THREE_FEET = "a: {x: 100, holds: z}, b: {x: -50, y: 80, holds: z}, c: {x: -50, y: -80, holds: z}"
FOUR_FEET = ", ".join(
    f"{name}: {{x: {x}, y: {y}, holds: z}}"
    for name, x, y in (("a", 80, 80), ("b", -80, 80), ("c", -80, -80), ("d", 80, -80))
)
LEVEL = "free: [x, y, about z]"
DOOR = "low: {x: 100, holds: [x, y, z]}, high: {x: 100, z: 400, holds: [x, y]}"
GROOVES = ", ".join(
    f"{name}_{side}: {{x: {x}, y: {y}, azimuth: {azimuth + turn} deg, rise: 45 deg}}"
    for name, x, y, azimuth in (
        ("one", 100, 0, 90),
        ("two", -50, 50 * sqrt(3), 210),
        ("three", -50, -50 * sqrt(3), 330),
    )
    for side, turn in (("left", 0), ("right", 180))
)


def held(contacts: str, more: str = "") -> str:
    return f"\n  seat: {{kind: constraint, contacts: {{{contacts}}}{more and ', ' + more}}}\n"


# contacts, what shall be free, ways that are free, held more than once; source
COUNTS = [
    (THREE_FEET, "", 3, 0, "three feet stand on any floor"),
    (FOUR_FEET, "", 3, 1, "the fourth rocks"),
    (DOOR, "", 1, 0, "a door on two hinges, one of which bears"),
    (DOOR + ", third: {x: 100, z: 800, holds: [x, y]}", "", 1, 2, "a third hinge is too many"),
    (GROOVES, "", 0, 0, "Maxwell: three balls in three grooves"),
    ("pin: {holds: [x, y]}, slot: {x: 200, holds: y}, " + THREE_FEET, "", 0, 0, "pin and slot"),
    ("pin: {holds: [x, y]}, pin_2: {x: 200, holds: [x, y]}, " + THREE_FEET, "", 0, 1, "two pins"),
    ("key: {holds: [about x, about y, about z]}", "", 3, 0, "held against turning alone"),
]


@pytest.mark.parametrize(("contacts", "more", "free", "repeated", "source"), COUNTS)
def test_degrees_of_constraint(asked, contacts, more, free, repeated, source) -> None:
    found = asked(held(contacts, more))
    assert found("seat.free_ways") == free
    assert found("seat.repeated") == repeated


WORDS = [
    (DOOR, "seat.held", "free to turn about the upright line through x 100 mm and y 0 mm."),
    (THREE_FEET + ", p: {holds: [x, y]}", "seat.held", "the upright line through x 0 mm and y 0"),
    (THREE_FEET, "seat.held", "to move along x, to move along y and to turn about the upright"),
    ("p: {holds: [x, y, about x, about y, about z]}", "seat.held", "free to move up and down."),
    (FOUR_FEET, "seat.held_once", "a, b, c and d all hold it along z, where one fewer would do."),
    (
        "pin: {holds: [x, y]}, second: {x: 200, holds: [x, y]}, " + THREE_FEET,
        "seat.held_once",
        "pin and second both hold it along x.",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("contacts", "rule", "words"), WORDS)
def test_what_is_free_and_what_is_held_twice_is_named(asked, contacts, rule, words) -> None:
    found = asked(held(contacts))
    assert found.verdict(rule) == "fail"
    assert words in found.says(rule)


def test_what_shall_be_free_is_no_fault(asked) -> None:
    assert asked(held(DOOR, "free: about z")).verdict("seat.held") == "pass"
    assert asked(held(THREE_FEET, LEVEL)).verdict("seat.held") == "pass"


def test_what_shall_be_free_and_is_not_is_named(asked) -> None:
    found = asked(held(DOOR, "free: [about z, x]"))
    assert found.verdict("seat.moves") == "fail"
    assert found.says("seat.moves").startswith("It shall be free to move along x,")


@pytest.mark.parametrize("mend", ["adjusts: 3", "gives: true"])
def test_a_foot_that_is_set_or_gives_way_forces_nothing(asked, mend) -> None:
    contacts = FOUR_FEET.replace("y: -80, holds: z}", f"y: -80, holds: z, {mend}}}")
    found = asked(held(contacts, LEVEL))
    assert found("seat.repeated") == 1
    assert found.verdict("seat.held_once") == "pass"


@pytest.mark.parametrize(("adjusts", "verdict"), [(2.1, "pass"), (1.9, "fail")])
def test_the_fourth_foot_makes_up_for_all_four(asked, adjusts, verdict) -> None:
    """Each 0.5 mm off, the worst way: z_a - z_b + z_c - z_d = 2 mm."""
    contacts = FOUR_FEET[: FOUR_FEET.rindex("}")] + f", adjusts: {adjusts}}}"
    found = asked(held(contacts, f"{LEVEL}, made_within: 0.5"))
    assert found("seat.setting.asked") == pytest.approx(2e-3, rel=1e-9)
    assert found.verdict("seat.set_far_enough") == verdict
    assert "d has to be set by 2 mm" in found.says("seat.set_far_enough")


def test_what_is_set_has_to_be_reached(asked) -> None:
    contacts = FOUR_FEET[: FOUR_FEET.rindex("}")] + ", adjusts: 3, reached: false}"
    found = asked(held(contacts, LEVEL))
    assert found.verdict("seat.reached") == "fail"
    assert found.says("seat.reached").endswith("reached to be set: d.")


def test_a_contact_that_holds_nothing_leaves_it_open(asked) -> None:
    found = asked(held("a: {x: 100}, b: {holds: z}"))
    assert found.verdict("seat.held") == "open"
    assert any("says neither what it holds" in each for each in found.reasons("seat.unwanted"))


def test_no_more_contacts_than_can_be_reckoned_with() -> None:
    many = ", ".join(f"c{index}: {{x: {index}, holds: z}}" for index in range(101))
    found = review(f"design: many\nlengths: mm\nparts:{held(many)}")
    assert [each.what for each in found.problems] == ["contacts has too many contacts"]
    assert found.problems[0].expected == "at most 100"


REFUSED = [
    ("a: {x: 100, holds: w}", "holds does not take this word"),
    ("a: {x: 100, holding: z}", "a contact has no field holding"),
    ("a: 100", "a contact is a table of its fields"),
    ("A: {x: 100}", "this cannot be the name of a contact"),
]


@pytest.mark.parametrize(("contacts", "what"), REFUSED)
def test_slips_in_contacts_are_told(contacts, what) -> None:
    found = review(f"design: slip\nlengths: mm\nparts:{held(contacts)}")
    assert [each.what for each in found.problems] == [what]
