"""The shape of flat parts: tops, boards, trays and plates with slots."""

from math import cos, pi, sin

from reviewer.geometry.outline import Body, Rectangle, Sector
from reviewer.geometry.slot_run import beside, middle_line
from reviewer.parts.figures import Drawn, Known, Missing, Piece, Place, Round, Run, Size, merged
from reviewer.parts.outlines.shapes import across, disc, upward

STEPS = 24  # pieces of a slot's line


def top(known: Known) -> Drawn:
    """A disc, or a rectangle with its length along x."""
    if not known.has("diameter"):
        return board(known)
    thickness, opening = known.number("thickness"), known.maybe("opening") or 0.0
    return _round(known.number("diameter"), opening, thickness)


def board(known: Known) -> Drawn:
    """A rectangle with its length along x."""
    thickness = known.number("thickness")
    length, width = known.number("length"), known.number("width")
    sizes = (
        Size("length", (-length / 2, 0.0, thickness), (length / 2, 0.0, thickness)),
        Size("width", (0.0, -width / 2, thickness), (0.0, width / 2, thickness)),
        upward("thickness", 0.0, thickness, length / 2),
    )
    return Drawn((Piece("board", Body(Rectangle(length, width), 0.0, thickness)),), sizes=sizes)


def _round(diameter: float, opening: float, thickness: float) -> Drawn:
    sizes = [
        across("diameter", diameter, thickness),
        upward("thickness", 0.0, thickness, diameter / 2),
    ]
    if opening > 0:
        sizes.append(across("opening", opening, thickness))
    return Drawn((Piece("board", disc(diameter, opening, 0.0, thickness)),), sizes=tuple(sizes))


def tray(known: Known) -> Drawn:
    """A sector of a ring, or a rectangle, slid outward along its middle line.

    The width of a sector is that of its arc half way out, so that its area is depth times width.
    """
    inner, depth, width = (known.number(each) for each in ("inner", "depth", "width"))
    thickness, offset = known.number("thickness"), known.number("offset")
    start, count = known.maybe("from") or 0.0, known.count("count")
    if known.word("form") == "rectangle":
        outline: Rectangle | Sector = Rectangle(depth, width)
        middle = inner + depth / 2 + offset
    else:
        angle = width / (inner + depth / 2)
        if angle >= 2 * pi:
            raise Missing("width is more than the whole way round")
        outline, middle = Sector(inner + depth, inner, angle), offset
    body = Body(outline, 0.0, thickness, middle * cos(start), middle * sin(start), start, count)
    sizes = (
        _out("inner", 0.0, inner, start, thickness),
        _out("depth", inner + offset, inner + depth + offset, start, thickness),
        _across_at("width", inner + depth / 2 + offset, width, start, thickness),
        upward("thickness", 0.0, thickness, inner + depth + offset),
        *((_out("offset", inner, inner + offset, start, thickness),) if offset else ()),
    )
    return Drawn((Piece("tray", body),), sizes=sizes)


def _out(path: str, start: float, end: float, azimuth: float, level: float) -> Size:
    """A distance outward."""
    x, y = cos(azimuth), sin(azimuth)
    return Size(path, (start * x, start * y, level), (end * x, end * y, level))


def _across_at(path: str, radius: float, width: float, azimuth: float, level: float) -> Size:
    """A distance across the radius."""
    x, y = cos(azimuth), sin(azimuth)
    ends = (
        (radius * x + side * width / 2 * y, radius * y - side * width / 2 * x, level)
        for side in (1.0, -1.0)
    )
    return Size(path, *ends)


def drive_plate(known: Known) -> Drawn:
    """A disc with slots; those are drawn, and are not taken out of the body."""
    thickness, opening = known.number("thickness"), known.maybe("opening") or 0.0
    return merged(_round(known.number("diameter"), opening, thickness), _slots(known, thickness))


def _slots(known: Known, level: float) -> Drawn:
    """Both sides of each slot, or the line in its middle, and the circles between which it runs."""
    needed = ("slots", "slot.inner", "slot.outer", "slot.turn")
    if not known.has(*needed):
        return Drawn()
    count, (inner, outer, turn) = known.count("slots"), (known.number(each) for each in needed[1:])
    width = known.maybe("slot.width") or 0.0
    middle = middle_line(inner, outer, turn, known.maybe("slot.distance"), STEPS)
    sides = [beside(middle, aside) for aside in ((-width / 2, width / 2) if width else (0.0,))]
    runs = [
        Run(tuple(_turned(place, 2 * pi * number / count, level) for place in side))
        for number in range(count)
        for side in sides
    ]
    circles = (Round(inner, level), Round(outer, level))
    sizes = (across("slot.inner", 2 * inner, level), across("slot.outer", 2 * outer, level))
    return Drawn(lines=(*circles, *runs), sizes=sizes)


def _turned(place: tuple[float, float], turn: float, level: float) -> Place:
    """A place turned about the axis, at a height."""
    x, y = place
    return (x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn), level)
