"""The assembly sheet: steps and lifts, bolts, the doorway, rollers, and what stands in for now."""

from collections.abc import Iterator
from math import isnan

from reviewer.judging.reviewed import Review
from reviewer.parts.replacing import GROUPS, behind
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import (
    Block,
    Body,
    Caution,
    Check,
    Checks,
    Column,
    NoSheet,
    Section,
    Table,
    section_of,
)
from reviewer.reporting.sheets.steps import Step, steps_of

MANY = 2  # people who lift one thing together without somebody who calls the lift
LIFTING = (
    "Lift with the people that the table says, one of them calling the lift; clear the way and set "
    "down on blocks, never on fingers. Nobody is under a part that is not yet bolted down."
)
TIPPING = "Until everything is bolted down it can tip: prop it, and let nobody lean on it."


def assembly_body(review: Review) -> Body | NoSheet:
    """How a design is put together."""
    values = Quantities(review)
    steps = list(steps_of(values))
    if not steps:
        return NoSheet("no part of the design is joined to another")
    sections = (
        Section("in this order", tuple(_order(values, steps))),
        *section_of("bolts", _bolts(values, steps)),
        Section("through the doorway", tuple(_doorway(values, steps))),
        *section_of("when a roller wears out", _rollers(values)),
        *section_of("for now", _for_now(values)),
    )
    heavy = any(step.people is None or step.people > 1 for step in steps)
    cautions = (Caution("lifting", LIFTING), Caution("tipping", TIPPING))
    return Body(sections, cautions if heavy else cautions[1:])


def _order(values: Quantities, steps: list[Step]) -> Iterator[Block]:
    unit = values.unit("kg").symbol
    rows = tuple(
        (
            str(number),
            f"{step.part}, {step.count} of them" if step.count > 1 else step.part,
            " and ".join(step.carriers) or "the floor",
            ", ".join(step.above) or "-",
            values.bare(step.lifted, "kg") or "unknown",
            "unknown" if step.people is None else str(step.people),
        )
        for number, step in enumerate(steps, 1)
    )
    columns = (
        Column("step", side="right"),
        Column("part"),
        Column("goes on"),
        Column("with it already"),
        Column("lifted", unit, "right"),
        Column("people", side="right"),
    )
    most = values.shown(values.number("limit", "lift_by_hand"), "kg")
    yield Table("Steps, and what is lifted in each", columns, rows)
    yield f"One person lifts {most} (the limit in force; ISO 11228-1, from memory)."
    yield Checks(tuple(Check(text) for text in _work(values, steps)))


def _work(values: Quantities, steps: list[Step]) -> Iterator[str]:
    for number, step in enumerate(steps, 1):
        on = " and ".join(step.carriers)
        side = values.named(step.part, "bolts.from")
        bolts = f"; its bolts go in from {side}" if side and side != "side" else ""
        bolts = "; its bolts go in from the side" if side == "side" else bolts
        where = f"put {step.part} on {on}" if on else f"stand {step.part} level on the floor"
        yield f"{number}. {where[:1].upper()}{where[1:]}{bolts}"


def _bolts(values: Quantities, steps: list[Step]) -> Iterator[Block]:
    """Bolts that something stands over: when they go in, and when they are turned again."""
    told = [step.part for step in steps if not isnan(values.number(step.part, "bolts.in_the_way"))]
    for part in told:
        if values.number(part, "bolts.in_the_way") > 0:
            way = values.named(part, "bolts.in_the_way.named")
            yield Caution(
                "trapped bolts",
                f"The bolts of {part} cannot go in: {way} stands there before them.",
            )
    rows = tuple(
        (
            part,
            values.named(part, "bolts.from"),
            values.told(part, "bolts.circle"),
            values.named(part, "bolts.taken_off.named"),
        )
        for part in told
    )
    if rows:
        columns = (
            Column("bolts of"),
            Column("go in from"),
            Column("circle"),
            Column("to reach them again, take off"),
        )
        yield Table("Bolts, and what must come off before they are turned again", columns, rows)


def _doorway(values: Quantities, steps: list[Step]) -> Iterator[Block]:
    """What is carried in one piece against the doorway, and the whole thing."""
    way = values.number("design", "way_in")
    given = "doorway" in values.design.facts.given
    yield (
        f"The doorway is {values.shown(way, 'm')} wide"
        f"{'' if given else ' (the limit in force, since the design does not say)'}."
    )
    for step in steps:
        least = values.number(step.part, "doorway.least")
        if not isnan(least):
            fits = "goes through" if least <= way + 1e-9 else "does not go through"
            yield f"{step.part} {fits}: it is {values.shown(least, 'm')} at its least side."
    reach = max((values.number(step.part, "reach.radius") for step in steps[:1]), default=0.0)
    if 2 * reach > way:
        yield (
            f"The whole is {values.shown(2 * reach, 'm')} across: put it together behind the "
            "door, or carry it on edge in parts that the steps above name."
        )


def _rollers(values: Quantities) -> Iterator[Block]:
    rings = [part for part in values.parts if values.kind(part) == "slewing_ring"]
    rows = tuple(
        (
            part,
            group.replace("_", " "),
            values.named(part, f"{group}.bearing"),
            values.named(part, f"{group}.taken_out"),
            values.named(part, f"{behind(group)}.named"),
        )
        for part in rings
        for group in GROUPS
        if values.named(part, f"{group}.taken_out")
    )
    if rings and not rows:
        yield (
            "The design does not say to which side its rollers come out (carry.taken_out, "
            "hold_down.taken_out), so nothing is known of what must come off first."
        )
    if rows:
        columns = (
            Column("ring"),
            Column("rollers"),
            Column("bearing"),
            Column("come out to"),
            Column("first take off"),
        )
        yield Table("Replacing a roller", columns, rows)


def _for_now(values: Quantities) -> Iterator[Block]:
    rows = tuple(
        (
            part,
            values.named(part, "for_now.until"),
            values.named(part, "for_now.replace_with") or "not said",
            "now" if values.choice(part, "for_now.due") is True else "not yet",
        )
        for part in values.parts
        if values.named(part, "for_now.until")
    )
    if rows:
        columns = (
            Column("part"),
            Column("until revision"),
            Column("then comes"),
            Column("due"),
        )
        yield Table("Parts that stand in for something better", columns, rows)


ASSEMBLY = Maker("assembly", "Assembly", assembly_body)
