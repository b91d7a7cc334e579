"""A picture of a divided circle: its centre lines, its marks by number, the point across."""

from math import cos, hypot, pi, sin

from reviewer.reporting.drawing import Drawing, Point

SIZE, RADIUS = 360.0, 130.0  # pixels
MIDDLE = SIZE / 2
THIN = "stroke='#000000' stroke-width='0.6'"
DASHED = "stroke='#000000' stroke-width='0.6' stroke-dasharray='9 3 2 3'"
MARK = "stroke='#000000' stroke-width='1.4'"
TURNS = 120  # sides of the polygon that stands for the circle


def circle_figure(name: str, angles: list[float], across: float | None, title: str) -> str:
    """Marks at their angles [rad], anticlockwise; `across` is the point opposite of mark 1.

    `name` tells it apart from other pictures on a page.
    """
    says = f"{len(angles)} marks on a circle with two centre lines, numbered anticlockwise."
    drawing = Drawing(SIZE, SIZE, title, says, name)
    first = angles[0]
    for turn in (first, first + pi / 2):
        ends = [_at(turn + half, 1.18) for half in (0.0, pi)]
        drawing.line(ends[0], ends[1], DASHED)
    drawing.path([_at(2 * pi * k / TURNS, 1.0) for k in range(TURNS + 1)], THIN)
    for number, angle in enumerate(angles, 1):
        _mark(drawing, angle, str(number))
    if across is not None:
        _mark(drawing, across, "A")
    return drawing.svg()


def _mark(drawing: Drawing, angle: float, words: str) -> None:
    drawing.line(_at(angle, 0.96), _at(angle, 1.04), MARK)
    x, y = _at(angle, 1.28 if len(words) > 1 or words.isdigit() else 1.1)
    out = hypot(x - MIDDLE, y - MIDDLE) or 1.0
    shift = 6.0 / out  # so that the words of a mark on a centre line stand beside the line
    drawing.text((x - (y - MIDDLE) * shift, y + (x - MIDDLE) * shift + 4), words, "middle")


def _at(angle: float, share: float) -> Point:
    """A place on the picture: y goes down there."""
    return (MIDDLE + share * RADIUS * cos(angle), MIDDLE - share * RADIUS * sin(angle))
