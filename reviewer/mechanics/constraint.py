"""Degrees of constraint: what a set of supports leaves free, and what it holds twice."""

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.formula import Number

Array = NDArray[np.float64]

_TOLERANCE = 1e-9  # against the largest singular value
_SAME = 1e-7  # what is left of a row that others span, and a share that counts as none


class ConstraintState(NamedTuple):
    """What a set of constraints holds, leaves free and holds more than once."""

    rank: Number
    freedoms: Number
    redundancies: Number
    free_share: Number
    redundant_share: Number


def constraint_matrix(
    positions: Number, directions: Number, turning: Number, size: Number
) -> Number:
    """Constraint matrix of a stiff body: one row a constraint, six columns.

    Blanding, Exact Constraint (1999); rows are the Pluecker coordinates of the lines of action.

    Parameters
    ----------
    positions : where each constraint acts, shape (n, 3) [m]
    directions : direction that it holds, shape (n, 3), of any length [1]
    turning : 1 where it holds against turning about its direction, else 0, shape (n,) [1]
    size : length that makes turns and moves alike, half of the body [m]

    Returns
    -------
    matrix : columns move along x, y, z, then turn about x, y, z; shape (n, 6) [1]

    Notes
    -----
    (u, p x u / size), or (0, u) for a constraint against turning. For bodies joined to each
    other, put a body's rows beside the other's with the sign turned.

    >>> constraint_matrix([[0.0, 2.0, 0.0]], [[0.0, 0.0, 1.0]], [0.0], 1.0).tolist()
    [[0.0, 0.0, 1.0, 2.0, 0.0, 0.0]]
    """
    place, way = np.asarray(positions, float), np.asarray(directions, float)
    unit = way / np.sqrt(np.einsum("...k,...k", way, way))[..., None]
    turns = np.asarray(turning, float)[..., None]
    arm = np.asarray(size, float)
    moment = np.cross(place, unit) / arm[..., None, None]
    matrix: Array = np.concatenate(
        (unit * (1 - turns), moment * (1 - turns) + unit * turns), axis=-1
    )
    return matrix


def constraint_state(matrix: Number) -> ConstraintState:
    """Rank of a constraint matrix, what is free, and which constraints repeat each other.

    Pellegrino and Calladine, Matrix analysis of statically and kinematically indeterminate
    frameworks, Int. J. Solids Structures 22 (1986).

    Parameters
    ----------
    matrix : one row a constraint, one column a freedom, shape (n, f) [1]

    Returns
    -------
    rank : number of independent constraints [1]
    freedoms : ways in which it can still move, f - rank [1]
    redundancies : constraints more than independent, n - rank [1]
    free_share : of each column, how much of it is free: 0 held, 1 wholly free; shape (f,) [1]
    redundant_share : of each row, above 0 where others do its work too; shape (n,) [1]

    Notes
    -----
    By singular values: free motions span the null space, states of self-stress the left one.
    What has redundancies goes together only if it is made to size, gives, or has play.

    >>> three = constraint_matrix([[0, 0, 0], [1, 0, 0], [0, 1, 0]], [[0, 0, 1]] * 3, [0] * 3, 1.0)
    >>> state = constraint_state(three)
    >>> state.rank, state.freedoms, state.redundancies
    (3, 3, 0)
    >>> np.round(state.free_share, 6).tolist()
    [1.0, 1.0, 0.0, 0.0, 0.0, 1.0]
    """
    rows = np.asarray(matrix, float)
    count, freedoms = rows.shape
    if np.isnan(rows).any():
        unknown = float("nan")
        return ConstraintState(
            unknown, unknown, unknown, np.full(freedoms, unknown), np.full(count, unknown)
        )
    left, values, right = np.linalg.svd(rows)
    largest = values[0] if values.size else 0.0
    rank = int(np.count_nonzero(values > _TOLERANCE * largest))
    return ConstraintState(
        rank,
        freedoms - rank,
        count - rank,
        _share(right[rank:]),
        _share(left[:, rank:].T),
    )


def dependent_rows(matrix: Number) -> Number:
    """Which constraints repeat which: for each one too many, those that already do its work.

    Pellegrino and Calladine, Matrix analysis of statically and kinematically indeterminate
    frameworks, Int. J. Solids Structures 22 (1986).

    Parameters
    ----------
    matrix : one row a constraint, one column a freedom, shape (n, f) [1]

    Returns
    -------
    circuits : states of self-stress, 1 at the later row of each, shape (n - rank, n) [1]

    Notes
    -----
    Rows are taken in order; one that the kept ones span is not kept, and its row of the answer
    says by which of them: the constraints that are not 0 there are one more than needed. A misfit
    e_i of each is borne where sum(s_i e_i) = 0.

    >>> feet = [[1, 1, 0], [1, -1, 0], [1, 0, 1], [1, 0, -1]]
    >>> dependent_rows(feet).round(6).tolist()
    [[-1.0, -1.0, 1.0, 1.0]]
    """
    rows = np.asarray(matrix, float)
    kept: list[int] = []
    circuits: list[Array] = []
    for index, row in enumerate(rows):
        weights: Array = np.linalg.lstsq(rows[kept].T, row, rcond=None)[0]
        left = row - np.einsum("i,ij->j", weights, rows[kept])
        if np.sqrt(np.einsum("i,i", left, left)) > _SAME * np.sqrt(np.einsum("i,i", row, row)):
            kept.append(index)
            continue
        circuit = np.zeros(len(rows))
        circuit[index] = 1.0
        circuit[kept] = np.where(np.abs(weights) > _SAME, -weights, 0.0)
        circuits.append(circuit)
    return np.array(circuits).reshape(-1, len(rows))


def free_motions(matrix: Number) -> Number:
    """Ways in which what is constrained can still move.

    Pellegrino and Calladine, Matrix analysis of statically and kinematically indeterminate
    frameworks, Int. J. Solids Structures 22 (1986).

    Parameters
    ----------
    matrix : one row a constraint, one column a freedom, shape (n, f) [1]

    Returns
    -------
    motions : unit motions at right angles to each other, shape (f - rank, f) [1]

    Notes
    -----
    The null space by singular values; turns are times the size by which the matrix was made.

    >>> np.abs(free_motions([[0, 1.0, 0], [0, 0, 1.0]])).tolist()
    [[1.0, 0.0, 0.0]]
    """
    rows = np.asarray(matrix, float)
    _, values, right = np.linalg.svd(rows)
    largest = values[0] if values.size else 0.0
    motions: Array = right[int(np.count_nonzero(values > _TOLERANCE * largest)) :]
    return motions


def _share(vectors: Any) -> Array:
    """Square length of each coordinate's part in a set of unit vectors."""
    share: Array = np.einsum("ij,ij->j", vectors, vectors)
    return share
