"""Which parts of a design have a template."""

from collections.abc import Iterator
from typing import NamedTuple

from reviewer.judging.reviewed import Review
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.templates.holes import marks_of, measures_of, openings_of
from reviewer.reporting.templates.plate import CENTRE, Untold, has_outline, plate_template
from reviewer.reporting.templates.said import Said, said_of
from reviewer.reporting.templates.template import Layer, Stroke, Template, Words, around, cross

FLAT = ("drive_plate", "hub", "panel", "slewing_ring", "top", "tray")
MIDDLE = (0.0, 0.0)


class Found(NamedTuple):
    """The templates of a design, and the parts that lack what one needs."""

    templates: tuple[Template, ...]
    untold: tuple[Untold, ...]


def templates_of(review: Review) -> Found:
    """A template of each flat part and each circle or opening of a design that was read."""
    values, said = Quantities(review), said_of(review)
    made = [each for part in values.parts for each in _of_part(values, part, said)]
    return Found(
        tuple(each for each in made if isinstance(each, Template)),
        tuple(each for each in made if isinstance(each, Untold)),
    )


def _of_part(values: Quantities, part: str, said: Said) -> Iterator[Template | Untold]:
    kind = values.kind(part)
    if kind == "divided_circle":
        strokes, numbers = marks_of(values, part)
        told = measures_of(values, part)
        yield _alone(part, said, strokes, numbers, told, "its count or its circle is unknown")
    elif kind == "opening":
        if not values.named(part, "on"):
            yield _alone(part, said, openings_of(values, part), (), "", "its size is unknown")
    elif kind in FLAT or has_outline(values, part):
        yield plate_template(values, part, said)


def _alone(
    part: str,
    said: Said,
    strokes: tuple[Stroke, ...],
    numbers: tuple[Words, ...],
    told: str,
    lacking: str,
) -> Template | Untold:
    """A template of marks or openings by themselves, about their centre."""
    if not strokes:
        return Untold(part, lacking)
    west, _, east, _ = around(stroke.edge for stroke in strokes)
    words = said.words(part, told, MIDDLE, east - west)
    centre = cross(MIDDLE, CENTRE, Layer.CENTRE)
    return Template(part, said.title(part), (*centre, *strokes), (*numbers, *words))
