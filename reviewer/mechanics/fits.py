"""Sizes with tolerances: ISO 286 limits and fits, clearance holes, and what their play becomes."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reviewer.mechanics.domain import silent
from reviewer.mechanics.formula import Number, valid_when

# ISO 286-1 Table 1: nominal sizes up to and including, mm; standard tolerances IT5 to IT12, um.
_STEPS = np.array([3, 6, 10, 18, 30, 50, 80, 120]) * 1e-3
_TOLERANCES = {
    5: (4, 5, 6, 8, 9, 11, 13, 15),
    6: (6, 8, 9, 11, 13, 16, 19, 22),
    7: (10, 12, 15, 18, 21, 25, 30, 35),
    8: (14, 18, 22, 27, 33, 39, 46, 54),
    9: (25, 30, 36, 43, 52, 62, 74, 87),
    10: (40, 48, 58, 70, 84, 100, 120, 140),
    11: (60, 75, 90, 110, 130, 160, 190, 220),
    12: (100, 120, 150, 180, 210, 250, 300, 350),
}
# ISO 286-1 Tables 4 and 5, shafts, um: upper deviation of f, g, h; lower of k (up to IT7), m, n, p.
_UPPER = {
    "f": (-6, -10, -13, -16, -20, -25, -30, -36),
    "g": (-2, -4, -5, -6, -7, -9, -10, -12),
    "h": (0, 0, 0, 0, 0, 0, 0, 0),
}
_LOWER = {
    "k": (0, 1, 1, 1, 2, 2, 2, 3),
    "m": (2, 4, 6, 7, 8, 9, 11, 13),
    "n": (4, 8, 10, 12, 15, 17, 20, 23),
    "p": (6, 12, 15, 18, 22, 26, 32, 37),
}


class Limits(NamedTuple):
    """Deviations from the nominal size."""

    upper: Number
    lower: Number


class Clearance(NamedTuple):
    """Room between a shaft and its hole, below zero where they press."""

    least: Number
    largest: Number


_IN_TABLE = valid_when(lambda size: (size > 0) & (size <= 0.120), "the table ends at 120 mm")


def _entry(size: Number, row: tuple[int, ...]) -> NDArray[np.float64]:
    step = np.searchsorted(_STEPS, np.asarray(size) - 1e-9)
    entries: NDArray[np.float64] = np.asarray(row)[np.minimum(step, len(_STEPS) - 1)] * 1e-6
    return entries


def _grade(grade: Number) -> tuple[int, ...]:
    found = _TOLERANCES.get(int(grade))
    if found is None:
        raise ValueError(f"tolerance grade IT{int(grade)} is not here; known are IT5 to IT12")
    return found


@silent
@_IN_TABLE
def standard_tolerance(size: Number, grade: Number) -> Number:
    """Width of a standard tolerance.

    ISO 286-1, Table 1.

    Parameters
    ----------
    size : nominal size, up to 120 mm [m]
    grade : number of the grade, one of 5 to 12 [1]

    Returns
    -------
    tolerance : IT [m]

    Notes
    -----
    Raises ValueError for a grade that is not here.

    >>> round(standard_tolerance(8e-3, 7) * 1e6)
    15
    """
    return _entry(size, _grade(grade))


@silent
@_IN_TABLE
def shaft_limits(size: Number, letter: str, grade: Number) -> Limits:
    """Deviations of a toleranced shaft.

    ISO 286-1, Tables 1, 4 and 5.

    Parameters
    ----------
    size : nominal size, up to 120 mm [m]
    letter : fundamental deviation, one of f g h js k m n p [1]
    grade : number of the grade, one of 5 to 12 [1]

    Returns
    -------
    upper : upper deviation [m]
    lower : lower deviation [m]

    Notes
    -----
    Raises ValueError for a letter or grade that is not here. From IT8 on k begins at zero.

    >>> limits = shaft_limits(8e-3, "g", 6)
    >>> round(limits.upper * 1e6), round(limits.lower * 1e6)
    (-5, -14)
    """
    width = _entry(size, _grade(grade))
    if letter == "js":
        return Limits(0.5 * width, -0.5 * width)
    if letter in _UPPER:
        upper = _entry(size, _UPPER[letter])
        return Limits(upper, upper - width)
    if letter not in _LOWER:
        known = ", ".join(sorted([*_UPPER, *_LOWER, "js"]))
        raise ValueError(f"fundamental deviation {letter} is not here; known are {known}")
    above_zero = not (letter == "k" and grade > 7)
    lower = _entry(size, _LOWER[letter]) * above_zero
    return Limits(lower + width, lower)


@silent
@_IN_TABLE
def hole_limits(size: Number, grade: Number) -> Limits:
    """Deviations of a hole of class H.

    ISO 286-1, Table 1.

    Parameters
    ----------
    size : nominal size, up to 120 mm [m]
    grade : number of the grade, one of 5 to 12 [1]

    Returns
    -------
    upper : upper deviation [m]
    lower : lower deviation, zero [m]

    Notes
    -----
    Raises ValueError for a grade that is not here.

    >>> round(hole_limits(8e-3, 7).upper * 1e6)
    15
    """
    width = _entry(size, _grade(grade))
    return Limits(width, 0.0 * width)


@silent
@_IN_TABLE
def fit_clearance(size: Number, letter: str, shaft_grade: Number, hole_grade: Number) -> Clearance:
    """Clearance of a shaft in a hole of class H.

    ISO 286-1, 3 and Tables 1, 4 and 5.

    Parameters
    ----------
    size : nominal size, up to 120 mm [m]
    letter : fundamental deviation of the shaft, one of f g h js k m n p [1]
    shaft_grade : number of the shaft's grade [1]
    hole_grade : number of the hole's grade [1]

    Returns
    -------
    least : on diameter, below zero for interference [m]
    largest : on diameter [m]

    Notes
    -----
    >>> clearance = fit_clearance(8e-3, "g", 6, 7)
    >>> round(clearance.least * 1e6), round(clearance.largest * 1e6)
    (5, 29)
    """
    shaft, hole = shaft_limits(size, letter, shaft_grade), hole_limits(size, hole_grade)
    return Clearance(hole.lower - shaft.upper, hole.upper - shaft.lower)
