"""What one-way supports can carry at all: the convex cone of their actions, and its facets.

The supports can carry a load (W, Mx, My) if and only if it lies in the convex cone of their own
actions s (1, x, y). A plane through two of those that has all the others on one side bounds the
cone: past it, the body turns about the line through the two. Hold-downs can close the cone to all
of space; then nothing turns the body over.
"""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from reviewer.mechanics.springs.layout import Array, Flags, Indices, Layout, take
from reviewer.mechanics.springs.worst_of import angle_of, first_largest

ON_THE_PLANE = 1e-11  # of the supports' size: closer than this, a support lies on the plane
SAME_POINT = 1e-9  # of the supports' size: closer than this, two supports span no plane
OVER_THE_LINE = 1e-13  # of the load: rounding of a load that stands exactly on the line
NO_LINE = 1e-9  # grip of a facet that no moment can cross: lifting off, not turning over
BLOCK = 2_000_000  # numbers held at once while facets are sought


class Facets(NamedTuple):
    """Planes that bound the cone: normal . load >= 0, in the layout's local coordinates.

    `normal` (facets, 3, columns) is zero where a sample does not have the facet; `first` and
    `second` are the supports of its line, the same one twice for a line through a lone support,
    and -1 for a plane that goes through none.
    """

    normal: Array
    first: Indices
    second: Indices


def bounding_facets(basis: Array) -> Facets:
    """Facets of the cone of actions (n, 3, columns).

    Every pair of actions spans a candidate. Where all actions lie in one plane (supports on one
    line, or a lone support) that is not enough: there, each action with each of the three axes
    gives the bounds within the plane, and the axes with each other those of a single line.
    """
    pairs = _candidates(basis, basis, *np.triu_indices(len(basis), 1))
    lowest, highest = _reach(basis, pairs.normal)
    spatial = np.any((highest - lowest > SAME_POINT), axis=0)
    found = [_bounds(pairs, lowest, highest)]
    if not np.all(spatial):
        flat = _with_axes(basis)
        flat = flat._replace(normal=flat.normal * ~spatial)
        found.append(_bounds(flat, *_reach(basis, flat.normal)))
    return Facets(*(np.concatenate(part) for part in zip(*found, strict=True)))


def _with_axes(basis: Array) -> Facets:
    """Candidates through one action and an axis, and through two axes."""
    count, _, columns = basis.shape
    axes = np.broadcast_to(np.eye(3)[:, :, None], (3, 3, columns))
    one, axis = np.divmod(np.arange(3 * count), 3)
    through = _candidates(basis, axes, one, axis)
    free = _candidates(axes, axes, *np.triu_indices(3, 1))
    none = np.full(3, -1)
    return Facets(
        np.concatenate([through.normal, free.normal]),
        np.concatenate([one, none]),
        np.concatenate([one, none]),
    )


def _candidates(these: Array, those: Array, first: Indices, second: Indices) -> Facets:
    """Unit normals of the planes through pairs of vectors, zero where they span none."""
    a, b = these[first], those[second]
    cross = np.empty_like(a)
    for axis in range(3):
        one, other = (axis + 1) % 3, (axis + 2) % 3
        cross[:, axis] = a[:, one] * b[:, other] - a[:, other] * b[:, one]
    size = _length(cross[:, 0], cross[:, 1], cross[:, 2])
    return Facets(cross / np.where(size > SAME_POINT, size, np.inf)[:, None], first, second)


def _length(*parts: Array) -> Array:
    square = parts[0] * parts[0]
    for part in parts[1:]:
        square = square + part * part
    return np.sqrt(square)


def _reach(basis: Array, normal: Array) -> tuple[Array, Array]:
    """Least and greatest distance of the actions from each candidate plane."""
    shape = (len(normal), normal.shape[2])
    lowest, highest = np.zeros(shape), np.zeros(shape)
    for action in basis:
        height = _dot(normal, action)
        lowest, highest = np.minimum(lowest, height), np.maximum(highest, height)
    return lowest, highest


def _dot(normal: Array, vector: Array) -> Array:
    product: Array = normal[:, 0] * vector[0] + normal[:, 1] * vector[1] + normal[:, 2] * vector[2]
    return product


def _bounds(planes: Facets, lowest: Array, highest: Array) -> Facets:
    """Keep the candidates that have no action beyond them, turned inwards."""
    above = planes.normal * (lowest >= -ON_THE_PLANE)[:, None]
    below = planes.normal * (highest <= ON_THE_PLANE)[:, None]
    normal = np.stack([above, -below], axis=1).reshape(-1, *above.shape[1:])
    used = np.any(normal != 0, axis=(1, 2))
    return Facets(normal[used], np.repeat(planes.first, 2)[used], np.repeat(planes.second, 2)[used])


def facet_blocks(layout: Layout) -> Iterator[tuple[Indices | slice, Facets]]:
    """The items in blocks, each with its facets in one shared column or one column an item."""
    items = len(layout.row)
    if layout.basis.shape[-1] == 1:
        yield slice(0, items), bounding_facets(layout.basis)
        return
    count = len(layout.basis)
    step = max(1, BLOCK // (3 * count * (count + 5)))
    for start in range(0, items, step):
        block = np.arange(start, min(start + step, items))
        rows, column = np.unique(layout.row[block], return_inverse=True)
        facets = bounding_facets(take(layout.basis, rows))
        yield block, facets._replace(normal=take(facets.normal, column))


def margins(facets: Facets, load: Array) -> Array:
    """How far loads (3, items) lie inside each facet (facets, items)."""
    return _dot(facets.normal, load)


def grip(facets: Facets) -> Array:
    """Length of the moment part of each facet: what a moment of one takes off its margin."""
    return _length(facets.normal[:, 1], facets.normal[:, 2])


def overturning(layout: Layout, load: Array, round_moment: Array) -> tuple[Flags, Array]:
    """Whether each item's load, with a moment that can come from all round, leaves the cone.

    Also returns the direction square to the line about which it is nearest to doing so.
    """
    over = np.zeros(load.shape[-1], bool)
    towards = np.full(load.shape[-1], np.nan)
    size = np.abs(load[0]) + np.abs(load[1]) + np.abs(load[2]) + round_moment
    for block, facets in facet_blocks(layout):
        if len(facets.normal):
            inside, hold = margins(facets, load[:, block]), grip(facets)
            least = np.min(inside - hold * round_moment[block], axis=0)
            over[block] = least < -OVER_THE_LINE * size[block]
            towards[block] = _outward(facets, inside, hold)
    return over, towards


def _outward(facets: Facets, inside: Array, hold: Array) -> Array:
    """Direction away from the supports, square to each item's nearest line; NaN without one."""
    line = hold > NO_LINE
    arm = 1 / np.where(line, hold, 1.0)
    nearest = first_largest(np.where(line, -inside * arm, -np.inf))
    column = np.arange(inside.shape[1])
    normal = np.broadcast_to(facets.normal, (*facets.normal.shape[:2], len(column)))
    angle = angle_of(-normal[nearest, 1:, column].T)
    return np.where(np.any(line, axis=0), angle, np.nan)
