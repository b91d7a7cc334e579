"""A hub: a plate that turns on a central spindle with two bearings.

Its quantities have the names of those of a slewing ring where they mean the same, so that the two
ideas can be compared.
"""

from typing import Any

from reviewer.mechanics.bolt_limits import bolt_bending_stress
from reviewer.parts.figures import figure
from reviewer.parts.from_stock import YIELD_MARGIN, of_bearing
from reviewer.parts.groups import same, single, tree
from reviewer.parts.hub_forces import (
    axial_limit,
    bearing_stiffness,
    clearance_of,
    equivalent_load,
    solve_hub,
)
from reviewer.parts.hub_moves import MOVES
from reviewer.parts.kind import Kind
from reviewer.parts.plate import plate_mass
from reviewer.parts.ring_body import PLATE
from reviewer.parts.row import Choice, Flag, Measure, Row, Stock
from reviewer.stock.materials import Material, completed

SOLVED = {"solution": "bearings"}
AT = {"action": "action", "x": "place.x", "y": "place.y"}


def allowed_of_spindle(material: Material) -> float:
    """Bending stress that the spindle may carry: yield / 1.5, common practice.

    The stock row's own source.
    """
    return completed(material).yield_strength / YIELD_MARGIN


def one_bearing(which: str, where: str) -> tuple[Row, ...]:
    """What is asked of one of the two bearings."""
    bearing = {"bearing": f"{which}.bearing"}
    given: dict[str, Any] = (
        {} if which == "upper" else {"formula": same, "needs": {"place": "upper.bearing"}}
    )
    return (
        Row(
            f"{which}.bearing",
            "",
            f"bearing {where}, by standard size",
            Stock("bearings", example='"6204"'),
            **given,
        ),
        Row(
            f"{which}.static_rating",
            "N",
            "basic static load rating of the bearing",
            formula=of_bearing("static_rating", "Basic static load rating C0"),
            needs=bearing,
        ),
        Row(
            f"{which}.peak_load",
            "N",
            f"radial load on the bearing {where}",
            needs=SOLVED,
            take=which,
        ),
        Row(
            f"{which}.equivalent_load",
            "N",
            "static equivalent load of the bearing",
            formula=lambda radial, axial, locating: equivalent_load(radial, axial, locating, which),
            needs={
                "radial": f"{which}.peak_load",
                "axial": "carry.axial_load",
                "locating": "locating",
            },
        ),
        Row(
            f"{which}.stiffness",
            "N/m",
            "radial stiffness of the bearing and its seat",
            Measure(above=0.0, example="20 kN/mm"),
            formula=bearing_stiffness,
            needs={"load": f"{which}.peak_load", **bearing},
            governs="least",
        ),
        Row(
            f"{which}.clearance",
            "m",
            "radial clearance of the bearing at its widest",
            Measure(at_least=0.0, example="0.02 mm"),
            formula=clearance_of,
            needs={**bearing, "preloaded": "preloaded"},
        ),
    )


SPINDLE = (
    Row("spacing", "m", "distance between the bearings", Measure(above=0.0, example="120 mm")),
    Row(
        "upper.height",
        "m",
        "height of the upper bearing's middle above the hub's underside",
        Measure(at_least=0.0),
        formula=same,
        needs={"place": "spacing"},
    ),
    Row(
        "height",
        "m",
        "height from the carrier to the top of the plate",
        Measure(at_least=0.0, example="160 mm"),
        formula=lambda upper, plate: upper + plate,
        needs={"upper": "upper.height", "plate": "plate.thickness"},
    ),
    Row(
        "locating",
        "",
        "the bearing that carries the weight along the spindle",
        Choice(("upper", "lower"), default="upper"),
    ),
    Row(
        "preloaded",
        "",
        "whether the two bearings are set against each other without play",
        Flag(),
    ),
    Row(
        "spindle.diameter",
        "m",
        "diameter of the spindle between the bearings",
        Measure(above=0.0, example="20 mm"),
        formula=of_bearing("bore", "Bore of the upper bearing"),
        needs={"bearing": "upper.bearing"},
    ),
    Row("spindle.material", "", "material of the spindle", Stock("materials", example="C45")),
    Row(
        "spindle.modulus",
        "Pa",
        "modulus of elasticity of the spindle",
        Measure(above=0.0, default="206 GPa"),
    ),
    Row(
        "spindle.overhang",
        "m",
        "length of spindle from the upper bearing to the flange",
        Measure(at_least=0.0, default="0 mm"),
    ),
    Row(
        "flange.diameter",
        "m",
        "diameter of the circle on which the plate is bolted to its flange",
        Measure(above=0.0, example="150 mm"),
    ),
)

FORCES = (
    Row(
        "bearings.level",
        "m",
        "height of the upper bearing above the floor",
        formula=lambda level, height: level + height,
        needs={"level": "level", "height": "upper.height"},
    ),
    Row(
        "bearings",
        "",
        "the loads of the two bearings, for the worst direction",
        formula=solve_hub,
        needs={**AT, "level": "bearings.level", "spacing": "spacing"},
    ),
    Row(
        "carry.axial_load",
        "N",
        "vertical force on the hub, own weight included",
        needs=SOLVED,
        take="axial_load",
    ),
    Row("carry.radial_load", "N", "level force on the hub", needs=SOLVED, take="radial_load"),
    Row(
        "carry.moment",
        "N m",
        "overturning moment at the upper bearing",
        needs=SOLVED,
        take="moment",
    ),
    Row(
        "carry.peak_load",
        "N",
        "radial load on the busier bearing",
        needs=SOLVED,
        take="peak",
    ),
    Row(
        "carry.axial_limit",
        "N",
        "vertical force that the locating bearing carries",
        Measure(above=0.0),
        formula=axial_limit,
        needs={"upper": "upper.bearing", "lower": "lower.bearing", "locating": "locating"},
    ),
    Row(
        "spindle.bending_stress",
        "Pa",
        "bending stress of the spindle at the upper bearing",
        formula=lambda moment, diameter: bolt_bending_stress(moment, 1.0, diameter),
        needs={"moment": "carry.moment", "diameter": "spindle.diameter"},
    ),
    Row(
        "spindle.allowed_stress",
        "Pa",
        "bending stress that the spindle may carry",
        Measure(above=0.0),
        formula=allowed_of_spindle,
        needs={"material": "spindle.material"},
    ),
)

SHAPE = (
    *("plate.diameter", "plate.opening", "plate.thickness", "height"),
    *("spindle.diameter", "flange.diameter"),
)

HUB = Kind(
    name="hub",
    says="a plate that turns on a central spindle with two bearings",
    turns=True,
    rows=(
        *tree(),
        figure("hub", *SHAPE),
        *single(
            plate_mass,
            {"area": "plate.area", "thickness": "plate.thickness", "density": "plate.density"},
        ),
        *PLATE,
        *SPINDLE,
        *one_bearing("upper", "above"),
        *one_bearing("lower", "below"),
        *FORCES,
        *MOVES,
    ),
)
