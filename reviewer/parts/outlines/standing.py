"""The shape of what stands on the floor: where feet are, and legs where their section is told."""

from math import cos, pi, sin

from reviewer.geometry.outline import Body, Rectangle
from reviewer.parts.figures import Drawn, Known, Missing, Piece, Place, Round, Run, Size
from reviewer.parts.outlines.shapes import across, upward

CORNERS = ((1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0))


def base(known: Known) -> Drawn:
    """Where the feet stand and how high the top is; what is between them is not told."""
    feet = _feet(known)
    height = known.maybe("height")
    lines: list[Round | Run] = [Run(tuple(feet), closed=True)]
    sizes: list[Size] = []
    if known.has("feet.count", "feet.circle"):
        circle = known.number("feet.circle")
        lines.append(Round(circle / 2))
        sizes.append(across("feet.circle", circle, 0.0))
    else:
        sizes += _sides(known)
    if height:
        lines += [Run(((x, y, 0.0), (x, y, height))) for x, y, _ in feet]
        lines.append(Run(tuple((x, y, height) for x, y, _ in feet), closed=True))
        sizes.append(upward("height", 0.0, height, *feet[0][:2]))
    missing = ("the frame between its feet is not told",)
    return Drawn(lines=tuple(lines), sizes=tuple(sizes), missing=missing)


def _feet(known: Known) -> list[Place]:
    if known.has("feet.count", "feet.circle"):
        count, radius = known.count("feet.count"), known.number("feet.circle") / 2
        turns = ((known.maybe("feet.from") or 0.0) + 2 * pi * k / count for k in range(count))
        return [(radius * cos(turn), radius * sin(turn), 0.0) for turn in turns]
    if not known.has("feet.length", "feet.width"):
        raise Missing("neither a count and circle nor a length and width of the feet is known")
    length, width = known.number("feet.length"), known.number("feet.width")
    return [(x * length / 2, y * width / 2, 0.0) for x, y in CORNERS]


def _sides(known: Known) -> list[Size]:
    length, width = known.number("feet.length"), known.number("feet.width")
    return [
        Size("feet.length", (-length / 2, 0.0, 0.0), (length / 2, 0.0, 0.0)),
        Size("feet.width", (0.0, -width / 2, 0.0), (0.0, width / 2, 0.0)),
    ]


def frame(known: Known) -> Drawn:
    """Four legs at the corners of the rectangle of feet."""
    height, length, width = (known.number(each) for each in ("height", "feet.length", "feet.width"))
    sizes = (*_sides(known), upward("height", 0.0, height, length / 2))
    if known.count("legs") != len(CORNERS):
        raise Missing("legs are four where feet stand at the corners of a rectangle")
    if not known.has("section.width", "section.height"):
        feet = tuple((x * length / 2, y * width / 2, 0.0) for x, y in CORNERS)
        return Drawn(lines=(Run(feet, closed=True),), sizes=sizes, missing=("section is unknown",))
    leg = Rectangle(known.number("section.width"), known.number("section.height"))
    pieces = tuple(
        Piece("leg", Body(leg, 0.0, height, x * length / 2, y * width / 2)) for x, y in CORNERS
    )
    return Drawn(pieces, sizes=sizes)


def opening(known: Known) -> Drawn:
    """Holes or slots as lines: what surrounds them is another part."""
    width, circle = known.number("width"), known.maybe("circle") or 0.0
    count = known.count("count")
    if known.word("shape") == "round":
        outline = [(width / 2 * cos(k * pi / 12), width / 2 * sin(k * pi / 12)) for k in range(24)]
    else:
        length = known.number("length")
        outline = [(x * length / 2, y * width / 2) for x, y in CORNERS]
    runs = []
    for number in range(count):
        cosine, sine = cos(2 * pi * number / count), sin(2 * pi * number / count)
        moved = ((x + circle / 2, y) for x, y in outline)
        places = tuple((x * cosine - y * sine, x * sine + y * cosine, 0.0) for x, y in moved)
        runs.append(Run(places, closed=True))
    lines: tuple[Round | Run, ...] = (*runs, Round(circle / 2)) if circle else tuple(runs)
    sizes = (Size("width", (circle / 2, -width / 2, 0.0), (circle / 2, width / 2, 0.0)),)
    return Drawn(lines=lines, sizes=sizes)
