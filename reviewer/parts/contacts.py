"""Contacts that hold a body: their rows in the constraint matrix, and how they may be set."""

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.constraint import constraint_matrix
from reviewer.parts.row import Choices, Flag, Measure, Named, Row

AXES = ("x", "y", "z")
TURNS = ("about x", "about y", "about z")
NO_SPREAD = 1.0  # m: of contacts that all stand in one place, the size of the body does not matter


class Held(NamedTuple):
    """All that the contacts hold: whose each row is, along or about what, and the matrix."""

    names: tuple[str, ...]
    ways: tuple[str, ...]
    matrix: NDArray[np.float64]
    size: float
    adjusts: tuple[float, ...]  # of each row, how far its contact can be set; 0 where it cannot
    gives: tuple[bool, ...]  # of each row, whether its contact gives way instead of forcing
    unreached: tuple[str, ...]  # contacts that can be set, but not once all is assembled


CONTACTS = Named(
    "contact",
    (
        Row("x", "m", "where it touches, from the middle of the body", Measure(example="150 mm")),
        Row("y", "m", "where it touches, from the middle of the body", Measure()),
        Row("z", "m", "where it touches, upward", Measure()),
        Row("holds", "", "along or about what it holds the body", Choices((*AXES, *TURNS))),
        Row("azimuth", "rad", "azimuth of the direction in which it pushes", Measure()),
        Row(
            "rise",
            "rad",
            "angle of that direction above the level, with an azimuth",
            Measure(at_least=-np.pi / 2, at_most=np.pi / 2, example="45 deg"),
        ),
        Row("adjusts", "m", "how far it can be set to either side", Measure(above=0.0)),
        Row("reached", "", "whether it can be set once all is assembled", Flag(default=None)),
        Row("gives", "", "whether it gives way, as a spring or a long slot does", Flag()),
    ),
)


def held_by(contacts: tuple[tuple[str, Any], ...]) -> Held | None:
    """The constraint matrix of all contacts; nothing where one of them holds nothing.

    Blanding, Exact Constraint (1999).
    """
    found = [(name, dict(fields)) for name, fields in contacts]
    rows = [
        (name, way, direction, fields)
        for name, fields in found
        for way, direction in _directions(fields)
    ]
    if not rows or len({name for name, *_ in rows}) < len(found):
        return None
    places = np.array([[fields.get(axis, 0.0) for axis in AXES] for *_, fields in rows])
    size = _half_spread(places)
    ways = np.array([direction for *_, direction, _ in rows])
    turning = np.array([float(way in TURNS) for _, way, *_ in rows])
    return Held(
        tuple(name for name, *_ in rows),
        tuple(way for _, way, *_ in rows),
        np.asarray(constraint_matrix(places, ways, turning, size)),
        size,
        tuple(fields.get("adjusts", 0.0) for *_, fields in rows),
        tuple(fields.get("gives", False) for *_, fields in rows),
        tuple(name for name, fields in found if not fields.get("reached", True)),
    )


def _directions(fields: dict[str, Any]) -> list[tuple[str, list[float]]]:
    """What one contact holds, in words and as directions."""
    found = [(way, [float(way[-1] == axis) for axis in AXES]) for way in fields.get("holds", ())]
    if "azimuth" in fields or "rise" in fields:
        azimuth, rise = fields.get("azimuth", 0.0), fields.get("rise", 0.0)
        level = np.cos(rise)
        way = f"azimuth {np.degrees(azimuth):.4g} deg"
        way += f", rise {np.degrees(rise):.4g} deg" if rise else ""
        found.append((way, [level * np.cos(azimuth), level * np.sin(azimuth), np.sin(rise)]))
    return found


def _half_spread(places: NDArray[np.float64]) -> float:
    """Half of the greatest distance between contacts, so that turns and moves are alike."""
    apart = places[:, None, :] - places[None, :, :]
    widest = float(np.sqrt(np.einsum("ijk,ijk->ij", apart, apart).max()))
    return widest / 2 if widest > 0.0 else NO_SPREAD
