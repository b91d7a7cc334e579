"""Bolts, nuts and washers by thread, and their strength by property class."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import ClassVar

from reviewer.notation.plain import plain
from reviewer.stock.reader import read_records
from reviewer.stock.table import UNKNOWN, Choice, StockError, StockRow, Table

# Lengths in which bolts and screws are sold [mm]; ISO 888, from memory.
LENGTHS = (
    *(5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100),
    *(110, 120, 130, 140, 150, 160, 180, 200, 220, 240, 260, 280, 300),
)

_LENGTH = (1e-5, 0.5)

_METRIC = (
    r"m(?P<thread>\d{1,4}(?:\.\d{1,4})?)"
    r"(?:\s*[x×*]\s*(?P<first>\d{1,4}(?:\.\d{1,4})?)(?:\s*mm)?)?"
    r"(?:\s*[x×*]\s*(?P<second>\d{1,4}(?:\.\d{1,4})?)(?:\s*mm)?)?"
    r"(?:[\s,-]+(?:class\s+)?(?P<strength>\d+\.\d|a[24]-[78]0))?"
)
# The least that a maker buys as a length; ISO fine pitches are smaller.
_SHORTEST = 4.0


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Thread(StockRow):
    """A coarse thread and what is screwed on it, all lengths [m]. Unknown numbers are NaN.

    hex_width across the flats, hex_height of the head and hex_face, the least diameter of its
    bearing face; socket_head diameter and socket_height; nut_height and lock_nut_height; hole,
    outer diameter and thickness of the plain and the wide washer; clearance holes of the fine,
    medium and coarse series.
    """

    name: str
    series: str
    diameter: float
    pitch: float
    source: str
    aliases: tuple[str, ...] = ()
    hex_width: float = UNKNOWN
    hex_height: float = UNKNOWN
    hex_face: float = UNKNOWN
    socket_head: float = UNKNOWN
    socket_height: float = UNKNOWN
    nut_height: float = UNKNOWN
    lock_nut_height: float = UNKNOWN
    washer_hole: float = UNKNOWN
    washer_outer: float = UNKNOWN
    washer_thickness: float = UNKNOWN
    wide_washer_hole: float = UNKNOWN
    wide_washer_outer: float = UNKNOWN
    wide_washer_thickness: float = UNKNOWN
    hole_fine: float = UNKNOWN
    hole_medium: float = UNKNOWN
    hole_coarse: float = UNKNOWN

    plausible: ClassVar[Mapping[str, tuple[float, float]]] = dict.fromkeys(
        (
            *("diameter", "pitch", "hex_width", "hex_height", "hex_face", "socket_head"),
            *("socket_height", "nut_height", "lock_nut_height", "washer_hole", "washer_outer"),
            *("washer_thickness", "wide_washer_hole", "wide_washer_outer"),
            *("wide_washer_thickness", "hole_fine", "hole_medium", "hole_coarse"),
        ),
        _LENGTH,
    )

    @property
    def stress_area(self) -> float:
        """Area that carries tension, pi/4 (d - k P)^2 [m^2].

        k is 0.9382 for ISO metric threads (ISO 898-1) and 0.9743 for unified ones (ASME B1.1,
        from memory).
        """
        taken = 0.9743 if self.series == "UNC" else 0.9382
        core = self.diameter - taken * self.pitch
        return math.pi / 4 * core * core

    @property
    def pitch_diameter(self) -> float:
        """Pitch diameter d2 = d - 0.6495 P; ISO 724 [m]."""
        return self.diameter - 0.649519 * self.pitch

    @property
    def root_diameter(self) -> float:
        """Diameter d3 at the root of the bolt's thread, d - 1.2269 P; ISO 68-1 [m]."""
        return self.diameter - 1.226869 * self.pitch


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class BoltStrength(StockRow):
    """Strength of bolts of one property class over a span of diameters, above [m] to up_to [m].

    proof stress, yield_strength and tensile_strength [Pa] are minima.
    """

    name: str
    property_class: str
    above: float
    up_to: float
    source: str
    aliases: tuple[str, ...] = ()
    proof: float = UNKNOWN
    yield_strength: float = UNKNOWN
    tensile_strength: float = UNKNOWN


@dataclass(frozen=True, slots=True, eq=False)
class Fastener(Choice):
    """A bolt or screw as it is ordered: thread, length [m] (NaN: not said) and property class
    (empty: not said)."""

    thread: Thread
    length: float = UNKNOWN
    property_class: str = ""

    @property
    def name(self) -> str:
        """As it is ordered: `M8x40`."""
        if self.length != self.length:
            return self.thread.name
        return f"{self.thread.name}x{round(self.length * 1e3, 3):g}"


@cache
def threads() -> Table[Thread]:
    """The threads that come with the project.

    >>> round(threads().find("M8").stress_area * 1e6, 1)
    36.6
    """
    files = ("threads.tsv", "inch_threads.tsv")
    return Table("thread", (Thread(**record) for file in files for record in read_records(file)))


@cache
def bolt_strengths() -> Table[BoltStrength]:
    """The property classes that come with the project, a row for each span of diameters."""
    rows = (BoltStrength(**record) for record in read_records("property_classes.tsv"))
    return Table("property class", rows)


def bolt_strength(property_class: str, diameter: float) -> BoltStrength:
    """The strength of a bolt of this property class and diameter [m].

    Raises StockError for a class that is not in the table, or not at this diameter.

    >>> bolt_strength("8.8", 0.020).proof / 1e6
    600.0
    """
    asked = property_class.strip().casefold()
    rows = [row for row in bolt_strengths() if row.property_class.casefold() == asked]
    if not rows:
        known = ", ".join(dict.fromkeys(row.property_class for row in bolt_strengths()))
        raise StockError(f'property class "{plain(property_class, 60)}"; expected one of {known}')
    for row in rows:
        if row.above < diameter <= row.up_to:
            return row
    raise StockError(
        f'property class "{plain(property_class, 60)}" at {diameter * 1e3:g} mm; expected a '
        f"diameter over {rows[0].above * 1e3:g} and up to {rows[-1].up_to * 1e3:g} mm"
    )


def read_fastener(text: str, table: Table[Thread] | None = None) -> Fastener:
    """The fastener meant by `M8`, `M8x40`, `M8 × 40` or `M8x40 8.8`.

    Raises StockError for what is not written so, and for a fine pitch (`M8x1`), which the table
    does not have; UnknownStock for a thread that it does not have.
    """
    table = table or threads()
    if text in table:
        return Fastener(table.find(text))
    match = re.fullmatch(_METRIC, text.strip(), re.IGNORECASE | re.ASCII)
    if not match:
        raise StockError(
            f'fastener "{plain(text, 60)}"; expected a thread and a length, as in M8 or M8x40'
        )
    thread = table.find(f"M{match['thread']}")
    length = float(match["first"]) / 1e3 if match["first"] else UNKNOWN
    if match["second"] or length * 1e3 < _SHORTEST:
        raise StockError(
            f'fastener "{text}"; {match["first"]} reads as a fine pitch, and the table has '
            f"coarse threads only; expected a length in millimetres, as in {thread.name}x40"
        )
    strength = (match["strength"] or "").upper()
    if strength:
        bolt_strength(strength, thread.diameter)
    return Fastener(thread, length, strength)


def next_length(length: float) -> float:
    """The shortest length sold that is not under this one [m]; NaN past the longest.

    >>> next_length(0.0372)
    0.04
    """
    for each in LENGTHS:
        if each / 1e3 >= length - 1e-9:
            return each / 1e3
    return UNKNOWN
