"""What is cut from sheets: each part's pieces with their finished and rough size."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from math import isnan
from typing import Any

from reviewer.reporting.sheets.quantities import Quantities
from reviewer.stock.materials import Material

ROUND = ("slewing_ring", "hub", "drive_plate")


@dataclass(frozen=True, slots=True)
class Cut:
    """Pieces of one part that are alike, all lengths [m].

    `length` and `width` are finished, `rough_length` and `rough_width` with what the shop leaves on
    the edges. `nominal` is what the sheet is called, `actual` what it measures. `part` is cut out
    round where `is_round`.
    """

    part: str
    material: Material
    nominal: float
    actual: float
    drawn: float
    count: int
    length: float
    width: float
    rough_length: float
    rough_width: float
    is_round: bool
    turns: bool = True


def cuts_of(values: Quantities) -> Iterator[Cut]:
    """The pieces of a design that come from sheets, in the order of the file."""
    for part in values.parts:
        if values.kind(part) == "skirt":
            yield from _strips(values, part)
        elif not isnan(values.number(part, "blank.length") + values.number(part, "blank.width")):
            yield from _flat(values, part)


def _flat(values: Quantities, part: str) -> Iterator[Cut]:
    material = values.choice(part, "material") or values.choice(part, "plate.material")
    if not isinstance(material, Material):
        return
    is_round = values.kind(part) in ROUND or not isnan(values.number(part, "diameter"))
    layers = values.choice(part, "made.layers") or 1
    spare = _spare(values, part, oversize=is_round or layers > 1)
    length, width = (values.number(part, f"blank.{side}") for side in ("length", "width"))
    yield Cut(
        part=part,
        material=material,
        nominal=values.number(part, "blank.nominal"),
        actual=values.number(part, "blank.actual"),
        drawn=values.number(part, "blank.thickness"),
        count=values.count(part) * layers,
        length=length,
        width=width,
        rough_length=length + 2 * spare,
        rough_width=width + 2 * spare,
        is_round=is_round,
    )


def _strips(values: Quantities, part: str) -> Iterator[Cut]:
    """A skirt: its layers as strips, in as many lengths as the longest sheet asks for."""
    material = values.choice(part, "material")
    length, height = values.number(part, "length"), values.number(part, "height")
    thickness = values.number(part, "thickness")
    if not isinstance(material, Material) or isnan(length + height + thickness):
        return
    layers = values.choice(part, "layers.count") or 1
    found = values.sheet_of(material, thickness / layers)
    longest = max(
        (side for size in (found.sizes if found else ()) for side in size), default=length
    )
    room = longest - 2 * values.shop("trim", 0.0)
    lengths = max(1, math.ceil(length / room - 1e-9)) if room > 0 else 1
    spare = values.shop("sanding", 0.0)
    yield Cut(
        part=part,
        material=material,
        nominal=found.nominal if found else math.nan,
        actual=found.actual if found else math.nan,
        drawn=thickness / layers,
        count=values.count(part) * layers * lengths,
        length=length / lengths,
        width=height,
        rough_length=length / lengths,
        rough_width=height + 2 * spare,
        is_round=False,
        turns=False,
    )


def _spare(values: Quantities, part: str, *, oversize: bool) -> float:
    """What is left on an edge: for sanding, and until it is cut to size."""
    sanding = values.shop("sanding", 0.0)
    return sanding + (values.shop("oversize", 0.0) if oversize else 0.0)


def key_of(cut: Cut) -> tuple[Any, ...]:
    """What the pieces of one sheet have in common."""
    return (cut.material.name, round(cut.nominal if cut.nominal == cut.nominal else cut.drawn, 6))
