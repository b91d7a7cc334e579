"""The body's own compliance between its supports, for a given set of touching springs.

The forces of the touching springs solve (1/k + C) f = B u - gap among themselves. Many cases and
directions share few sets, so each set of a sample is inverted once.
"""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.layout import Array, Flags, Indices, pick


class Flexibility(NamedTuple):
    """Compliance (samples, n, n) in each spring's own sense, stiffness (n, .), sample (columns)."""

    matrix: Array
    stiffness: Array
    row: Indices


def give(body: Flexibility, forces: Array) -> Array:
    """How far the body itself gives way at each spring under the springs' forces (n, columns)."""
    result = np.zeros_like(forces)
    for other, force in enumerate(forces):
        result += _of_column(body.matrix[:, :, other].T, body) * force
    return result


def _of_column(array: Array, body: Flexibility) -> Array:
    return pick(np.ascontiguousarray(array), body.row)


def flexible_piece(
    body: Flexibility, basis: Array, gap: Array, touching: Flags
) -> tuple[Array, Array]:
    """Forces of the touching springs as response (n, 3, columns) . u + rest (n, columns)."""
    inverse, which = _inverses(body, touching)
    response = np.zeros((len(touching), 3, touching.shape[1]))
    rest = np.zeros(touching.shape)
    for other in range(len(touching)):
        influence = inverse[:, :, other].T[:, which]
        response += influence[:, None] * basis[other]
        rest -= influence * gap[other]
    return response, rest


def _inverses(body: Flexibility, touching: Flags) -> tuple[Array, Indices]:
    """Inverse of each sample's and set's own matrix, and which of them each column has."""
    row = np.minimum(body.row, len(body.matrix) - 1)
    first, which = _distinct(body.row, touching)
    among = touching[:, first].T
    matrix = body.matrix[row[first]].copy()
    each = np.arange(len(touching))
    matrix[:, each, each] += 1 / pick(body.stiffness, body.row[first]).T
    both = among[:, :, None] & among[:, None, :]
    alone = np.where(both, matrix, np.eye(len(touching)))
    return np.where(both, np.linalg.inv(alone), 0.0), which


def _distinct(row: Indices, touching: Flags) -> tuple[Indices, Indices]:
    """First column of each distinct sample and set, and which of them each column has."""
    packed = np.packbits(touching, axis=0).T
    key = np.empty((len(row), 8 + packed.shape[1]), np.uint8)
    key[:, :8] = row.astype("<i8")[:, None].view(np.uint8)
    key[:, 8:] = packed
    kind = np.dtype((np.void, key.shape[1]))
    _, first, which = np.unique(key.view(kind).ravel(), return_index=True, return_inverse=True)
    return first, which
