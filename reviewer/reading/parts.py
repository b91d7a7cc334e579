"""The parts of a design and its loads: each a table by its kind."""

from collections.abc import Mapping

from reviewer.notation.nearest import nearest
from reviewer.parts.kind import Kind
from reviewer.parts.shape_rows import shaped
from reviewer.parts.travel import TRAVEL
from reviewer.reading.carriers import check_bears, check_carriers
from reviewer.reading.context import Context, kind_of, listed, write
from reviewer.reading.design import Part
from reviewer.reading.fields import read_fields
from reviewer.reading.names import named_tables
from reviewer.reading.outlines import check_outline
from reviewer.reading.sheets import with_materials
from reviewer.reading.travels import check_moves
from reviewer.reading.tree import Scalar, Table

KIND = "kind"
MOST_PARTS = 150  # so that a review of what a stranger sends takes a second
CARRIED_BY = "carried_by"
CARRIERS = ("on", "over")
SIZES = ("force", "mass")
POLAR, PLAN = ("radius", "azimuth"), ("x", "y")


def read_parts(
    root: Table, kinds: Mapping[str, Kind], context: Context, before: Mapping[str, Part]
) -> dict[str, Part]:
    """Read `parts`: each part's kind, fields and carriers; boards and travels stand `before`."""
    parts: dict[str, Part] = dict(before)
    moved = any(part.kind is TRAVEL for part in before.values())
    for name, table in named_tables(root, "parts", "part", context):
        if len(parts) - len(before) == MOST_PARTS:
            what, expected = "the design has too many parts", f"at most {MOST_PARTS}"
            mend = "write like parts as one with a count, or what is built apart in a file apart"
            context.refuse(name.place, what, name.text, expected, mend)
            break
        kind = _kind_of(name, table, kinds, context)
        if name.text in before:
            other = before[name.text]
            one, where = other.kind.name, other.place.line
            what, mend = f"a part cannot have the name of a {one}", f"the {one} is on line {where}"
            context.refuse(name.place, what, name.text, "a name of its own", mend)
        elif kind is not None:
            before_it = len(context.problems)
            told = read_fields(table, shaped(kind), context, frozenset((KIND,)))
            given = with_materials(kind, told, context)
            carried_by = given.get(CARRIED_BY)
            on = carried_by.value if carried_by else ()
            carriers = (on,) if isinstance(on, str) else tuple(on)
            plain = not moved and given.keys() <= kind.by_path.keys()
            used = kind if plain else shaped(kind)
            parts[name.text] = Part(name.text, used, given, name.place, carriers)
            if len(context.problems) == before_it:  # else what is missing may be what is wrong
                check_outline(parts[name.text], context)
                check_moves(parts[name.text], context)
    check_carriers(parts, context)
    return parts


def _kind_of(
    name: Scalar, table: Table, kinds: Mapping[str, Kind], context: Context
) -> Kind | None:
    """Find a part's kind, or say which there are."""
    value = table.get(KIND)
    kinds = {name: kind for name, kind in kinds.items() if not kind.implied}
    expected = f"one of {listed(sorted(kinds))}"
    if value is None:
        if KIND not in context.lost:
            what, found = f"{name.text} has no kind", "a part without a kind"
            context.refuse(name.place, what, found, expected, "write kind: and what it is")
        return None
    key = table.key(KIND) or name
    if not isinstance(value, Scalar):
        context.refuse(key.place, "a kind is one word", kind_of(value), expected)
        return None
    kind = kinds.get(value.text)
    if kind is None:
        place = value.place if value.text else key.place
        mend = write(nearest(value.text, kinds))
        context.refuse(place, "no kind of part has this name", kind_of(value), expected, mend)
    return kind


def read_loads(
    root: Table, kind: Kind, parts: Mapping[str, Part], context: Context
) -> dict[str, Part]:
    """Read `loads`: forces and masses, each on one part."""
    loads: dict[str, Part] = {}
    for name, table in named_tables(root, "loads", "load", context):
        if name.text in parts:
            where = parts[name.text].place.line
            what, mend = "a load cannot have the name of a part", f"the part is on line {where}"
            context.refuse(name.place, what, name.text, "a name of its own", mend)
            continue
        given = read_fields(table, kind, context)
        _check_one(name, table, CARRIERS, ("stands on", "part"), context)
        _check_one(name, table, SIZES, ("has", "size"), context)
        _check_place(name, table, context)
        on = next((given[path] for path in CARRIERS if path in given), None)
        if on is not None:
            check_bears(on.value, on, parts, context)
            loads[name.text] = Part(name.text, kind, given, name.place, (on.value,))
    return loads


def _check_one(
    name: Scalar, table: Table, paths: tuple[str, str], words: tuple[str, str], context: Context
) -> None:
    """Hold a load to exactly one of two keys; `words` are what it does and with what."""
    keys = [key for path in paths if (key := table.key(path))]
    if len(keys) == 1 or (not keys and any(path in context.lost for path in paths)):
        return
    found = " and ".join(key.text for key in keys) or f"neither {paths[0]} nor {paths[1]}"
    verb, thing = words
    what = f"the load {name.text} {verb} {f'a {thing} in two ways' if keys else f'no {thing}'}"
    place = keys[1].place if keys else name.place
    context.refuse(place, what, found, f"either {paths[0]} or {paths[1]}")


def _check_place(name: Scalar, table: Table, context: Context) -> None:
    """Refuse a place given in polar and in plan coordinates at once."""
    at = table.get("at")
    if not isinstance(at, Table):
        return
    polar, plan = ([key for path in paths if (key := at.key(path))] for paths in (POLAR, PLAN))
    if polar and plan:
        found = f"{polar[0].text} and {plan[0].text}"
        what = f"the place of the load {name.text} is given in two ways"
        expected = "either radius and azimuth, or x and y"
        context.refuse(max(polar[0].place, plan[0].place), what, found, expected)
