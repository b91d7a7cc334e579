"""A panel: a board that lies on two lines, as a shelf, a floor, a leaf on hinge and bracket."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.blanks import blank
from reviewer.parts.figures import figure
from reviewer.parts.groups import same, single, tree
from reviewer.parts.kind import Kind
from reviewer.parts.moving import moving, of_board
from reviewer.parts.plate import half_radius, plan_area, plate_mass, rim_radius
from reviewer.parts.row import Measure, Row
from reviewer.parts.spanning import on_lines
from reviewer.parts.top import panel_rows

SIDES = {"length": "length", "width": "width"}


def board_area(length: Number, width: Number) -> Number:
    """Area of the board.

    Geometry.
    """
    return plan_area(None, length, width, 0.0)


def board_corner(length: Number, width: Number) -> Number:
    """Radius of its corner.

    Geometry.
    """
    return rim_radius(None, length, width)


def board_half(length: Number, width: Number) -> Number:
    """Distance from the middle to the centre of one half of its area.

    Geometry.
    """
    return half_radius(None, length, width, 0.0)


def board_overhang(length: Number, span: Number) -> Number:
    """How far it reaches beyond the lines on which it lies.

    Geometry.

    Notes
    -----
    Half of what its length has over the span.
    """
    return np.maximum(length - span, 0.0) / 2


def _own_rows() -> tuple[Row, ...]:
    """Rows of flat parts, with the overhang that follows from the span."""
    overhang = Row(
        "overhang",
        "m",
        "how far it reaches beyond what carries it",
        Measure(at_least=0.0),
        formula=board_overhang,
        needs={"length": "length", "span": "span"},
    )
    span = Row(
        "span",
        "m",
        "distance between the two lines on which it lies",
        Measure(above=0.0),
        formula=same,
        needs={"place": "length"},
    )
    shared = (row for row in panel_rows() if row.path != overhang.path)
    return (span, overhang, *shared, *on_lines())


PANEL = Kind(
    name="panel",
    says="a board that lies on two lines, as a shelf, a floor, or a leaf on hinge and bracket",
    rows=(
        *tree(),
        figure("panel", "length", "width", "thickness"),
        *single(plate_mass, {"area": "area", "thickness": "thickness", "density": "density"}),
        Row("length", "m", "length along the span", Measure(above=0.0, example="900 mm")),
        Row("width", "m", "width across the span", Measure(above=0.0, example="300 mm")),
        Row("area", "m^2", "area", formula=board_area, needs=SIDES),
        *_own_rows(),
        *blank(lambda length, width: length, lambda length, width: width, SIDES),
        Row("rim.radius", "m", "radius of its corner", formula=board_corner, needs=SIDES),
        Row(
            "half.radius",
            "m",
            "distance of the middle of one half of its area",
            formula=board_half,
            needs=SIDES,
        ),
        *moving(of_board, {**SIDES, "grain": "grain"}),
    ),
)
