"""Bands: the values that a file gives with a tolerance, and samples of them.

Samples of a normal band have its limits at three standard deviations, those of a uniform one lie
evenly between them. Each band has random numbers of its own, seeded by its name, so that a new
band leaves the draws of the others as they are. Sample 0 is the nominal value.
"""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reviewer.deriving.derived import Derived
from reviewer.notation.written import Spread
from reviewer.parts.row import Measure
from reviewer.studying.given import Given, places_of
from reviewer.studying.normal import normal_quantile

SIGMAS = 3.0  # standard deviations from the middle of a normal band to its limits


@dataclass(frozen=True, slots=True)
class Band:
    """A given value with the limits between which it may lie, in SI units."""

    given: Given
    low: float
    nominal: float
    high: float
    spread: Spread

    @property
    def name(self) -> str:
        """The value's name; of one that a configuration overrides, with the configuration."""
        field = self.given.field
        return self.given.name if len(field) == 2 else f"{self.given.name} ({field[2]})"

    def samples(self, count: int) -> NDArray[np.float64]:
        """So many values, the nominal one first; the others spread evenly over the probability.

        McKay, Beckman and Conover, A comparison of three methods for selecting values of input
        variables (1979): one sample in each of equal strata, in random order.
        """
        values = np.full(count, self.nominal)
        drawn = count - 1
        if drawn > 0:
            seed = int.from_bytes(hashlib.sha256(self.name.encode()).digest()[:8], "big")
            generator = np.random.Generator(np.random.PCG64(seed))
            share = (_shuffled(generator, drawn) + generator.random(drawn)) / drawn
            values[1:] = self.at(share)
        return values

    def at(self, share: NDArray[np.float64]) -> NDArray[np.float64]:
        """The values below which a given share of all lies; never outside the field's bounds."""
        if self.spread == "uniform":
            values = self.low + (self.high - self.low) * share
        else:
            middle, sigma = (self.low + self.high) / 2, (self.high - self.low) / (2 * SIGMAS)
            values = middle + sigma * normal_quantile(share)
        return self._within_bounds(values)

    def _within_bounds(self, values: NDArray[np.float64]) -> NDArray[np.float64]:
        """The values, those outside the field's bounds put to the nearer limit of the band."""
        entry = self.given.row.given
        assert isinstance(entry, Measure)
        for lower in (entry.above, entry.at_least):
            values = values if lower is None else np.where(values <= lower, self.low, values)
        for upper in (entry.below, entry.at_most):
            values = values if upper is None else np.where(values >= upper, self.high, values)
        return values


def _shuffled(generator: np.random.Generator, count: int) -> NDArray[np.float64]:
    """The numbers from 0 in random order, by sorting numbers that any release draws alike."""
    return np.argsort(generator.random(count), kind="stable").astype(float)


def bands_of(derived: Derived) -> tuple[Band, ...]:
    """The values of a design that have a tolerance, in order of name."""
    return tuple(sorted(_bands(derived), key=lambda band: band.name))


def _bands(derived: Derived) -> Iterator[Band]:
    design = derived.design
    for owner in (*design.parts.values(), *design.loads.values()):
        for row in owner.kind.rows:
            if isinstance(row.given, Measure):
                for given in places_of(design, owner, row):
                    quantity = given.value.quantity
                    if quantity is not None and quantity.low < quantity.high:
                        nominal = float(given.value.value)
                        ends = quantity.low, nominal, quantity.high
                        yield Band(given, *ends, quantity.spread)
