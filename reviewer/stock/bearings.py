"""Deep groove ball bearings by the size that is etched on them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import ClassVar, NamedTuple

from reviewer.notation.plain import plain
from reviewer.stock.reader import read_records
from reviewer.stock.table import UNKNOWN, StockError, StockRow, Table, fold

# What follows the size on the ring: shields, seals and clearance, in the trade's own writing.
SEALS = ("2rs1", "2rsh", "2rsr", "2rs", "rs", "2z", "zz", "ddu", "llu", "llb", "vv", "z")
CLEARANCES = ("C2", "CN", "C3", "C4", "C5")

_RATING = (1.0, 1e7)


class Clearance(NamedTuple):
    """Least and most radial internal clearance of an unmounted bearing [m]."""

    low: float
    high: float


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Bearing(StockRow):
    """A single-row deep groove ball bearing. Unknown numbers are NaN, an unknown count None.

    bore, outer diameter, width and the least corner radius of the rings [m]; dynamic_rating C and
    static_rating C0 [N] are the low end of what catalogues give, the other end beside them; f0 [1]
    is the factor of ISO 76 and ISO 281; balls counts them and ball_diameter [m]; mass [kg].
    """

    name: str
    bore: float
    outer: float
    width: float
    source: str
    aliases: tuple[str, ...] = ()
    corner: float = UNKNOWN
    dynamic_rating: float = UNKNOWN
    dynamic_rating_high: float = UNKNOWN
    static_rating: float = UNKNOWN
    static_rating_high: float = UNKNOWN
    f0: float = UNKNOWN
    balls: int | None = None
    ball_diameter: float = UNKNOWN
    mass: float = UNKNOWN

    plausible: ClassVar[Mapping[str, tuple[float, float]]] = {
        "bore": (1e-3, 1.0),
        "outer": (2e-3, 2.0),
        "width": (0.5e-3, 0.5),
        "corner": (0.0, 0.02),
        "dynamic_rating": _RATING,
        "dynamic_rating_high": _RATING,
        "static_rating": _RATING,
        "static_rating_high": _RATING,
        "f0": (5.0, 20.0),
        "ball_diameter": (0.3e-3, 0.3),
        "mass": (1e-4, 500.0),
    }

    @property
    def contact_length(self) -> float:
        """Length of the outer ring that touches a flat track: the width less both corners [m]."""
        return self.width - 2 * self.corner

    @property
    def clearance(self) -> Clearance:
        """Normal radial internal clearance, group CN [m]."""
        return internal_clearance(self.bore)

    @property
    def pitch_diameter(self) -> float:
        """Diameter of the circle of ball centres, taken as the mean of bore and outer [m]."""
        return (self.bore + self.outer) / 2


class _Span(NamedTuple):
    """The clearance groups of bores over `above` and up to `up_to` [m]."""

    above: float
    up_to: float
    groups: Mapping[str, Clearance]


@cache
def bearings() -> Table[Bearing]:
    """The bearings that come with the project.

    >>> row = bearings().find("608")
    >>> [round(each * 1e3, 3) for each in (row.bore, row.outer, row.width)]
    [8.0, 22.0, 7.0]
    """
    return Table("bearing", (Bearing(**record) for record in read_records("bearings.tsv")))


def internal_clearance(bore: float, group: str = "CN") -> Clearance:
    """Radial internal clearance of a bearing of this bore [m], by group of ISO 5753-1.

    Unknown (NaN) for a bore that the table does not reach. Raises StockError for another group.
    """
    if group not in CLEARANCES:
        raise StockError(
            f'clearance group "{plain(group, 60)}"; expected one of {", ".join(CLEARANCES)}'
        )
    for row in _clearances():
        if row.above < bore <= row.up_to:
            return row.groups[group]
    return Clearance(UNKNOWN, UNKNOWN)


def read_bearing(text: str, table: Table[Bearing] | None = None) -> Bearing:
    """The bearing meant by a size as it is written on the ring or the box: `608-2RS`, `6001 ZZ`.

    A seal or shield is dropped, except where the shielded bearing has a width of its own. Raises
    UnknownStock with the nearest sizes.
    """
    table = table or bearings()
    if text in table:
        return table.find(text)
    words = fold(text).split()
    size, seal = (words[0], " ".join(words[1:])) if words else ("", "")
    for ending in SEALS:
        if not seal and size.endswith(ending) and size.removesuffix(ending) in table:
            size, seal = size.removesuffix(ending), ending
    if seal in SEALS and size in table:
        shielded = f"{size} shielded"
        return table.find(shielded if shielded in table else size)
    return table.find(text)


@cache
def _clearances() -> tuple[_Span, ...]:
    return tuple(
        _Span(
            record["above"],
            record["up_to"],
            {each: Clearance(record[f"{each}_low"], record[f"{each}_high"]) for each in CLEARANCES},
        )
        for record in read_records("bearing_clearances.tsv")
    )
