"""Materials: woods, strength classes, panels, metals and plastics, each with its source.

Numbers are short-term and at room climate. What a strength is (a mean, a characteristic value, a
specified minimum) is said by `strength_basis`; the two must not be compared without a factor.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import ClassVar

from reviewer.stock.reader import in_si, read_records
from reviewer.stock.table import UNKNOWN, StockRow, Table

FAMILIES = ("wood", "plywood", "panel", "metal", "plastic")

# Coefficients of variation of clear wood; Wood Handbook Table 5-6, from memory.
VARIATION = {
    "density": 0.10,
    "modulus": 0.22,
    "bending_strength": 0.16,
    "compression_strength": 0.18,
    "compression_across": 0.28,
    "shear_strength": 0.14,
    "hardness_janka": 0.20,
}
# Nine in ten of normally spread values lie within this many standard deviations of the mean.
NINE_IN_TEN = 1.645

_STRENGTH = (1e4, 5e9)
_MODULUS = (1e6, 1e12)
_MOVEMENT = (0.0, 0.02)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Material(StockRow):
    """A material. Unknown numbers are NaN.

    density [kg/m^3]; modulus in bending along the grain (of the face, for a panel), modulus_across
    it in the board's or panel's face and modulus_through its thickness, shear_modulus in the face
    and planar_shear_modulus (rolling shear), all [Pa]; poisson [1] along to across.

    Strengths [Pa]: bending_strength along and bending_strength_across the grain of the face,
    tensile_strength and compression_strength along, compression_across (perpendicular to grain,
    through a panel's face: what a washer or a roller presses on), shear_strength,
    planar_shear_strength, yield_strength. hardness_janka [N] is the side hardness.

    movement_radial, movement_tangential, movement_along (in a panel's face) and movement_thickness
    are changes of length for each per cent of moisture [1 per %MC].

    partial_factor [1] is gamma_M of EN 1995-1-1; duration_class names the row of the k_mod and
    k_def tables that holds for it. published_range lists (field, low, high) in SI units.
    """

    name: str
    family: str
    source: str
    aliases: tuple[str, ...] = ()
    density: float = UNKNOWN
    modulus: float = UNKNOWN
    modulus_across: float = UNKNOWN
    modulus_through: float = UNKNOWN
    shear_modulus: float = UNKNOWN
    planar_shear_modulus: float = UNKNOWN
    poisson: float = UNKNOWN
    bending_strength: float = UNKNOWN
    bending_strength_across: float = UNKNOWN
    tensile_strength: float = UNKNOWN
    compression_strength: float = UNKNOWN
    compression_across: float = UNKNOWN
    shear_strength: float = UNKNOWN
    planar_shear_strength: float = UNKNOWN
    yield_strength: float = UNKNOWN
    hardness_janka: float = UNKNOWN
    movement_radial: float = UNKNOWN
    movement_tangential: float = UNKNOWN
    movement_along: float = UNKNOWN
    movement_thickness: float = UNKNOWN
    partial_factor: float = UNKNOWN
    strength_basis: str = ""
    duration_class: str = ""
    published_range: tuple[tuple[str, float, float], ...] = ()

    plausible: ClassVar[Mapping[str, tuple[float, float]]] = {
        "density": (50.0, 20e3),
        "modulus": _MODULUS,
        "modulus_across": _MODULUS,
        "modulus_through": _MODULUS,
        "shear_modulus": _MODULUS,
        "planar_shear_modulus": _MODULUS,
        # Across the grain of wood and plywood it leaves the range of isotropic materials.
        "poisson": (0.0, 0.9),
        "bending_strength": _STRENGTH,
        "bending_strength_across": _STRENGTH,
        "tensile_strength": _STRENGTH,
        "compression_strength": _STRENGTH,
        "compression_across": _STRENGTH,
        "shear_strength": _STRENGTH,
        "planar_shear_strength": _STRENGTH,
        "yield_strength": _STRENGTH,
        "hardness_janka": (10.0, 50e3),
        "movement_radial": _MOVEMENT,
        "movement_tangential": _MOVEMENT,
        "movement_along": _MOVEMENT,
        "movement_thickness": _MOVEMENT,
        "partial_factor": (1.0, 3.0),
    }

    def range_of(self, field: str) -> tuple[float, float]:
        """The published low and high of a field, or its one value twice where no range is known.

        >>> low, high = materials().find("MDF").range_of("modulus")
        >>> low / 1e9, high / 1e9
        (2.1, 3.6)
        """
        for name, low, high in self.published_range:
            if name == field:
                return low, high
        value: float = getattr(self, field)
        return value, value


@cache
def materials() -> Table[Material]:
    """The materials that come with the project.

    >>> round(materials().find("birch ply").modulus / 1e6)
    10048
    """
    return Table("material", (*_woods(), *_classes(), *_panels(), *_isotropic_materials()))


def completed(material: Material) -> Material:
    """An isotropic material with what follows from its given values filled in where unknown.

    Applies to metals and plastics: E is the same in every direction, G = E / 2(1 + nu), yield in
    compression and bending is yield in tension, and yield in shear is that over the square root
    of three (von Mises). Other families come back as they are.
    """
    if material.family not in ("metal", "plastic"):
        return material
    strength, modulus = material.yield_strength, material.modulus
    follows = {
        "modulus_across": modulus,
        "modulus_through": modulus,
        "shear_modulus": modulus / (2 * (1 + material.poisson)),
        "bending_strength": strength,
        "bending_strength_across": strength,
        "compression_strength": strength,
        "compression_across": strength,
        "shear_strength": strength / 3**0.5,
    }
    unknown = {k: v for k, v in follows.items() if getattr(material, k) != getattr(material, k)}
    return replace(material, **unknown)  # type: ignore[arg-type]


def _woods() -> Iterator[Material]:
    for record in read_records("wood.tsv"):
        across = record["modulus_across"]
        yield Material(
            **record,
            family="wood",
            modulus_through=across,
            partial_factor=1.3,
            strength_basis="mean",
            duration_class="solid timber",
            published_range=tuple(
                (field, value * (1 - NINE_IN_TEN * spread), value * (1 + NINE_IN_TEN * spread))
                for field, spread in VARIATION.items()
                if (value := record[field]) == value
            ),
        )


def _classes() -> Iterator[Material]:
    for record in read_records("strength_classes.tsv"):
        low = {field: record.pop(f"{field}_low") for field in ("modulus", "density")}
        yield Material(
            **record,
            family="wood",
            modulus_through=record["modulus_across"],
            partial_factor=1.3,
            strength_basis="characteristic",
            duration_class="solid timber",
            # The standard gives the mean and the low end; the high end lies as far above.
            published_range=tuple(
                (field, value, 2 * record[field] - value) for field, value in low.items()
            ),
        )


def _panels() -> Iterator[Material]:
    for record in read_records("panels.tsv"):
        yield Material(published_range=_ranges(record.pop("published")), **record)


def _isotropic_materials() -> Iterator[Material]:
    for family in ("metal", "plastic"):
        for record in read_records(f"{family}s.tsv"):
            ranges = _ranges(record.pop("published"))
            yield completed(Material(family=family, published_range=ranges, **record))


def _ranges(text: str) -> tuple[tuple[str, float, float], ...]:
    """`modulus 2.1..3.6 GPa; density 650..850 kg/m3` in SI units."""

    def one(part: str) -> tuple[str, float, float]:
        field, span, unit = part.split()
        low, _, high = span.partition("..")
        return field, in_si(low, unit), in_si(high, unit)

    return tuple(one(part) for part in text.split(";") if part)
