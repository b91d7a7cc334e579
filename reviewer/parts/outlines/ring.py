"""The shape of rings and hubs: a plate, the rollers that it runs on, and its spindle."""

from math import cos, pi, sin

from reviewer.geometry.outline import Body, Disc, Rectangle
from reviewer.parts.figures import Drawn, Known, Missing, Piece, Place, Round, merged
from reviewer.parts.outlines.shapes import across, disc, upward


def slewing_ring(known: Known) -> Drawn:
    """A plate between the rollers below and above it; side rollers stand at its edge.

    Rollers of one group are evenly spaced; their axles point to the middle, those of the side
    rollers are upright at mid thickness.
    """
    bottom, top = _plate_levels(known)
    plate = _plate(known, bottom, top)
    carry = _rollers(known, "carry", bottom, upper=False)
    hold = _rollers(known, "hold_down", top, upper=True)
    return merged(plate, carry, hold, _side(known, (bottom + top) / 2))


def hub(known: Known) -> Drawn:
    """A plate on top of a spindle."""
    top = known.number("height")
    bottom = top - known.number("plate.thickness")
    drawn = _plate(known, bottom, top)
    if known.has("spindle.diameter") and bottom > 0:
        spindle = Body(Disc(known.number("spindle.diameter") / 2), 0.0, bottom)
        drawn = merged(drawn, Drawn((Piece("spindle", spindle, stays=True),)))
    if known.has("flange.diameter"):
        circle = known.number("flange.diameter")
        size = across("flange.diameter", circle, bottom)
        drawn = merged(drawn, Drawn(lines=(Round(circle / 2, bottom),), sizes=(size,)))
    return drawn


def _plate_levels(known: Known) -> tuple[float, float]:
    """Lower and upper face: on its rollers, or below the height that the part is given.

    The height is the plate's upper face where it is given; where it follows from the stack it
    counts the hold-downs too.
    """
    thickness = known.number("plate.thickness")
    roller, height = known.maybe("carry.outer_diameter"), known.maybe("height")
    if roller is not None:
        stack = roller + thickness + (known.maybe("hold_down.outer_diameter") or 0.0)
        if height is None or abs(height - stack) < 1e-9:
            return roller, roller + thickness
    if height is None or height < thickness:
        raise Missing("height is unknown, and no roller tells it")
    return height - thickness, height


def _plate(known: Known, bottom: float, top: float) -> Drawn:
    diameter, opening = known.number("plate.diameter"), known.maybe("plate.opening") or 0.0
    sizes = [
        across("plate.diameter", diameter, top),
        upward("plate.thickness", bottom, top, diameter / 2),
    ]
    if opening > 0:
        sizes.append(across("plate.opening", opening, top))
    return Drawn((Piece("plate", disc(diameter, opening, bottom, top)),), sizes=tuple(sizes))


def _rollers(known: Known, group: str, face: float, *, upper: bool) -> Drawn:
    """Rollers on a face of the plate, or nothing where the group is not told."""
    needed = (f"{group}.circle", f"{group}.count", f"{group}.outer_diameter", f"{group}.width")
    if not known.has(*needed):
        return Drawn()
    circle, diameter, width = (known.number(needed[k]) for k in (0, 2, 3))
    start = known.maybe(f"{group}.from") or 0.0
    gap = (known.maybe(f"{group}.gap") or 0.0) if upper else 0.0
    bottom = face + gap if upper else face - diameter
    roller = Body(
        Rectangle(width, diameter),
        bottom,
        bottom + diameter,
        circle / 2 * cos(start),
        circle / 2 * sin(start),
        start,
        known.count(needed[1]),
    )
    return Drawn(
        (Piece(group, roller, stays=True),),
        (Round(circle / 2, bottom + diameter / 2),),
        (across(f"{group}.circle", circle, face),),
    )


def _side(known: Known, middle: float) -> Drawn:
    if not known.has("side.circle", "side.count", "side.bearing"):
        return Drawn()
    circle, bearing = known.number("side.circle"), known.word("side.bearing")
    outline, half = Disc(bearing.outer / 2), bearing.width / 2
    count = known.count("side.count")
    roller = Body(outline, middle - half, middle + half, circle / 2, count=count)
    return Drawn((Piece("side", roller, stays=True),), (Round(circle / 2, middle),))


def roller_places(count: int, circle: float, start: float, level: float) -> list[Place]:
    """Where the rollers of a group stand, the first at its azimuth."""
    turns = (start + 2 * pi * number / count for number in range(count))
    return [(circle / 2 * cos(turn), circle / 2 * sin(turn), level) for turn in turns]
