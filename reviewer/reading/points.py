"""Points: a list of lists of measures, such as the profile of a ramp."""

from reviewer.parts.row import Points, Row
from reviewer.reading.context import Context, kind_of
from reviewer.reading.design import GivenValue
from reviewer.reading.due import due_in
from reviewer.reading.measures import read_measure
from reviewer.reading.tree import Items, Node, Scalar
from reviewer.reading.words import shown


def read_points(row: Row, key: Scalar, value: Node, context: Context) -> GivenValue | None:
    """Read a list of points, the first measure of each larger than before where it has to grow."""
    entry = row.given
    assert isinstance(entry, Points)
    if not isinstance(value, Items):
        place = value.place if isinstance(value, Scalar) and value.text else key.place
        context.refuse(place, f"{row.path} is a list of points", kind_of(value), due_in(row))
        return None
    if not entry.at_least <= len(value.items) <= entry.at_most:
        what = f"{row.path} has the wrong number of points"
        expected = f"from {entry.at_least} to {entry.at_most} points"
        context.refuse(value.place, what, str(len(value.items)), expected)
        return None
    before = len(context.problems)
    points: list[tuple[float, ...]] = []
    for item in value.items:
        point = _read_point(row, entry, item, context)
        if point is None:
            break
        if entry.grows and points and point[0] <= points[-1][0]:
            _refuse_order(entry, item, context)
            break
        points.append(point)
    if len(context.problems) > before:
        return None
    return GivenValue(tuple(points), f"{len(points)} points", value.place)


def _read_point(row: Row, entry: Points, item: Node, context: Context) -> tuple[float, ...] | None:
    """Read the measures of one point."""
    names = [column.path for column in entry.columns]
    if len(names) == 1 and isinstance(item, Scalar):
        item = Items((item,), item.place)
    if not isinstance(item, Items) or len(item.items) != len(names):
        found = _number(len(item.items)) if isinstance(item, Items) else kind_of(item)
        what = f"a point of {row.path} lists {_number(len(names))}"
        context.refuse(item.place, what, found, f"[{', '.join(names)}]")
        return None
    numbers: list[float] = []
    for column, measure in zip(entry.columns, item.items, strict=True):
        if not isinstance(measure, Scalar):
            what = f"{column.path} is one measure"
            context.refuse(measure.place, what, kind_of(measure), due_in(column))
            return None
        read = read_measure(column, measure, context)
        if read is None:
            return None
        numbers.append(read.value)
    return tuple(numbers)


def _refuse_order(entry: Points, item: Node, context: Context) -> None:
    first = item.items[0] if isinstance(item, Items) else item
    name = entry.columns[0].path
    found = shown(first.text) if isinstance(first, Scalar) else kind_of(first)
    what = f"the {name} does not grow from point to point"
    context.refuse(first.place, what, found, f"a {name} beyond that of the point before")


def _number(count: int) -> str:
    return "one measure" if count == 1 else f"{count} measures"
