"""How bolted parts line up, on the setting-out sheet."""

from collections.abc import Iterator, Sequence

from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Block, Check, Checks, Column, Section, Table


def lining_section(values: Quantities, parts: Sequence[str]) -> Section:
    """A table of all that is lined up, and what to do for each."""
    rows = tuple(_row(values, part) for part in parts)
    heads = ("turns", "at the far end", "95 of 100", "between like parts", "allowed")
    table = Table(
        "How far each can stand out of line in its holes, to each side",
        (Column("part"), *(Column(head, side="right") for head in heads)),
        rows,
    )
    return Section(
        "lining up", (table, *(block for part in parts for block in _work(values, part)))
    )


def _row(values: Quantities, part: str) -> tuple[str, ...]:
    paths = ("angle.worst", "deviation.worst", "deviation.likely", "difference.likely", "allowed")
    told = (values.told(part, path, 2) or "unknown" for path in paths)
    return (part.replace("_", " "), *told)


def _work(values: Quantities, part: str) -> Iterator[Block]:
    name = part.replace("_", " ")
    of = values.named(part, "of") or name
    by = values.named(part, "lined_up_by")
    advice = values.named(part, "advice")
    by_what = {"bolts": "its bolts alone", "fixture": "a fixture"}.get(by, by)
    yield f"{name}: lined up by {by_what}."
    if advice:
        yield f"To keep it in line: {advice}."
    items = [
        *([Check("all lie in the fixture while their bolts are tightened")]
          if by == "fixture" else []),
        *([Check("dowels are in before the bolts are tightened")] if by == "dowels" else []),
        Check(f"{of}: far end out of line, measured", values.length.symbol),
    ]  # fmt: skip
    adjust = values.named(part, "adjust.by")
    if adjust:
        covers = values.told(part, "adjust.covers", 2) or "not told how far"
        items.append(Check(f"adjusted by {adjust} (far end: {covers} to each side) and tightened"))
    yield Checks(tuple(items))
