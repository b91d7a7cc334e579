"""Lengths of tube, extrusion and bar, cut from the bars that the shop buys."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, isnan

from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Column, Table

SIDES = ("section.width", "section.height", "section.wall")
ROUND = ("section.diameter", "section.wall")
# The length that is cut of each kind: fields that are added.
LENGTHS = {
    "arm": ("reach", "seat"),
    "shaft": ("length",),
    "lever": ("load_arm", "hand_arm"),
    "frame": ("height",),
}
MOST_LENGTHS = 1000  # that are put into bars
COUNTS = {"frame": "legs"}


@dataclass(frozen=True, slots=True)
class Bar:
    """Like lengths of one section and material [m]."""

    part: str
    section: str
    material: str
    count: int
    length: float
    mass: float


def bars_of(values: Quantities) -> Iterator[Bar]:
    """The bars of a design, in the order of the file."""
    for part in values.parts:
        kind = values.kind(part)
        section = _section(values, part)
        if kind not in LENGTHS or not section:
            continue
        lengths = [values.number(part, path) for path in LENGTHS[kind]]
        length = sum(each for each in lengths if not isnan(each))
        if isnan(lengths[0]):
            continue
        count = values.choice(part, COUNTS[kind]) if kind in COUNTS else values.count(part)
        material = values.named(part, "material")
        yield Bar(part, section, material, int(count or 1), length, values.number(part, "mass"))


def _section(values: Quantities, part: str) -> str:
    """A section as it is ordered: 40 x 40 x 2 mm tube, 20 mm round."""
    if values.kind(part) == "shaft":
        return _sized(values, part, ("diameter", "wall"), "pipe", "round")
    if not isnan(values.number(part, "section.diameter")):
        return _sized(values, part, ROUND, "pipe", "round")
    if not isnan(values.number(part, "section.width")):
        return _sized(values, part, SIDES, "tube", "bar")
    return ""


def _sized(values: Quantities, part: str, paths: tuple[str, ...], hollow: str, solid: str) -> str:
    sizes = [values.number(part, path) for path in paths]
    known = [each for each in sizes if not isnan(each) and each > 0]
    if not known:
        return ""
    unit = values.length.symbol
    told = " x ".join(values.bare(each, "m") for each in known)
    return f"{told} {unit} {solid if isnan(sizes[-1]) or sizes[-1] <= 0 else hollow}"


def bars_table(values: Quantities, bars: list[Bar]) -> Table:
    """Lengths to cut, and how many bars they take where the shop says how long those are."""
    unit = values.length.symbol
    rows = [
        (
            each.part,
            each.section,
            each.material,
            str(each.count),
            values.bare(each.length, "m", 5),
        )
        for each in bars
    ]
    return Table(
        "Lengths to cut",
        (
            Column("part"),
            Column("section"),
            Column("material"),
            Column("how many", side="right"),
            Column("length", unit, "right"),
        ),
        tuple(rows),
    )


def totals(values: Quantities, bars: list[Bar]) -> Iterator[str]:
    """For each section the length that its pieces take with a kerf between them."""
    kerf, stock = values.shop("kerf", 0.0), values.shop("bar")
    for section, material in dict.fromkeys((each.section, each.material) for each in bars):
        lengths = [
            each.length
            for each in bars
            if (each.section, each.material) == (section, material)
            for _ in range(min(each.count, 10_000))
        ]
        run = sum(lengths) + kerf * (len(lengths) - 1)
        kerfs = "no kerf" if kerf == 0 else "a kerf"
        told = f"{section}, {material}: {values.shown(run, 'm')} with {kerfs} between the pieces"
        if not isnan(stock) and len(lengths) <= MOST_LENGTHS:
            told += f", {_bars(lengths, stock, kerf)} of {values.shown(stock, 'm')}"
        yield f"{told}."


def _bars(lengths: list[float], stock: float, kerf: float) -> str:
    """How many bars the lengths take, the longest first into the first bar with room."""
    if max(lengths) > stock:
        return "of which one piece is longer than a bar"
    room: list[float] = []
    for length in sorted(lengths, reverse=True):
        place = next((i for i, left in enumerate(room) if left >= length - 1e-9), None)
        if place is None:
            room.append(stock)
            place = len(room) - 1
        room[place] -= length + kerf
    fewest = ceil((sum(lengths) + kerf * (len(lengths) - len(room))) / stock - 1e-9)
    bars = f"{len(room)} bars" if len(room) > 1 else "one bar"
    return bars if fewest >= len(room) else f"{bars} (no fewer than {fewest})"
