"""A template as DXF in millimetres, its layers named by what their lines are for."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from io import StringIO
from math import degrees
from typing import TYPE_CHECKING

from reviewer.geometry.rim import Arc, Circle, Edge, Line, Point
from reviewer.notation.plain import plain
from reviewer.reporting.templates.template import (
    CHECK,
    MADE_BY,
    Layer,
    Stroke,
    Template,
    Words,
    on,
)

if TYPE_CHECKING:
    from ezdxf.layouts.layout import Modelspace

MILLI = 1e3
BELOW = 0.012  # m, how far the check bar lies below all else
COLOURS = {  # index colours, so that layers can be told apart; 7 is black or white
    Layer.OUTLINE: 7,
    Layer.OPENINGS: 1,
    Layer.HOLES: 5,
    Layer.CIRCLES: 3,
    Layer.LINES: 8,
    Layer.CENTRE: 6,
    Layer.LABELS: 2,
    Layer.CHECK: 4,
}


def as_dxf(template: Template) -> str:
    """The whole template as the text of a DXF file; no clock and no random mark in it."""
    from ezdxf import units
    from ezdxf.filemanagement import new

    with _without_clock():
        drawing = new("R2010", units=units.MM)
        for layer in Layer:
            drawing.layers.add(layer.value, color=COLOURS[layer])
        space = drawing.modelspace()
        for stroke in (*template.strokes, *_check(template)):
            _put(space, stroke.edge, stroke.layer)
        for words in (*template.words, _check_words(template)):
            _write(space, words)
        drawing.header["$MEASUREMENT"] = 1
        for used in sorted(drawing.entitydb.dxf_types_in_use()):  # else in the order of a set
            drawing.classes.add_class(used)
        stream = StringIO()
        drawing.write(stream)
    return f"999\n{MADE_BY}\n{stream.getvalue()}"


@contextmanager
def _without_clock() -> Iterator[None]:
    """Let the library leave out the time and its random marks, as it does for its own tests."""
    from ezdxf._options import options

    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _at(point: Point) -> Point:
    return (point[0] * MILLI, point[1] * MILLI)


def _put(space: Modelspace, edge: Edge, layer: Layer) -> None:
    look = {"layer": layer.value}
    match edge:
        case Line(start, end):
            space.add_line(_at(start), _at(end), dxfattribs=look)
        case Circle(centre, radius):
            space.add_circle(_at(centre), radius * MILLI, dxfattribs=look)
        case Arc(centre, radius, start, end):
            turns = degrees(start), degrees(end)
            space.add_arc(_at(centre), radius * MILLI, *turns, dxfattribs=look)


def _write(space: Modelspace, words: Words) -> None:
    from ezdxf.enums import TextEntityAlignment

    text = space.add_text(
        plain(words.text, 200),
        height=words.height * MILLI,
        dxfattribs={"layer": Layer.LABELS.value},
    )
    sides = TextEntityAlignment.MIDDLE_LEFT, TextEntityAlignment.MIDDLE_CENTER
    text.set_placement(_at(words.place), align=sides[0 if words.from_left else 1])


def _check(template: Template) -> tuple[Stroke, ...]:
    """The bar of 100 mm, its ends marked."""
    west, south, _, _ = template.box
    y, east = south - BELOW, west + CHECK
    ticks = (Line((x, y - 0.003), (x, y + 0.003)) for x in (west, east))
    return on(Layer.CHECK, (Line((west, y), (east, y)), *ticks))


def _check_words(template: Template) -> Words:
    west, south, _, _ = template.box
    place = (west + CHECK / 2, south - BELOW - 0.007)
    return Words(place, "check: this bar is 100 mm long")
