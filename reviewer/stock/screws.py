"""Screws that cut their thread in wood."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import ClassVar

from reviewer.stock.reader import read_records
from reviewer.stock.table import UNKNOWN, StockRow, Table

_SIZE = (5e-4, 0.1)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class WoodScrew(StockRow):
    """A wood screw, lag screw or chipboard screw by its size, all lengths [m]. Unknown is NaN.

    diameter is that of the thread or shank by which the screw is called, root_diameter that at the
    bottom of its thread; tip is the tapered end, which does not count as thread in the wood.
    """

    name: str
    kind: str
    diameter: float
    source: str
    aliases: tuple[str, ...] = ()
    root_diameter: float = UNKNOWN
    head_diameter: float = UNKNOWN
    tip: float = UNKNOWN

    plausible: ClassVar[Mapping[str, tuple[float, float]]] = dict.fromkeys(
        ("diameter", "root_diameter", "head_diameter", "tip"), _SIZE
    )


@cache
def wood_screws() -> Table[WoodScrew]:
    """The screws that come with the project.

    >>> round(wood_screws().find("#10 wood screw").diameter * 1e3, 2)
    4.83
    """
    return Table("screw", (WoodScrew(**record) for record in read_records("wood_screws.tsv")))
