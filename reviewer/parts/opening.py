"""An opening: a hole or slot in a plate, and what passes through it."""

from typing import Any

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.parts.allowed import stated, times
from reviewer.parts.body import Bodies
from reviewer.parts.cutters import narrowest
from reviewer.parts.figures import figure
from reviewer.parts.groups import same
from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Count, Measure, PartName, Row, Stock
from reviewer.parts.sheet_rows import sheet_sizes

UNTOLD = np.inf  # a rim that the plate does not have leaves any web


def length_of(shape: str, width: Number) -> Number:
    """Length of a round opening, which is its width; of others it must be told.

    Geometry.
    """
    return width if shape == "round" else width * np.nan


def web_between(
    shape: str, count: int, circle: Number | None, width: Number, length: Number
) -> Number:
    """Material between an opening and the next one on the circle.

    Geometry; the length of an opening lies along the radius.

    Notes
    -----
    Round: D sin(pi/n) - w. Square corners, at the inner ones: 2 (r sin(pi/n) - w/2 cos(pi/n)),
    r = D/2 - l/2.
    """
    if count < 2 or circle is None:
        return UNTOLD + 0.0 * width
    sine, cosine = np.sin(np.pi / count), np.cos(np.pi / count)
    web: Number = circle * sine - width
    return web if shape == "round" else (circle - length) * sine - width * cosine


def web_outside(
    shape: str, circle: Number | None, outer: Number | None, width: Number, length: Number
) -> Number:
    """Material between an opening and the round rim of the plate.

    Geometry; the corner is taken as sharp, which is safe.

    Notes
    -----
    D_o/2 - (D + w)/2, or with corners D_o/2 - sqrt((D/2 + l/2)^2 + (w/2)^2).
    """
    if circle is None or outer is None:
        return UNTOLD + 0.0 * width
    along = (circle + length) / 2
    return outer / 2 - (along if shape == "round" else np.hypot(along, width / 2))


def web_inside(circle: Number | None, inner: Number | None, length: Number) -> Number:
    """Material between an opening and the hole in the middle of the plate.

    Geometry.

    Notes
    -----
    (D - l)/2 - D_i/2.
    """
    if circle is None or inner is None:
        return UNTOLD + 0.0 * length
    return (circle - length - inner) / 2


def least_of(edge: Number | None, between: Number, outside: Number, inside: Number) -> Number:
    """The thinnest web of all that are told; of none, unknown."""
    least = np.minimum(np.minimum(between, outside), inside)
    if edge is not None:
        least = np.minimum(least, edge)
    return np.where(np.isinf(least), np.nan, least)


def room_beside(width: Number, passing: Number) -> Number:
    """Clearance on each side of what passes through, across its travel.

    Geometry.
    """
    return (width - passing) / 2


def room_at_the_ends(length: Number, passing: Number, travel: Number) -> Number:
    """Clearance that is left at each end of the travel.

    Geometry.

    Notes
    -----
    (l - l_p - s) / 2, the travel s in the middle of the opening.
    """
    return (length - passing - travel) / 2


def cutter_radius(diameter: Number) -> Number:
    """Least radius of an inner corner that a cutter leaves.

    Geometry.
    """
    return diameter / 2


def stress_at_corner(shape: str, width: Number, radius: Number | None) -> Number:
    """How many times the stress beside the opening stands at its corner; rough.

    Inglis, Transactions of the Institution of Naval Architects (1913); from memory.

    Notes
    -----
    1 + 2 sqrt(a / r), a half the width across the pull; 3 for a round hole; a wide plate.
    """
    if shape == "round":
        return 3.0 + 0.0 * width
    if radius is None:
        return np.nan * width
    return 1 + 2 * np.sqrt(width / 2 / radius)


SIZE = {"width": "width", "length": "length"}


def _webs() -> tuple[Row, ...]:
    return (
        Row(
            "web.edge",
            "m",
            "from the opening to a straight edge of the plate",
            Measure(at_least=0.0),
        ),
        Row(
            "web.between",
            "m",
            "material between an opening and the next",
            formula=web_between,
            needs={"shape": "shape", "count": "count", "circle": "circle?", **SIZE},
            governs="least",
        ),
        Row(
            "web.outside",
            "m",
            "material between an opening and the rim",
            formula=web_outside,
            needs={"shape": "shape", "circle": "circle?", "outer": "plate.outer?", **SIZE},
            governs="least",
        ),
        Row(
            "web.inside",
            "m",
            "material between an opening and the hole in the middle",
            formula=web_inside,
            needs={"circle": "circle?", "inner": "plate.inner?", "length": "length"},
            governs="least",
        ),
        Row(
            "web.least",
            "m",
            "thinnest web that the opening leaves",
            formula=least_of,
            needs={
                "edge": "web.edge?",
                "between": "web.between",
                "outside": "web.outside",
                "inside": "web.inside",
            },
            because="needs a distance to an edge, or the circle of the openings and the plate",
            governs="least",
        ),
        Row(
            "web.allowed",
            "m",
            "thinnest web that may be left",
            Measure(above=0.0, example="18 mm"),
            formula=times,
            needs={"length": "plate.thickness", "limit": "limit.web_over_thickness"},
        ),
    )


def hole_of(shape: str, width: float, length: float, count: int, circle: float | None) -> Any:
    """The opening as a body: round or with sharp corners, the first of them outward on x."""
    from reviewer.geometry.outline import Body, Disc, Outline, Rectangle, Slot  # heavy

    if shape != "round":
        outline: Outline = Rectangle(length, width)
    else:
        outline = Slot(length, width) if length > width else Disc(width / 2)
    return Body(outline, x=0.0 if circle is None else circle / 2, count=count)


def _passing() -> tuple[Row, ...]:
    return (
        Row(
            "passes.part",
            "",
            "the part that passes through, of which travels tell the way",
            PartName(),
        ),
        Row(
            "hole",
            "",
            "its shape, for what passes through",
            formula=lambda **measures: Bodies(hole_of, measures),
            needs={
                "shape": "shape",
                "width": "width",
                "length": "length",
                "count": "count",
                "circle": "circle?",
            },
        ),
        Row(
            "passes.width",
            "m",
            "width of what passes through, or the sheet from which it is sawn",
            Measure(above=0.0, sheet=True),
        ),
        Row(
            "passes.material",
            "",
            "material of a sheet that goes in",
            Stock("materials", example="MDF"),
        ),
        *sheet_sizes("passes."),
        Row(
            "passes.rattles",
            "m",
            "how much the thinnest such sheet leaves",
            formula=lambda width, thinnest: width - thinnest,
            needs={"width": "width", "thinnest": "passes.sheet.low"},
        ),
        Row(
            "passes.length",
            "m",
            "its length along the length of the opening",
            Measure(above=0.0),
            formula=same,
            needs={"place": "passes.width"},
        ),
        Row(
            "passes.travel",
            "m",
            "how far it moves along the opening, from end to end",
            Measure(default="0 mm", at_least=0.0),
        ),
        Row(
            "room.beside",
            "m",
            "clearance on each side of what passes through",
            formula=room_beside,
            needs={"width": "width", "passing": "passes.width"},
            governs="least",
        ),
        Row(
            "room.ends",
            "m",
            "clearance at each end of its travel",
            formula=room_at_the_ends,
            needs={"length": "length", "passing": "passes.length", "travel": "passes.travel"},
            governs="least",
        ),
        Row(
            "room.least",
            "m",
            "clearance where it is least",
            formula=lambda beside, ends: np.minimum(beside, ends),
            needs={"beside": "room.beside", "ends": "room.ends"},
            governs="least",
        ),
        Row(
            "room.swept",
            "m",
            "clearance of the part that passes through, over the whole travel",
            built=True,
            governs="least",
            because="needs passes.part, on, and a travel that moves one of the two",
        ),
        Row(
            "room.allowed",
            "m",
            "least clearance that is wanted",
            Measure(at_least=0.0, example="1 mm"),
            formula=stated,
            needs={"limit": "limit.opening_room"},
        ),
    )


OPENING = Kind(
    name="opening",
    says="a hole or slot in a plate",
    carries_load=False,
    rows=(
        figure("opening", "shape", "width", "length", "count", "circle"),
        Row("on", "", "the part that it is in, for its template", PartName()),
        Row("shape", "", "round, or with corners", Choice(("round", "cornered"), default="round")),
        Row("width", "m", "width, or diameter", Measure(above=0.0, example="20 mm")),
        Row(
            "length",
            "m",
            "length; of openings on a circle along the radius",
            Measure(above=0.0),
            formula=length_of,
            needs={"shape": "shape", "width": "width"},
            because="must be told of an opening with corners",
        ),
        Row("count", "", "how many there are, evenly spaced", Count(default=1)),
        Row("circle", "m", "diameter of the circle of their middles", Measure(above=0.0)),
        Row("plate.outer", "m", "outer diameter of the plate", Measure(above=0.0)),
        Row("plate.inner", "m", "diameter of the hole in its middle", Measure(above=0.0)),
        Row("plate.thickness", "m", "thickness of the plate", Measure(above=0.0)),
        *_webs(),
        *_passing(),
        Row("corner", "m", "radius of the corners", Measure(above=0.0)),
        Row(
            "cutter",
            "m",
            "diameter of the cutter that makes it: the narrowest of the shop, if it is not told",
            Measure(above=0.0),
            formula=narrowest,
            needs={"cutters": "shop.cutters?"},
            because="is not given, and no shop's file says which cutters there are",
        ),
        Row(
            "corner_left",
            "m",
            "radius that the cutter leaves in a corner",
            formula=cutter_radius,
            needs={"diameter": "cutter"},
        ),
        Row(
            "concentration",
            "1",
            "how many times the stress beside it stands at its corner, rough",
            formula=stress_at_corner,
            needs={"shape": "shape", "width": "width", "radius": "corner?"},
            because="needs the radius of the corners",
        ),
    ),
)
