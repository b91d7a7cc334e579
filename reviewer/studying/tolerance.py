"""Tolerances: how each finding scatters when the values with a band lie anywhere in it."""

from collections.abc import Container, Iterable, Sequence
from dataclasses import replace
from itertools import product
from math import nan

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.judging.finding import Finding
from reviewer.judging.reviewed import Review
from reviewer.judging.rule import Rule
from reviewer.judging.scatter import Scatter
from reviewer.studying.bands import Band, bands_of
from reviewer.studying.blocks import Columns, job_of, searching, slots_of, touched_by
from reviewer.studying.screening import UNSEEN, checked, screened
from reviewer.studying.study import FAILS, HELD, OPEN, Course, Key, hold_back, key_of

SAMPLES = 20_000
KEPT = 2  # cases of each finding
MOST_CORNERS = 6  # bands of which all combinations of ends are tried

Array = NDArray[np.float64]


def with_scatter(
    review: Review,
    rules: Sequence[Rule],
    samples: int = SAMPLES,
    of: Container[str] | None = None,
) -> Review:
    """The review with what tolerances make of each finding that they touch.

    Where rules are named, of their findings alone.
    """
    if review.derived is None:
        return review
    wanted = [each for each in review.findings if of is None or each.rule in of]
    found = scatter_of(review.derived, rules, wanted, samples)
    told = [replace(each, scatter=found.get(key_of(each))) for each in review.findings]
    return replace(review, findings=tuple(told))


def scatter_of(
    derived: Derived, rules: Sequence[Rule], findings: Iterable[Finding], samples: int = SAMPLES
) -> dict[Key, Scatter]:
    """How the findings scatter that depend on a value with a tolerance."""
    bands = bands_of(derived)
    touched = touched_by(derived, {band.given.field[:2] for band in bands})
    keys = [
        key_of(each)
        for each in findings
        if each.requires
        and each.verdict in ("pass", "fail", "open")
        and touched.intersection(slots_of(derived, rules, key_of(each)))
    ]
    if not keys:
        return {}
    effects = effects_of(derived, rules, bands, keys)
    corners = corners_of(derived, rules, bands, keys, effects)
    sampled = sampled_over(derived, rules, bands, keys, samples)
    return {key: _scatter(bands, sampled[key], corners[key], effects[key]) for key in keys}


def sampled_over(
    derived: Derived,
    rules: Sequence[Rule],
    bands: Sequence[Band],
    keys: Sequence[Key],
    samples: int,
) -> dict[Key, Course]:
    """Some findings at so many samples of the bands, the nominal one first."""
    columns: Columns = {band.given.field: band.samples(samples) for band in bands}
    searched = searching(derived)
    slow = {key for key in keys if searched.intersection(slots_of(derived, rules, key))}
    quick = [key for key in keys if key not in slow]
    found: dict[Key, Course] = {}
    if quick:
        found |= checked(job_of(derived, rules, quick, KEPT), columns, np.arange(samples))[0]
    if slow:
        found |= screened(job_of(derived, rules, slow, KEPT), columns, _scaled(bands, columns))
    names = {rule.name: place for place, rule in enumerate(rules)}
    ordered = sorted(found.values(), key=lambda each: names[each.rule.name])
    unseen = {course.key: course.verdict == UNSEEN for course in ordered}
    hold_back(derived, ordered)
    for course in ordered:
        course.verdict[unseen[course.key]] = UNSEEN
    return found


def _scaled(bands: Sequence[Band], columns: Columns) -> Array:
    """All samples (samples, bands), each band from -1 to 1."""
    scaled = [
        (columns[band.given.field] - (band.high + band.low) / 2) / ((band.high - band.low) / 2)
        for band in bands
    ]
    return np.stack(scaled, axis=1)


def effects_of(
    derived: Derived, rules: Sequence[Rule], bands: Sequence[Band], keys: Sequence[Key]
) -> dict[Key, Array]:
    """For each finding how far each band moves its utilisation from its lower end to its upper."""
    count = len(bands)
    columns = {}
    for index, band in enumerate(bands):
        column = np.full(2 * count, band.nominal)
        column[index], column[count + index] = band.high, band.low
        columns[band.given.field] = column
    found = job_of(derived, rules, keys, KEPT).run(columns, np.arange(2 * count))
    return {
        key: np.nan_to_num(each.utilisation[:count] - each.utilisation[count:])
        for key, each in found.items()
    }


def corners_of(
    derived: Derived,
    rules: Sequence[Rule],
    bands: Sequence[Band],
    keys: Sequence[Key],
    effects: dict[Key, Array],
) -> dict[Key, Course]:
    """Every finding at the corners that are tried, where each band stands at one of its ends.

    Of few bands all corners are; of more, for each finding that to which the bands move it one by
    one.
    """
    if len(bands) <= MOST_CORNERS:
        upper = np.array(list(product((False, True), repeat=len(bands))))
    else:
        upper = np.unique(np.array([effects[key] > 0 for key in keys]), axis=0)
    columns = {
        band.given.field: np.where(upper[:, index], band.high, band.low)
        for index, band in enumerate(bands)
    }
    return checked(job_of(derived, rules, keys, KEPT), columns, np.arange(len(upper)))[0]


def _scatter(bands: Sequence[Band], sampled: Course, corners: Course, effects: Array) -> Scatter:
    squares = effects * effects
    whole = float(squares.sum())
    leading = int(np.argmax(squares))
    judged = sampled.verdict[sampled.verdict != UNSEEN]
    open_somewhere = bool((corners.verdict == OPEN).any())
    tried = np.append(corners.utilisation, sampled.utilisation[:1])  # the middle may be the worst
    known = tried[~np.isnan(tried)]
    return Scatter(
        corner=nan if open_somewhere or not len(known) else float(known.max()),
        corner_fails=None if open_somewhere else bool((corners.verdict == FAILS).any()),
        share=float(np.mean(judged == FAILS)),
        unknown=float(np.mean(np.isin(judged, (OPEN, HELD)))),
        samples=len(judged),
        band=bands[leading].name if whole > 0 else None,
        part=float(squares[leading] / whole) if whole > 0 else 0.0,
    )
