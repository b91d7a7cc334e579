"""Things that are made from numbers over samples and cases when one of them is asked for."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np


@dataclass(frozen=True, slots=True, eq=False)
class Lazily:
    """How a thing is made, and the values that it is made of, over samples and cases.

    Values that are themselves made lazily are made for the same sample and case.
    """

    make: Callable[..., Any]
    measures: Mapping[str, Any]

    def at(self, sample: int = 0, case: int = 0) -> Any:
        """The thing in one case; None where a number is unknown or the values do not fit."""
        picked = {name: picked_of(each, sample, case) for name, each in self.measures.items()}
        if any(isinstance(each, float) and np.isnan(each) for each in picked.values()):
            return None
        try:
            return self.make(**picked)
        except ValueError:
            return None

    def shape(self) -> tuple[int, int]:
        """Over how many samples and cases its numbers differ."""
        return shape_of(self.measures.values())


def shape_of(values: Any) -> tuple[int, int]:
    """Over how many samples and cases any of some values differs."""
    sizes = [(1, 1)]
    for each in values:
        if isinstance(each, np.ndarray) and each.ndim == 2:
            sizes.append(each.shape)
        elif hasattr(each, "shape") and callable(each.shape):
            sizes.append(each.shape())
    return max(size[0] for size in sizes), max(size[1] for size in sizes)


def picked_of(value: Any, sample: int, case: int) -> Any:
    """One entry of a number over (samples, cases), or what is made there; else as it is."""
    if isinstance(value, np.ndarray):
        array = np.atleast_2d(value)
        found = array[sample if array.shape[0] > 1 else 0, case if array.shape[1] > 1 else 0]
        return float(found) if array.dtype.kind == "f" else found
    return value.at(sample, case) if hasattr(value, "at") else value
