"""Reading the limits of a pack: names, values for levels, and why each is so."""

import re
from collections.abc import Iterator
from math import isfinite

from reviewer.judging.limits import Limit, Stated
from reviewer.judging.pack_reader import PackReader
from reviewer.notation.dimension import NUMBER, Dimension, si_symbol, words
from reviewer.notation.quantity import Quantity, QuantityError, read_quantity
from reviewer.notation.units import UnknownUnit, parse_unit
from reviewer.parts.facts import LEVELS
from reviewer.reading.names import NAME
from reviewer.reading.scalars import resolve
from reviewer.reading.tree import Node, Scalar, Table

SECTION = "limits"
KEYS = ("says", "value", "why", "source", "for", "note")
REQUIRED = ("says", "value", "why", "source")
FRACTION = re.compile(r"([0-9]{1,6})/([1-9][0-9]{0,5})")
OF_A_LEVEL = ("value", "why", "source", "note")


def read_limits(root: Node | None, reader: PackReader) -> Iterator[Limit]:
    """The limits that a pack states under `limits`, each that nothing is wrong with."""
    section = root.get(SECTION) if isinstance(root, Table) else None
    if section is None:
        return
    if not isinstance(section, Table):
        expected = "limits: {NAME: {says: ..., value: ..., why: ..., source: ...}}"
        reader.refuse(section.place, "limits is a table of limits by name", "no table", expected)
        return
    for name, node in section.entries:
        if reader.is_full:
            return
        before = len(reader.problems)
        limit = _limit(name, node, reader)
        if limit is not None and len(reader.problems) == before:
            yield limit


def _limit(name: Scalar, node: Node, reader: PackReader) -> Limit | None:
    if not NAME.fullmatch(name.text):
        expected = "small letters, digits and _, a letter first"
        reader.refuse(name.place, "this cannot be the name of a limit", name.text, expected)
    if not _has(name, node, KEYS, REQUIRED, "a limit", reader) or not isinstance(node, Table):
        return None
    general, dimension = _stated(node, None, reader)
    if general is None:
        return None
    levels = _levels(node, dimension, reader)
    says = reader.text(node, "says")
    return Limit(name.text, says, dimension, general, levels, name.place)


def _levels(node: Table, dimension: Dimension, reader: PackReader) -> dict[str, Stated]:
    section = node.get("for")
    if section is None:
        return {}
    if not isinstance(section, Table):
        expected = f"a table of {', '.join(LEVELS)}"
        reader.refuse(section.place, "for is a table of levels", "no table", expected)
        return {}
    found = {}
    for key, value in section.entries:
        if key.text not in LEVELS:
            reader.refuse_key(key, LEVELS, "a limit")
        elif _has(key, value, OF_A_LEVEL, OF_A_LEVEL[:3], "a level", reader):
            assert isinstance(value, Table)
            stated, _ = _stated(value, dimension, reader)
            if stated is not None:
                found[key.text] = stated
    return found


def _has(
    name: Scalar,
    node: Node,
    keys: tuple[str, ...],
    required: tuple[str, ...],
    owner: str,
    reader: PackReader,
) -> bool:
    """Whether a table has all that it must and nothing strange; what not is told."""
    if not isinstance(node, Table):
        found, expected = "no table", f"{name.text}: {{{', '.join(f'{k}: ...' for k in required)}}}"
        reader.refuse(name.place, f"{owner} is a table of keys", found, expected)
        return False
    before = len(reader.problems)
    for key, _ in node.entries:
        if key.text not in keys:
            reader.refuse_key(key, keys, owner)
    for each in required:
        if node.get(each) is None or reader.text(node, each).strip() == "":
            reader.refuse(name.place, f"{owner} lacks {each}", "nothing", f"the key {each}")
    return len(reader.problems) == before


def _stated(
    table: Table, due: Dimension | None, reader: PackReader
) -> tuple[Stated | None, Dimension]:
    node = table.get("value")
    assert isinstance(node, Scalar)
    quantity = read_value(node, due, reader)
    if quantity is None:
        return None, NUMBER
    value, dimension = quantity
    why, source = reader.text(table, "why"), reader.text(table, "source")
    return Stated(value, node.text, why, source, node.place), dimension


def read_value(
    node: Scalar, due: Dimension | None, reader: PackReader
) -> tuple[float, Dimension] | None:
    """A limit's value in SI: a quantity with its unit, or a plain number."""
    number = _plain(node)
    if number is not None and due in (None, NUMBER):
        return number, NUMBER
    try:
        quantity = read_quantity(node.text, expected=due)
    except QuantityError as error:
        reader.refuse_quantity(node, error)
        return None
    return _sound(node, quantity, reader)


def _plain(node: Scalar) -> float | None:
    """A number without a unit, or a fraction of two whole ones."""
    number = resolve(node)
    if isinstance(number, int | float) and not isinstance(number, bool) and isfinite(number):
        return float(number)
    match = FRACTION.fullmatch(node.text)
    return int(match[1]) / int(match[2]) if match else None


def _sound(node: Scalar, quantity: Quantity, reader: PackReader) -> tuple[float, Dimension] | None:
    """A quantity that can be a limit: one number, in a dimension that can be shown."""
    if quantity.low != quantity.high:
        what, expected = "a limit has no tolerance", "one value"
        reader.refuse(node.place, what, node.text, expected)
        return None
    try:
        parse_unit(si_symbol(quantity.dimension))
    except UnknownUnit:
        what = f"a limit cannot be {words(quantity.dimension)}"
        reader.refuse(node.place, what, node.text, "a length, a force, a ratio or the like")
        return None
    return quantity.value, quantity.dimension
