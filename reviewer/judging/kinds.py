"""What kind of value an expression has: a number of a dimension, a text, a truth, or many."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Protocol

from reviewer.notation.dimension import Dimension, words


@dataclass(frozen=True, slots=True)
class Texts:
    """A text; `known` are the words that it can be, if they are a closed list."""

    known: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Truths:
    """A yes or no."""


One = Dimension | Texts | Truths


@dataclass(frozen=True, slots=True)
class Collection:
    """One value for each member of a collection; `over` is the binder's name (`arms`)."""

    of: One
    over: str


Kind = One | Collection

TEXT = Texts()
TRUTH = Truths()


class Vocabulary(Protocol):
    """The names that an expression may use."""

    def __call__(self, name: str) -> Kind | None:
        """Return what a name stands for, or None if it is not known."""
        ...

    def known(self) -> Iterable[str]:
        """Return every name, to find the one that was probably meant."""
        ...


def said(kind: One) -> str:
    """Name a kind in a reader's words."""
    if isinstance(kind, Dimension):
        return words(kind)
    return "a text" if isinstance(kind, Texts) else "a condition"


class Names(dict[str, Kind]):
    """A vocabulary held in a dictionary."""

    def __call__(self, name: str) -> Kind | None:
        """Return what a name stands for, or None if it is not known."""
        return self.get(name)

    def known(self) -> Iterable[str]:
        """Return every name."""
        return self.keys()
