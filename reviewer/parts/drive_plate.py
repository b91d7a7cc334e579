"""A drive plate: a plate that turns by hand and moves slides in and out by its slots."""

from reviewer.mechanics.formula import Number
from reviewer.parts.blanks import blank
from reviewer.parts.board import board_row
from reviewer.parts.drive_forces import drive, rest
from reviewer.parts.drive_slots import slot
from reviewer.parts.figures import figure
from reviewer.parts.from_stock import density_of
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.plate import plan_area, plate_mass
from reviewer.parts.row import Measure, Row, Stock
from reviewer.parts.sheet_rows import THICKNESS, sheet_sizes


def round_area(diameter: Number, opening: Number) -> Number:
    """Area of the plate, less its opening; the slots are left in.

    Geometry.
    """
    return plan_area(diameter, None, None, opening)


def _plate() -> tuple[Row, ...]:
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
            same,
            {"place": "thickness"},
        ),
        Row("diameter", "m", "diameter", Measure(above=0.0, example="500 mm")),
        Row("opening", "m", "diameter of its opening", Measure(at_least=0.0, default="0 mm")),
        Row(
            "area",
            "m^2",
            "area",
            formula=round_area,
            needs={"diameter": "diameter", "opening": "opening"},
        ),
        Row(
            "rim.radius",
            "m",
            "radius of its rim",
            formula=lambda diameter: diameter / 2,
            needs={"diameter": "diameter"},
        ),
    )


SHAPE = (
    *("diameter", "opening", "thickness", "slots"),
    *(f"slot.{key}" for key in ("inner", "outer", "turn", "distance", "width")),
)

DRIVE_PLATE = Kind(
    name="drive_plate",
    says="a plate that turns by hand and moves slides in and out by its slots",
    rows=(
        *tree(),
        figure("drive_plate", *SHAPE),
        *single(plate_mass, {"area": "area", "thickness": "thickness", "density": "density"}),
        *_plate(),
        *blank(same, same, {"place": "diameter"}),
        *slot(),
        *drive(),
        *rest(),
    ),
)
