"""What stands around the plate of a slewing ring, its height, and what its rollers run past."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.ring_edges import path_clearance
from reviewer.mechanics.rings import stack_height
from reviewer.parts.row import Choice, Count, Measure, Row, Stock
from reviewer.stock.bearings import Bearing


def side_circle(diameter: Number, bearing: Bearing, gap: Number) -> Number:
    """Circle on which the axles of the side rollers stand, outside the plate's edge.

    Geometry.

    Notes
    -----
    D + d + 2 gap.
    """
    return diameter + bearing.outer + 2 * gap


def height_of_stack(diameter: Number, thickness: Number, hold_diameter: Number | None) -> Number:
    """Height from the rollers' lower side to the top of what runs on the plate.

    Geometry.
    """
    return stack_height(diameter, thickness, 0.0 if hold_diameter is None else hold_diameter)


def clear_path(
    circle: Number,
    width: Number,
    face: str,
    carry_circle: Number,
    carry_width: Number,
    hold_circle: Number | None,
    hold_width: Number | None,
) -> Number:
    """Least clearance between what interrupts the plate's face and a roller that runs on it.

    Geometry.

    Notes
    -----
    |r - R| - b/2 - B/2, over the rollers on that face; below zero a roller runs over it.
    """
    found = []
    if face != "upper":
        found.append(path_clearance(circle / 2, width / 2, carry_circle / 2, carry_width / 2))
    if face != "lower" and hold_circle is not None and hold_width is not None:
        found.append(path_clearance(circle / 2, width / 2, hold_circle / 2, hold_width / 2))
    return np.inf if not found else np.minimum.reduce(np.broadcast_arrays(*found))


PATH = (
    Row(
        "features.circle",
        "m",
        "diameter of a circle of bolt heads or openings in the plate's face",
        Measure(above=0.0, example="380 mm"),
    ),
    Row(
        "features.width",
        "m",
        "size of such a bolt head or opening along the radius",
        Measure(above=0.0, example="16 mm"),
    ),
    Row(
        "features.face",
        "",
        "the faces of the plate that they interrupt",
        Choice(("both", "lower", "upper"), default="both"),
    ),
    Row(
        "features.clear",
        "m",
        "clearance between them and the path of the nearest roller",
        formula=clear_path,
        needs={
            "circle": "features.circle",
            "width": "features.width",
            "face": "features.face",
            "carry_circle": "carry.circle",
            "carry_width": "carry.width",
            "hold_circle": "hold_down.circle?",
            "hold_width": "hold_down.width?",
        },
        governs="least",
    ),
)


def least_height(diameter: Number, thickness: Number) -> Number:
    """Height of the plate's top over what carries the rollers, where they just clear it.

    Geometry.
    """
    return stack_height(diameter, thickness)


SIDE = (
    Row(
        "side.bearing",
        "",
        "bearing of the side rollers, by standard size",
        Stock("bearings", example='"6000"'),
    ),
    Row("side.count", "", "how many side rollers centre the plate", Count(at_least=1, at_most=200)),
    Row(
        "side.gap",
        "m",
        "way before the side rollers touch the edge",
        Measure(at_least=0.0, default="0 mm", words=(("touching", "0 mm"),)),
    ),
    Row(
        "side.circle",
        "m",
        "diameter of the circle of the side rollers' axles",
        formula=side_circle,
        needs={"diameter": "plate.diameter", "bearing": "side.bearing", "gap": "side.gap"},
    ),
    Row(
        "height",
        "m",
        "height from the carrier to the top of the plate",
        Measure(at_least=0.0),
        formula=height_of_stack,
        needs={
            "diameter": "carry.outer_diameter",
            "thickness": "plate.thickness",
            "hold_diameter": "hold_down.outer_diameter?",
        },
    ),
    Row(
        "stack",
        "m",
        "least height at which rollers and plate find room over the carrier",
        formula=least_height,
        needs={"diameter": "carry.outer_diameter", "thickness": "plate.thickness"},
    ),
)
