"""What a design consists of: parts on their carriers, loads on their parts."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from reviewer.notation.problem import Place
from reviewer.notation.quantity import Quantity
from reviewer.notation.units import Unit
from reviewer.parts.board import board_path
from reviewer.parts.kind import Kind
from reviewer.stock.sheets import Sheet


@dataclass(frozen=True, slots=True)
class GivenValue:
    """A value as a file gives it: in SI or as a static choice, with its text and place.

    `sheet` is the sheet of stock that the text names, of its thickness and of its material.
    """

    value: Any
    text: str
    place: Place
    quantity: Quantity | None = None
    sheet: Sheet | None = None
    calibrated_by: str = ""  # the test that the value is from, where one calibrates it


@dataclass(frozen=True, slots=True)
class Part:
    """A named component: its kind, what it gives, and what carries it.

    A part that follows from others is `of` those.
    """

    name: str
    kind: Kind
    given: Mapping[str, GivenValue]
    place: Place
    carried_by: tuple[str, ...] = ()
    of: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Combination:
    """Factors on own weight and on each load that act together."""

    name: str
    own_weight: float
    factors: Mapping[str, float]
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Configuration:
    """A position of the mechanism: the given numbers that it overrides, by part and path."""

    name: str
    overrides: Mapping[tuple[str, str], GivenValue] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Concession:
    """A failure accepted on purpose: of which rule on which part, by whom, why, until when.

    Of a rule on a pair it may name the other part too.
    """

    rule: str
    part: str
    by: str
    why: str
    until: str | None
    place: Place
    other: str | None = None


@dataclass(frozen=True, slots=True)
class Measured:
    """One measurement of what was built: of which quantity, how loaded, and what was read.

    `under` are the loads that stood on it, or one combination; own weight alone where it is empty.
    `factor` is on the loads; None of a proof step that takes the limit for it. `zeroed`: read from
    where it stood under its own weight. `revision`, `of` (a file) and `fingerprint` (marks by part)
    tell on what it was measured. `calibrates` is the part and path of the value that it settles.
    """

    name: str
    part: str
    path: str
    under: tuple[str, ...]
    configuration: int
    step: str
    factor: float | None
    zeroed: bool
    value: GivenValue
    by: str
    on: str
    revision: str | None
    of: str | None
    fingerprint: Mapping[str, str]
    proven: bool
    calibrates: tuple[str, str] | None
    place: Place

    @property
    def quantity(self) -> str:
        """The name of what was measured."""
        return f"{self.part}.{self.path}"


@dataclass(frozen=True, slots=True)
class Design:
    """One revision of one thing to be built, as its file gives it.

    `files` are the lines and the unit of bare lengths of each file that it is merged from, its own
    among them, where it is based on another.
    """

    path: str
    facts: Part
    parts: Mapping[str, Part]
    loads: Mapping[str, Part]
    configurations: tuple[Configuration, ...] = (Configuration(""),)
    combinations: tuple[Combination, ...] | None = None
    concessions: tuple[Concession, ...] = ()
    measured: tuple[Measured, ...] = ()
    lines: tuple[str, ...] = ()
    units: tuple[Unit, ...] = ()
    files: Mapping[str, tuple[tuple[str, ...], Unit | None]] = field(default_factory=dict)

    @property
    def has_bands(self) -> bool:
        """Whether the file gives any value with a tolerance."""
        owners = (*self.parts.values(), *self.loads.values())
        values = [value for owner in owners for value in owner.given.values()]
        values += [value for each in self.configurations for value in each.overrides.values()]
        return any(
            value.quantity is not None and value.quantity.low < value.quantity.high
            for value in values
        )

    def source(self, part: str, path: str) -> tuple[str, str]:
        """Where the value of a field stands: on the part, or on the board that it is cut from."""
        owner, named = self.parts.get(part), board_path(path)
        if owner is None or named is None or path in owner.given or named not in owner.given:
            return part, path
        return str(owner.given[named].value), path.rpartition(".")[2]

    def lines_of(self, place: Place) -> tuple[str, ...]:
        """The lines of the file in which a place is."""
        return self.files[place.path][0] if place.path in self.files else self.lines

    def lengths_of(self, place: Place) -> str | None:
        """The unit of bare lengths in the file in which a place is, if it declares one."""
        if place.path in self.files:
            unit = self.files[place.path][1]
            return unit.symbol if unit else None
        declared = self.facts.given.get("lengths")
        return str(declared.value) if declared else None

    @property
    def name(self) -> str:
        """The design's name."""
        given = self.facts.given.get("design")
        return str(given.value) if given else self.path

    @property
    def revision(self) -> str | None:
        """The revision's mark, if the file gives one."""
        given = self.facts.given.get("revision")
        return str(given.value) if given else None
