"""Static entries of a field: words of a closed list, stock, flags, dates, names, texts."""

import re
from datetime import date

from reviewer.notation.nearest import nearest
from reviewer.parts.row import Choice, Choices, PartName, Row, Stock
from reviewer.reading.context import Context, kind_of, nearest_name, write
from reviewer.reading.design import GivenValue
from reviewer.reading.due import SUBJECTS, due_in
from reviewer.reading.scalars import resolve
from reviewer.reading.tree import Items, Node, Scalar
from reviewer.reading.words import shown
from reviewer.stock.table import StockError, UnknownStock

SPOKEN = {
    **dict.fromkeys(("yes", "y", "on", "true"), "true"),
    **dict.fromkeys(("no", "n", "off", "false"), "false"),
}
DATE = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})", re.ASCII)


def read_choice(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read one word of a closed list."""
    assert isinstance(row.given, Choice | Choices)
    if scalar.text in row.given.options:
        return GivenValue(scalar.text, scalar.text, scalar.place)
    mend = write(nearest(scalar.text, row.given.options))
    what = f"{row.path} does not take this word"
    context.refuse(scalar.place, what, shown(scalar.text), due_in(row), mend)
    return None


def read_stock(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read the name of a stock row, and find the row."""
    assert isinstance(row.given, Stock)
    found, expected = shown(scalar.text), due_in(row)
    strange = f"the {SUBJECTS[row.given.table]} is not in the tables"
    try:
        stock = context.stock[row.given.table](scalar.text)
    except UnknownStock as error:
        near = " or ".join(f'"{each}"' for each in error.nearest)
        context.refuse(scalar.place, strange, found, expected, write(near))
    except StockError as error:
        told, _, wanted = str(error).rpartition("; expected ")
        reason = told.partition("; ")[2]
        context.refuse(scalar.place, reason or strange, found, wanted or expected)
    else:
        return GivenValue(stock, scalar.text, scalar.place)
    return None


def read_flag(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read true or false, and nothing that only old YAML takes for them."""
    value = resolve(scalar)
    if isinstance(value, bool):
        return GivenValue(value, scalar.text, scalar.place)
    meant = SPOKEN.get(scalar.text.strip().casefold())
    mend = write(meant and (f"{meant} without quotes" if scalar.quoted else meant))
    found = f'"{shown(scalar.text)}"' if scalar.quoted else shown(scalar.text)
    context.refuse(scalar.place, f"{row.path} is true or false", found, due_in(row), mend)
    return None


def read_date(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read a calendar date as ISO 8601 writes it; its value is that text."""
    match = DATE.fullmatch(scalar.text.strip())
    day = _day(match) if match else None
    if day is not None and scalar.text == day:
        return GivenValue(day, scalar.text, scalar.place)
    what = f"{row.path} is not a date"
    if match and day is None:
        what = f"{row.path} is not a day of the calendar"
    context.refuse(scalar.place, what, shown(scalar.text), due_in(row), write(day))
    return None


def _day(match: re.Match[str]) -> str | None:
    """Write the day in full, if there is such a day."""
    try:
        return date(*(int(each) for each in match.groups())).isoformat()
    except ValueError:
        return None


def read_text(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read a text that is not empty, as it is written."""
    if scalar.text.strip():
        return GivenValue(scalar.text, scalar.text, scalar.place)
    context.refuse(scalar.place, f"{row.path} is empty", '""', due_in(row))
    return None


def read_part_name(row: Row, scalar: Scalar, context: Context) -> GivenValue | None:
    """Read the name of a part of the design, or of a travel."""
    assert isinstance(row.given, PartName)
    one = row.given.of
    known = context.parts if one == "part" else context.travels
    if scalar.text in known or scalar.text in context.lost:
        return GivenValue(scalar.text, scalar.text, scalar.place)
    mend = write(nearest_name(scalar.text, known))
    what = f"no {one} has this name"
    context.refuse(scalar.place, what, shown(scalar.text), due_in(row), mend)
    return None


def read_list(row: Row, node: Node, context: Context) -> GivenValue | None:
    """Read a list of words or part names, or one of them alone; its value is a tuple."""
    assert isinstance(row.given, Choices | PartName)
    read_one = read_choice if isinstance(row.given, Choices) else read_part_name
    if isinstance(node, Items) and not node.items:
        context.refuse(node.place, f"{row.path} lists nothing", "[]", due_in(row))
        return None
    before = len(context.problems)
    values: dict[str, None] = {}
    for item in node.items if isinstance(node, Items) else (node,):
        given = None
        if isinstance(item, Scalar):
            given = read_one(row, item, context)
        else:
            context.refuse(item.place, f"{row.path} lists words", kind_of(item), due_in(row))
        if given is not None and given.value in values:
            what = f"{row.path} lists this twice"
            context.refuse(given.place, what, shown(given.text), "each one once", "take one out")
        elif given is not None:
            values[given.value] = None
        if context.is_full:
            break
    if len(context.problems) > before:
        return None
    return GivenValue(tuple(values), ", ".join(values), node.place)
