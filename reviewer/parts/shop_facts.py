"""What kinds and rules may ask of the shop in which a design is made: its cutters, its ways.

The rows stand among those of the design under `shop.`; without a shop they are unknown, except for
the sheets that are sold everywhere. `with_shop` (judging/shop_ways.py) fills them.
"""

from dataclasses import dataclass, field

import numpy as np

from reviewer.parts.row import Row
from reviewer.stock.sheets import Sheet, sheets
from reviewer.stock.table import Choice, Table

SHOP = "shop"
NOT_SAID = "is not said: allowances in the shop's file say it"
UNSAID = np.nan


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Cutter(Choice):
    """A cutter, bit or blade, all lengths [m], angle [rad]; what is not told is NaN.

    cutting_length is that of its edges, length its whole length, depth how deep a saw's blade
    cuts square to its table.
    """

    name: str
    shape: str = "straight"
    diameter: float = UNSAID
    cutting_length: float = UNSAID
    length: float = UNSAID
    shank: float = UNSAID
    kerf: float = UNSAID
    depth: float = UNSAID
    angle: float = UNSAID


@dataclass(frozen=True, slots=True, eq=False)
class Stocked(Choice):
    """What the shop has or can buy of sheets; `name` is that of the shop, or nothing."""

    name: str = ""
    sheets: Table[Sheet] = field(default_factory=sheets)


@dataclass(frozen=True, slots=True, eq=False)
class Cutters(Choice):
    """The cutters of a shop, in the order of its file; `name` is that of the shop."""

    name: str
    all: tuple[Cutter, ...] = ()


def _unsaid() -> float:
    """A number that only a shop's file gives."""
    return UNSAID


def _none() -> None:
    """A thing that only a shop's file gives."""


def _says_cutters(cutters: Cutters | None) -> bool:
    return cutters is not None and bool(cutters.all)


ALLOWANCES = {
    "kerf": "what a saw takes away",
    "trim": "what is cut off along each edge of a sheet",
    "sanding": "what sanding takes off a face",
    "glue": "thickness of a glue line",
    "clearance": "play that is left where one part goes into another",
    "drilling": "how far a drilled hole may be off its mark",
    "oversize": "what is left on the edges of what is glued up or cut round until then",
    "bar": "length of the bars and extrusions that it buys",
    "collet": "how much of a shank the collet must hold",
}
SHOP_ROWS = (
    Row(f"{SHOP}.sheets", "", "the sheets that can be had", formula=Stocked),
    Row(f"{SHOP}.cutters", "", "the cutters of the shop", formula=_none),
    Row(
        f"{SHOP}.has_cutters",
        "truth",
        "whether the shop says which cutters it has",
        formula=_says_cutters,
        needs={"cutters": f"{SHOP}.cutters?"},
    ),
    *(
        Row(f"{SHOP}.{name}", "m", says, formula=_unsaid, because=NOT_SAID)
        for name, says in ALLOWANCES.items()
    ),
)
