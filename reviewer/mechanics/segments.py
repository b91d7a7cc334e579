"""A ring of straight pieces with mitred ends: angles, lengths, and the wood that is left."""

import numpy as np

from reviewer.mechanics.domain import defined
from reviewer.mechanics.formula import Number, valid_when

_SIDES = valid_when(lambda sides: sides >= 3, "a ring takes three pieces or more")


@defined(positive="sides")
@_SIDES
def mitre_angle(sides: Number) -> Number:
    """Angle by which each end of a piece is off square.

    Geometry of the regular polygon.

    Parameters
    ----------
    sides : pieces in the ring [1]

    Returns
    -------
    mitre : from square [rad]

    Notes
    -----
    pi / n; the saw's gauge shows it, and two of them meet in a joint.

    >>> round(float(np.degrees(mitre_angle(12))), 6)
    15.0
    """
    return np.pi / sides


@defined(positive="sides", not_negative="apothem")
@_SIDES
def side_length(apothem: Number, sides: Number) -> Number:
    """Length of a piece along an edge that touches a circle.

    Geometry of the regular polygon.

    Parameters
    ----------
    apothem : from the middle of the ring square to the edge [m]
    sides : pieces in the ring [1]

    Returns
    -------
    length : from point to point [m]

    Notes
    -----
    2 a tan(pi/n): with a the outer radius the long edge, with the inner one the short edge.

    >>> round(side_length(0.3, 12) * 1e3, 2)
    160.77
    """
    return 2 * apothem * np.tan(np.pi / sides)


@defined(positive="sides", not_negative="radius")
@_SIDES
def sagitta(radius: Number, sides: Number) -> Number:
    """How far the arc over one piece stands off its chord.

    Geometry of the circle.

    Parameters
    ----------
    radius : of the arc [m]
    sides : pieces in the ring [1]

    Returns
    -------
    sagitta : at the middle of the piece [m]

    Notes
    -----
    R (1 - cos(pi/n)).

    >>> round(sagitta(0.3, 8) * 1e3, 3)
    22.836
    """
    half = np.sin(np.pi / sides / 2)
    return 2 * radius * half * half


@defined(positive="sides", not_negative="apothem")
@_SIDES
def corner_radius(apothem: Number, sides: Number) -> Number:
    """How far the corners of a ring of straight edges stand from its middle.

    Geometry of the regular polygon.

    Parameters
    ----------
    apothem : from the middle square to the edges [m]
    sides : pieces in the ring [1]

    Returns
    -------
    radius : of the circle through the corners [m]

    Notes
    -----
    a / cos(pi/n).

    >>> round(corner_radius(1.0, 8), 4)
    1.0824
    """
    return apothem / np.cos(np.pi / sides)


@defined(positive="sides outer", not_negative="inner")
@valid_when(lambda outer, inner: outer > inner, "a ring is wider outside than inside")
@_SIDES
def board_width(outer: Number, inner: Number, sides: Number) -> Number:
    """Least width of the pieces from which a round ring is cut.

    Geometry.

    Parameters
    ----------
    outer : radius of the round ring outside [m]
    inner : radius of the round ring inside [m]
    sides : pieces in the ring [1]

    Returns
    -------
    width : of each piece, without anything to spare [m]

    Notes
    -----
    R - r cos(pi/n): the outer circle touches the outer edges in their middle, the inner one passes
    through the inner corners. It is the ring's own width and the sagitta of its inner arc.

    >>> round(board_width(0.3, 0.25, 12) * 1e3, 2)
    58.52
    """
    return outer - inner + sagitta(inner, sides)


@defined(positive="width thickness sides")
@_SIDES
def mitre_area(width: Number, thickness: Number, sides: Number) -> Number:
    """Glued area of one mitred joint.

    Geometry.

    Parameters
    ----------
    width : of the pieces [m]
    thickness : of the pieces [m]
    sides : pieces in the ring [1]

    Returns
    -------
    area : of one joint [m^2]

    Notes
    -----
    b t / cos(pi/n).

    >>> round(mitre_area(0.06, 0.018, 12) * 1e6)
    1118
    """
    return width * thickness / np.cos(np.pi / sides)


@defined(positive="pieces length sides", not_negative="width kerf")
@_SIDES
def run_of_pieces(
    pieces: Number, length: Number, width: Number, kerf: Number, sides: Number
) -> Number:
    """Length of board that pieces take when every other one is turned over.

    Geometry.

    Parameters
    ----------
    pieces : how many [1]
    length : of the long edge of a piece [m]
    width : of the board [m]
    kerf : of the saw, square to its cut [m]
    sides : pieces in a ring, which set the mitre [1]

    Returns
    -------
    run : of board [m]

    Notes
    -----
    N (L - b tan(pi/n)) + (N - 1) k / cos(pi/n) + b tan(pi/n): a turned piece lies along the
    slanting end of the one before it, and takes its length at half its width; one end is lost.

    >>> round(run_of_pieces(12, 0.16077, 0.0585, 0.0032, 12) * 1e3)
    1793
    """
    slant = width * np.tan(np.pi / sides)
    cuts = (pieces - 1) * kerf / np.cos(np.pi / sides)
    return pieces * (length - slant) + cuts + slant


@defined(positive="board length sides", not_negative="width kerf")
@valid_when(lambda board, length: board >= length, "a board is shorter than one piece")
@_SIDES
def pieces_in_board(
    board: Number, length: Number, width: Number, kerf: Number, sides: Number
) -> Number:
    """How many pieces one board gives when every other one is turned over.

    Geometry.

    Parameters
    ----------
    board : length of the board [m]
    length : of the long edge of a piece [m]
    width : of the board [m]
    kerf : of the saw, square to its cut [m]
    sides : pieces in a ring, which set the mitre [1]

    Returns
    -------
    pieces : whole number of them [1]

    Notes
    -----
    The largest N whose run_of_pieces is no longer than the board.

    >>> float(pieces_in_board(2.0, 0.16077, 0.0585, 0.0032, 12))
    13.0
    """
    slant = width * np.tan(np.pi / sides)
    cut = kerf / np.cos(np.pi / sides)
    return np.floor((board - slant + cut) / (length - slant + cut) + 1e-9)
