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
from typing import TYPE_CHECKING, Any

from reviewer.parts.lazily import Lazily
from reviewer.parts.row import Row

if TYPE_CHECKING:
    from reviewer.geometry.outline import Body

KNOWN = "body.known"


class Bodies(Lazily):
    """A body for each sample and case; None where a measure is missing or does not fit."""

    def all(self, sample: int = 0, case: int = 0) -> "tuple[Body, ...]":
        """The bodies of one sample in one case: one, or none where it is unknown."""
        found = self.at(sample, case)
        return () if found is None else (found,)


def known_shape(make: "Callable[..., Body | None]", needs: Mapping[str, str]) -> Row:
    """The row with the body that a kind knows from its own measures."""

    def bodies(**measures: Any) -> Bodies:
        return Bodies(make, measures)

    return Row(KNOWN, "", "its shape, from its own measures", formula=bodies, needs=needs)
