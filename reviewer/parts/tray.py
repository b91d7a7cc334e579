"""A tray: one of several flat parts around an axis that may slide outward."""

from typing import Any

import numpy as np

from reviewer.parts.allowed import share_of
from reviewer.parts.blanks import blank
from reviewer.parts.figures import figure
from reviewer.parts.groups import array, tree
from reviewer.parts.kind import Kind
from reviewer.parts.moving import moving, of_tray
from reviewer.parts.plate import edge_sag, half_of_array, plate_mass
from reviewer.parts.row import Choice, Measure, Row
from reviewer.parts.top import panel_rows

RADIAL = {"inner": "inner", "depth": "depth", "offset": "out"}


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


def side_overhang(width: Any, arm: Any) -> Any:
    """How far the sides of a tray reach beyond the arm on which it lies.

    Geometry.

    Notes
    -----
    Half of what its width has over the arm's.
    """
    return np.maximum(width - arm, 0.0) / 2


def blank_across(inner: Any, depth: Any, width: Any, form: str) -> Any:
    """Side across of the rectangle around a tray: of a sector its outer chord.

    Geometry; the width of a sector lies on its arc half way out.

    Notes
    -----
    2 R sin(a/2), with a = w / (r + d/2) and R = r + d; from half a turn on the diameter.
    """
    if form == "rectangle":
        return width
    half = np.minimum(width / (inner + depth / 2) / 2, np.pi / 2)
    return 2 * (inner + depth) * np.sin(half)


def blank_along(inner: Any, depth: Any, width: Any, form: str) -> Any:
    """Side along the radius of the rectangle around a tray.

    Geometry.

    Notes
    -----
    R - r cos(a/2): from the inner corners to the outer arc; past half a turn the outer corners.
    """
    if form == "rectangle":
        return depth
    half = np.minimum(width / (inner + depth / 2) / 2, np.pi)
    behind = np.where(half > np.pi / 2, inner + depth, inner)
    return inner + depth - behind * np.cos(half)


def _side() -> tuple[Row, ...]:
    """The sides of a tray, which reach beyond its arm, under a single force."""
    return (
        Row(
            "single_force",
            "N",
            "greatest single force that stands on it, wherever that is",
            Measure(at_least=0.0),
            built=True,
        ),
        Row(
            "side.overhang",
            "m",
            "how far its sides reach beyond its arm",
            Measure(at_least=0.0),
            formula=side_overhang,
            needs={"width": "width", "arm": "carrier.section.width"},
        ),
        Row(
            "side.sag",
            "m",
            "how far a side sinks under that force",
            formula=edge_sag,
            needs={
                "force": "single_force",
                "overhang": "side.overhang",
                "modulus": "modulus",
                "thickness": "thickness",
            },
        ),
        Row(
            "side.allowed_sag",
            "m",
            "how far a side may sink",
            Measure(above=0.0),
            formula=share_of,
            needs={"length": "side.overhang", "divisor": "limit.overhang_over_sag"},
        ),
    )


TRAY = Kind(
    name="tray",
    says="a flat part around an axis that may slide outward",
    rows=(
        *tree(),
        *array(plate_mass, {"area": "area", "thickness": "thickness", "density": "density"}),
        *panel_rows(),
        figure("tray", *RADIAL, "width", "thickness", "form", "from", "count"),
        *blank(
            blank_across,
            blank_along,
            {"inner": "inner", "depth": "depth", "width": "width", "form": "form"},
        ),
        Row(
            "inner",
            "m",
            "radius of its inner edge when closed",
            Measure(at_least=0.0, example="300 mm"),
        ),
        Row("depth", "m", "length from inner to outer edge", Measure(above=0.0, example="320 mm")),
        Row("width", "m", "width across", Measure(above=0.0, example="400 mm")),
        Row("offset", "m", "how far it has slid outward", Measure(default="0 mm")),
        Row("slid", "m", "how far a travel has slid it", built=True),
        Row(
            "out",
            "m",
            "how far it stands outward in all",
            formula=lambda offset, slid: offset + slid,
            needs={"offset": "offset", "slid": "slid"},
        ),
        Row(
            "form",
            "",
            "its outline: a piece of a ring as wide on its arc half way out, or a rectangle",
            Choice(("sector", "rectangle"), default="sector"),
        ),
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
                "offset": "out",
            },
            governs="least",
        ),
        *_side(),
        Row(
            "grain",
            "",
            "how the grain of its face runs",
            Choice(("outward", "across"), default="outward"),
        ),
        *moving(of_tray, {"depth": "depth", "width": "width", "runs": "grain"}),
    ),
)
