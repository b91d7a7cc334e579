"""Samples of a stack in groups: those that share all choices on which a formula depends."""

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Indices = NDArray[np.intp]


@dataclass(frozen=True, eq=False)
class Groups:
    """The group of each sample, and the samples of each group in order."""

    which: Indices
    members: tuple[Indices, ...]

    @property
    def is_one(self) -> bool:
        """Whether all samples are in one group."""
        return len(self.members) == 1

    def finer(self, marks: Iterable[NDArray[Any]]) -> "Groups":
        """The groups divided further, by small whole numbers that mark the samples."""
        key = self.which
        for each in marks:
            key = key * (int(each.max()) + 1) + each
        return groups_of(key)


def groups_of(marks: Any) -> Groups:
    """The groups of samples that are marked alike, in order of their marks."""
    _, which = np.unique(marks, return_inverse=True)
    which = which.ravel()
    return Groups(which, tuple(np.flatnonzero(which == each) for each in range(which.max() + 1)))


def marks_of(values: Sequence[Any]) -> Indices:
    """A number for each value, the same for the same: things by what they are, stock by its row."""
    known: dict[Hashable, int] = {}
    return np.array([known.setdefault(_key(value), len(known)) for value in values], np.intp)


def _key(value: Any) -> Hashable:
    plain = value is None or isinstance(value, bool | int | float | str | tuple)
    return (type(value), value) if plain else id(value)
