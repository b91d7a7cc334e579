"""Named limits: what a rule holds a number against, by who will meet the thing that is built.

A limit has a value for every design and may have others for children, for the public, for a
private home and for the shop's own bench. The most particular one that it states holds, in the
order children, public, private, shop, and says why. Rules name it `limit.fingers_enter`, and so
do rows of a kind.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from reviewer.notation.dimension import Dimension, si_symbol
from reviewer.notation.problem import Place
from reviewer.parts.facts import FACTS, LIMIT
from reviewer.parts.kind import Kind
from reviewer.parts.row import Row
from reviewer.reading.design import Design


@dataclass(frozen=True, slots=True)
class Stated:
    """One value of a limit: in SI and as it is written, why it is so, and from where.

    `by` is who set it, where a shop did.
    """

    value: float
    text: str
    why: str
    source: str
    place: Place
    by: str = ""


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit: its value for every design, and those for a level that has one of its own."""

    name: str
    says: str
    dimension: Dimension
    general: Stated
    levels: Mapping[str, Stated]
    place: Place

    def at(self, levels: Iterable[str]) -> Stated:
        """What holds for a design of some levels: the first of them that has a value."""
        return next((self.levels[each] for each in levels if each in self.levels), self.general)

    def with_stated(self, stated: Stated, levels: Iterable[str]) -> "Limit":
        """The limit with another value: on some levels, or where none is named on all."""
        chosen = tuple(levels)
        if not chosen:
            return replace(self, general=stated, levels={})
        return replace(self, levels={**self.levels, **dict.fromkeys(chosen, stated)})


@dataclass(frozen=True)
class Limits:
    """The limits in force, by name."""

    by_name: Mapping[str, Limit]

    def beside(self, others: "Limits") -> "Limits":
        """These limits and others; of two with the same name the other one."""
        joined = {**self.by_name, **others.by_name}
        return self if joined == self.by_name else Limits(joined)

    def dimensions(self) -> dict[str, Dimension]:
        """What each stands for in a rule, by the name that a rule uses."""
        return {f"{LIMIT}.{name}": limit.dimension for name, limit in self.by_name.items()}

    def values(self, levels: Iterable[str]) -> dict[str, float]:
        """The SI values for a design of some levels, by the name that a rule uses."""
        chosen = tuple(levels)
        return {f"{LIMIT}.{name}": each.at(chosen).value for name, each in self.by_name.items()}

    @cached_property
    def _facts(self) -> dict[tuple[str, ...], Kind]:
        return {}

    def facts(self, levels: tuple[str, ...]) -> Kind:
        """The kind of the design itself, with the limits among its rows."""
        kind = self._facts.get(levels)
        if kind is None:
            rows = (_row(limit, limit.at(levels)) for _, limit in sorted(self.by_name.items()))
            kind = replace(FACTS, rows=(*FACTS.rows, *rows))
            self._facts[levels] = kind
        return kind


NO_LIMITS = Limits({})


def _row(limit: Limit, stated: Stated) -> Row:
    unit = si_symbol(limit.dimension)
    return Row(f"{LIMIT}.{limit.name}", unit, limit.says, formula=_constant(stated))


def _constant(stated: Stated) -> Callable[[], float]:
    """A formula that gives the value; its words are those that a trace shows of it."""

    def limit() -> float:
        return stated.value

    place = stated.place
    by = f"set by {stated.by}; " if stated.by else ""
    limit.__doc__ = f"{_line(stated.why)}\n\n{by}{_line(stated.source)}, {place.path}:{place.line}"
    return limit


def _line(text: str) -> str:
    return " ".join(text.split())


def levels_of(service: str, children: bool) -> tuple[str, ...]:
    """The levels of a design, the most particular first.

    >>> levels_of("public", True), levels_of("shop", False)
    (('children', 'public'), ('shop',))
    """
    return ("children", service) if children else (service,)


def with_limits(design: Design, limits: Limits) -> Design:
    """A design that knows the limits which hold for its service and for those who reach it."""
    if not limits.by_name:
        return design
    given = design.facts.given
    service = given["service"].value if "service" in given else "private"
    reached_by = given["reached_by"].value if "reached_by" in given else ()
    kind = limits.facts(levels_of(service, "children" in reached_by))
    return replace(design, facts=replace(design.facts, kind=kind))
