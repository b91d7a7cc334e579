"""The sizes of a sweep: what is named on the command line, what can be bought, or a fair range."""

import math

import numpy as np

from reviewer.deriving.derived import Derived
from reviewer.notation.nearest import nearest
from reviewer.notation.quantity import Quantity, read_quantity
from reviewer.notation.show import show
from reviewer.notation.units import UNITS
from reviewer.parts.row import Choice, Count, Measure, Shape, Stock
from reviewer.reading.design import Design
from reviewer.reading.due import is_within
from reviewer.reading.shop_stock import Tables
from reviewer.studying.axis import Option, ladder_of, sections_of_part
from reviewer.studying.given import Given, places_of
from reviewer.studying.ladders import PROJECT
from reviewer.studying.rewriting import unit_of
from reviewer.studying.steps import on_step
from reviewer.studying.sweep import Stop

SWEPT = (Measure, Count, Choice, Stock, Shape)
STEPS = 24  # of a sweep over numbers
LOW, HIGH = 0.5, 2.0  # times the present value, where no range is named
MOST = 400


class NoSuchField(LookupError):
    """A name that is no given value of the design, with the nearest one."""

    def __init__(self, name: str, near: str | None) -> None:
        """Keep the name that was asked for and the nearest known one."""
        super().__init__(name)
        self.name = name
        self.near = near


class NoSizes(ValueError):
    """A range or a ladder with nothing on it: what is wrong with it, and what would be right."""

    def __init__(self, what: str, found: str, expected: str) -> None:
        """Keep the three of them."""
        super().__init__(what)
        self.what = what
        self.found = found
        self.expected = expected


def field_of(design: Design, name: str) -> Given:
    """The given value that a name stands for. Raises NoSuchField."""
    owners = {**design.loads, **design.parts}
    known = {
        f"{owner.name}.{row.path}": given
        for owner in owners.values()
        for row in owner.kind.rows
        if isinstance(row.given, SWEPT)
        for given in list(places_of(design, owner, row))[:1]
    }
    if name not in known:
        raise NoSuchField(name, nearest(name, known))
    return known[name]


def stops_of(
    derived: Derived,
    given: Given,
    low: str | None,
    high: str | None,
    *,
    stock: bool,
    tables: Tables = PROJECT,
) -> tuple[Stop, ...]:
    """The sizes of a sweep, in rising order. Raises NoSizes and QuantityError.

    `low` and `high` are as a person writes them; None is a fair range, or all that is sold.
    """
    if isinstance(given.row.given, Measure) and not stock:
        return _numbers(derived, given, low, high)
    stops = _ladder(derived, given, tables)
    if isinstance(given.row.given, Measure | Count):
        least, most = (_read(derived, given, text) for text in (low, high))
        stops = [
            each
            for each in stops
            if (least is None or each.size >= least) and (most is None or each.size <= most)
        ]
    elif low or high:
        what = "a choice has no range"
        raise NoSizes(what, f"{low or ''} {high or ''}".strip(), "no --from and no --to")
    if not stops:
        what = "there is nothing of this in the stock tables within the range"
        raise NoSizes(what, given.name, "a thickness, bearing, bolt, bar or section that is sold")
    return tuple(stops)


def is_sold(derived: Derived, given: Given, tables: Tables = PROJECT) -> bool:
    """Whether a value comes off a ladder of what can be had."""
    return bool(_ladder(derived, given, tables))


def _read(derived: Derived, given: Given, text: str | None) -> float | None:
    """A size as a person writes it, in the unit of the file where it has none."""
    if text is None:
        return None
    if isinstance(given.row.given, Count):
        if not text.isdecimal():
            raise NoSizes("this is counted", text, "a whole number")
        return float(text)
    symbol = derived.design.lengths_of(given.value.place)
    lengths = UNITS[symbol] if symbol else None
    return read_quantity(text, expected=given.row.dimension, lengths=lengths).value


def _numbers(derived: Derived, given: Given, low: str | None, high: str | None) -> tuple[Stop, ...]:
    """Evenly spaced sizes, the present one among them where it lies between."""
    value, quantity, entry = given.value.value, given.value.quantity, given.row.given
    assert quantity is not None
    assert isinstance(entry, Measure)
    least, most = (_read(derived, given, text) for text in (low, high))
    if value == 0.0 and (least is None or most is None):
        raise NoSizes("the value is zero, so that it has no range of its own", given.name,
                      "--from and --to")  # fmt: skip
    ends = sorted((value * LOW, value * HIGH))
    least, most = ends[0] if least is None else least, ends[1] if most is None else most
    if not least < most:
        raise NoSizes("the range is empty", f"{show(least, unit_of(quantity))} to "
                      f"{show(most, unit_of(quantity))}", "--from smaller than --to")  # fmt: skip
    between = (_round(float(each), quantity) for each in np.linspace(least, most, STEPS + 1)[1:-1])
    sizes = {least, most, *(each for each in between if least < each < most)}
    sizes = {each for each in sizes if not math.isclose(each, value, rel_tol=1e-9)}
    sizes |= {value} if least <= value <= most else set()
    inside = sorted(each for each in sizes if is_within(entry, each))
    if not inside:
        raise NoSizes("no size of the range is within the bounds of the field", given.name,
                      "sizes that the file could give")  # fmt: skip
    return tuple(Stop({given.field: each}, each, show(each, unit_of(quantity))) for each in inside)


def _round(size: float, quantity: Quantity) -> float:
    """The size on a sensible step that is nearest to one."""
    unit = unit_of(quantity)
    return min((on_step(size, unit, up=up) for up in (True, False)), key=lambda s: abs(s - size))


def _ladder(derived: Derived, given: Given, tables: Tables) -> list[Stop]:
    """Everything that is sold, the present one among it."""
    lines = derived.design.lines_of(given.value.place)
    if isinstance(given.row.given, Shape):
        options, _ = sections_of_part(given, given.row.path, lines)
        return [Stop(each.point, each.size, _section_text(each)) for each in options[:MOST]]
    options = ladder_of(given, lines, tables)
    quantity = given.value.quantity
    stops = []
    for each in options[:MOST]:
        value = each.point[given.field]
        text = show(value, unit_of(quantity)) if quantity else str(getattr(value, "name", value))
        stops.append(Stop(each.point, each.size, text))
    if quantity and not any(stop.size == given.value.value for stop in stops):
        value = float(given.value.value)
        stops.append(Stop({given.field: value}, value, show(value, unit_of(quantity))))
    return sorted(stops, key=lambda stop: stop.size) if options else []


def _section_text(option: Option) -> str:
    """A section by its measures: 40 x 40 x 2."""
    return " x ".join(f"{value * 1e3:g}" for value in option.point.values())
