"""What the members of a bolted joint bear under a bolt, by their material: wood, board or metal."""

from typing import Any

import numpy as np

from reviewer.mechanics.dowel_bearing import (
    en_board_bolt_embedment,
    en_bolt_embedment,
    en_plywood_bolt_embedment,
    nds_bearing_across,
    nds_bearing_along,
    nds_small_bearing,
    nds_steel_bearing,
)
from reviewer.mechanics.formula import Number
from reviewer.mechanics.group_action import nds_group_action, nds_slip_modulus
from reviewer.mechanics.spacing import nds_bolt_spacing
from reviewer.parts.lasting import OF_WOOD
from reviewer.stock.materials import Material, completed

SOFTWOOD = 1.35  # the greater grain factor of EN 1995-1-1, (8.33): the lower strength of the two
OF_PANELS = 0.50  # NDS 2018, table 12.3.3B, from memory: no panel counts for more
SMALL = 0.00635  # under 1/4 inch the NDS knows no grain
METAL = "metal"
BOARDS = ("particleboard", "OSB", "MDF")  # by the class of their duration
ESTIMATED = "MDF"
HALF_TURN = np.pi / 4  # past which the stretch across the grain counts


def gravity_of(material: Material) -> Number:
    """Specific gravity of wood, ovendry mass over ovendry volume, from its density at 12 %.

    NDS Supplement 2018, 3.1.3; panels at most as NDS 2018, table 12.3.3B; from memory.

    Notes
    -----
    rho = 1000 G (1 + m) / (1 + 0.9 m G) with m = 0.12, solved for G; of panels at most 0.50.
    """
    if material.family not in OF_WOOD:
        return np.nan
    gravity = material.density / (1120.0 - 0.108 * material.density)
    return gravity if material.family == "wood" else np.minimum(gravity, OF_PANELS)


def bearing_of(
    material: Material, gravity: Number | None, diameter: Number, angle: Number
) -> Number:
    """Dowel bearing strength by the NDS: of wood at an angle to the grain, of metal by strength.

    NDS 2018, 12.3.3, 12.3.4 (Hankinson) and appendix I.

    Notes
    -----
    Metal 2.4 Fu / 1.6 as of hot rolled steel; of aluminium common practice.
    """
    if material.family == METAL:
        return nds_steel_bearing(material.tensile_strength) + 0.0 * np.asarray(diameter)
    if gravity is None:
        return np.nan
    along, across = nds_bearing_along(gravity), nds_bearing_across(gravity, diameter)
    sine = np.sin(angle)
    between = along * across / (along * sine * sine + across * (1 - sine * sine))
    return np.where(np.asarray(diameter) < SMALL, nds_small_bearing(gravity), between)


def embedment_of(material: Material, diameter: float, thickness: Number, angle: Number) -> Number:
    """Characteristic embedment strength by EN 1995-1-1; of MDF that of particleboard, an estimate.

    EN 1995-1-1:2004, (8.31) to (8.33), (8.36), (8.37); the grain factor is that of softwood.
    """
    low, _ = material.range_of("density")
    if material.family == "wood":
        return en_bolt_embedment(low, diameter, angle, SOFTWOOD)
    if material.family == "plywood":
        return en_plywood_bolt_embedment(low, diameter)
    if material.duration_class in BOARDS:
        return en_board_bolt_embedment(diameter, thickness)
    return np.nan


def basis_of(first: Material, second: Material) -> str:
    """Whether the codes give a value for both members, or one is an estimate."""
    if ESTIMATED in (first.duration_class, second.duration_class):
        return (
            "MDF counts as particleboard, an estimate that may be off by a third: no code gives "
            "it, so test one"
        )
    return "Both codes scatter by about a fifth around tests of one bolt"


def width_of(edge: Number | None, diameter: Number) -> Number:
    """Width of a member of which none is told: as narrow as its edges let it be, which is safe.

    NDS 2018, table 12.5.1C, 1.5 diameters to each side.
    """
    least = nds_bolt_spacing(diameter, diameter).edge
    return 2 * (least if edge is None else edge)


def stretch_of(material: Material, thickness: Number, width: Number, angle: Number) -> Number:
    """Modulus of elasticity of a member along the force, times its area.

    NDS 2018, 11.3.6.
    """
    row = completed(material)
    across = row.modulus if np.isnan(row.modulus_across) else row.modulus_across
    return np.where(np.asarray(angle) > HALF_TURN, across, row.modulus) * thickness * width


def group_of(
    first: Material,
    second: Material,
    first_stretch: Number,
    second_stretch: Number,
    count: int,
    spacing: Number | None,
    diameter: float,
) -> Number:
    """Share of single bolts that a row of them bears; a spacing that is not told counts as full.

    NDS 2018, eq. (11.3-1).
    """
    metal = float(METAL in (first.family, second.family))
    apart: Any = nds_bolt_spacing(diameter, diameter).in_row_full if spacing is None else spacing
    slip = nds_slip_modulus(diameter, metal)
    return nds_group_action(count, apart, slip, first_stretch, second_stretch)
