"""Checks of what a row lets a file give: that its own defaults, words and examples can be read."""

from collections.abc import Iterator, Mapping

from reviewer.notation.nearest import nearest
from reviewer.notation.quantity import QuantityError, read_quantity
from reviewer.parts.row import Choice, Choices, Count, Measure, Named, Points, Row, Shape

Found = Iterator[tuple[str, str]]


def check_entry(row: Row, own: Mapping[str, Row]) -> Found:
    """What is wrong with a row's entry, and the mend."""
    match row.given:
        case Measure():
            yield from _check_measure(row, row.given)
        case Count():
            yield from _check_count(row.given)
        case Choice():
            yield from _check_options(row.given.options, (row.given.default,))
        case Choices():
            yield from _check_options(row.given.options, row.given.default or ())
        case Shape():
            yield from _check_shape(row.given, own)
        case Points():
            yield from _check_points(row.given)
        case Named():
            for each in row.given.rows:
                yield from check_entry(each, own)
        case None:
            return
    if row.is_number and not isinstance(row.given, Measure):
        yield "it is a number with a unit and no measure", "give a Measure, or the unit ''"


def _check_measure(row: Row, entry: Measure) -> Found:
    if not row.is_number:
        yield "a measure has a unit", "write its SI unit, or 1"
        return
    texts = [("default", entry.default or ""), ("example", entry.example)]
    texts += [(f"word {word}", meaning) for word, meaning in entry.words]
    texts += [("published range", end) for end in entry.unknown or ()]
    for what, text in texts:
        if text:
            yield from _check_text(row, entry, what, text)


def _check_text(row: Row, entry: Measure, what: str, text: str) -> Found:
    """Read a text as a file's would be, and hold it against the bounds."""
    try:
        value = read_quantity(text, expected=row.dimension).value
    except QuantityError as error:
        yield f"its {what} {text!r} cannot be read: {error.what}", f"write {error.expected}"
        return
    too_low = (entry.above is not None and value <= entry.above) or (
        entry.at_least is not None and value < entry.at_least
    )
    too_high = (entry.below is not None and value >= entry.below) or (
        entry.at_most is not None and value > entry.at_most
    )
    if too_low or too_high:
        yield f"its {what} {text!r} is out of its bounds", "mend one of them"


def _check_count(entry: Count) -> Found:
    if entry.at_least > entry.at_most:
        yield f"its bounds leave nothing from {entry.at_least} to {entry.at_most}", "mend one"
    elif entry.default is not None and not entry.at_least <= entry.default <= entry.at_most:
        what = f"its default {entry.default} is out of its bounds"
        yield what, f"write one from {entry.at_least} to {entry.at_most}"


def _check_options(options: tuple[str, ...], defaults: tuple[str | None, ...]) -> Found:
    for default in defaults:
        if default is not None and default not in options:
            near = nearest(default, options)
            yield f"its default {default} is none of its words", f"write {near or options[0]}"


def _check_shape(entry: Shape, own: Mapping[str, Row]) -> Found:
    for word, paths in entry.alternatives:
        for path in paths:
            row = own.get(path)
            if row is None or not isinstance(row.given, Measure):
                what = f"its shape {word} fills {path}, which is no measure of the kind"
                near = nearest(path, [name for name in own if name != path])
                yield what, f"write {near}" if near else f"declare {path}"


def _check_points(entry: Points) -> Found:
    """Hold each column of points to a measure that can be read."""
    for column in entry.columns:
        if not isinstance(column.given, Measure):
            what = f"its points list {column.path}, which is no measure"
            yield what, "give it a Measure"
        else:
            yield from _check_measure(column, column.given)
