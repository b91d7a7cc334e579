"""A row: one field or quantity of a kind, declared once.

Schema, documentation, editor help, reading and the edges of the graph all follow from rows.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from reviewer.notation.dimension import Dimension
from reviewer.notation.units import parse_unit


@dataclass(frozen=True, slots=True)
class Measure:
    """A number with a dimension, written with its unit; bounds in SI."""

    default: str | None = None
    above: float | None = None
    at_least: float | None = None
    at_most: float | None = None
    below: float | None = None
    words: tuple[tuple[str, str], ...] = ()  # words that stand for a value: touching is 0 mm
    unknown: tuple[str, str] | None = None  # the published range that the word unknown gives
    sheet: bool = False  # may be what a sheet is called, as 3/4 birch ply: then what that measures
    example: str = ""


@dataclass(frozen=True, slots=True)
class Count:
    """A whole number: static, so that it may shape the calculation."""

    default: int | None = None
    at_least: int = 1
    at_most: int = 1000


@dataclass(frozen=True, slots=True)
class Choice:
    """One word of a closed list."""

    options: tuple[str, ...]
    default: str | None = None


@dataclass(frozen=True, slots=True)
class Choices:
    """A list of words of a closed list."""

    options: tuple[str, ...]
    default: tuple[str, ...] | None = None


@dataclass(frozen=True, slots=True)
class Stock:
    """The name of a row in a stock table."""

    table: Literal["materials", "bearings", "fasteners"]
    example: str = ""


@dataclass(frozen=True, slots=True)
class Flag:
    """true or false."""

    default: bool | None = False


@dataclass(frozen=True, slots=True)
class Text:
    """Free text, never computed with."""

    default: str | None = None


@dataclass(frozen=True, slots=True)
class Date:
    """A calendar date, written 2026-11-25."""


@dataclass(frozen=True, slots=True)
class PartName:
    """The name of a part of the same design, or of several where `several` is set.

    With `of` "travel" it is the name of a travel.
    """

    several: bool = False
    of: Literal["part", "travel"] = "part"


@dataclass(frozen=True, slots=True)
class Shape:
    """One key out of several, whose value lists the measures named: {tube: [30, 30, 2]}.

    `alternatives` maps each key to the paths of the number rows that its list fills, in order.
    """

    alternatives: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Points:
    """A list of points, each a list of measures: [[0, 0], [120, 40]]; the first of them `grows`.

    `columns` are the rows of the measures; with one column a point is that measure alone, as in
    [142.1, 141.8]. The value is a tuple of points, each a tuple of numbers in SI: static, since the
    number of points shapes the calculation.
    """

    columns: tuple["Row", ...]
    at_least: int = 2
    at_most: int = 100
    grows: bool = True


@dataclass(frozen=True, slots=True)
class Named:
    """A table of things by names of the file's own: {left_pin: {x: 40 mm, holds: [x, y]}}.

    `one` is what a reader calls one of them, `rows` are its fields, without points in their paths
    and without defaults. The value is a tuple of names, each with a tuple of the paths and values
    that the file gives: static, since the number of things shapes the calculation.
    """

    one: str
    rows: tuple["Row", ...]
    at_most: int = 100


Entry = (
    Measure
    | Count
    | Choice
    | Choices
    | Stock
    | Flag
    | Text
    | Date
    | PartName
    | Shape
    | Points
    | Named
)


@dataclass(frozen=True, slots=True)
class Row:
    """A field (given), a derived quantity (formula), or a field that is derived where not given.

    `unit` is the SI unit of a number ("m", "N", "1"); "" for a choice or an object; "text" for a
    derived word, "truth" for a derived yes or no. `needs` names the formula's arguments: a bare
    name is the same part's, `carrier.x` its carrier's, `of.x` that of the part that it is `of`,
    `design.x` the design's, `shop.x` the shop's, `limit.x` a named limit; a trailing "?" lets an
    unknown through as None. `take` reads one field of an object that another row
    computed. `built` rows get their formula and inputs from the load path. `governs` says which
    value over the cases matters.
    `only` marks a number that a Shape's list fills; `because` says why it is unknown although all
    that it needs is known.
    """

    path: str
    unit: str
    says: str
    given: Entry | None = None
    formula: Callable[..., Any] | None = None
    needs: Mapping[str, str] = field(default_factory=dict)
    take: str | None = None
    built: bool = False
    governs: Literal["largest", "least"] = "largest"
    only: bool = False  # a number filled by a Shape's list, without a key of its own
    because: str = ""  # why it is unknown although all that it needs is known
    searches: bool = False  # its formula searches: a study of many samples runs it on few
    read: str = ""  # how a shop reads it off what it built: where, and from what

    @property
    def is_number(self) -> bool:
        """Whether the row holds numbers, with a dimension, over samples and cases."""
        return self.unit not in ("", "text", "truth")

    @property
    def dimension(self) -> Dimension:
        """The dimension of a number row."""
        return parse_unit(self.unit).dimension
