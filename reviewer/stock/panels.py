"""Bending of panels by thickness: a thin plywood is stiffer along its face, weaker across it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.stock.materials import Material
from reviewer.stock.reader import read_records
from reviewer.stock.table import UNKNOWN, StockRow, Table

Number = float | NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class PanelThickness(StockRow):
    """Bending of one panel material over a span of thickness: above [m] and up_to [m].

    modulus, modulus_across, bending_strength, bending_strength_across [Pa], along and across the
    grain of the face, on the gross section. Unknown is NaN.
    """

    name: str
    material: str
    above: float
    up_to: float
    source: str
    aliases: tuple[str, ...] = ()
    modulus: float = UNKNOWN
    modulus_across: float = UNKNOWN
    bending_strength: float = UNKNOWN
    bending_strength_across: float = UNKNOWN


class PanelModulus(NamedTuple):
    """Modulus in bending along and across the grain of the face [Pa]."""

    along: Number
    across: Number


@cache
def panel_thicknesses() -> Table[PanelThickness]:
    """The rows by thickness that come with the project."""
    rows = (PanelThickness(**record) for record in read_records("panel_thicknesses.tsv"))
    return Table("panel thickness", rows)


def at_thickness(
    material: Material, thickness: float, table: Table[PanelThickness] | None = None
) -> Material:
    """The material with the bending values that hold at this thickness [m], nominal or actual.

    A material that the table does not list by thickness comes back as it is; so does one of a
    thickness that the table does not reach, with its bending values unknown (NaN).
    """
    rows = _rows(material, table)
    if not rows:
        return material
    fields = ("modulus", "modulus_across", "bending_strength", "bending_strength_across")
    for row in rows:
        if row.above < thickness <= row.up_to:
            found = {field: getattr(row, field) for field in fields}
            source = f"{material.source}; bending at this thickness: {row.source}"
            return replace(material, source=source, **found)
    unknown = dict.fromkeys(fields, UNKNOWN)
    return replace(material, **unknown)  # type: ignore[arg-type]


def panel_modulus(
    material: Material, thickness: Number, table: Table[PanelThickness] | None = None
) -> PanelModulus:
    """Modulus in bending of a panel of one or many thicknesses [m], nominal or actual.

    NaN for a thickness that the table does not reach. A material that the table does not list by
    thickness has its own modulus at every thickness.

    >>> from reviewer.stock.materials import materials
    >>> birch = materials().find("birch plywood")
    >>> [round(float(each) / 1e6) for each in panel_modulus(birch, 0.009)]
    [11395, 6105]
    """
    rows = _rows(material, table)
    if not rows:
        return PanelModulus(material.modulus, material.modulus_across)
    along: Number = np.full(np.shape(thickness), UNKNOWN)
    across: Number = along
    for row in rows:
        inside = (thickness > row.above) & (thickness <= row.up_to)
        along = np.where(inside, row.modulus, along)
        across = np.where(inside, row.modulus_across, across)
    if np.ndim(thickness) == 0:
        return PanelModulus(float(along), float(across))
    return PanelModulus(along, across)


def _rows(material: Material, table: Table[PanelThickness] | None) -> list[PanelThickness]:
    return [row for row in table or panel_thicknesses() if row.material == material.name]
