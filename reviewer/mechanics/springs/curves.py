"""Greatest tilt, and sink at a rim, along an arc: no sinusoids, but smooth."""

import numpy as np

from reviewer.mechanics.springs.arcs import LEVEL
from reviewer.mechanics.springs.layout import Array, take

ROUNDS = 5  # of Newton's method, from within a few degrees


def curve_peaks(
    moved: Array, sink: Array, tilt: Array, back: Array, ahead: Array
) -> tuple[Array, Array]:
    """Greatest of sink share * z + tilt share * slope on arcs, and where it is (t).

    moved : (3, orders, columns) z and slopes; sink, tilt, back, ahead : (columns)
    """
    ends = (-back, np.zeros_like(back), ahead)
    values, slopes, _ = zip(*(_value(moved, sink, tilt, end) for end in ends), strict=True)
    best, place = values[1], ends[1]
    for value, end in ((values[0], ends[0]), (values[2], ends[2])):
        better = value > best + LEVEL * np.abs(best)
        best, place = np.where(better, value, best), np.where(better, end, place)
    humps = [np.flatnonzero((slopes[k] > 0) & (slopes[k + 1] < 0)) for k in range(2)]
    which = np.concatenate(humps)
    low, high = (
        np.concatenate([ends[k + side][hump] for k, hump in enumerate(humps)]) for side in (0, 1)
    )
    own = take(moved, which), sink[which], tilt[which]
    t = _top(*own, low, high)
    value = _value(*own, t)[0]
    better = np.flatnonzero(value > best[which] + LEVEL * np.abs(best[which]))
    best[which[better]], place[which[better]] = value[better], t[better]
    return best, place


def _top(moved: Array, sink: Array, tilt: Array, low: Array, high: Array) -> Array:
    """Where the slope passes zero, by Newton's method kept between its ends."""
    t = (low + high) / 2
    for _ in range(ROUNDS):
        _, slope, bend = _value(moved, sink, tilt, t)
        low, high = np.where(slope > 0, t, low), np.where(slope > 0, high, t)
        step = t - slope * (1 + t * t) / (2 * bend)
        t = np.where((step >= low) & (step <= high), step, (low + high) / 2)
    return t


def _value(moved: Array, sink: Array, tilt: Array, t: Array) -> tuple[Array, Array, Array]:
    """Value at t, with its first and second derivative by the angle."""
    whole = 1 + t * t
    sine, versine = 2 * t / whole, 2 * t * t / whole
    cosine = 1 - versine
    now = moved[:, 0] + moved[:, 1] * sine + moved[:, 2] * versine
    first = moved[:, 1] * cosine + moved[:, 2] * sine
    second = moved[:, 2] * cosine - moved[:, 1] * sine
    lean = np.sqrt(now[1] * now[1] + now[2] * now[2])
    safe = np.where(lean > 0, lean, 1.0)
    pace = (now[1] * first[1] + now[2] * first[2]) / safe
    bend = first[1] * first[1] + first[2] * first[2] + now[1] * second[1] + now[2] * second[2]
    return (
        sink * now[0] + tilt * lean,
        sink * first[0] + tilt * pace,
        sink * second[0] + tilt * (bend - pace * pace) / safe,
    )
