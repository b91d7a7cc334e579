"""The cutting and stock list: what is cut from which sheet, bar or board, and what is bought."""

from collections.abc import Iterator
from math import isnan

from reviewer.judging.reviewed import Review
from reviewer.reporting.sheets.bars import bars_of, bars_table, totals
from reviewer.reporting.sheets.cut_tables import (
    CUTTERS,
    ring_section,
    router_section,
    saw_section,
)
from reviewer.reporting.sheets.cutting_list import Cut, cuts_of
from reviewer.reporting.sheets.hardware import bought_for, hardware_table
from reviewer.reporting.sheets.layouts import OnSheets, figure_of, on_sheets
from reviewer.reporting.sheets.making import Maker
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Block, Body, Caution, Column, NoSheet, Section, Table
from reviewer.reporting.words import counted

DUST = Caution("dust", "Dust of wood and of glued board is harmful: extract it, and wear a mask.")
MACHINED = ("router_cut", "saw_cut", "glued_ring")
MARKS = "abcdefghijklmnopqrstuvwxyz"


def cutting_body(review: Review) -> Body | NoSheet:
    """What is cut and what is bought for a design."""
    values = Quantities(review)
    sections = tuple(_sections(values))
    if not sections:
        return NoSheet("no part of the design is cut from a sheet or a bar, and nothing is bought")
    with_cutters = any(values.kind(part) in MACHINED for part in values.parts)
    return Body(sections, (DUST, CUTTERS) if with_cutters else (DUST,))


def _sections(values: Quantities) -> Iterator[Section]:
    cuts = list(cuts_of(values))
    if cuts:
        yield Section("from sheets", tuple(_from_sheets(values, cuts)))
    bars = list(bars_of(values))
    if bars:
        yield Section("from bars", (bars_table(values, bars), *totals(values, bars)))
    for kind, section in (("router_cut", router_section), ("saw_cut", saw_section)):
        of_kind = [part for part in values.parts if values.kind(part) == kind]
        if of_kind:
            yield section(values, of_kind)
    for part in values.parts:
        if values.kind(part) == "glued_ring":
            yield ring_section(values, part)
    bought = list(bought_for(values))
    if bought:
        yield Section("to buy", (hardware_table(bought),))


def _from_sheets(values: Quantities, cuts: list[Cut]) -> Iterator[Block]:
    groups = list(on_sheets(values, cuts))
    yield _table(values, groups)
    yield from _allowances(values)
    first = 1
    for mark, group in zip(_marks(), groups, strict=False):
        yield from _needed(values, group, first, mark)
        first += len(group.cuts)


def _marks() -> Iterator[str]:
    yield from (f"{one}{two}" for one in ("", *MARKS) for two in MARKS)


def _table(values: Quantities, groups: list[OnSheets]) -> Table:
    unit = values.length.symbol
    rows: list[tuple[str, ...]] = []
    for group in groups:
        for cut in group.cuts:
            rows.append(_row(values, group, cut, len(rows) + 1))
    columns = (
        Column("no.", side="right"),
        Column("part"),
        Column("sheet"),
        Column("measures", unit, "right"),
        Column("count", side="right"),
        Column("finished", unit),
        Column("rough", unit),
    )
    return Table("What is cut from sheets", columns, tuple(rows))


def _row(values: Quantities, group: OnSheets, cut: Cut, number: int) -> tuple[str, ...]:
    finished = (
        f"round {values.bare(cut.length, 'm')}"
        if cut.is_round and abs(cut.length - cut.width) < 1e-9
        else _size(values, cut.length, cut.width)
    )
    return (
        str(number),
        cut.part,
        group.name if group.sheet else f"{cut.material.name}, {values.shown(cut.drawn, 'm')}",
        values.bare(cut.actual, "m") or "unknown",
        str(cut.count),
        finished,
        _size(values, cut.rough_length, cut.rough_width),
    )


def _size(values: Quantities, length: float, width: float) -> str:
    return f"{values.bare(length, 'm')} x {values.bare(width, 'm')}"


def _allowances(values: Quantities) -> Iterator[str]:
    """What the sizes and layouts reckon with, and what no shop's file says."""
    words = {
        "kerf": "a kerf of {}",
        "trim": "{} trimmed along each edge of a sheet",
        "sanding": "{} for sanding on each edge",
        "oversize": "{} on each edge of what is glued up or cut round",
    }
    told = [text.format(values.shown(values.shop(name), "m")) for name, text in words.items()
            if not isnan(values.shop(name))]  # fmt: skip
    lacking = [name for name in words if isnan(values.shop(name))]
    if told:
        yield f"Reckoned with {', '.join(told)}."
    if lacking:
        yield f"No shop's file says {', '.join(lacking)}: nothing is left for it."


def _needed(values: Quantities, group: OnSheets, first: int, mark: str) -> Iterator[Block]:
    last = first + len(group.cuts) - 1
    numbers = f"number {first}" if first == last else f"numbers {first} to {last}"
    layout = group.layout
    if layout is None:
        yield Caution("not laid out", f"{group.name}, {numbers}: {group.why_not}.")
        return
    figure = figure_of(values, group, first, mark)
    count = len(layout.sheets)
    fewer = (
        "no layout takes fewer"
        if layout.fewest >= count
        else f"no layout takes fewer than {layout.fewest}"
    )
    yield (
        f"{group.name}, {numbers}: {counted(count, 'sheet')}, of which {layout.used:.0%} becomes "
        f"parts; {fewer}. The layout is cut by cuts from edge to edge."
    )
    yield figure


CUTTING = Maker("cutting", "Cutting and stock list", cutting_body)
