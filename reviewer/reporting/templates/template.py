"""A template: edges on layers named by what they are for, and words; metres, y up."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from functools import reduce
from math import cos, sin

from reviewer.geometry.rim import Box, Edge, Line, Point, reach

MADE_BY = "Reviewer template"  # stands in every file, so that only such a one is ever replaced
CHECK = 0.1  # m, length of the check bar


class Layer(Enum):
    """What an edge is for."""

    OUTLINE = "OUTLINE"  # cut along it, outside
    OPENINGS = "OPENINGS"  # cut along it, inside
    HOLES = "HOLES"  # drill it
    CIRCLES = "CIRCLES"  # scribe it
    LINES = "LINES"  # scribe it, straight
    CENTRE = "CENTRE"  # punch it
    LABELS = "LABELS"
    CHECK = "CHECK"  # measure it: it must be 100 mm


@dataclass(frozen=True, slots=True)
class Stroke:
    """An edge on a layer."""

    layer: Layer
    edge: Edge


@dataclass(frozen=True, slots=True)
class Words:
    """A text, its middle or its left end on its place; height of a capital [m]."""

    place: Point
    text: str
    height: float = 0.004
    from_left: bool = False


@dataclass(frozen=True, slots=True)
class Template:
    """One template: its name as a file may have it, its title, what is drawn and what is said."""

    name: str
    title: str
    strokes: tuple[Stroke, ...]
    words: tuple[Words, ...]

    @property
    def box(self) -> Box:
        """West, south, east and north end of all that is drawn [m]."""
        edges = around(stroke.edge for stroke in self.strokes)
        return reduce(_both, (box_of(words) for words in self.words), edges)


def around(edges: Iterable[Edge]) -> Box:
    """West, south, east and north end of what some edges cover [m]."""
    return reduce(_both, (reach(edge) for edge in edges))


def box_of(words: Words) -> Box:
    """About what a text covers [m]."""
    (x, y), width = words.place, width_of(words)
    west = x if words.from_left else x - width / 2
    return (west, y - words.height, west + width, y + words.height)


def width_of(words: Words) -> float:
    """About how wide a text is [m]: three quarters of its height a character."""
    return 0.75 * words.height * len(words.text)


def _both(first: Box, second: Box) -> Box:
    return (
        min(first[0], second[0]),
        min(first[1], second[1]),
        max(first[2], second[2]),
        max(first[3], second[3]),
    )


def on(layer: Layer, edges: Iterable[Edge]) -> tuple[Stroke, ...]:
    """Edges on a layer."""
    return tuple(Stroke(layer, edge) for edge in edges)


def cross(place: Point, half: float, layer: Layer, turn: float = 0.0) -> tuple[Stroke, ...]:
    """Two lines that cross at a place, each so long to both sides, turned by an angle."""
    (x, y), along, aside = place, half * cos(turn), half * sin(turn)
    return on(
        layer,
        (
            Line((x - along, y - aside), (x + along, y + aside)),
            Line((x + aside, y - along), (x - aside, y + along)),
        ),
    )
