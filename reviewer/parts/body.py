"""The shape of a part as its rows give it: bodies that are made when something asks for one.

A kind that knows its own outline says so with `shape=known_shape(MAKER, NEEDS)`. The maker takes
plain floats and choices by name (those of NEEDS, as a row's formula would) and returns a
`reviewer.geometry.outline.Body`, or None where it has no shape. Its frame is that of the part: the
origin where the part stands on its carrier (at.x, at.y); of several parts around an axis that is
the axis, and the body is the first of them, with `count` copies. Levels are above the floor; what
moves is drawn where travels are 0. Where a design gives `outline`, that is used instead.

`body` is a row of every shaped part: its value is a `Bodies`, and `bodies.at(sample, case)` the
Body there, or None where a measure is unknown or is no outline.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from reviewer.geometry.outline import Body
from reviewer.parts.row import Row

KNOWN = "body.known"


@dataclass(frozen=True, slots=True, eq=False)
class Bodies:
    """A body for each sample and case: how it is made, and the measures to make it of."""

    make: Callable[..., Body | None]
    measures: Mapping[str, Any]

    def at(self, sample: int = 0, case: int = 0) -> Body | None:
        """The body of one sample in one case; None where a measure is missing or does not fit."""
        picked = {name: _picked(each, sample, case) for name, each in self.measures.items()}
        if any(isinstance(each, float) and np.isnan(each) for each in picked.values()):
            return None
        try:
            return self.make(**picked)
        except ValueError:
            return None


def _picked(value: Any, sample: int, case: int) -> Any:
    """One entry of a number over (samples, cases); anything else as it is."""
    if not isinstance(value, np.ndarray):
        return value
    array = np.atleast_2d(value)
    found = array[sample if array.shape[0] > 1 else 0, case if array.shape[1] > 1 else 0]
    return float(found) if array.dtype.kind == "f" else found


def known_shape(make: Callable[..., Body | None], needs: Mapping[str, str]) -> Row:
    """The row with the body that a kind knows from its own measures."""

    def bodies(**measures: Any) -> Bodies:
        return Bodies(make, measures)

    return Row(KNOWN, "", "its shape, from its own measures", formula=bodies, needs=needs)
