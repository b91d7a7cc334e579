"""One divided circle on the setting-out sheet: what it is, in which order to work, and why."""

from collections.abc import Iterator
from math import pi

from reviewer.mechanics.dividing import direct_error, stepped_error
from reviewer.reporting.sheets.circle import Circle
from reviewer.reporting.sheets.circle_figure import circle_figure
from reviewer.reporting.sheets.circle_tables import (
    table_of_standing,
    table_to_check,
    table_to_set,
)
from reviewer.reporting.sheets.sheet import Block, Check, Checks, Figure, Section


def circle_section(circle: Circle) -> Section:
    """All that the sheet says of one divided circle, under its name."""
    return Section(circle.name, tuple(_blocks(circle)))


def group_section(circle: Circle) -> Section:
    """What stands on a circle of a part, where no divided_circle says more of it."""
    radius = circle.with_unit(circle.diameter / 2)
    entry = (
        f"{{kind: divided_circle, of: {circle.part}, group: {circle.group}, bolt: ..., measured: "
        "{chords: [...]}}"
    )
    return Section(
        circle.name,
        (
            f"{circle.count} on a circle of {circle.with_unit(circle.diameter)}, radius {radius}. "
            f"{_why(circle)}",
            table_to_set(circle),
            table_to_check(circle),
            "To have it judged, write what you measured into the design, as a part of its own: "
            f"{entry}.",
        ),
    )


def _blocks(circle: Circle) -> Iterator[Block]:
    if not circle.is_known:
        yield "The count or the circle of its marks is not known: give them in the design."
        return
    yield _what(circle)
    yield _order(circle)
    yield _why(circle)
    letters = "".join(each for each in circle.part if each.isalpha())
    opposite = None if circle.has_opposite else circle.start + pi
    yield Figure(
        circle.name,
        f"{circle.count} marks, numbered anticlockwise as you look at the marked face.",
        circle_figure(letters, circle.angles, opposite, circle.name),
    )
    yield table_to_set(circle)
    yield table_to_check(circle)
    yield (
        f"Write what you measured into the design, under {circle.part}: measured: {{chords: [...], "
        "diagonals: [[1, 5, ...]]}, and review it again: from all lengths together it tells which "
        "mark is out, by how much, and which way to move it."
    )
    yield (
        "For a template at full size, to punch through: reviewer sheet FILE --templates FOLDER. "
        "Check its bar of 100 mm first, and lay it on the two scribed lines."
    )
    standing = table_of_standing(circle)
    if standing is not None:
        yield standing


def _what(circle: Circle) -> str:
    values, part = circle.values, circle.part
    of, group = values.named(part, "of"), values.named(part, "group").replace("_", " ")
    bolt, hole = values.named(part, "bolt"), values.told(part, "hole")
    for_what = f", for {of}" + (f", {group}" if group else "") if of else ""
    on = values.named(part, "on")
    for_what += f", on {on}" if on else ""
    drilled = f" Each is drilled {hole}" + (f" for {bolt}." if bolt else ".") if hole else ""
    return (
        f"{circle.count} marks on a circle of {circle.with_unit(circle.diameter)}{for_what}."
        f"{drilled} A mark may stand {circle.fine(circle.number('permitted'))} from its place, in "
        "any direction."
    )


def _order(circle: Circle) -> Checks:
    """The steps of the work in their order."""
    radius = circle.with_unit(circle.diameter / 2)
    return Checks(
        (
            Check("Mark the centre, and scribe two lines through it at right angles."),
            Check(f"Scribe the circle with its radius of {radius}."),
            Check(
                f"Mark 1 is where one line meets the circle, {circle.across} where the same line "
                "meets it on the other side."
            ),
            Check(
                "Set every other mark by its own chord from the one of these two that the table "
                "names, or by its distances x and y from the two lines."
            ),
            Check("Measure all chords between neighbours, then the diagonals; write them down."),
            Check("Only when they are right: punch and drill."),
        )
    )


def _why(circle: Circle) -> str:
    within = circle.number("set_within")
    stepped = float(stepped_error(within, float(circle.count), float(circle.count - 1)).steady)
    direct = float(direct_error(within, pi / 2))
    said = (
        f"Do not step the circle off with dividers: set wrong by {circle.fine(within)} they "
        f"put the last mark {circle.fine(stepped)} off, since every step adds its "
        f"error to those before. Set by itself, no mark is more than {circle.fine(direct)} off."
    )
    if not circle.group and circle.values.named(circle.part, "set_by") == "stepped":
        asked = circle.fine(circle.number("setting.asked"))
        said += f" The design has it stepped off: then set the dividers within {asked}."
    return said
