"""Checks of one row against its kind: each yields what is wrong, and the mend."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from inspect import unwrap
from typing import Any

from reviewer.notation.dimension import NUMBER, words
from reviewer.notation.nearest import nearest
from reviewer.notation.units import UnknownUnit, parse_unit
from reviewer.parts.documented import signature_of, units_of
from reviewer.parts.entry_checks import check_entry
from reviewer.parts.facts import FACTS, LIMIT
from reviewer.parts.kind import Kind
from reviewer.parts.row import Row, Shape
from reviewer.parts.shop_facts import SHOP, SHOP_ROWS

PATH = re.compile(r"[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)*", re.ASCII)
WITHOUT_NUMBER = ("", "text", "truth")
CARRIER, OF, DESIGN, OF_SHOP = "carrier.", "of.", f"{FACTS.name}.", f"{SHOP}."
SCOPES = frozenset({"carrier", "carried", "of", "design", SHOP, "load", LIMIT})
FILLED_BY_DERIVING = (FACTS.by_path["cases"],)

Found = Iterator[tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Scopes:
    """What the needs of a kind's rows may name: by path, the rows that could be meant."""

    own: Mapping[str, Row]
    of_carrier: Mapping[str, tuple[Row, ...]]
    shaped: frozenset[str]


def scopes_of(kind: Kind, kinds: Mapping[str, Kind]) -> Scopes:
    """The rows that a kind's own rows may name, beside the other kinds."""
    of_carrier: dict[str, tuple[Row, ...]] = {}
    for carrier in kinds.values():
        for path, row in carrier.by_path.items():
            of_carrier[path] = (*of_carrier.get(path, ()), row)
    shapes = [row.given for row in kind.rows if isinstance(row.given, Shape)]
    shaped = (path for shape in shapes for _, paths in shape.alternatives for path in paths)
    return Scopes(kind.by_path, of_carrier, frozenset(shaped))


def check_row(row: Row, scopes: Scopes) -> Found:
    """What is wrong with a row's path, unit, needs and formula, and how to mend each."""
    yield from _check_path(row)
    yield from _check_unit(row)
    yield from _check_filled(row, scopes)
    yield from _check_needs(row, scopes)
    yield from _check_arguments(row)
    yield from _check_taken(row, scopes)


def check_words(row: Row, scopes: Scopes) -> Found:
    """What is wrong with what a row says: its defaults, and its formula's units in brackets."""
    if any(_check_unit(row)):
        return
    yield from check_entry(row, scopes.own)
    yield from _check_field_unit(row, scopes)
    yield from _check_documented(row, scopes)


def _check_path(row: Row) -> Found:
    if not PATH.fullmatch(row.path):
        yield "its path cannot be named in a rule", "write small letters, digits, _ and points"
    first, point, _ = row.path.partition(".")
    if point and first in SCOPES and row not in SHOP_ROWS:
        yield f"{first}. means what another part or the design has", "begin with another word"


def _check_unit(row: Row) -> Found:
    if row.unit in WITHOUT_NUMBER:
        return
    try:
        unit = parse_unit(row.unit)
    except UnknownUnit as unknown:
        meant = f"write {unknown.nearest}" if unknown.nearest else "write an SI unit, as N m"
        yield f"its unit {row.unit} cannot be read: {unknown.why}", meant
        return
    if unit.factor != 1.0 or unit.offset:
        yield f"its unit {row.unit} is not SI", "write the SI unit, as m or N"


def _check_filled(row: Row, scopes: Scopes) -> Found:
    ways = [
        name
        for name, there in (
            ("formula", row.formula is not None),
            ("take", row.take is not None),
            ("built", row.built),
        )
        if there
    ]
    if len(ways) > 1:
        yield f"it is filled in two ways, by {' and '.join(ways)}", "keep one of them"
    if row.only and row.path not in scopes.shaped:
        yield "it has no key of its own and no shape fills it", "add it to a shape, or drop only"
    if not ways and row.given is None and row not in FILLED_BY_DERIVING:
        yield "nothing fills it", "add given, a formula or take"


def _check_needs(row: Row, scopes: Scopes) -> Found:
    for need in row.needs.values():
        if need.startswith(f"{LIMIT}.") or _rows_of(need, scopes):
            continue  # the limits are known when packs are put in force, and checked there
        name, known, whose = _scope_of(need.removesuffix("?"), scopes)
        prefix = need[: len(need.removesuffix("?")) - len(name)]
        near = nearest(name, known)
        mend = f"write {prefix}{near}" if near else "declare that row, or need another"
        yield f"it needs {need}, and {whose} such row", mend


def _scope_of(name: str, scopes: Scopes) -> tuple[str, Mapping[str, Any], str]:
    """A need's name without its scope, the names of that scope, and who lacks it."""
    if name.startswith(CARRIER):
        return name.removeprefix(CARRIER), scopes.of_carrier, "no kind that carries has any"
    if name.startswith(OF):
        return name.removeprefix(OF), scopes.of_carrier, "no kind has any"
    if name.startswith(OF_SHOP):
        return name, FACTS.by_path, "the shop has no"
    if name.startswith(DESIGN):
        return name.removeprefix(DESIGN), FACTS.by_path, "the design has no"
    return name, scopes.own, "the kind has no"


def _rows_of(need: str, scopes: Scopes) -> tuple[Row, ...]:
    """The rows that a need could mean: one, or of a carrier one a kind that has it."""
    name, known, _ = _scope_of(need.removesuffix("?"), scopes)
    found = known.get(name, ())
    return (found,) if isinstance(found, Row) else tuple(found)


def _check_arguments(row: Row) -> Found:
    if row.formula is None:
        return
    takes = signature_of(row.formula)
    for name in sorted(takes.required - row.needs.keys()):
        yield f"its formula takes {name}, and needs does not give it", f"add {name} to needs"
    if takes.anything:
        return
    for name in sorted(row.needs.keys() - takes.required - takes.optional):
        near = nearest(name, takes.required | takes.optional)
        mend = f"write {near}" if near else f"take {name} out of needs"
        yield f"needs gives {name}, and its formula does not take it", mend


def _check_taken(row: Row, scopes: Scopes) -> Found:
    if row.take is None:
        return
    if set(row.needs) != {"solution"}:
        yield "take reads one object, and needs does not name it", "write needs={'solution': ROW}"
        return
    for solution in _rows_of(row.needs["solution"], scopes):
        fields = _fields_of(solution)
        if solution.unit:
            yield f"{solution.path} is no object to take {row.take} from", "give it the unit ''"
        elif fields is not None and row.take not in fields:
            near = nearest(row.take, fields)
            mend = f"take {near}" if near else f"take one of {', '.join(fields)}"
            yield f"{solution.path} has no {row.take}", mend


def _fields_of(solution: Row) -> tuple[str, ...] | None:
    """The fields of the named tuple that a row's formula is annotated to return, if it is."""
    if solution.formula is None:
        return None
    gives = getattr(unwrap(solution.formula), "__annotations__", {}).get("return")
    return getattr(gives, "_fields", None)


def _check_field_unit(row: Row, scopes: Scopes) -> Found:
    for solution in _rows_of(row.needs.get("solution", ""), scopes) if row.take else ():
        unit = units_of(solution.formula, "Returns").get(row.take or "")
        if unit is not None:
            yield from _check_same(row, unit, f"{row.take} of {solution.path}", row)


def _check_documented(row: Row, scopes: Scopes) -> Found:
    """Hold the units in brackets in a formula's docstring against those of the rows."""
    if row.formula is None:
        return
    documented = units_of(row.formula, "Parameters")
    for name, need in row.needs.items():
        for needed in _rows_of(need, scopes) if name in documented else ():
            yield from _check_same(needed, documented[name], f"its formula's {name}", row)
    returned = units_of(row.formula, "Returns")
    if len(returned) == 1:
        unit = next(iter(returned.values()))
        yield from _check_same(row, unit, "what its formula returns", row)
    elif returned and row.unit:
        mend = "compute it in a row of unit '' and take one of them"
        yield f"its formula returns {', '.join(returned)}", mend


def _check_same(row: Row, documented: str, what: str, asking: Row) -> Found:
    """Compare the documented unit with that of a row; an object or a count has none but 1."""
    try:
        dimension = parse_unit(documented).dimension
    except UnknownUnit:
        yield f"{what} is in [{documented}], which is no unit", "write the SI unit in brackets"
        return
    has = row.dimension if row.is_number else NUMBER
    if dimension == has:
        return
    whose = "the row" if row is asking else row.path
    unit = row.unit if row.is_number else "no unit"
    mend = f"mend the docstring, or the unit of {whose}: it is due {words(dimension)}"
    yield f"{what} is in [{documented}], and {whose} has {unit}", mend
