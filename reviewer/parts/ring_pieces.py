"""What follows of a ring of straight pieces: its wood, its joints, the boards that it takes."""

import numpy as np

from reviewer.mechanics.formula import Number
from reviewer.mechanics.segments import (
    board_width,
    corner_radius,
    pieces_in_board,
    run_of_pieces,
)

NEVER, AFTER, BEFORE = "never", "after gluing", "before gluing"


def least_width(outer: Number, inner: Number, sides: int, rounded: str) -> Number:
    """Least width of the pieces: of a ring that stays straight, its own.

    Geometry.
    """
    return outer - inner if rounded == NEVER else board_width(outer, inner, sides)


def outer_flat(outer: Number, width: Number, needed: Number, rounded: str) -> Number:
    """From the middle to the outer edges of the pieces, before the ring is cut round.

    Geometry; what the pieces have to spare lies half outside and half inside.
    """
    return outer + (0.0 * width if rounded == NEVER else (width - needed) / 2)


def wood_outside(outer: Number, flat: Number, rounded: str) -> Number:
    """Radius up to which there is wood all round.

    Geometry.
    """
    return flat if rounded == NEVER else np.minimum(outer, flat)


def wood_inside(inner: Number, flat: Number, sides: int, rounded: str) -> Number:
    """Radius from which there is wood all round: the inner corners, or what is cut off them.

    Geometry.
    """
    corner = corner_radius(flat, sides)
    return corner if rounded == NEVER else np.maximum(inner, corner)


def wood_beside(outer: Number, inner: Number, bears_outer: Number, bears_inner: Number) -> Number:
    """Least wood beside what sits on the ring.

    Geometry.
    """
    return np.minimum(outer - bears_outer / 2, bears_inner / 2 - inner)


def area_of(outer: Number, inner: Number, sides: int, rounded: str) -> Number:
    """Area of the ring in plan.

    Geometry.

    Notes
    -----
    pi (R^2 - r^2) of a round one, n tan(pi/n) (R^2 - r^2) of a straight one.
    """
    factor = sides * np.tan(np.pi / sides) if rounded == NEVER else np.pi
    return factor * (outer * outer - inner * inner)


def lap_of(outer: Number, inner: Number, sides: int, layers: int, staggered: bool) -> Number:
    """How far a piece laps over the joint of the layer below, at the middle of the ring.

    Geometry; layers are turned by half a piece.
    """
    if layers < 2 or not staggered:
        return 0.0 * (outer + inner)
    return np.pi * (outer + inner) / 2 / sides


def angle_of_grain(mitre: Number, grain: str) -> Number:
    """Greatest angle between the grain and the rim.

    Geometry.

    Notes
    -----
    At the joints half of a piece's turn, where the grain runs along it.
    """
    return mitre if grain == "along" else np.pi / 2 - 0.0 * mitre


def glued_faces(area: Number, layers: int) -> Number:
    """Area of the faces between layers.

    Geometry.
    """
    return (layers - 1) * area


def band_of(low: Number, high: Number, faced: bool) -> Number:
    """How far the faces can be from parallel; nothing once they are machined.

    Geometry.
    """
    return 0.0 * high if faced else high - low


def boards_for(
    pieces: Number, board: Number, length: Number, width: Number, kerf: Number, sides: int
) -> Number:
    """How many boards the pieces take.

    Geometry.
    """
    each = pieces_in_board(board, length, width, np.where(np.isnan(kerf), 0.0, kerf), sides)
    return np.ceil(pieces / each)


def run_for(pieces: Number, length: Number, width: Number, kerf: Number, sides: int) -> Number:
    """Length of board that the pieces take together.

    Geometry; without a kerf where the shop does not say it.
    """
    return run_of_pieces(pieces, length, width, np.where(np.isnan(kerf), 0.0, kerf), sides)


def half(diameter: Number) -> Number:
    """Radius of a diameter."""
    return diameter / 2
