"""What is drawn on the template of a flat part: rims, centre, circles, slots, holes, openings."""

from collections.abc import Iterator
from math import hypot
from typing import NamedTuple

from reviewer.geometry.outline import Body, extent
from reviewer.geometry.rim import Box, Circle, Line, Point, Rim, moved, rim
from reviewer.parts.body import Bodies
from reviewer.parts.figures import FIGURE, Figures, Round
from reviewer.parts.shape_rows import FORMS
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.templates.holes import marks_of, openings_of
from reviewer.reporting.templates.said import LEADING, Said, made_of
from reviewer.reporting.templates.slots import slots_of
from reviewer.reporting.templates.template import (
    Layer,
    Stroke,
    Template,
    Words,
    around,
    cross,
    on,
)

BODY = "body"
NEARLY = 1e-9
CENTRE = 0.006  # m, half of the cross at the centre


class Untold(NamedTuple):
    """A part that would have a template, and what is missing for it."""

    part: str
    reason: str


def has_outline(values: Quantities, part: str) -> bool:
    """Whether the design gives an outline of the part's own."""
    given = values.design.parts[part].given
    return any(path.startswith(f"{form}.") or path == form for path in given for form in FORMS)


def plate_template(values: Quantities, part: str, said: Said) -> Template | Untold:
    """The template of one flat part."""
    body, missing = _body(values, part)
    if body is None:
        return Untold(part, missing)
    if body.standing:
        return Untold(part, "its outline stands upright: only what lies flat has a template")
    about = body.count == 1 and hypot(body.x, body.y) < NEARLY
    rims = _rims(body, about)
    box = around(rims[0])
    strokes = list(on(Layer.OUTLINE, rims[0]))
    strokes += [each for hole in rims[1:] for each in on(Layer.OPENINGS, hole)]
    strokes += _centre(box, about)
    if about:
        strokes += _lines(values, part, body)
    holes, words = _made_in(values, part)
    told = said.words(part, made_of(values, part), _free_place(rims), box[2] - box[0])
    return Template(part, said.title(part), (*strokes, *holes), (*words, *told))


def _body(values: Quantities, part: str) -> tuple[Body | None, str]:
    """The flat body of a part, or what is missing for it."""
    given = values.choice(part, BODY)
    if isinstance(given, Bodies) and has_outline(values, part):
        return given.at(0, 0), "a measure of its outline is unknown, or does not fit the others"
    figures = values.choice(part, FIGURE)
    if not isinstance(figures, Figures):
        return None, "its shape is unknown"
    drawn = figures.at(0, 0)
    pieces = [piece for piece in drawn.pieces if not piece.stays]
    if not pieces:
        return None, "; ".join(drawn.missing) or "its shape is unknown"
    return pieces[0].body, ""


def _rims(body: Body, about: bool) -> tuple[Rim, ...]:
    """The rims of a body in the frame of its part; of what stands beside an axis, in its own."""
    turn = body.azimuth if about else 0.0
    return tuple(
        tuple(moved(edge, 0.0, 0.0, turn) for edge in edges) for edges in rim(body.outline)
    )


def _centre(box: Box, about: bool) -> Iterator[Stroke]:
    """The centre and two lines through it, or the middle line of what stands beside the axis."""
    west, south, east, north = box
    yield from on(Layer.LINES, (Line((west, 0.0), (east, 0.0)),))
    if about:
        yield from on(Layer.LINES, (Line((0.0, south), (0.0, north)),))
        yield from cross((0.0, 0.0), CENTRE, Layer.CENTRE)


def _lines(values: Quantities, part: str, body: Body) -> Iterator[Stroke]:
    """Circles and slots that the kind itself has on its plate."""
    figures = values.choice(part, FIGURE)
    if not isinstance(figures, Figures):
        return
    limit = extent(body.outline)
    radii = {line.radius for line in figures.at(0, 0).lines if isinstance(line, Round)}
    within = sorted(radius for radius in radii if 0.0 < radius < limit)
    yield from on(Layer.CIRCLES, (Circle((0.0, 0.0), radius) for radius in within))
    if values.kind(part) == "drive_plate":
        yield from slots_of(values, part)


def _made_in(values: Quantities, part: str) -> tuple[list[Stroke], list[Words]]:
    """Marks and openings of other entries of the design that say that they are on this part."""
    strokes: list[Stroke] = []
    words: list[Words] = []
    for other in values.parts:
        if values.named(other, "on") != part:
            continue
        if values.kind(other) == "divided_circle":
            holes, numbers = marks_of(values, other, on_plate=True)
            strokes += holes
            words += numbers
        elif values.kind(other) == "opening":
            strokes += openings_of(values, other)
    return strokes, words


def _free_place(rims: tuple[Rim, ...]) -> Point:
    """Above where words go: the middle of the outline, or below a hole that is there."""
    west, south, east, north = around(rims[0])
    if len(rims) > 1:
        return (0.0, around(rims[1])[1] + LEADING)
    return ((west + east) / 2, (south + north) / 2)
