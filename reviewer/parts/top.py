"""A top: a disc or rectangle of panel that lies on a ring, on arms or on a frame."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.allowed import share_of
from reviewer.parts.bench_test import BENT, bent_strip, board_modulus
from reviewer.parts.blanks import across, blank
from reviewer.parts.board import board_row
from reviewer.parts.figures import figure
from reviewer.parts.from_stock import density_of
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.moving import moving, of_outline
from reviewer.parts.plate import edge_sag, half_radius, plan_area, plate_mass, rim_radius
from reviewer.parts.row import Measure, Row, Stock
from reviewer.parts.sheet_rows import THICKNESS, sheet_sizes
from reviewer.parts.spanning import on_ring_or_lines

OUTLINE = {"diameter": "diameter?", "length": "length?", "width": "width?"}


def overhang_beyond(rim: Number, support: Number | None, edge: Number | None) -> Number:
    """How far a flat part reaches beyond what carries it.

    Geometry.

    Notes
    -----
    To the radius at which arms carry it, or to the rim of what it lies on.
    """
    inner = support if support is not None else edge
    return np.nan if inner is None else np.maximum(rim - inner, 0.0)


def panel_rows() -> tuple[Row, ...]:
    """Material, thickness and the sag of an overhanging edge, alike for tops and trays."""
    return (
        board_row(),
        Row("material", "", "material", Stock("materials", example="birch plywood")),
        Row("density", "kg/m^3", "density", formula=density_of, needs={"material": "material"}),
        Row("thickness", "m", "thickness", THICKNESS),
        *sheet_sizes(),
        Row(
            "height",
            "m",
            "height above its carrier",
            Measure(at_least=0.0),
            formula=same,
            needs={"place": "thickness"},
        ),
        Row(
            "modulus",
            "Pa",
            "modulus of elasticity in bending",
            Measure(above=0.0),
            formula=board_modulus,
            needs={"material": "material?", "thickness": "thickness", **BENT},
        ),
        *bent_strip(),
        Row(
            "overhang",
            "m",
            "how far it reaches beyond what carries it",
            Measure(at_least=0.0),
            formula=overhang_beyond,
            needs={
                "rim": "rim.radius",
                "support": "carrier.support.radius?",
                "edge": "carrier.rim.radius?",
            },
        ),
        Row(
            "point_force",
            "N",
            "greatest single force that stands on it",
            Measure(at_least=0.0),
            built=True,
        ),
        Row(
            "edge_sag",
            "m",
            "how far its overhanging edge sinks under that force",
            formula=edge_sag,
            needs={
                "force": "point_force",
                "overhang": "overhang",
                "modulus": "modulus",
                "thickness": "thickness",
            },
        ),
        Row(
            "allowed_sag",
            "m",
            "how far its edge may sink",
            Measure(above=0.0),
            formula=share_of,
            needs={"length": "overhang", "divisor": "limit.overhang_over_sag"},
        ),
    )


TOP = Kind(
    name="top",
    says="a disc or rectangle of panel on a ring, arms or a frame",
    rows=(
        *tree(),
        *single(plate_mass, {"area": "area", "thickness": "thickness", "density": "density"}),
        *panel_rows(),
        figure("top", "diameter", "length", "width", "opening", "thickness"),
        *blank(
            lambda diameter, length, width: across(diameter, length),
            lambda diameter, length, width: across(diameter, width),
            OUTLINE,
        ),
        Row("diameter", "m", "diameter of a round one", Measure(above=0.0, example="1200 mm")),
        Row("length", "m", "length of a rectangular one", Measure(above=0.0)),
        Row("width", "m", "width of a rectangular one", Measure(above=0.0)),
        Row("opening", "m", "diameter of its round opening", Measure(at_least=0.0, default="0 mm")),
        Row("area", "m^2", "area", formula=plan_area, needs={**OUTLINE, "opening": "opening"}),
        Row(
            "rim.radius",
            "m",
            "radius of its edge, of a rectangle its corner",
            formula=rim_radius,
            needs=OUTLINE,
        ),
        Row(
            "half.radius",
            "m",
            "distance of the middle of one half of its area",
            formula=half_radius,
            needs={**OUTLINE, "opening": "opening"},
        ),
        *on_ring_or_lines("diameter?", "opening", "width?"),
        *moving(of_outline, {**OUTLINE, "grain": "grain"}),
    ),
)
