"""A tray: one of several flat parts around an axis that may slide outward."""

from typing import Any

import numpy as np

from reviewer.parts.groups import array, tree
from reviewer.parts.kind import Kind
from reviewer.parts.plate import half_of_array, plate_mass
from reviewer.parts.row import Measure, Row
from reviewer.parts.top import panel_rows

RADIAL = {"inner": "inner", "depth": "depth", "offset": "offset"}


def rim_of_tray(inner: Any, depth: Any, offset: Any) -> Any:
    """Radius of the outer edge, slid out as far as it stands.

    Geometry.
    """
    return inner + depth + offset


def middle_of_tray(inner: Any, depth: Any, offset: Any) -> Any:
    """Radius of the tray's middle, slid out as far as it stands.

    Geometry.
    """
    return inner + depth / 2 + offset


def length_on_arm(tip: Any, root: Any, rim: Any, inner: Any, offset: Any) -> Any:
    """Length of a tray that lies between the root and the tip of its arm.

    Geometry.

    Notes
    -----
    min(tip, rim) - max(inner + offset, root).
    """
    begins = inner + offset
    if root is not None:
        begins = np.maximum(begins, root)
    return np.minimum(tip, rim) - begins


TRAY = Kind(
    name="tray",
    says="a flat part around an axis that may slide outward",
    rows=(
        *tree(),
        *array(plate_mass, {"area": "area", "thickness": "thickness", "density": "density"}),
        *panel_rows(),
        Row(
            "inner",
            "m",
            "radius of its inner edge when closed",
            Measure(at_least=0.0, example="300 mm"),
        ),
        Row("depth", "m", "length from inner to outer edge", Measure(above=0.0, example="320 mm")),
        Row("width", "m", "width across", Measure(above=0.0, example="400 mm")),
        Row("offset", "m", "how far it has slid outward", Measure(default="0 mm")),
        Row(
            "area",
            "m^2",
            "area of one",
            formula=lambda depth, width: depth * width,
            needs={"depth": "depth", "width": "width"},
        ),
        Row("rim.radius", "m", "radius of its outer edge", formula=rim_of_tray, needs=RADIAL),
        Row("centre.radius", "m", "radius of its middle", formula=middle_of_tray, needs=RADIAL),
        Row(
            "half.radius",
            "m",
            "distance of the common middle of one half of them",
            formula=half_of_array,
            needs={"radius": "centre.radius", "count": "count"},
        ),
        Row(
            "support.radius",
            "m",
            "radius at which it carries what lies on it",
            formula=lambda radius: radius,
            needs={"radius": "centre.radius"},
        ),
        Row(
            "on_arm",
            "m",
            "length of it that still lies on its arm",
            formula=length_on_arm,
            needs={
                "tip": "carrier.rim.radius",
                "root": "carrier.root.radius?",
                "rim": "rim.radius",
                "inner": "inner",
                "offset": "offset",
            },
            governs="least",
        ),
    ),
)
