"""What damp and dry air do to the gaps of a slewing ring: its plate swells and shrinks."""

from typing import Any

from reviewer.mechanics.formula import Number
from reviewer.mechanics.moisture import equilibrium_moisture, movement
from reviewer.mechanics.ring_edges import gap_after_swelling, run_out, side_gap_left
from reviewer.mechanics.rollers import interference_force
from reviewer.parts.row import Measure, Row
from reviewer.stock.materials import Material

ROOM = 293.15  # K, temperature to which the moisture belongs; 10 K more or less matters little


def swelling_of_plate(
    size: Number, material: Material, before: Number, after: Number, along: bool = False
) -> Number:
    """How much the plate grows in thickness (or along its face) from one humidity to another.

    Wood Handbook FPL-GTR-282 (2021), ch. 4 and 13; the panel's own coefficient.

    Notes
    -----
    t C (M2 - M1), M the equilibrium moisture at 20 degrees Celsius; below zero where it shrinks.
    The end of a season is meant: through its thickness a panel takes weeks. Metal does not move.
    """
    if material.family in ("metal", "plastic"):
        return 0.0 * size
    strain = material.movement_along if along else material.movement_thickness
    return swelling_of(size, strain, before, after)


def moistures(*airs: Number) -> tuple[Number, ...]:
    """Moisture that wood comes to in air of each relative humidity, at room temperature.

    Wood Handbook FPL-GTR-282 (2021), ch. 4.
    """
    return tuple(equilibrium_moisture(ROOM, air) for air in airs)


def swelling_of(size: Number, strain: Number, before: Number, after: Number) -> Number:
    """How much a size grows from one humidity of the air to another, below zero if it shrinks.

    Wood Handbook FPL-GTR-282 (2021), ch. 4 and 13.

    Notes
    -----
    D C (M2 - M1), M the equilibrium moisture at 20 degrees Celsius.
    """
    return movement(size, strain, *moistures(before, after))


def growth_of_edge(diameter: Number, material: Material, before: Number, after: Number) -> Number:
    """How far the plate's edge moves outward from one humidity to another.

    Wood Handbook FPL-GTR-282 (2021), ch. 4 and 13; the panel's own coefficient.

    Notes
    -----
    D/2 C (M2 - M1). What carries the side rollers is taken not to move.
    """
    return swelling_of_plate(diameter / 2, material, before, after, along=True)


def gap_left(gap: Number, swelling: Number) -> Number:
    """Gap of the hold-downs after the plate has swollen, below zero where it is squeezed.

    Geometry.

    Notes
    -----
    gap - swelling.
    """
    return gap_after_swelling(gap, 1.0, swelling)


def squeeze(
    gap: Number,
    preload: Number,
    hold_stiffness: Number,
    carry_stiffness: Number,
    hold_count: int,
    carry_count: int,
) -> Number:
    """Force on each hold-down of a plate that has swollen past its gap, nobody on it.

    Statics; springs in series.

    Notes
    -----
    preload + (swelling - gap) / (1/k_hold + n_hold / (n_carry k_carry)).
    """
    below = carry_stiffness * carry_count / hold_count
    return preload + interference_force(-gap, hold_stiffness, below)


def edge_run_out(eccentricity: Number, form: Number) -> Number:
    """Run-out of the plate's edge at the side rollers.

    ISO 1101 (circular run-out), geometry.

    Notes
    -----
    2 e + form.
    """
    return run_out(eccentricity, form)


TOO_DRY = (
    "is unknown because the material has no coefficient of movement, or the air takes it beyond"
    " 6 % to 14 % of moisture, where that does not hold"
)
AIR: dict[str, Any] = {"material": "plate.material", "before": "design.humidity.assembling"}
PRESSES = {
    "preload": "hold_down.preload",
    "hold_stiffness": "hold_down.stiffness",
    "carry_stiffness": "carry.stiffness",
    "hold_count": "hold_down.count",
    "carry_count": "carry.count",
}

DAMP = (
    Row(
        "plate.swelling",
        "m",
        "how much thicker the plate is in the dampest air than where it was assembled",
        formula=swelling_of_plate,
        needs={"size": "plate.thickness", **AIR, "after": "design.humidity.most"},
        because=TOO_DRY,
    ),
    Row(
        "plate.shrinking",
        "m",
        "how much thinner the plate is in the driest air, below zero",
        formula=swelling_of_plate,
        needs={"size": "plate.thickness", **AIR, "after": "design.humidity.least"},
        governs="least",
        because=TOO_DRY,
    ),
    Row(
        "hold_down.gap_damp",
        "m",
        "gap at the hold-downs in the dampest air, below zero where the plate is squeezed",
        formula=gap_left,
        needs={"gap": "hold_down.gap", "swelling": "plate.swelling"},
        governs="least",
    ),
    Row(
        "hold_down.gap_dry",
        "m",
        "gap at the hold-downs in the driest air",
        formula=gap_left,
        needs={"gap": "hold_down.gap", "swelling": "plate.shrinking"},
    ),
    Row(
        "hold_down.squeeze",
        "N",
        "force on each hold-down in the dampest air with nobody at the table",
        formula=squeeze,
        needs={"gap": "hold_down.gap_damp", **PRESSES},
    ),
    Row(
        "side.growth",
        "m",
        "how far the plate's edge grows outward in the dampest air",
        formula=growth_of_edge,
        needs={"diameter": "plate.diameter", **AIR, "after": "design.humidity.most"},
        because=TOO_DRY,
    ),
    Row(
        "side.eccentricity",
        "m",
        "distance between the centre about which the edge was cut and that about which it turns",
        Measure(at_least=0.0, example="0.1 mm"),
    ),
    Row(
        "side.out_of_round",
        "m",
        "how far the edge itself is from round",
        Measure(at_least=0.0, default="0 mm"),
    ),
    Row(
        "side.run_out",
        "m",
        "run-out of the edge in one turn",
        formula=edge_run_out,
        needs={"eccentricity": "side.eccentricity", "form": "side.out_of_round"},
        read="at the edge, from a side roller, over one whole turn",
    ),
    Row(
        "side.gap_least",
        "m",
        "least gap at a side roller while the edge turns past it",
        formula=side_gap_left,
        needs={"gap": "side.gap", "run_out_of_edge": "side.run_out"},
        governs="least",
    ),
    Row(
        "side.gap_damp",
        "m",
        "gap at the side rollers in the dampest air, if what carries them does not grow as well",
        formula=gap_left,
        needs={"gap": "side.gap", "swelling": "side.growth"},
        governs="least",
    ),
)
