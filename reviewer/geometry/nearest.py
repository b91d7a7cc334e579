"""Nearest points of two rims, exact for straight pieces and arcs, at many poses at once."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.geometry.edges import Edges, is_inside

Complex = NDArray[np.complex128]
Array = NDArray[np.float64]
Truth = NDArray[np.bool_]
TINY = 1e-300
CLOSE = 1e-12  # middles of arcs nearer than this are one [m]
ANGLE = 1e-12  # arcs reach a little further, so that none is missed at its end


class Placed(NamedTuple):
    """A rim at several poses: its arrays over (poses, pieces); one pose where it stands still."""

    a: Complex
    b: Complex
    centre: Complex
    radius: Array
    middle: Complex
    least: Array
    first: Complex
    last: Complex
    hollow: Truth


def placed(edges: Edges, e: Complex, c: Complex) -> Placed:
    """The rim turned by e and set at c, over (poses,)."""
    turned, at = e[:, None], c[:, None]
    first, last = edges.ends
    return Placed(
        turned * edges.a + at,
        turned * edges.b + at,
        turned * edges.centre + at,
        edges.radius[None, :],
        turned * edges.middle,
        edges.least[None, :],
        turned * first + at,
        turned * last + at,
        edges.hollow,
    )


class Contact(NamedTuple):
    """Distance of each piece of one rim from each of the other, over (poses, one, other).

    `on_one` and `on_other` are the nearest points; `touch` tells which pieces cross.
    """

    distance: Array
    on_one: Complex
    on_other: Complex
    touch: Truth


def dot(one: Complex, other: Complex) -> Array:
    """The scalar product of two vectors."""
    product: Array = one.real * other.real + one.imag * other.imag
    return product


def _cross(one: Complex, other: Complex) -> Array:
    product: Array = one.real * other.imag - one.imag * other.real
    return product


def _on_line(a: Complex, b: Complex, point: Complex) -> Complex:
    """The point of a straight piece that is nearest to a point."""
    along = b - a
    length = np.maximum(dot(along, along), TINY)
    share = np.clip(dot(along, point - a) / length, 0.0, 1.0)
    nearest: Complex = a + share * along
    return nearest


def in_range(direction: Complex, middle: Complex, least: Array) -> Truth:
    """Whether unit directions are within the ranges of arcs."""
    found: Truth = dot(direction, middle) >= least - ANGLE
    return found


def unit(vector: Complex) -> Complex:
    """A vector at a length of one; of none, x."""
    size = np.abs(vector)
    found: Complex = np.where(size > TINY, vector / np.maximum(size, TINY), 1.0 + 0.0j)
    return found


class Arcs(NamedTuple):
    """Arcs as arrays that broadcast."""

    centre: Complex
    radius: Array
    middle: Complex
    least: Array
    first: Complex
    last: Complex


def _on_arc(arc: Arcs, point: Complex) -> Complex:
    """The point of an arc that is nearest to a point."""
    direction = unit(point - arc.centre)
    end = np.where(np.abs(point - arc.first) <= np.abs(point - arc.last), arc.first, arc.last)
    nearest: Complex = np.where(
        in_range(direction, arc.middle, arc.least), arc.centre + arc.radius * direction, end
    )
    return nearest


def _least(pairs: list[tuple[Complex, Complex]], touch: Truth) -> Contact:
    """The nearest of several pairs of points; the first of those that tie."""
    one, other = np.broadcast_arrays(*pairs[0])
    far = np.abs(one - other)
    for mine, theirs in pairs[1:]:
        size = np.abs(mine - theirs)
        nearer = size < far
        far = np.where(nearer, size, far)
        one, other = np.where(nearer, mine, one), np.where(nearer, theirs, other)
    return Contact(np.where(touch, 0.0, far), one, other, np.broadcast_to(touch, far.shape))


def _lines(a: Complex, b: Complex, c: Complex, d: Complex) -> Contact:
    """Straight pieces a-b against straight pieces c-d."""
    along, across = b - a, d - c
    sides = (
        _cross(along, c - a),
        _cross(along, d - a),
        _cross(across, a - c),
        _cross(across, b - c),
    )
    touch = (sides[0] * sides[1] < 0) & (sides[2] * sides[3] < 0)
    pairs = [(_on_line(a, b, point), point) for point in (c, d)]
    pairs += [(point, _on_line(c, d, point)) for point in (a, b)]
    return _least(pairs, touch)


def _line_and_arc(a: Complex, b: Complex, arc: Arcs) -> Contact:
    """Straight pieces a-b against arcs."""
    along = b - a
    length = np.maximum(np.abs(along), TINY)
    direction = along / length
    foot = dot(direction, arc.centre - a)
    off = np.abs(_cross(direction, arc.centre - a))
    half = np.sqrt(np.maximum(arc.radius**2 - off**2, 0.0))
    touch = np.zeros(np.broadcast_shapes(foot.shape, off.shape), dtype=np.bool_)
    for reach in (foot - half, foot + half):
        out = unit(a + reach * direction - arc.centre)
        on = (reach >= 0.0) & (reach <= length) & (off <= arc.radius)
        touch = touch | (on & in_range(out, arc.middle, arc.least))
    near = _on_line(a, b, arc.centre)
    pairs = [(point, _on_arc(arc, point)) for point in (a, b, near)]
    pairs += [(_on_line(a, b, end), end) for end in (arc.first, arc.last)]
    return _least(pairs, touch)


def _arcs(one: Arcs, other: Arcs) -> Contact:
    """Arcs against arcs."""
    across = other.centre - one.centre
    far = np.maximum(np.abs(across), CLOSE)
    axis = unit(across)
    foot = (far * far + one.radius**2 - other.radius**2) / (2 * far)
    rise = np.sqrt(np.maximum(one.radius**2 - foot * foot, 0.0))
    meet = np.abs(foot) <= one.radius
    touch = np.zeros(foot.shape, dtype=np.bool_)
    for side in (-1.0, 1.0):
        point = one.centre + axis * (foot + 1j * side * rise)
        within = in_range(unit(point - one.centre), one.middle, one.least)
        within &= in_range(unit(point - other.centre), other.middle, other.least)
        touch = touch | (meet & within)
    pairs = [(end, _on_arc(other, end)) for end in (one.first, one.last)]
    pairs += [(_on_arc(one, end), end) for end in (other.first, other.last)]
    for side in (-1.0, 1.0):
        point = _on_arc(one, one.centre + side * axis * (one.radius + far))
        pairs.append((point, _on_arc(other, point)))
    return _least(pairs, touch)


BESIDE = (slice(None), None, slice(None))


def _arcs_of(rim: Placed, at: tuple[slice | None, ...]) -> Arcs:
    """The arcs of a rim with an axis for the pieces of the other."""
    return Arcs(
        rim.centre[at], rim.radius[at], rim.middle[at], rim.least[at], rim.first[at], rim.last[at]
    )


def contacts(one: Placed, other: Placed) -> Contact:
    """Each piece of one rim against each piece of the other, over (poses, one, other)."""
    a, b = one.a[:, :, None], one.b[:, :, None]
    c, d = other.a[:, None, :], other.b[:, None, :]
    mine, theirs = _arcs_of(one, (slice(None), slice(None), None)), _arcs_of(other, BESIDE)
    straight, straight_too = one.a.shape[1] > 0, other.a.shape[1] > 0
    round_, round_too = one.centre.shape[1] > 0, other.centre.shape[1] > 0
    rows = []
    if straight:
        row = [_lines(a, b, c, d)] if straight_too else []
        rows.append([*row, _line_and_arc(a, b, theirs)] if round_too else row)
    if round_:
        row = [_turned_over(_line_and_arc(c, d, mine))] if straight_too else []
        rows.append([*row, _arcs(mine, theirs)] if round_too else row)
    return _joined([_joined(row, 2) for row in rows], 1)


def _turned_over(contact: Contact) -> Contact:
    return Contact(contact.distance, contact.on_other, contact.on_one, contact.touch)


def _joined(parts: list[Contact], axis: int) -> Contact:
    if len(parts) == 1:
        return parts[0]
    return Contact(*(np.concatenate(each, axis=axis) for each in zip(*parts, strict=True)))


def overlapping(one: Edges, other: Edges, e: Complex, c: Complex, touch: Truth) -> Truth:
    """Whether two outlines overlap, the other at the pose: rims cross, or one holds the other."""
    within = is_inside(one, e[:, None] * other.samples + c[:, None]).any(axis=1)
    back = np.conj(e)[:, None] * (one.samples[None, :] - c[:, None])
    around = is_inside(other, back).any(axis=1)
    found: Truth = np.logical_or(np.logical_or(touch.any(axis=(1, 2)), within), around)
    return found
