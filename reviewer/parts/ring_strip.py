"""A strip on the track of a slewing ring: it spreads a roller's load over the softer plate."""

from typing import Any

import numpy as np

from reviewer.mechanics.bending import bending_stress
from reviewer.mechanics.formula import Number
from reviewer.mechanics.strip import (
    StripLoad,
    half_space_bed,
    layer_bed,
    strip_end_under_load,
    strip_under_load,
)
from reviewer.parts.from_stock import YIELD_MARGIN, modulus_of
from reviewer.parts.row import Measure, Row, Stock
from reviewer.stock.materials import Material, completed


def bed_of_strip(
    material: Material, plate_thickness: Number, width: Number, stiffness: Number
) -> Number:
    """Stiffness of the plate under the strip, for each length of it.

    Vesic (1961), from memory, of a plate thicker than the strip is wide; Winkler's bed of a
    thinner one, as in Hetenyi, Beams on Elastic Foundation (1946), 1.
    """
    modulus = material.modulus_through
    return np.where(
        plate_thickness > width,
        half_space_bed(modulus, width, stiffness),
        layer_bed(modulus, width, plate_thickness),
    )


def stiffness_of_strip(modulus: Number, width: Number, thickness: Number) -> Number:
    """Bending stiffness of the strip on its flat.

    Geometry.

    Notes
    -----
    E b t^3 / 12.
    """
    return modulus * width * thickness * thickness * thickness / 12


def section_modulus_of_strip(width: Number, thickness: Number) -> Number:
    """Section modulus of the strip on its flat.

    Geometry.

    Notes
    -----
    b t^2 / 6.
    """
    return width * thickness * thickness / 6


def allowed_stress_of_strip(material: Material) -> Number:
    """Bending stress that a strip of metal or plastic may carry: yield / 1.5, common practice.

    The stock row's own source.
    """
    return completed(material).bending_strength / YIELD_MARGIN


WITHIN: dict[str, Any] = {"solution": "strip"}
AT_JOINT: dict[str, Any] = {"solution": "strip_joint"}
UNDER_ROLLER = {
    "force": "carry.peak_load",
    "bed": "strip.bed",
    "width": "track.strip.width",
    "bending_stiffness": "strip.stiffness",
}


def strip_within(force: Number, bed: Number, width: Number, bending_stiffness: Number) -> StripLoad:
    """The strip under the busiest roller, far from its joints.

    Hetenyi, Beams on Elastic Foundation (1946), 2 (infinite beam).
    """
    return strip_under_load(force, bed, width, bending_stiffness)


def strip_at_joint(
    force: Number, bed: Number, width: Number, bending_stiffness: Number
) -> StripLoad:
    """The end of the strip, or a butt joint in it, under the busiest roller.

    Hetenyi, Beams on Elastic Foundation (1946), 3 (semi-infinite beam).
    """
    return strip_end_under_load(force, bed, width, bending_stiffness)


STRIP = (
    Row(
        "track.strip.material",
        "",
        "material of a strip on which the carrying rollers run",
        Stock("materials", example="S235"),
    ),
    Row("track.strip.thickness", "m", "thickness of the strip", Measure(above=0.0, example="3 mm")),
    Row("track.strip.width", "m", "width of the strip", Measure(above=0.0, example="20 mm")),
    Row(
        "strip.modulus",
        "Pa",
        "modulus of elasticity of the strip",
        formula=modulus_of,
        needs={"material": "track.strip.material"},
    ),
    Row(
        "strip.stiffness",
        "N m^2",
        "bending stiffness of the strip",
        formula=stiffness_of_strip,
        needs={
            "modulus": "strip.modulus",
            "width": "track.strip.width",
            "thickness": "track.strip.thickness",
        },
    ),
    Row(
        "strip.section_modulus",
        "m^3",
        "section modulus of the strip",
        formula=section_modulus_of_strip,
        needs={"width": "track.strip.width", "thickness": "track.strip.thickness"},
    ),
    Row(
        "strip.bed",
        "N/m^2",
        "stiffness of the plate under the strip for each length of it",
        formula=bed_of_strip,
        needs={
            "material": "plate.material",
            "plate_thickness": "plate.thickness",
            "width": "track.strip.width",
            "stiffness": "strip.stiffness",
        },
    ),
    Row(
        "strip", "", "the strip under the busiest roller", formula=strip_within, needs=UNDER_ROLLER
    ),
    Row("strip_joint", "", "a joint of the strip", formula=strip_at_joint, needs=UNDER_ROLLER),
    Row(
        "strip.sinks",
        "m",
        "how far the strip sinks into the plate",
        needs=WITHIN,
        take="deflection",
    ),
    Row(
        "strip.pressure",
        "Pa",
        "pressure under the strip on the plate",
        needs=WITHIN,
        take="pressure",
    ),
    Row(
        "strip.joint_pressure",
        "Pa",
        "pressure on the plate where a roller passes a joint of the strip",
        needs=AT_JOINT,
        take="pressure",
    ),
    Row("strip.moment", "N m", "bending moment in the strip", needs=WITHIN, take="moment"),
    Row(
        "strip.bending_stress",
        "Pa",
        "bending stress in the strip under the busiest roller",
        formula=bending_stress,
        needs={"moment": "strip.moment", "section_modulus": "strip.section_modulus"},
    ),
    Row(
        "strip.allowed_stress",
        "Pa",
        "bending stress that the strip may carry",
        formula=allowed_stress_of_strip,
        needs={"material": "track.strip.material"},
    ),
)
