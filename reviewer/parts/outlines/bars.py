"""The shape of bars and strips: arms, shafts, levers, skirts, guides and ramps."""

from math import cos, sin

from reviewer.geometry.outline import Body, Polygon, Rectangle
from reviewer.parts.bodies import Drawn, Known, Missing, Piece, Place, Run, Size
from reviewer.parts.outlines.shapes import across, disc, upward


def arm(known: Known) -> Drawn:
    """Bars that stand out from the root to the tip."""
    root, reach = known.number("root.radius"), known.number("reach")
    width, height = _section(known)
    start, count = known.maybe("from") or 0.0, known.count("count")
    middle = root + reach / 2
    x, y = cos(start), sin(start)
    body = Body(Rectangle(reach, width), 0.0, height, middle * x, middle * y, start, count)
    tip = root + reach
    sizes = (
        Size("reach", (root * x, root * y, height), (tip * x, tip * y, height)),
        Size("root.radius", (0.0, 0.0, height), (root * x, root * y, height)),
        upward("section.height", 0.0, height, tip * x, tip * y),
    )
    return Drawn((Piece("arm", body),), sizes=sizes)


def _section(known: Known) -> tuple[float, float]:
    """Width and height of a bar."""
    if known.has("section.width", "section.height"):
        return known.number("section.width"), known.number("section.height")
    diameter = known.maybe("section.diameter")
    if diameter is None:
        raise Missing("section is unknown")
    return diameter, diameter


def _azimuth(known: Known) -> float:
    """Which way a part lies."""
    found = known.maybe("azimuth")
    if found is None:
        raise Missing("azimuth is unknown: the way that it lies, seen from above")
    return found


def shaft(known: Known) -> Drawn:
    """A bar of the length that twists, on its place, level."""
    diameter, length, way = known.number("diameter"), known.number("length"), _azimuth(known)
    body = Body(Rectangle(length, diameter), 0.0, diameter, azimuth=way)
    x, y = length / 2 * cos(way), length / 2 * sin(way)
    sizes = (
        Size("length", (-x, -y, diameter), (x, y, diameter)),
        upward("diameter", 0.0, diameter, x, y),
    )
    return Drawn((Piece("shaft", body),), sizes=sizes)


def lever(known: Known) -> Drawn:
    """A bar on a pivot at its place, upright, as it stands where the travel begins."""
    width, height = _section(known)
    way, up = _azimuth(known), known.maybe("from") or 0.0
    pieces = [_upright("load arm", known.number("load_arm"), up, height, width, way)]
    if known.has("hand_arm"):
        turned = up + (known.maybe("bend") or 0.0)
        length = known.number("hand_arm")
        if known.word("hand_side") != "same":
            length = -length
        pieces.append(_upright("hand arm", length, turned, height, width, way))
    return Drawn(tuple(pieces))


def _upright(name: str, length: float, up: float, height: float, width: float, way: float) -> Piece:
    """A bar from the pivot, at an angle above level, in the upright plane of an azimuth."""
    along, across_x, across_y = length, -sin(up) * height / 2, cos(up) * height / 2
    x, y = along * cos(up), along * sin(up)
    corners = (
        (across_x, across_y),
        (-across_x, -across_y),
        (x - across_x, y - across_y),
        (x + across_x, y + across_y),
    )
    body = Body(Polygon(corners), -width / 2, width / 2, azimuth=way, standing=True)
    return Piece(name, body)


def skirt(known: Known) -> Drawn:
    """A strip on edge around a circle; a straight one lies along its azimuth."""
    thickness, height = known.number("thickness"), known.number("height")
    diameter = known.maybe("diameter")
    if diameter is None:
        length, way = known.number("length"), _azimuth(known)
        body = Body(Rectangle(length, thickness), 0.0, height, azimuth=way)
        return Drawn((Piece("strip", body),), sizes=(upward("height", 0.0, height, length / 2),))
    body = disc(diameter, diameter - 2 * thickness, 0.0, height)
    sizes = (
        across("diameter", diameter, height),
        upward("height", 0.0, height, diameter / 2),
        Size("thickness", (diameter / 2 - thickness, 0.0, height), (diameter / 2, 0.0, height)),
    )
    return Drawn((Piece("strip", body),), sizes=sizes)


def guide(known: Known) -> Drawn:
    """The lines on which a slide runs: what is engaged, and how far it is out."""
    length, out, way = known.number("length"), known.maybe("travel") or 0.0, _azimuth(known)

    def at(along: float) -> Place:
        return (along * cos(way), along * sin(way), 0.0)

    rail, slide = (Run((at(begins - length / 2), at(begins + length / 2))) for begins in (0.0, out))
    sizes = (
        Size("length", at(-length / 2), at(length / 2)),
        Size("travel", at(length / 2), at(length / 2 + out)),
    )
    missing = ("the width of the guide is unknown",)
    return Drawn(lines=(rail, slide), sizes=sizes if out else sizes[:1], missing=missing)


def ramp(known: Known) -> Drawn:
    """The path of the follower, from its foot at the place of the part."""
    way, path = _azimuth(known), known.word("path")
    if path is None:
        raise Missing("path is unknown")
    places = tuple((x * cos(way), x * sin(way), up) for x, up in path)
    missing = ("the width of the ramp is unknown",)
    return Drawn(lines=(Run(places),), missing=missing)
