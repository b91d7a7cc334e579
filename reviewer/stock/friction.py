"""Friction between pairs of materials, as ranges: a single number would promise too much."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import ClassVar

from reviewer.stock.reader import read_records
from reviewer.stock.table import UNKNOWN, StockRow, Table, fold


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Friction(StockRow):
    """Coefficients of friction of a pair, at rest (static) and moving (kinetic), low and high [1].

    Unknown is NaN. A bearing has no second surface; its coefficient moves the load at the radius
    of its bore. condition says when the numbers hold.
    """

    name: str
    first: str
    second: str
    source: str
    aliases: tuple[str, ...] = ()
    static_low: float = UNKNOWN
    static_high: float = UNKNOWN
    kinetic_low: float = UNKNOWN
    kinetic_high: float = UNKNOWN
    condition: str = ""

    plausible: ClassVar[Mapping[str, tuple[float, float]]] = dict.fromkeys(
        ("static_low", "static_high", "kinetic_low", "kinetic_high"), (0.0, 3.0)
    )


@cache
def frictions() -> Table[Friction]:
    """The pairs that come with the project.

    >>> row = frictions().find("steel on wood")
    >>> row.static_low, row.static_high
    (0.2, 0.6)
    """
    return Table("friction pair", (_pair(record) for record in read_records("friction.tsv")))


def friction_between(first: str, second: str, table: Table[Friction] | None = None) -> Friction:
    """The row of two surfaces, in either order. Raises UnknownStock with the nearest pairs."""
    return (table or frictions()).find(f"{first} on {second}")


def _pair(record: dict[str, str]) -> Friction:
    """A row that is found by its name and by each of its surfaces on the other, both ways."""
    first, second = (record[side].split(";") for side in ("first", "second"))
    ways = [f"{a} on {b}" for x, y in ((first, second), (second, first)) for a in x for b in y if a]
    aliases = tuple(way for way in ways if fold(way) != fold(record["name"]) and record["second"])
    record = {**record, "first": first[0], "second": second[0]}
    return Friction(aliases=aliases, **record)  # type: ignore[arg-type]
