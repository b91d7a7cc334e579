"""What a part's own measures say of its shape: bodies in plan and height, and lines to draw.

A kind declares `figure("slewing_ring", "plate.diameter", ...)`: who makes them, and the values that
are needed. The row's value is a `Figures`, kept by the graph like any other quantity, so that what
depends on a part's shape depends on those values; `Figures.at(sample, case)` gives a `Drawn`.

All is in the part's own frame: its place in plan is the origin (`place.x`, `place.y`), and heights
are above its underside (`level`). A `Body` of `count` copies has them evenly round that origin.
A piece that `stays` stands with what carries the part and does not move with it (the rollers of a
ring). What a value is missing for is not made up: `missing` says which.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np

from reviewer.parts.lazily import shape_of
from reviewer.parts.row import Measure, Row

if TYPE_CHECKING:
    from reviewer.geometry.outline import Body

FIGURE = "figure"
Place = tuple[float, float, float]


class Piece(NamedTuple):
    """A body that a part is made of, and what it is called within the part."""

    name: str
    body: "Body"
    stays: bool = False


class Round(NamedTuple):
    """A circle that is no edge: that of rollers, of feet; radius and height [m]."""

    radius: float
    level: float = 0.0


class Run(NamedTuple):
    """A line through places [m] that is no edge of a body."""

    places: tuple[Place, ...]
    closed: bool = False


class Size(NamedTuple):
    """A field of the part as a distance between two places [m], for a dimension line."""

    path: str
    start: Place
    end: Place


class Drawn(NamedTuple):
    """A part's pieces, lines and sizes in one case, and what could not be told."""

    pieces: tuple[Piece, ...] = ()
    lines: tuple[Round | Run, ...] = ()
    sizes: tuple[Size, ...] = ()
    missing: tuple[str, ...] = ()


class Missing(Exception):
    """A value is unknown without which a part has no shape."""


class Known:
    """The values of one part in one case, by their paths."""

    def __init__(self, values: Mapping[str, Any]) -> None:
        """Take the values; an unknown one is None."""
        self._values = values

    def number(self, path: str) -> float:
        """A number; raises Missing where it is unknown."""
        found = self._values[path]
        if found is None:
            raise Missing(f"{path} is unknown")
        return float(found)

    def maybe(self, path: str) -> float | None:
        """A number, or None where it is unknown."""
        found = self._values[path]
        return None if found is None else float(found)

    def count(self, path: str) -> int:
        """A whole number; raises Missing where it is unknown."""
        return int(self.number(path))

    def has(self, *paths: str) -> bool:
        """Whether all of them are known."""
        return all(self._values[path] is not None for path in paths)

    def word(self, path: str) -> Any:
        """A word or an object as it is, or None."""
        return self._values[path]


Maker = Callable[[Known], Drawn]


@dataclass(frozen=True, eq=False)
class Figures:
    """The shape of a part over samples and cases; made when it is asked for."""

    maker: str | Maker
    values: Mapping[str, Any]

    def at(self, sample: int = 0, case: int = 0) -> Drawn:
        """The shape of one sample in one case. Measures that make no shape are told, not raised."""
        known = Known({path: _picked(value, sample, case) for path, value in self.values.items()})
        try:
            return self._make(known)
        except Missing as missing:
            return Drawn(missing=(str(missing),))
        except ValueError as wrong:  # measures out of range, as the geometry tells them
            return Drawn(missing=(str(wrong),))

    def _make(self, known: Known) -> Drawn:
        if not isinstance(self.maker, str):
            return self.maker(known)
        from reviewer.parts.outlines import MAKERS  # only what is drawn or moves needs them

        return MAKERS[self.maker](known)


def _picked(value: Any, sample: int, case: int) -> Any:
    """A value in one case and sample; an unknown number is None."""
    if isinstance(value, np.ndarray):
        rows, columns = value.shape
        value = value[sample if rows > 1 else 0, case if columns > 1 else 0]
        if value.dtype.kind == "U":
            return str(value)
    return None if isinstance(value, float) and np.isnan(value) else value


class _Keeping:
    """A formula that keeps the values that a shape is made of."""

    def __init__(self, maker: str | Maker, paths: tuple[str, ...]) -> None:
        self._maker = maker
        self._paths = {_argument(path): path for path in paths}

    def __call__(self, **values: Any) -> Figures:
        """Keep them by their paths."""
        named = {self._paths[argument]: value for argument, value in values.items()}
        return Figures(self._maker, named)


def _argument(path: str) -> str:
    return path.replace(".", "_")


def figure(maker: str | Maker, *paths: str) -> Row:
    """The row of a kind's own shape: its maker, by name or as it is, and the values needed."""
    return Row(
        FIGURE,
        "",
        "its shape in plan and height, as far as its own measures tell it",
        formula=_Keeping(maker, paths),
        needs={_argument(path): f"{path}?" for path in paths},
    )


def merged(*parts: Drawn) -> Drawn:
    """Several shapes of one part as one."""
    return Drawn(
        tuple(each for part in parts for each in part.pieces),
        tuple(each for part in parts for each in part.lines),
        tuple(each for part in parts for each in part.sizes),
        tuple(each for part in parts for each in part.missing),
    )


@dataclass(frozen=True, eq=False)
class Moving:
    """The bodies of a part that move as the part does, their heights above the floor."""

    figures: Figures
    level: Any

    def shape(self) -> tuple[int, int]:
        """Over how many samples and cases its numbers differ."""
        return shape_of((*self.figures.values.values(), self.level))

    def at(self, sample: int = 0, case: int = 0) -> "Body | None":
        """The body of one sample in one case; None where it is unknown, or not one alone."""
        found = self.all(sample, case)
        return found[0] if len(found) == 1 else None

    def all(self, sample: int = 0, case: int = 0) -> tuple["Body", ...]:
        """All bodies that move as the part does; none where they are unknown."""
        moving = [piece for piece in self.figures.at(sample, case).pieces if not piece.stays]
        level = _picked(self.level, sample, case)
        return () if level is None else tuple(lifted(each.body, float(level)) for each in moving)


def lifted(body: "Body", by: float) -> "Body":
    """A body at another height."""
    from reviewer.geometry.outline import Polygon, polygon

    if not body.standing:
        return replace(body, bottom=body.bottom + by, top=body.top + by)
    side = polygon(body.outline).exterior.coords[:-1]
    return replace(body, outline=Polygon(tuple((x, y + by) for x, y in side)))


def moving_body(path: str) -> Row:
    """The row with a kind's one moving body, of its figure."""
    return Row(
        path,
        "",
        "its shape, from its own measures",
        formula=Moving,
        needs={"figures": FIGURE, "level": "level"},
    )


LIES = Row(
    "azimuth",
    "rad",
    "which way it lies, seen from above, for drawings and clearances",
    Measure(example="90 deg"),
)
