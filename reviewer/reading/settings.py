"""What a design is reviewed in: configurations, combinations of loads, and concessions."""

from collections.abc import Collection, Mapping
from math import isfinite

from reviewer.notation.nearest import nearest
from reviewer.parts.kind import Kind
from reviewer.parts.row import Date, Measure, Row, Text
from reviewer.reading.context import Context, kind_of, listed, nearest_name, write
from reviewer.reading.design import (
    Combination,
    Concession,
    Configuration,
    GivenValue,
    Part,
)
from reviewer.reading.fields import read_entry, read_fields
from reviewer.reading.names import named_tables
from reviewer.reading.notes import NOTE, read_note
from reviewer.reading.scalars import resolve
from reviewer.reading.tree import Items, Node, Scalar, Table
from reviewer.reading.words import shown

OWN_WEIGHT = "own_weight"
LARGEST_FACTOR = 10.0
CONCESSION = Kind(
    name="concession",
    says="a failure accepted on purpose",
    rows=(
        Row("rule", "", "the rule that fails", Text()),
        Row("part", "", "the part on which it fails", Text()),
        Row("with", "", "the other part, of a rule on a pair; where absent every pair", Text()),
        Row("by", "", "who accepts it", Text()),
        Row("why", "", "why it is accepted", Text()),
        Row("until", "", "the last day on which it holds", Date()),
    ),
)
REQUIRED = ("rule", "part", "by", "why")


def read_configurations(
    root: Table, parts: Mapping[str, Part], context: Context
) -> tuple[Configuration, ...]:
    """Read `configurations`: the numbers that each overrides. None given is one without a name."""
    read = []
    for name, table in named_tables(root, "configurations", "configuration", context):
        overrides = {}
        for key, value in table.entries:
            if context.is_full:
                break
            if key.text == NOTE:
                read_note(value, key, context)
            elif (found := _read_override(key, value, parts, context)) is not None:
                overrides[found[0]] = found[1]
        read.append(Configuration(name.text, overrides))
    return tuple(read) or (Configuration(""),)


def _read_override(
    key: Scalar, value: Node, parts: Mapping[str, Part], context: Context
) -> tuple[tuple[str, str], GivenValue] | None:
    """Read `part.path: value` as the field itself is read."""
    name, point, path = key.text.partition(".")
    if key.text in context.travels:
        return _read_position(key, value, parts, context)
    if name not in context.parts:
        if name not in context.lost:
            expected = "a part and its field, such as trays.offset"
            near = nearest_name(name, context.parts)
            mend = write(near and f"{near}{point or '.'}{path or '...'}")
            context.refuse(key.place, "no part has this name", shown(name), expected, mend)
        return None
    if name not in parts:  # its kind is not known, and that was said
        return None
    row = parts[name].kind.by_path.get(path)
    if row is None or not isinstance(row.given, Measure) or row.only:
        _refuse_override(key, value, parts[name], context)
        return None
    given = read_entry(row, key, value, context)
    return None if given is None else ((name, path), given)


def _read_position(
    key: Scalar, value: Node, parts: Mapping[str, Part], context: Context
) -> tuple[tuple[str, str], GivenValue] | None:
    """Read `travel: 0.4`: where a travel that leads itself stands."""
    travel = parts.get(key.text)
    if travel is None:
        return None
    leader = travel.given.get("follows")
    if leader is not None:
        what, found = f"{travel.name} follows {leader.value}", shown(key.text)
        expected = "a travel that follows none"
        context.refuse(key.place, what, found, expected, write(leader.value))
        return None
    given = read_entry(travel.kind.by_path["position"], key, value, context)
    return None if given is None else ((travel.name, "position"), given)


def _refuse_override(key: Scalar, value: Node, part: Part, context: Context) -> None:
    """Say which fields of a part a configuration may change."""
    path = key.text.partition(".")[2]
    numbers = [
        row.path
        for row in part.kind.given_rows()
        if isinstance(row.given, Measure) and not row.only
    ]
    row = part.kind.by_path.get(path)
    mend: str | None = None
    if not path and isinstance(value, Table):
        first = value.entries[0][0].text if value.entries else "..."
        what = "a configuration names part and field in one key"
        mend = f"{part.name}.{shown(first)}"
    elif row is not None and row.given is not None:
        what = f"{path} is the same in every configuration"
    else:
        what, near = f"{part.name} has no such field", nearest(path, numbers)
        mend = near and f"{part.name}.{near}"
    expected = f"a number that {part.name} gives: {listed(numbers, 'or')}"
    context.refuse(key.place, what, shown(key.text), expected, write(mend))


def read_combinations(
    root: Table, loads: Collection[str], context: Context
) -> tuple[Combination, ...] | None:
    """Read `combinations`: factors on own weight and on loads; None where none is given."""
    read = []
    for name, table in named_tables(root, "combinations", "combination", context):
        factors = {}
        for key, value in table.entries:
            if context.is_full:
                break
            if key.text == NOTE:
                read_note(value, key, context)
            elif key.text == OWN_WEIGHT or key.text in loads:
                factors[key.text] = _read_factor(key, value, context)
            elif key.text not in context.lost:
                _refuse_load(key, loads, context)
        own_weight = factors.pop(OWN_WEIGHT, 1.0)
        read.append(Combination(name.text, own_weight, factors, name.place))
    return tuple(read) or None


def _refuse_load(key: Scalar, loads: Collection[str], context: Context) -> None:
    known = (OWN_WEIGHT, *loads)
    mend = write(nearest_name(key.text, known))
    what = "no load has this name"
    context.refuse(key.place, what, shown(key.text), f"one of {listed(known)}", mend)


def _read_factor(key: Scalar, value: Node, context: Context) -> float:
    """Read a plain number that a load is multiplied with."""
    number = resolve(value) if isinstance(value, Scalar) else None
    if isinstance(number, int | float) and not isinstance(number, bool):
        if isfinite(number) and 0.0 <= number <= LARGEST_FACTOR:
            return float(number)
        what = f"the factor of {key.text} is out of its bounds"
    else:
        what = f"the factor of {key.text} is a plain number"
    expected = f"a number from 0 to {LARGEST_FACTOR:g}, such as 1.5"
    place = value.place if isinstance(value, Scalar) else key.place
    context.refuse(place, what, kind_of(value), expected)
    return 0.0


def read_concessions(root: Table, context: Context) -> tuple[Concession, ...]:
    """Read `concessions`: a list of tables."""
    value, key = root.get("concessions"), root.key("concessions")
    if value is None or key is None:
        return ()
    if not isinstance(value, Items):
        expected = "a list: [{rule: ..., part: ..., by: ..., why: ...}]"
        context.refuse(key.place, "concessions is a list of tables", kind_of(value), expected)
        return ()
    read = [_read_concession(item, context) for item in value.items if not context.is_full]
    return tuple(each for each in read if each is not None)


def _read_concession(item: Node, context: Context) -> Concession | None:
    if not isinstance(item, Table):
        expected = "{rule: ..., part: ..., by: ..., why: ...}"
        context.refuse(item.place, "a concession is a table", kind_of(item), expected)
        return None
    given = read_fields(item, CONCESSION, context)
    missing = [path for path in REQUIRED if item.get(path) is None]
    if missing and not any(path in context.lost for path in missing):
        what = f"a concession says {listed(REQUIRED)}"
        context.refuse(item.place, what, f"no {listed(missing, 'or')}", "all of them")
    if any(path not in given for path in REQUIRED):
        return None
    rule, part, by, why = (str(given[path].value) for path in REQUIRED)
    until = str(given["until"].value) if "until" in given else None
    other = str(given["with"].value) if "with" in given else None
    return Concession(rule, part, by, why, until, item.place, other)
