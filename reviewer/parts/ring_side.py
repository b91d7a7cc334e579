"""What stands around the plate of a slewing ring: side rollers, and the height of the stack."""

from reviewer.mechanics.formula import Number
from reviewer.mechanics.rings import stack_height
from reviewer.parts.row import Count, Measure, Row, Stock
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
)
