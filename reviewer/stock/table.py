"""A table of stock: rows by name, which a shop or a design can add to without changing it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields
from difflib import get_close_matches
from typing import Any, ClassVar, Generic, TypeVar

from reviewer.notation.nearest import LONGEST
from reviewer.notation.plain import plain

UNKNOWN = math.nan


class StockError(ValueError):
    """A row that cannot stand in a table: which row, what was found, what is expected."""


# Letters that are taken for digits: 600l, 60O1.
DIGITS = str.maketrans({"O": "0", "o": "0", "l": "1", "I": "1"})


class UnknownStock(LookupError):
    """A name that no row of a table has, with the nearest names that it does have.

    `subject` is what the table lists ("material"), `name` is the text as it was asked for, and
    `nearest` are the names most like it, best first.
    """

    def __init__(self, subject: str, name: str, nearest: tuple[str, ...], known: str) -> None:
        super().__init__(subject, name, nearest, known)
        self.subject = subject
        self.name = name
        self.nearest = nearest
        self.known = known

    def __str__(self) -> str:
        quoted = " or ".join(f'"{each}"' for each in self.nearest)
        hint = f"the nearest is {quoted}" if quoted else f"the table has {self.known}"
        return f'no {self.subject} is called "{plain(self.name, 60)}"; {hint}'


class Choice:
    """A frozen dataclass with a name, of which a design picks one.

    Two are equal when all their fields are, an unknown (NaN) being equal to an unknown, so that
    one sent to another process is still the same choice there.
    """

    __slots__ = ()

    def __eq__(self, other: object) -> bool:
        if self is other:
            return True
        if type(other) is not type(self):
            return NotImplemented
        return self._key() == other._key()

    def __hash__(self) -> int:
        return hash(self.name)  # type: ignore[attr-defined]

    def _key(self) -> tuple[Any, ...]:
        values = (getattr(self, field.name) for field in fields(self))  # type: ignore[arg-type]
        return tuple(None if value != value else value for value in values)


class StockRow(Choice):
    """What every row of every table has: a name, and where its numbers are from."""

    __slots__ = ()
    plausible: ClassVar[Mapping[str, tuple[float, float]]] = {}
    name: str
    source: str
    aliases: tuple[str, ...]


Row = TypeVar("Row", bound=StockRow)


def fold(name: str) -> str:
    """The form in which names are compared: no case, and a hyphen is a space.

    >>> fold("  Yellow-Poplar "), fold("6063-T5")
    ('yellow poplar', '6063 t5')
    """
    return " ".join(name.casefold().replace("-", " ").replace("_", " ").split())


class Table(Generic[Row]):
    """Rows of one kind by name and alias, in the order in which they were given."""

    def __init__(self, subject: str, rows: Iterable[Row]) -> None:
        self.subject = subject
        self.rows = tuple(rows)
        self._by_name: dict[str, Row] = {}
        for row in self.rows:
            check(subject, row)
            for name in dict.fromkeys(fold(each) for each in (row.name, *row.aliases)):
                self._claim(name, row)

    def _claim(self, name: str, row: Row) -> None:
        holder = self._by_name.setdefault(name, row)
        if holder is not row:
            raise StockError(
                f'{self.subject} "{row.name}": the name "{name}" is taken by '
                f'"{holder.name}"; give the new row a name of its own'
            )

    def __iter__(self) -> Iterator[Row]:
        return iter(self.rows)

    def __len__(self) -> int:
        return len(self.rows)

    def __contains__(self, name: str) -> bool:
        return fold(name) in self._by_name

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the rows, aliases left out, in the table's order."""
        return tuple(row.name for row in self.rows)

    def find(self, name: str) -> Row:
        """The row of this name or alias; case, spaces and hyphens do not count.

        Raises UnknownStock with the nearest names.
        """
        try:
            return self._by_name[fold(name)]
        except KeyError:
            raise UnknownStock(self.subject, name, self.nearest(name), self._known()) from None

    def nearest(self, name: str) -> tuple[str, ...]:
        """Up to three names or aliases of the table that are most like `name`, best first."""
        meant = name.translate(DIGITS)
        if meant != name and fold(meant) in self._by_name:
            return (self._by_name[fold(meant)].name,)
        if len(name) > LONGEST:
            return ()
        written = {fold(each): each for row in self.rows for each in (row.name, *row.aliases)}
        return tuple(written[each] for each in get_close_matches(fold(name), sorted(written)))

    def _known(self) -> str:
        shown = ", ".join(self.names[:8])
        more = len(self.rows) - 8
        return f"{shown} and {more} more" if more > 0 else shown or "no rows"

    def with_rows(self, more: Iterable[Row]) -> Table[Row]:
        """A new table with rows added at its end; this one stays as it is.

        Raises StockError for a row without a source, with an implausible number, or with a name
        that is taken.
        """
        return Table(self.subject, (*self.rows, *more))


def check(subject: str, row: StockRow) -> None:
    """Raise StockError unless the row has a name, a source and plausible numbers.

    The bounds in `plausible` are wide: they catch a wrong unit, not a wrong measurement.
    """
    if not row.name.strip():
        raise StockError(f"a {subject} has no name; expected the name it is sold by")
    if not row.source.strip():
        raise StockError(
            f'{subject} "{row.name}" has no source; expected a standard, a handbook table, '
            'a measurement or "common practice"'
        )
    for field, (least, most) in row.plausible.items():
        value = getattr(row, field)
        if value == value and not least <= value <= most:
            raise StockError(
                f'{subject} "{row.name}": {field} is {value:g}; expected {least:g} to {most:g} '
                "in SI units, or nothing where it is unknown"
            )
