"""What the shop pays for what is drawn; only what its own file prices, and never a guess."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import isnan

from reviewer.notation.plain import plain
from reviewer.reading.shop import Entry, Shop
from reviewer.reporting.sheets.bars import bars_of
from reviewer.reporting.sheets.cutting_list import cuts_of
from reviewer.reporting.sheets.hardware import bought_for
from reviewer.reporting.sheets.layouts import on_sheets
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.stock.table import fold


@dataclass(frozen=True, slots=True)
class Cost:
    """A number of pieces, metres or kilograms of a thing; the price of one is NaN where unknown."""

    what: str
    amount: float
    per: str
    each: float

    @property
    def total(self) -> float:
        """What all of it costs."""
        return self.amount * self.each


def costs_of(values: Quantities, shop: Shop) -> Iterator[Cost]:
    """Everything that is bought: sheets, bars, bearings and bolts, and solid wood by its mass."""
    prices = {fold(entry.name): entry for entry in shop.prices}
    yield from _sheets(values, prices)
    yield from _bars(values, prices)
    yield from _boards(values, prices)
    totals: dict[str, int] = {}
    for each in bought_for(values):
        totals[each.name] = totals.get(each.name, 0) + each.count
    for name, count in sorted(totals.items()):
        yield _cost(name, {"piece": float(count)}, prices)


def _sheets(values: Quantities, prices: Mapping[str, Entry]) -> Iterator[Cost]:
    for group in on_sheets(values, cuts_of(values)):
        mass = sum(
            cut.length * cut.width * cut.drawn * cut.material.density * cut.count
            for cut in group.cuts
        )
        amounts = {"kilogram": mass}
        if group.layout is not None:
            sheets = float(len(group.layout.sheets))
            amounts = {"sheet": sheets, "piece": sheets, **amounts}
        yield _cost(group.name, amounts, prices)


def _bars(values: Quantities, prices: Mapping[str, Entry]) -> Iterator[Cost]:
    totals: dict[str, tuple[float, float]] = {}
    for bar in bars_of(values):
        name = f"{bar.section} {bar.material}"
        length, mass = totals.get(name, (0.0, 0.0))
        totals[name] = (length + bar.length * bar.count, mass + bar.mass * bar.count)
    for name, (length, mass) in totals.items():
        yield _cost(name, {"metre": length, "kilogram": mass}, prices)


def _boards(values: Quantities, prices: Mapping[str, Entry]) -> Iterator[Cost]:
    """The boards of rings of straight pieces, by their length or by the mass of the ring."""
    for part in values.parts:
        run = values.number(part, "board.run")
        if isnan(run):
            continue
        thickness, width = (values.told(part, f"board.{side}") for side in ("thickness", "width"))
        name = f"{thickness} {values.named(part, 'board.material')}, {width} wide"
        yield _cost(name, {"metre": run, "kilogram": values.number(part, "mass")}, prices)


def _cost(name: str, amounts: Mapping[str, float], prices: Mapping[str, Entry]) -> Cost:
    """The cost of a thing by the unit in which the shop prices it; else by the first of its own."""
    entry = prices.get(fold(name))
    first = next(iter(amounts))
    if entry is None or "each" not in entry.given:
        return Cost(name, amounts[first], first, float("nan"))
    per = entry.text("per") or ("sheet" if "sheet" in amounts else "piece")
    if per not in amounts:
        return Cost(name, amounts[first], first, float("nan"))
    return Cost(name, amounts[per], per, float(entry.given["each"].value))


def currency_of(shop: Shop) -> str:
    """What the shop's prices are in, as its file writes it; nothing where it does not say."""
    given = shop.facts.get("currency")
    return plain(str(given.value), 20) if given else ""


def known(costs: list[Cost]) -> list[Cost]:
    """The costs whose price is known."""
    return [cost for cost in costs if not isnan(cost.each)]
