"""The names that a rule may use, from the rows of the kinds that it ranges over."""

from collections.abc import Mapping
from functools import cache

from reviewer.judging.kinds import TEXT, TRUTH, Collection, Kind, Names, One, Texts
from reviewer.judging.limits import NO_LIMITS, Limits
from reviewer.judging.rule import Scope
from reviewer.notation.dimension import NUMBER
from reviewer.parts.facts import FACTS
from reviewer.parts.kind import Kind as PartKind
from reviewer.parts.row import Choice, Count, Flag, Row, Stock
from reviewer.parts.shape_rows import shaped
from reviewer.parts.shop_facts import SHOP


def kind_of_row(row: Row) -> One | None:
    """What a rule sees of a row: a number, a text, a yes or no; None of an inner object."""
    if row.is_number:
        return row.dimension
    if row.unit == "truth" or isinstance(row.given, Flag):
        return TRUTH
    if isinstance(row.given, Count):
        return NUMBER
    if isinstance(row.given, Choice):
        return Texts(row.given.options)
    if row.unit == "text" or isinstance(row.given, Stock):
        return TEXT
    return None


def vocabulary(scope: Scope, kinds: Mapping[str, PartKind], limits: Limits = NO_LIMITS) -> Names:
    """Every name that a rule of this scope may use, with what it stands for.

    A bare name is the part's own, `carrier.x` that of what carries it (a name of any kind, since a
    part may be carried by any), `design.x` the design's, `shop.x` that of the shop in which it is
    made, `limit.x` a named limit. A kind that follows from others has names for those: `one.x`.
    """
    found: dict[str, Kind] = {_of_design(name): kind for name, kind in _rows(FACTS)}
    found.update(limits.dimensions())
    for binder, kind_name in scope.binders:
        kind = kinds[kind_name]
        prefix = f"{binder}." if binder else ""
        for name, seen in _rows(kind):
            found[prefix + name] = Collection(seen, binder) if scope.how == "every" else seen
        if scope.how != "every":
            found.update((f"{prefix}carrier.{name}", seen) for name, seen in _of_any(_all(kinds)))
        for scope_of in kind.of:
            shapes = tuple(shaped(each) for each in _all(kinds))
            found.update((f"{prefix}{scope_of}.{name}", seen) for name, seen in _of_any(shapes))
    return Names(found)


def _of_design(name: str) -> str:
    """What a rule calls one of the design's quantities: the shop's keep their own scope."""
    return name if name.startswith(f"{SHOP}.") else f"{FACTS.name}.{name}"


def fields_of(kind: PartKind, kinds: Mapping[str, PartKind]) -> frozenset[str]:
    """The paths that a design may give of a kind, and of the parts that it follows from."""
    own = frozenset(row.path for row in kind.given_rows())
    return own.union(*(_given_of(name, _all(kinds)) for name in kind.of))


@cache
def _given_of(name: str, kinds: tuple[PartKind, ...]) -> frozenset[str]:
    rows = (row for kind in kinds for row in shaped(kind).given_rows())
    return frozenset(f"{name}.{row.path}" for row in rows)


@cache
def _rows(kind: PartKind) -> tuple[tuple[str, One], ...]:
    pairs = ((row.path, kind_of_row(row)) for row in kind.rows)
    return tuple((path, seen) for path, seen in pairs if seen is not None)


def _all(kinds: Mapping[str, PartKind]) -> tuple[PartKind, ...]:
    return tuple(kind for _, kind in sorted(kinds.items()))


@cache
def _of_any(kinds: tuple[PartKind, ...]) -> tuple[tuple[str, One], ...]:
    """Names of all kinds that mean the same in each that has them."""
    found: dict[str, One] = {}
    differing: set[str] = set()
    for kind in kinds:
        for name, seen in _rows(kind):
            if found.setdefault(name, seen) != seen:
                differing.add(name)
    return tuple(pair for pair in found.items() if pair[0] not in differing)
