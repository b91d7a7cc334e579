"""A response surface: a polynomial through few exact samples that stands in for many."""

from dataclasses import dataclass
from itertools import combinations_with_replacement

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

MOST_FULL = 12  # values up to which all products of two are terms
HELD_OUT = 4  # every so many-th sample tests the surface instead of making it
SAFETY = 3.0  # times the largest error that was seen


@dataclass(frozen=True)
class Surface:
    """Coefficients of 1, of each value, of their squares and products; and how far it may err.

    Box and Wilson, On the experimental attainment of optimum conditions (1951): a second-order
    polynomial fitted by least squares.
    """

    coefficients: Array
    error: float

    def at(self, values: Array) -> Array:
        """The surface at some values, (samples, values), each scaled to its band."""
        terms: Array = np.einsum("st,t->s", terms_of(values), self.coefficients)
        return terms


def terms_of(values: Array) -> Array:
    """All terms of the polynomial (samples, terms)."""
    count = values.shape[1]
    pairs = (
        combinations_with_replacement(range(count), 2)
        if count <= MOST_FULL
        else ((index, index) for index in range(count))
    )
    columns = [np.ones(len(values)), *values.T, *(values[:, i] * values[:, j] for i, j in pairs)]
    return np.stack(columns, axis=1)


def terms_count(values: int) -> int:
    """How many terms the polynomial of so many values has."""
    squares = values * (values + 1) // 2 if values <= MOST_FULL else values
    return 1 + values + squares


def fitted(values: Array, answers: Array) -> Surface:
    """The surface through exact answers at some values; its error from samples held out."""
    terms = terms_of(values)
    tests = np.arange(len(answers)) % HELD_OUT == HELD_OUT - 1
    first: Array = np.asarray(
        np.linalg.lstsq(terms[~tests], answers[~tests], rcond=None)[0], np.float64
    )
    missed = np.abs(np.einsum("st,t->s", terms[tests], first) - answers[tests])
    whole: Array = np.asarray(np.linalg.lstsq(terms, answers, rcond=None)[0], np.float64)
    left = np.abs(np.einsum("st,t->s", terms, whole) - answers)
    return Surface(whole, SAFETY * float(max(missed.max(initial=0.0), left.max(initial=0.0))))
