"""From metres to the picture: where the drawn part of a view lies, and how large it is."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from reviewer.reporting.drawing import Point

if TYPE_CHECKING:
    from shapely import Geometry

SIDE = 300.0  # units of the picture that the drawn part may take, each way
ROUND = (1.0, 2.0, 5.0)


@dataclass(frozen=True)
class View:
    """Metres to units: the first coordinate goes right, the second up."""

    west: float
    south: float
    east: float
    north: float

    @property
    def scale(self) -> float:
        """Units for each metre."""
        return SIDE / max(self.east - self.west, self.north - self.south)

    @property
    def width(self) -> float:
        """Width of the drawn part."""
        return (self.east - self.west) * self.scale

    @property
    def height(self) -> float:
        """Height of the drawn part."""
        return (self.north - self.south) * self.scale

    def at(self, x: float, y: float) -> Point:
        """A place of the design in the picture."""
        return ((x - self.west) * self.scale, (self.north - y) * self.scale)

    def all(self, shape: "Geometry") -> list[list[Point]]:
        """The lines of a geometry in the picture, in an order that does not change."""
        from shapely import get_parts

        lines = [
            [self.at(x, y) for x, y in part.coords]
            for part in get_parts(shape)
            if part.geom_type in ("LineString", "LinearRing") and len(part.coords) > 1
        ]
        return sorted(lines)


def view_of(boxes: list[tuple[float, float, float, float]]) -> View:
    """A view that holds some boxes (west, south, east, north), a metre square if there are none."""
    if not boxes:
        return View(-0.5, -0.5, 0.5, 0.5)
    west, south = (min(box[k] for box in boxes) for k in (0, 1))
    east, north = (max(box[k] for box in boxes) for k in (2, 3))
    if east - west <= 0 and north - south <= 0:
        return View(west - 0.5, south - 0.5, east + 0.5, north + 0.5)
    return View(west, south, east, north)


def round_length(most: float) -> float:
    """The greatest of 1, 2, 5, 10, ... that is no more than some length.

    >>> round_length(0.3), round_length(7.0), round_length(1.0)
    (0.2, 5.0, 1.0)
    """
    from math import floor, log10

    power: float = 10.0 ** floor(log10(most) + 1e-12)
    return max(digit * power for digit in ROUND if digit * power <= most * (1 + 1e-9))
