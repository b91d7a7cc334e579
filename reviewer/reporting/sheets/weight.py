"""The weight sheet: masses by part, and what things cost at the shop's own prices."""

from collections.abc import Iterator
from math import isnan

from reviewer.judging.reviewed import Review
from reviewer.reading.shop import Shop
from reviewer.reporting.sheets.costs import costs_of, currency_of, known
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Block, Body, Column, NoSheet, Section, Table, section_of


def weight_body(review: Review) -> Body | NoSheet:
    """The masses of a design's parts, and what is bought."""
    values = Quantities(review)
    heavy = [name for name in values.parts if values.design.parts[name].kind.carries_load]
    if not heavy:
        return NoSheet("no part of the design has a mass")
    return Body(
        (
            Section("masses", (_masses(values, heavy),)),
            *section_of("cost", _cost(values, review.shop)),
        )
    )


def _cost(values: Quantities, shop: Shop | None) -> Iterator[Block]:
    """What is bought at the shop's own prices; what it does not price is named."""
    if shop is None or not shop.prices:
        yield "No shop's file says what things cost (prices), so no cost is told."
        return
    costs = list(costs_of(values, shop))
    priced = known(costs)
    currency = currency_of(shop)
    if priced:
        rows = [
            (each.what, f"{each.amount:.4g} {each.per}", f"{each.each:.2f}", f"{each.total:.2f}")
            for each in priced
        ]
        rows.append(("together", "", "", f"{sum(each.total for each in priced):.2f}"))
        columns = (
            Column("what"),
            Column("how much"),
            Column("price of one", currency, "right"),
            Column("price", currency, "right"),
        )
        yield Table(f"At the prices of {shop.name}", columns, tuple(rows))
    without = [each.what for each in costs if each not in priced]
    if without:
        yield f"Without a price in {shop.path}, and not in the sum: {', '.join(without)}."


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
