"""Where the supports of a stiff body stand, and how they are laid out for the solver.

The solver works on columns: arrays whose first axis is the spring and whose last axis is the case,
so that a sum over the springs adds whole rows. Each column is then computed alike whether it
stands alone or among thousands.
"""

from collections.abc import Callable
from typing import Any, NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.formula import Number

Array = NDArray[np.float64]
Indices = NDArray[np.int64]
Flags = NDArray[np.bool_]
T = TypeVar("T", bound=np.generic)

PAIRS = ((0, 0), (0, 1), (0, 2), (1, 1), (1, 2), (2, 2))  # upper triangle of a 3 by 3 matrix
FIRST, SECOND = ([pair[side] for pair in PAIRS] for side in (0, 1))


class Supports(NamedTuple):
    """Springs that push one way only, each of shape (n,) or (..., n) over samples.

    x, y : position [m]
    stiffness : stiffness, above zero [N/m]
    sign : +1 pushes the body up (stands under it), -1 pushes it down (holds it from above) [1]
    gap : way before the spring touches, or its preload as a negative way [m]
    """

    x: Number
    y: Number
    stiffness: Number
    sign: Number = 1.0
    gap: Number = 0.0


class Layout(NamedTuple):
    """Supports laid out in columns, in coordinates about their middle and of size one.

    Arrays end in an axis of length 1, or of one column a sample. `row` tells which sample each
    item (a sample in a case) belongs to. `basis` is s (1, x, y); `products` its outer product.
    """

    basis: Array
    products: Array
    stiffness: Array
    gap: Array
    sign: Array
    centre: Array
    length: Array
    flexibility: Array | None
    known: Flags
    row: Indices
    batch: tuple[int, ...]


def by_one(function: Callable[..., float], *values: Any) -> Array:
    """Apply a function of the math module to every element.

    numpy's own transcendental functions may take another path for a long array than for a short
    one; the same number must come out of both.
    """
    return np.asarray(np.frompyfunc(function, len(values), 1)(*values), float)


def total(terms: Array) -> Array:
    """Sum over the springs, row after row, of terms (n, k, columns) with k above 1.

    In memory, the rows have to follow one another: in another order they would be summed otherwise.
    """
    result: Array = np.add.reduce(np.ascontiguousarray(terms), axis=0)
    return result


def pick(array: NDArray[T], columns: Indices) -> NDArray[T]:
    """Choose columns of an array, or keep the one column that serves them all."""
    return array if array.shape[-1] == 1 else take(array, columns)


def take(array: NDArray[T], columns: Indices) -> NDArray[T]:
    """Choose columns of an array, and keep its rows together in memory.

    Indexing would put the columns together, and sums over the springs would then be made in
    another order.
    """
    return array.take(columns, axis=-1)


def lay_out(supports: Supports, compliance: Any, shapes: tuple[tuple[int, ...], ...]) -> Layout:
    """Lay supports out in columns for a batch that the loads' shapes and theirs make together.

    Raises ValueError where the number of supports, a sign or the compliance does not fit.
    """
    fields = [np.atleast_1d(np.asarray(field, float)) for field in supports]
    count = _count(fields)
    leads = [field.shape[:-1] for field in fields]
    if compliance is not None:
        compliance = np.asarray(compliance, float)
        _check_compliance(compliance, count)
        leads.append(compliance.shape[:-2])
    lead = np.broadcast_shapes(*leads)
    batch = np.broadcast_shapes(lead, *shapes)
    x, y, stiffness, sign, gap = (_columns(field, lead, count) for field in fields)
    if not np.all(np.abs(sign) == 1.0):
        raise ValueError("the sign of a support is +1 (pushes up) or -1 (pushes down)")
    rows = np.arange(int(np.prod(lead, dtype=int))).reshape(lead)
    return _about_the_middle(
        (x, y, stiffness, sign, gap),
        None if compliance is None else _matrices(compliance, lead, count, sign),
        np.broadcast_to(rows, batch).ravel(),
        batch,
    )


def _count(fields: list[Array]) -> int:
    counts = {field.shape[-1] for field in fields} - {1}
    if len(counts) > 1:
        raise ValueError(f"the supports' arrays disagree on their number: {sorted(counts)}")
    return counts.pop() if counts else 1


def _check_compliance(compliance: Array, count: int) -> None:
    if compliance.shape[-2:] != (count, count):
        raise ValueError(
            f"the compliance is {compliance.shape[-2:]} and has to be {(count, count)}: "
            "one row and one column a support"
        )


def _columns(field: Array, lead: tuple[int, ...], count: int) -> Array:
    """Spring first, sample last; one column where all samples share it."""
    if field.size == field.shape[-1]:
        return np.array(np.broadcast_to(field.reshape(-1, 1), (count, 1)), order="C")
    full = np.broadcast_to(field, (*lead, count)).reshape(-1, count)
    return np.ascontiguousarray(full.T)


def _matrices(compliance: Array, lead: tuple[int, ...], count: int, sign: Array) -> Array:
    """Compliance (rows, n, n) between forces counted in each spring's own sense."""
    if compliance.size == count * count and sign.shape[-1] == 1:
        full = compliance.reshape(1, count, count)
    else:
        full = np.broadcast_to(compliance, (*lead, count, count)).reshape(-1, count, count)
    sense = np.ascontiguousarray(sign.T)
    result: Array = full * sense[:, :, None] * sense[:, None, :]
    return result


def _about_the_middle(
    fields: tuple[Array, ...], flexibility: Array | None, row: Indices, batch: tuple[int, ...]
) -> Layout:
    x, y, stiffness, sign, gap = fields
    columns = max(x.shape[-1], y.shape[-1], sign.shape[-1])
    place = np.empty((len(x), 2, columns))
    place[:, 0], place[:, 1] = x, y
    centre = total(place) / len(x)
    away = place - centre
    length = np.max(np.abs(away), axis=(0, 1))
    length = np.where(length == 0, 1.0, length)
    basis = np.empty((len(x), 3, columns))
    basis[:, 0] = sign
    basis[:, 1:] = sign[:, None] * (away / length)
    known = np.all(np.isfinite(basis), axis=(0, 1)) & np.all(np.isfinite(gap), axis=0)
    known = known & np.all(np.isfinite(stiffness) & (stiffness > 0), axis=0)
    if flexibility is not None:
        known = known & np.all(np.isfinite(flexibility), axis=(1, 2))
    return Layout(
        basis,
        np.ascontiguousarray(basis[:, FIRST] * basis[:, SECOND]),
        stiffness,
        gap,
        sign,
        centre,
        length,
        flexibility,
        known,
        row,
        batch,
    )


def local_load(layout: Layout, force: Array, moment_x: Array, moment_y: Array) -> Array:
    """Load (3, items) about the middle of the supports, moments over their size [N]."""
    centre, length = pick(layout.centre, layout.row), pick(layout.length, layout.row)
    about_x = (moment_x - force * centre[0]) / length
    about_y = (moment_y - force * centre[1]) / length
    return np.array([force, about_x, about_y])


def flat(value: Any, batch: tuple[int, ...]) -> Array:
    """A load as one number an item."""
    return np.array(np.broadcast_to(np.asarray(value, float), batch).ravel())


def flat_sag(free_sag: Any, layout: Layout) -> Array:
    """The body's free sag at the supports, (n, items) or (n, 1)."""
    sag = np.atleast_1d(np.asarray(free_sag, float))
    count = len(layout.basis)
    if sag.size == sag.shape[-1]:
        return np.array(np.broadcast_to(sag.reshape(-1, 1), (count, 1)), order="C")
    full = np.broadcast_to(sag, (*layout.batch, count)).reshape(-1, count)
    return np.ascontiguousarray(full.T)


def movement_at_origin(layout: Layout, row: Any, movement: Array) -> Array:
    """Sink at the origin and slopes (3, columns) of a movement in local coordinates."""
    centre, length = pick(layout.centre, row), pick(layout.length, row)
    slope_x, slope_y = movement[1] / length, movement[2] / length
    return np.array([movement[0] - slope_x * centre[0] - slope_y * centre[1], slope_x, slope_y])
