"""A shape: one key out of several, whose list fills several measures."""

from collections.abc import Mapping

from reviewer.notation.nearest import nearest
from reviewer.parts.row import Row, Shape
from reviewer.reading.context import Context, kind_of, write
from reviewer.reading.design import GivenValue
from reviewer.reading.due import due_in, shape_form
from reviewer.reading.measures import read_measure
from reviewer.reading.scalars import is_null
from reviewer.reading.tree import Items, Node, Scalar, Table
from reviewer.reading.words import shown

NOTE = "note"


def read_shape(
    row: Row,
    shape: Shape,
    key: Scalar,
    value: Node,
    rows: Mapping[str, Row],
    context: Context,
) -> dict[str, GivenValue]:
    """Read a shape: its word at the row's path, and a measure at each path of its list."""
    if not isinstance(value, Table):
        what = f"{row.path} is a table with one shape"
        missing = isinstance(value, Scalar) and is_null(value)
        place = value.place if isinstance(value, Scalar) and not missing else key.place
        context.refuse(place, what, kind_of(value), due_in(row))
        return {}
    entries = [(word, node) for word, node in value.entries if word.text != NOTE]
    if len(entries) != 1:
        found = " and ".join(shown(word.text) for word, _ in entries[:3]) or "nothing"
        what = f"{row.path} has one shape"
        context.refuse(entries[1][0].place if entries else key.place, what, found, due_in(row))
        return {}
    word, measures = entries[0]
    paths = dict(shape.alternatives).get(word.text)
    if paths is None:
        what = f"{row.path} has no shape {shown(word.text)}"
        mend = write(nearest(word.text, [name for name, _ in shape.alternatives]))
        context.refuse(word.place, what, shown(word.text), due_in(row), mend)
        return {}
    given = _read_list(word, measures, tuple(rows[path] for path in paths), context)
    return {row.path: GivenValue(word.text, word.text, word.place), **given} if given else {}


def _read_list(
    word: Scalar, measures: Node, rows: tuple[Row, ...], context: Context
) -> dict[str, GivenValue]:
    """Read the measures of a shape, as many as it has; one alone may stand without brackets."""
    items = measures.items if isinstance(measures, Items) else (measures,)
    if isinstance(measures, Table) or len(items) != len(rows):
        what = f"{word.text} lists {_number(len(rows))}"
        found = _number(len(items)) if isinstance(measures, Items) else kind_of(measures)
        expected = shape_form(word.text, tuple(row.path for row in rows))
        context.refuse(word.place, what, found, expected)
        return {}
    given = {}
    for row, item in zip(rows, items, strict=True):
        if isinstance(item, Scalar):
            read = read_measure(row, item, context)
            if read is not None:
                given[row.path] = read
        else:
            what = f"{row.path} is one measure"
            context.refuse(item.place, what, kind_of(item), due_in(row))
    return given if len(given) == len(rows) else {}


def _number(count: int) -> str:
    return "one measure" if count == 1 else f"{count} measures"
