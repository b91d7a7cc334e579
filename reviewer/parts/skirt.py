"""A skirt: a strip that stands on edge around a rim, between supports."""

import numpy as np

from reviewer.mechanics.beams import beam_deflection
from reviewer.mechanics.formula import Number
from reviewer.mechanics.resultant import Action
from reviewer.parts.allowed import share_of
from reviewer.parts.arm import bar_mass
from reviewer.parts.from_stock import density_of, panel_modulus_along
from reviewer.parts.groups import single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.row import Count, Measure, Row, Stock


def level_push(action: Action) -> Number:
    """Level force of all loads that push on it, taken as acting at one place.

    Statics.
    """
    loads = action.loads
    return np.hypot(loads.push_x, loads.push_y) + loads.push_round


def load_down(action: Action) -> Number:
    """Vertical force of the loads that stand on it.

    Statics.
    """
    return action.loads.force


def span_between_supports(diameter: Number, supports: int) -> Number:
    """Length of the strip between two neighbouring supports, along the curve.

    Geometry.

    Notes
    -----
    pi D / n.
    """
    return np.pi * diameter / supports


def second_moment_flat(height: Number, thickness: Number) -> Number:
    """Second moment of area of the strip for a push against its face.

    Gere and Goodno, Mechanics of Materials (2009), 12.4.

    Notes
    -----
    h t^3 / 12: the cube of the thickness.
    """
    return height * thickness * thickness * thickness / 12


def midspan_sag(force: Number, span: Number, modulus: Number, second_moment: Number) -> Number:
    """How far the strip gives way midway between supports, taken as straight and free to turn.

    Gere and Goodno, Mechanics of Materials (2009), table G-2 case 4.

    Notes
    -----
    F L^3 / (48 E I). An upper bound: the curve and the neighbouring spans stiffen it.
    """
    return beam_deflection(force, span / 2, span / 2, span, modulus * second_moment)


def least_thickness(
    push: Number, span: Number, modulus: Number, height: Number, allowed: Number
) -> Number:
    """The thickness at which a push gives just the allowed deflection.

    The same beam formula, solved for the thickness.

    Notes
    -----
    (F L^3 / (4 E h w))^(1/3): doubling the span asks for twice the thickness.
    """
    return np.cbrt(push * span * span * span / (4 * modulus * height * allowed))


SKIRT = Kind(
    name="skirt",
    says="a strip on edge around a rim, between supports",
    rows=(
        *tree(),
        *single(bar_mass, {"area": "area", "length": "length", "density": "density"}),
        Row("material", "", "material", Stock("materials", example="birch plywood")),
        Row("density", "kg/m^3", "density", formula=density_of, needs={"material": "material"}),
        Row("thickness", "m", "thickness of the strip", Measure(above=0.0, example="9 mm")),
        Row("height", "m", "height of the strip", Measure(above=0.0, example="70 mm")),
        Row(
            "modulus",
            "Pa",
            "modulus of elasticity in bending",
            Measure(above=0.0),
            formula=panel_modulus_along,
            needs={"material": "material", "thickness": "thickness"},
        ),
        Row(
            "diameter",
            "m",
            "diameter of the curve on which it stands",
            Measure(above=0.0, example="1300 mm"),
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
            "second_moment",
            "m^4",
            "second moment of area against its face",
            formula=second_moment_flat,
            needs={"height": "height", "thickness": "thickness"},
        ),
        Row(
            "wave",
            "m",
            "how far a push bends it between supports",
            formula=midspan_sag,
            needs={
                "force": "push",
                "span": "span",
                "modulus": "modulus",
                "second_moment": "second_moment",
            },
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
            needs={
                "push": "push",
                "span": "span",
                "modulus": "modulus",
                "height": "height",
                "allowed": "allowed_wave",
            },
        ),
        Row(
            "upright_second_moment",
            "m^4",
            "second moment of area against a load from above",
            formula=lambda height, thickness: second_moment_flat(thickness, height),
            needs={"height": "height", "thickness": "thickness"},
        ),
        Row(
            "load_down",
            "N",
            "load that stands on its edge",
            formula=load_down,
            needs={"action": "action"},
        ),
        Row(
            "sag",
            "m",
            "how far a load on its edge bends it down between supports",
            formula=midspan_sag,
            needs={
                "force": "load_down",
                "span": "span",
                "modulus": "modulus",
                "second_moment": "upright_second_moment",
            },
        ),
    ),
)
