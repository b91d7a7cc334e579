"""A table of the file against the keys of a kind: every value read, every slip reported."""

from collections.abc import Callable

from reviewer.parts.kind import Keys, Kind
from reviewer.parts.row import (
    Choice,
    Choices,
    Count,
    Date,
    Flag,
    Measure,
    Named,
    PartName,
    Points,
    Row,
    Shape,
    Stock,
    Text,
)
from reviewer.reading.choices import (
    read_choice,
    read_date,
    read_flag,
    read_list,
    read_part_name,
    read_stock,
    read_text,
)
from reviewer.reading.context import Context, article, kind_of, listed
from reviewer.reading.design import GivenValue
from reviewer.reading.due import due_in
from reviewer.reading.measures import read_count, read_measure
from reviewer.reading.names import check_name
from reviewer.reading.notes import NOTE, read_note
from reviewer.reading.points import read_points
from reviewer.reading.scalars import is_null
from reviewer.reading.shapes import read_shape
from reviewer.reading.strange_keys import refuse_key
from reviewer.reading.tree import Node, Scalar, Table

NOTHING_SKIPPED: frozenset[str] = frozenset()

ReadOne = Callable[[Row, Scalar, Context], GivenValue | None]

ONE_VALUE: dict[type, ReadOne] = {
    Measure: read_measure,
    Count: read_count,
    Choice: read_choice,
    Stock: read_stock,
    Flag: read_flag,
    Text: read_text,
    Date: read_date,
    PartName: read_part_name,
}


def read_fields(
    table: Table, kind: Kind, context: Context, skip: frozenset[str] = NOTHING_SKIPPED
) -> dict[str, GivenValue]:
    """Read a table by the fields of a kind: its values by their paths, in the order of the file.

    Problems go to `context.problems`, and the fields that have one are left out. The keys in
    `skip` are known, but read elsewhere. `note` may stand in every table, and is passed over.
    """
    given: dict[str, GivenValue] = {}
    _read_table(table, kind.keys, "", Reading(kind, context, skip), given)
    return given


class Reading:
    """What stays the same while one table and the tables in it are read."""

    __slots__ = ("context", "kind", "skip")

    def __init__(self, kind: Kind, context: Context, skip: frozenset[str]) -> None:
        self.kind = kind
        self.context = context
        self.skip = skip


def _read_table(
    table: Table, keys: Keys, prefix: str, reading: Reading, given: dict[str, GivenValue]
) -> None:
    """Read one level of a kind's keys; `prefix` is the path to it, with its point."""
    context = reading.context
    for key, value in table.entries:
        known = keys.children.get(key.text)
        if known is not None:
            _read_value(key, value, known, prefix + key.text, reading, given)
        elif key.text == NOTE:
            read_note(value, key, context)
        elif prefix or key.text not in reading.skip:
            skip = NOTHING_SKIPPED if prefix else reading.skip
            refuse_key(key, keys, prefix, reading.kind, context, skip)
        if context.is_full:
            return


def _read_value(
    key: Scalar, value: Node, known: Keys, path: str, reading: Reading, given: dict[str, GivenValue]
) -> None:
    """Read what stands at a known key: a table of further keys, or the value of its row."""
    row, context = known.row, reading.context
    if row is not None and isinstance(row.given, Shape):
        given.update(read_shape(row, row.given, key, value, reading.kind.by_path, context))
    elif isinstance(value, Table) and known.children:
        _read_table(value, known, path + ".", reading, given)
    elif row is None:
        _refuse_group(key, value, known, path, context)
    else:
        read = read_entry(row, key, value, context, tuple(known.children))
        if read is not None:
            given[path] = read


def read_entry(
    row: Row, key: Scalar, value: Node, context: Context, below: tuple[str, ...] = ()
) -> GivenValue | None:
    """Read the value of one row; `below` are the keys that a table in its place could have."""
    missing = isinstance(value, Scalar) and is_null(value)
    if isinstance(row.given, Points) and not missing:
        return read_points(row, key, value, context)
    if isinstance(row.given, Named) and isinstance(value, Table) and value.entries:
        return _read_named(row, row.given, value, context)
    if takes_list(row) and not missing and not isinstance(value, Table):
        return read_list(row, value, context)
    if isinstance(value, Scalar) and not missing and type(row.given) in ONE_VALUE:
        return ONE_VALUE[type(row.given)](row, value, context)
    what = f"{row.path} has no value" if missing else f"{row.path} takes {_shape_of(row)}"
    table = f", or a table of {listed(below)}" if below else ""
    context.refuse(key.place, what, kind_of(value), due_in(row) + table)
    return None


def _shape_of(row: Row) -> str:
    if isinstance(row.given, Named):
        return f"a table of {row.given.one}s by name"
    return "one word or a list" if takes_list(row) else "one value"


def _read_named(row: Row, entry: Named, table: Table, context: Context) -> GivenValue | None:
    """Read things by their names, each a table of the entry's fields."""
    kind = Kind(entry.one, entry.one, entry.rows, carries_load=False)
    if len(table.entries) > entry.at_most:
        what = f"{row.path} has too many {entry.one}s"
        expected = f"at most {entry.at_most}"
        context.refuse(table.place, what, str(len(table.entries)), expected)
        return None
    before = len(context.problems)
    found = []
    for name, node in table.entries:
        if name.text == NOTE:
            read_note(node, name, context)
        elif check_name(name, entry.one, context):
            if isinstance(node, Table):
                fields = read_fields(node, kind, context).items()
                found.append((name.text, tuple((path, each.value) for path, each in fields)))
            else:
                what = f"{article(entry.one)} is a table of its fields"
                context.refuse(name.place, what, kind_of(node), f"{name.text}: {{...}}")
        if context.is_full:
            break
    if len(context.problems) > before:
        return None
    return GivenValue(tuple(found), f"{len(found)} {entry.one}s", table.place)


def takes_list(row: Row) -> bool:
    """Whether the value of a row may be a list."""
    return isinstance(row.given, Choices) or (isinstance(row.given, PartName) and row.given.several)


def _refuse_group(key: Scalar, value: Node, known: Keys, path: str, context: Context) -> None:
    """Refuse a value where a table of further fields is due."""
    fields = ", ".join(f"{name}: ..." for name in list(known.children)[:3])
    missing = isinstance(value, Scalar) and is_null(value)
    place = value.place if isinstance(value, Scalar) and not missing else key.place
    expected = f"a table of {listed(known.children)}, such as {key.text}: {{{fields}}}"
    context.refuse(place, f"{path} is a table of fields", kind_of(value), expected)
