"""The body's own compliance between its supports, for given sets of touching springs.

The forces f of the touching springs and the movement u of the body solve

    (1/k + C) f - B u = -gap,    B' f = load

together: so written, it does not matter how much stiffer the springs are than the body, or the
body than the springs. Many cases and directions share few sets, so the matrix of each set of a
sample is inverted once.
"""

from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.layout import Array, Flags, Indices, pick, take, total
from reviewer.mechanics.springs.matrices import factor, sound

LOOSE_HOLD = 1e-13  # of the springs' stiffness: what holds a body on too few springs


class Flexibility(NamedTuple):
    """Compliance (samples, n, n) in each spring's own sense, stiffness (n, .), sample (columns)."""

    matrix: Array
    stiffness: Array
    row: Indices


class FlexibleFooting(NamedTuple):
    """A flexible body on sets of touching springs.

    inverse : (n + 3, n + 3, sets) of the matrix of forces and movement
    hold : (sets) what holds a body on too few springs; zero for the others
    which : (columns) set of each column
    """

    inverse: Array
    hold: Array
    which: Indices


def give(body: Flexibility, forces: Array) -> Array:
    """How far the body itself gives way at each spring under the springs' forces (n, columns)."""
    result = np.zeros_like(forces)
    for other, force in enumerate(forces):
        result += pick(np.ascontiguousarray(body.matrix[:, :, other].T), body.row) * force
    return result


def flexible_footing(
    body: Flexibility, basis: Array, products: Array, touching: Flags
) -> FlexibleFooting:
    """The body on each column's set of touching springs."""
    first, which = _distinct(body.row, touching)
    among = take(touching, first)
    own = pick(basis, first) * among[:, None]
    geometry = total(pick(products, first) * among[:, None])
    loose = ~sound(factor(geometry), geometry) | (np.sum(among, axis=0) < 3)
    count, sets = among.shape
    matrix = np.zeros((sets, count + 3, count + 3))
    scale = _fill_in_compliance(matrix[:, :count, :count], body, body.row[first], among)
    matrix[:, :count, count:] = -own.transpose(2, 0, 1)
    matrix[:, count:, :count] = own.transpose(2, 1, 0)
    each = np.arange(count, count + 3)
    matrix[:, each, each] = (LOOSE_HOLD * loose)[:, None]
    inverse = _inverted(matrix)
    inverse[:, :, :count] *= (scale[:, None] * among.T)[:, None]
    inverse[:, count:] /= scale[:, None, None]
    inverse[:, :count] *= among.T[:, :, None]
    return FlexibleFooting(
        np.ascontiguousarray(inverse.transpose(1, 2, 0)), LOOSE_HOLD * loose * scale, which
    )


def _inverted(matrix: Array) -> Array:
    """Inverse of each matrix, or NaN where sixteen digits are not enough to tell it from none."""
    try:
        return np.asarray(np.linalg.inv(matrix), float)
    except np.linalg.LinAlgError:
        lost = np.linalg.slogdet(matrix)[0] == 0
        matrix[lost] = np.eye(matrix.shape[1])
        inverse = np.asarray(np.linalg.inv(matrix), float)
        inverse[lost] = np.nan
        return inverse


def _fill_in_compliance(corner: Array, body: Flexibility, row: Indices, among: Flags) -> Array:
    """Put 1/k + C of the touching springs, as a share of its greatest, and return what it was
    multiplied with; springs that do not touch stand alone."""
    each = np.arange(len(among))
    corner[:] = body.matrix[np.minimum(row, len(body.matrix) - 1)]
    corner[:, each, each] += 1 / pick(body.stiffness, row).T
    corner *= among.T[:, :, None] & among.T[:, None, :]
    greatest = np.max(corner[:, each, each], axis=1)
    scale = 1 / np.where(greatest > 0, greatest, 1.0)
    corner *= scale[:, None, None]
    corner[:, each, each] += ~among.T
    return np.asarray(scale, float)


def flexible_answer(
    footing: FlexibleFooting, load: Array, gap: Array, near: Array | None
) -> tuple[Array, Array]:
    """Movement (3, columns) and forces (n, columns) under a load, close to a given movement
    where too few springs hold the body."""
    count, which = len(gap), footing.which
    if gap.shape[-1] == 1:
        at_rest = np.zeros((count + 3, footing.inverse.shape[2]))
        for spring in range(count):
            at_rest -= footing.inverse[:, spring] * gap[spring]
        result = take(at_rest, which)
    else:
        result = np.zeros((count + 3, len(which)))
        for spring in range(count):
            result -= take(footing.inverse[:, spring], which) * gap[spring]
    if near is not None:
        load = load + footing.hold[which] * near
    for way in range(3):
        result += take(footing.inverse[:, count + way], which) * load[way]
    return result[count:], result[:count]


def _distinct(row: Indices, touching: Flags) -> tuple[Indices, Indices]:
    """First column of each distinct sample and set, and which of them each column has."""
    packed = np.packbits(touching, axis=0).T
    key = np.empty((len(row), 8 + packed.shape[1]), np.uint8)
    key[:, :8] = row.astype("<i8")[:, None].view(np.uint8)
    key[:, 8:] = packed
    kind = np.dtype((np.void, key.shape[1]))
    _, first, which = np.unique(key.view(kind).ravel(), return_index=True, return_inverse=True)
    return first, which
