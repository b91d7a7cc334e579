"""Shapes that several kinds share."""

from reviewer.geometry.outline import Body, Disc, Ring
from reviewer.parts.figures import Place, Size


def disc(diameter: float, opening: float, bottom: float, top: float) -> Body:
    """A disc, or a ring where it has an opening."""
    outline = Ring(diameter / 2, opening / 2) if opening > 0 else Disc(diameter / 2)
    return Body(outline, bottom, top)


def across(path: str, diameter: float, level: float) -> Size:
    """A diameter, level."""
    return Size(path, (-diameter / 2, 0.0, level), (diameter / 2, 0.0, level))


def upward(path: str, bottom: float, top: float, x: float, y: float = 0.0) -> Size:
    """A height at a place in plan."""
    return Size(path, (x, y, bottom), (x, y, top))


def between(path: str, start: Place, end: Place) -> Size:
    """Any distance."""
    return Size(path, start, end)
