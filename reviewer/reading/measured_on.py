"""What a measurement names: the quantity, the value that it settles, and what it was made on."""

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from reviewer.notation.nearest import nearest
from reviewer.parts.row import Measure, Row, Stock
from reviewer.reading.context import Context, listed, nearest_name, write
from reviewer.reading.design import Combination, Configuration, GivenValue, Part
from reviewer.reading.tree import Table
from reviewer.reading.words import shown

MARK = re.compile(r"([a-z][a-z0-9_]{0,59}) ([0-9a-f]{6})", re.ASCII)
LONGEST = 5000


@dataclass(frozen=True)
class MeasuredOn:
    """What a measurement may name: parts, loads, configurations and combinations of its design."""

    parts: Mapping[str, Part]
    loads: Collection[str]
    configurations: tuple[Configuration, ...]
    combinations: tuple[Combination, ...] | None
    taken: set[str] = field(default_factory=set)  # names of measurements so far


def named_quantity(
    given: GivenValue | None, on: MeasuredOn, context: Context
) -> tuple[str, Row] | None:
    """The part and the row that a name stands for; None where there is none, which is told."""
    if given is None:
        return None
    name, point, path = given.text.partition(".")
    if name not in on.parts:
        if name not in context.parts and name not in context.lost:
            near = nearest_name(name, context.parts)
            mend = write(near and f"{near}{point or '.'}{path or '...'}")
            expected = "a part and its quantity, such as ring.rim_sink"
            context.refuse(given.place, "no part has this name", shown(name), expected, mend)
        return None
    rows = on.parts[name].kind.by_path
    row = rows.get(path)
    if row is not None and row.is_number:
        return name, row
    numbers = [each.path for each in rows.values() if each.is_number]
    near = nearest(path, numbers)
    what = f"{path} of {name} is no number" if row else f"{name} has no such quantity"
    expected = f"a number of the {on.parts[name].kind.name}, as `trace` takes it"
    mend = write(near and f"{name}.{near}")
    context.refuse(given.place, what, shown(given.text), expected, mend)
    return None


def read_calibrates(
    item: Table, given: Mapping[str, GivenValue], on: MeasuredOn, context: Context
) -> tuple[str, str] | None:
    """The value that a proven measurement settles."""
    named, key = given.get("calibrates"), item.key("calibrates")
    if named is None or key is None:
        return None
    if "proven" not in given or not given["proven"].value:
        what, expected = "only a proven measurement calibrates a value", "proven: true beside it"
        mend = "repeat the test, then add proven: true"
        context.refuse(key.place, what, "a measurement that is not proven", expected, mend)
    found = named_quantity(named, on, context)
    if found is None:
        return None
    part, row = found
    if not may_be_calibrated(row, on.parts[part]):
        rows = on.parts[part].kind.rows
        names = [each.path for each in rows if may_be_calibrated(each, on.parts[part])]
        near = nearest(row.path, names)
        what = f"{row.path} is computed, and follows from other values"
        expected = f"a value that {part} gives or takes from stock: {listed(names, 'or')}"
        context.refuse(named.place, what, shown(named.text), expected, write(near))
    return part, row.path


def may_be_calibrated(row: Row, part: Part) -> bool:
    """Whether a measurement may settle a value: one that a file may give, or one out of stock."""
    if not row.is_number or "allowed" in row.path or row.path.startswith("bench_test."):
        return False
    if isinstance(row.given, Measure):
        return not row.only or row.path in part.given
    stock = {each.path for each in part.kind.rows if isinstance(each.given, Stock)}
    needs = {need.removesuffix("?") for need in row.needs.values()}
    return bool(needs & stock) and needs <= stock | {"thickness", "plate.thickness", "grain"}


def read_fingerprint(given: GivenValue | None, context: Context) -> dict[str, str]:
    """Read the marks of the parts that it was measured on: `base 1a2b3c, ring 4d5e6f`."""
    if given is None:
        return {}
    marks: dict[str, str] = {}
    for each in given.text[:LONGEST].split(","):
        match = MARK.fullmatch(each.strip())
        if match is None or match[1] in marks:
            what = "this is no fingerprint"
            expected = "a name and six digits of 0-9 and a-f for each part: base 1a2b3c, ..."
            mend = "copy the line that the load-test sheet prints"
            context.refuse(given.place, what, shown(each.strip()), expected, mend)
            return {}
        marks[match[1]] = match[2]
    return marks
