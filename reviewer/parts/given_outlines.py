"""Bodies of the outlines that a design gives."""

from dataclasses import replace
from math import cos, sin
from typing import Any

from reviewer.geometry.outline import (
    Body,
    Disc,
    Outline,
    Polygon,
    Rectangle,
    RegularPolygon,
    Ring,
    Sector,
    Slot,
)


def body_of_outline(bottom: float, top: float, count: int, first: float, **given: Any) -> Body:
    """The body of an outline that a design gives; of several, the first at its azimuth."""
    outline = _outline({name: each for name, each in given.items() if each is not None})
    x, y, azimuth = given["at_x"], given["at_y"], given["azimuth"] + first
    if first:
        x, y = x * cos(first) - y * sin(first), x * sin(first) + y * cos(first)
    return Body(outline, bottom, top, x, y, azimuth, count, given["standing"])


def raised(body: Body | None, bottom: float | None, top: float | None) -> Body | None:
    """A body between other levels: as high as it was where only one of them is given."""
    if body is None or body.standing:
        return body
    high = body.top - body.bottom
    if bottom is None:
        bottom = body.bottom if top is None else top - high
    return replace(body, bottom=bottom, top=bottom + high if top is None else top)


def _outline(given: dict[str, Any]) -> Outline:
    """The outline of whichever measures are given."""
    if "disc_diameter" in given:
        return Disc(given["disc_diameter"] / 2)
    if "ring_diameter" in given:
        return Ring(given["ring_diameter"] / 2, given["ring_hole"] / 2)
    if "sector_outer" in given:
        return Sector(given["sector_outer"], given["sector_inner"], given["sector_angle"])
    if "rectangle_length" in given:
        return Rectangle(given["rectangle_length"], given["rectangle_width"])
    if "regular_polygon_sides" in given:
        across = given["regular_polygon_diameter"]
        return RegularPolygon(given["regular_polygon_sides"], across / 2)
    if "slot_length" in given:
        return Slot(given["slot_length"], given["slot_width"])
    return Polygon(given["polygon"])
