"""The plate of a slewing ring: what it is made of, how large, how stiff."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.blanks import blank
from reviewer.parts.board import board_row
from reviewer.parts.from_stock import density_of, panel_modulus_mean
from reviewer.parts.groups import same
from reviewer.parts.ring_plate import plate_rigidity
from reviewer.parts.row import Flag, Measure, Row, Stock
from reviewer.parts.sheet_rows import THICKNESS, sheet_sizes


def ring_area(diameter: Number, opening: Number) -> Number:
    """Area of the plate less its opening.

    Geometry.
    """
    return np.pi * (diameter * diameter - opening * opening) / 4


PLATE = (
    board_row("plate."),
    *blank(
        same,
        same,
        {"place": "plate.diameter"},
        thickness="plate.thickness",
        material="plate.material",
    ),
    Row("plate.material", "", "material of the plate", Stock("materials", example="birch plywood")),
    Row("plate.thickness", "m", "thickness of the plate", THICKNESS),
    *sheet_sizes("plate."),
    Row("plate.diameter", "m", "diameter of the plate", Measure(above=0.0, example="560 mm")),
    Row(
        "plate.opening",
        "m",
        "diameter of the opening in its middle",
        Measure(at_least=0.0, default="0 mm"),
    ),
    Row(
        "plate.rigid",
        "",
        "whether to take the plate as rigid and leave its own bending out",
        Flag(),
    ),
    Row(
        "plate.density",
        "kg/m^3",
        "density of the plate",
        formula=density_of,
        needs={"material": "plate.material"},
    ),
    Row(
        "plate.modulus",
        "Pa",
        "modulus of elasticity of the plate in bending",
        Measure(above=0.0),
        formula=panel_modulus_mean,
        needs={"material": "plate.material", "thickness": "plate.thickness"},
    ),
    Row(
        "plate.rigidity",
        "N m",
        "bending stiffness of the plate",
        Measure(above=0.0, example="3400 N m"),
        formula=plate_rigidity,
        needs={
            "modulus": "plate.modulus?",
            "thickness": "plate.thickness?",
            "material": "plate.material?",
        },
    ),
    Row(
        "plate.area",
        "m^2",
        "area of the plate",
        formula=ring_area,
        needs={"diameter": "plate.diameter", "opening": "plate.opening"},
    ),
    Row(
        "plate.radius",
        "m",
        "radius of the plate",
        formula=lambda diameter: diameter / 2,
        needs={"diameter": "plate.diameter"},
    ),
    Row(
        "plate.opening_radius",
        "m",
        "radius of the opening in the plate",
        formula=lambda diameter: diameter / 2,
        needs={"diameter": "plate.opening"},
    ),
    Row(
        "rim.radius",
        "m",
        "radius of the plate's edge",
        formula=lambda radius: radius,
        needs={"radius": "plate.radius"},
    ),
    Row(
        "half.radius",
        "m",
        "distance of the middle of one half of the plate",
        formula=lambda radius: 4 * radius / (3 * np.pi),
        needs={"radius": "plate.radius"},
    ),
)
