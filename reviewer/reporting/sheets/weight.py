"""The weight sheet: masses by part, and what one person or two can lift."""

from math import isnan

from reviewer.judging.reviewed import Review
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Body, Column, NoSheet, Section, Table


def weight_body(review: Review) -> Body | NoSheet:
    """The masses of a design's parts."""
    values = Quantities(review)
    heavy = [name for name in values.parts if values.design.parts[name].kind.carries_load]
    if not heavy:
        return NoSheet("no part of the design has a mass")
    return Body((Section("masses", (_masses(values, heavy),)),))


def _masses(values: Quantities, names: list[str]) -> Table:
    unit = values.unit("kg").symbol
    rows = []
    total, lacking = 0.0, False
    for name in names:
        each, count = values.number(name, "mass"), values.count(name)
        lacking |= isnan(each)
        total += 0.0 if isnan(each) else each * count
        told = values.bare(each, "kg") or "unknown"
        all_of_it = values.bare(each * count, "kg") or "unknown"
        rows.append((name, values.kind(name).replace("_", " "), str(count), told, all_of_it))
    head = "at least" if lacking else "together"
    rows.append((head, "", "", "", values.bare(total, "kg")))
    return Table(
        "What each part weighs",
        (
            Column("part"),
            Column("kind"),
            Column("how many", side="right"),
            Column("each", unit, "right"),
            Column("all", unit, "right"),
        ),
        tuple(rows),
    )


WEIGHT = Maker("weight", "Weight and cost", weight_body)
