"""Wood that moves with the seasons: how much a part grows and shrinks across its grain."""

from collections.abc import Callable
from typing import Any

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.moisture import gap_left
from reviewer.parts.ring_damp import TOO_DRY, moistures, swelling_of
from reviewer.parts.row import Choice, Measure, Row
from reviewer.stock.materials import Material, materials

COMPARED = "birch plywood"  # the panel with which solid wood is compared
FLAT, QUARTER = "flat", "quarter"
STILL = ("metal", "plastic")  # families that the dampness of the air does not move


def strain_across(material: Material, sawn: str) -> float:
    """Strain across the grain per per cent of moisture; of a panel along its face.

    The stock row's own source.

    Notes
    -----
    A flat-sawn board moves by the tangential coefficient, a quarter-sawn one by the radial.
    """
    if material.family in STILL:
        return 0.0
    if material.family != "wood":
        return material.movement_along
    return material.movement_radial if sawn == QUARTER else material.movement_tangential


def strain_through(material: Material, sawn: str) -> float:
    """Strain of the thickness per per cent of moisture.

    The stock row's own source.
    """
    if material.family in STILL:
        return 0.0
    if material.family != "wood":
        return material.movement_thickness
    return material.movement_tangential if sawn == QUARTER else material.movement_radial


def is_solid(material: Material) -> bool:
    """Whether it is solid wood, which moves some twenty times as much as plywood."""
    return material.family == "wood"


def room_left(gap: Number, size: Number, strain: Number, before: Number, after: Number) -> Number:
    """What is left of the gap beside a part that has grown or shrunk, beside what does not move.

    Wood Handbook FPL-GTR-282 (2021), ch. 13.

    Notes
    -----
    g - D C (M2 - M1).
    """
    first, second = moistures(before, after)
    return gap_left(gap, size, strain, first, second, 0.0, 0.0)


def whole_movement(damp: Number, dry: Number) -> Number:
    """How far it moves between the dampest and the driest air.

    Geometry.
    """
    return damp - dry


def of_plywood(size: Number, least: Number, most: Number) -> Number:
    """How far plywood of the same size would move between the driest and the dampest air.

    The stock row's own source.
    """
    return swelling_of(size, materials().find(COMPARED).movement_along, least, most)


def moving(size: Callable[..., Any], needs: dict[str, str]) -> tuple[Row, ...]:
    """The rows of a part that moves; `size` is how far it reaches across its grain, or the face."""
    assembled = {"before": "design.humidity.assembling"}
    seasons = (
        ("damp", "in the dampest air", "design.humidity.most", "largest"),
        ("dry", "in the driest air, below zero", "design.humidity.least", "least"),
    )
    rows = [
        Row("sawn", "", "how a board of solid wood is sawn", Choice((FLAT, QUARTER), default=FLAT)),
        Row(
            "movement.size",
            "m",
            "how far it reaches across its grain",
            Measure(above=0.0),
            formula=size,
            needs=needs,
        ),
        _strain("movement.strain", "strain across the grain per per cent", strain_across),
        _strain("swelling.strain", "strain through the thickness per per cent", strain_through),
        Row(
            "movement.solid",
            "truth",
            "whether it is solid wood",
            formula=is_solid,
            needs={"material": "material"},
        ),
    ]
    for name, when, after, governs in seasons:
        air = {**assembled, "after": after}
        strain = {"size": "movement.size", "strain": "movement.strain"}
        rows += [
            _grown(f"movement.{name}", f"how much wider it is {when}", strain, air, governs),
            _grown(
                f"swelling.{name}",
                f"how much thicker it is {when}",
                {"size": "thickness", "strain": "swelling.strain"},
                air,
                governs,
            ),
            Row(
                f"movement.room_{name}",
                "m",
                f"what is left of the gap {when.removesuffix(', below zero')}",
                formula=room_left,
                needs={"gap": "movement.gap", **strain, **air},
                governs="largest" if name == "dry" else "least",
                because=TOO_DRY,
            ),
        ]
    rows += [
        Row(
            "movement.gap",
            "m",
            "gap left for it across its grain as it is assembled, both sides together",
            Measure(at_least=0.0, example="4 mm"),
        ),
        Row(
            "movement.whole",
            "m",
            "how far it moves between the driest and the dampest air",
            formula=whole_movement,
            needs={"damp": "movement.damp", "dry": "movement.dry"},
        ),
        Row(
            "movement.as_plywood",
            "m",
            "how far plywood of the same size would move",
            formula=of_plywood,
            needs={
                "size": "movement.size",
                "least": "design.humidity.least",
                "most": "design.humidity.most",
            },
            because=TOO_DRY,
        ),
    ]
    return tuple(rows)


def _strain(path: str, says: str, formula: Callable[..., Any]) -> Row:
    return Row(
        path,
        "1",
        f"{says} of moisture",
        Measure(at_least=0.0),
        formula=formula,
        needs={"material": "material", "sawn": "sawn"},
        because="has no coefficient of movement in the table of stock for its material",
    )


def _grown(path: str, says: str, strain: dict[str, str], air: dict[str, str], governs: Any) -> Row:
    needs = {**strain, **air}
    return Row(path, "m", says, formula=swelling_of, needs=needs, governs=governs, because=TOO_DRY)


def of_outline(
    diameter: Number | None, length: Number | None, width: Number | None, grain: str
) -> Number:
    """How far a top reaches across its grain: its diameter, or the side that lies across.

    Geometry; the grain runs along or across its length.
    """
    if diameter is not None:
        return diameter
    side = width if grain == "along" else length
    return np.nan if side is None else side


def of_board(length: Number, width: Number, grain: str) -> Number:
    """How far a board reaches across its grain.

    Geometry.
    """
    return width if grain == "along" else length


def of_tray(depth: Number, width: Number, runs: str) -> Number:
    """How far a tray reaches across its grain, which runs outward or across.

    Geometry.
    """
    return width if runs == "outward" else depth


def of_strip(height: Number) -> Number:
    """How far a strip reaches across its grain, which runs along it.

    Geometry.
    """
    return height
