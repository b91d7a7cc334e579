"""A skirt: a strip that stands on edge around a rim, between supports."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action
from reviewer.parts.allowed import share_of
from reviewer.parts.arm import bar_mass
from reviewer.parts.board import board_row
from reviewer.parts.figures import LIES, figure
from reviewer.parts.from_stock import density_of, shear_modulus_of
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.lasting import creep, strength_in_time
from reviewer.parts.moving import moving, of_strip
from reviewer.parts.row import Choice, Count, Measure, Row, Stock
from reviewer.parts.sheet_rows import THICKNESS, sheet_sizes
from reviewer.parts.skirt_bending import flat_stiffness, least_thickness, strip_modulus, wave_of
from reviewer.parts.skirt_rows import layers, next_size, on_edge_rows


def level_push(action: Action) -> Number:
    """Level force of all loads that push on it, taken as acting at one place.

    Statics.
    """
    loads = action.loads
    return np.hypot(loads.push_x, loads.push_y) + loads.push_round


def span_between_supports(diameter: Number, supports: int) -> Number:
    """Length of the strip between two neighbouring supports, along the curve.

    Geometry.

    Notes
    -----
    pi D / n.
    """
    return np.pi * diameter / supports


SKIRT = Kind(
    name="skirt",
    says="a strip on edge around a rim, between supports",
    rows=(
        *tree(),
        LIES,
        figure("skirt", "diameter", "length", "thickness", "height", "azimuth"),
        *single(bar_mass, {"area": "area", "length": "length", "density": "density"}),
        board_row(),
        Row("material", "", "material", Stock("materials", example="birch plywood")),
        Row("density", "kg/m^3", "density", formula=density_of, needs={"material": "material"}),
        Row("thickness", "m", "thickness of the strip", THICKNESS),
        *sheet_sizes(),
        Row("height", "m", "height of the strip", Measure(above=0.0, example="70 mm")),
        Row(
            "modulus",
            "Pa",
            "modulus of elasticity in bending",
            Measure(above=0.0),
            formula=strip_modulus,
            needs={"material": "material", "layer": "layers.thickness", "angle": "grain_angle"},
        ),
        Row(
            "shear_modulus",
            "Pa",
            "shear modulus",
            Measure(above=0.0),
            formula=shear_modulus_of,
            needs={"material": "material"},
        ),
        *layers(),
        *moving(of_strip, {"height": "height"}),
        *strength_in_time(),
        Row(
            "diameter",
            "m",
            "diameter of the curve on which it stands",
            Measure(above=0.0, example="1300 mm"),
        ),
        Row(
            "ends",
            "",
            "whether it turns freely at its supports, an upper bound, or runs on and is held",
            Choice(("free", "fixed"), default="free"),
        ),
        Row("supports", "", "how many supports hold it around", Count(at_least=2)),
        Row(
            "span",
            "m",
            "length between neighbouring supports",
            Measure(above=0.0),
            formula=span_between_supports,
            needs={"diameter": "diameter", "supports": "supports"},
        ),
        Row(
            "length",
            "m",
            "length of the whole strip",
            Measure(above=0.0),
            formula=lambda diameter, span: span if diameter is None else np.pi * diameter,
            needs={"diameter": "diameter?", "span": "span"},
        ),
        Row(
            "area",
            "m^2",
            "area of the section",
            formula=lambda height, thickness: height * thickness,
            needs={"height": "height", "thickness": "thickness"},
        ),
        Row(
            "rim.radius",
            "m",
            "radius of its outer face",
            formula=lambda diameter: diameter / 2,
            needs={"diameter": "diameter"},
        ),
        Row(
            "push",
            "N",
            "level force against its face",
            Measure(at_least=0.0),
            formula=level_push,
            needs={"action": "action"},
        ),
        Row(
            "flat_stiffness",
            "N m^2",
            "bending stiffness against a push on its face",
            formula=flat_stiffness,
            needs={
                "modulus": "modulus",
                "height": "height",
                "thickness": "thickness",
                "count": "layers.count",
                "bonded": "layers.bonded",
                "slip_modulus": "layers.slip_modulus",
                "spacing": "layers.spacing",
                "span": "span",
            },
            because="has more than three screwed layers, or its screws are not told",
        ),
        Row(
            "wave",
            "m",
            "how far a push bends it between supports",
            formula=wave_of,
            needs={"push": "push", "span": "span", "stiffness": "flat_stiffness", "ends": "ends"},
            read="midway between two supports, from a straightedge across both",
        ),
        Row(
            "allowed_wave",
            "m",
            "how far it may give way between supports",
            Measure(above=0.0),
            formula=share_of,
            needs={"length": "span", "divisor": "limit.skirt_span_over_wave"},
        ),
        Row(
            "least_thickness",
            "m",
            "thickness at which the push bends it just as far as allowed",
            formula=least_thickness,
            needs={"thickness": "thickness", "wave": "wave", "allowed": "allowed_wave"},
        ),
        *next_size(),
        *on_edge_rows(),
        *creep("sag", "how far it sags after years"),
    ),
)
