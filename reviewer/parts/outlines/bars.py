"""The shape of bars and strips: arms, shafts, levers, skirts, guides and ramps."""

from math import cos, sin

from reviewer.geometry.outline import Body, Polygon, Rectangle
from reviewer.parts.figures import Drawn, Known, Missing, Piece, Place, Run, Size
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
    """A bar on a pivot at its place, upright, as it stands where the travel begins.

    Its side is drawn: from the load to the pivot, and on to the hand where that is told.
    """
    width, height = _section(known)
    way, up = _azimuth(known), known.maybe("from") or 0.0
    load, hand = known.number("load_arm"), known.maybe("hand_arm") or 0.0
    turned = up + (known.maybe("bend") or 0.0)
    if known.word("hand_side") == "same":
        if turned != up and hand:
            raise Missing("the two arms of a bent lever lie on one side: give its outline")
        ends = [(up, max(load, hand)), (up, 0.0)]
    else:
        ends = [(up, load), (turned, 0.0)] if hand == 0 else [(up, load), (turned, -hand)]
    body = Body(
        _bent_bar(ends[0], ends[1], height), -width / 2, width / 2, azimuth=way, standing=True
    )
    return Drawn((Piece("bar", body),))


def _bent_bar(first: tuple[float, float], second: tuple[float, float], height: float) -> Polygon:
    """The side of a bar through the pivot: two arms, each an angle above level and a length.

    Where they meet at an angle, the edges of the bar meet in the middle of it.
    """
    half = height / 2
    ends = [_across(*each, half) for each in (first, second)]
    bend = (second[0] - first[0]) / 2
    middle = _across((first[0] + second[0]) / 2, 0.0, half / cos(bend))
    return Polygon((ends[0][0], middle[0], ends[1][0], ends[1][1], middle[1], ends[0][1]))


def _across(angle: float, along: float, half: float) -> tuple[tuple[float, float], ...]:
    """The two corners beside a point of a line from the pivot."""
    x, y = along * cos(angle), along * sin(angle)
    return tuple((x - side * half * sin(angle), y + side * half * cos(angle)) for side in (1, -1))


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
    way, profile = _azimuth(known), known.word("profile")
    if profile is not None:
        path = [(along, up - profile[0][1]) for along, up in profile]
    else:
        rise, run = known.number("rise"), known.number("run")
        path = [(0.0, 0.0), (run, rise)]
        if flat := known.maybe("flat"):
            path.append((run + flat, rise))
    places = tuple((x * cos(way), x * sin(way), up) for x, up in path)
    missing = ("the width of the ramp is unknown",)
    return Drawn(lines=(Run(places),), missing=missing)
