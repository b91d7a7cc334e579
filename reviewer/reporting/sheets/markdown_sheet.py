"""A sheet in Markdown, for a repository beside the drawings."""

from collections.abc import Iterator, Sequence
from functools import singledispatch

from reviewer.notation.plain import plain
from reviewer.reporting.markdown_text import marked, table
from reviewer.reporting.sheet import LONGEST
from reviewer.reporting.sheets.sheet import (
    BLANK,
    Caution,
    Checks,
    Figure,
    Sheet,
    Table,
    Verbatim,
)
from reviewer.reporting.words import sentence

FENCE = "~~~~"
TO_FILL = "\\_" * 10


def markdown_sheets(sheets: Sequence[Sheet], without: Sequence[str]) -> str:
    """Sheets one after the other, and the sheets that there are none of, with the reasons."""
    texts = [markdown_sheet(sheet) for sheet in sheets]
    if without:
        reasons = "".join(f"- {marked(reason)}\n" for reason in without)
        texts.append(f"## Sheets that there are none of\n\n{reasons}")
    return "\n".join(texts)


def markdown_sheet(sheet: Sheet) -> str:
    """A sheet as one part of a document."""
    path = "from standard input" if sheet.path == "-" else marked(sheet.path)
    lines = [f"## {marked(sheet.title)}", "", f"**{marked(sheet.named)}**, {path}", ""]
    for section in sheet.every:
        lines += [f"### {marked(sentence(section.heading).rstrip('.'))}", ""]
        for block in section.blocks:
            lines += [*_written(block), ""]
    return "\n".join(lines).rstrip("\n") + "\n"


@singledispatch
def _written(block: object) -> Iterator[str]:
    raise TypeError(type(block))


@_written.register
def _(block: str) -> Iterator[str]:
    yield marked(block)


@_written.register
def _(block: Caution) -> Iterator[str]:
    yield f"> **{marked(sentence(block.hazard))}** {marked(block.text)}"


@_written.register
def _(block: Checks) -> Iterator[str]:
    for item in block.items:
        room = "" if item.unit is None else f" {TO_FILL} {marked(item.unit)}".rstrip()
        yield f"- [ ] {marked(item.text)}{room}"


@_written.register
def _(block: Verbatim) -> Iterator[str]:
    yield FENCE
    yield from (plain(line, LONGEST).replace(FENCE, "~") for line in block.lines)
    yield FENCE


@_written.register
def _(block: Figure) -> Iterator[str]:
    yield f"*{marked(sentence(block.title))}* {marked(block.says)}"


@_written.register
def _(block: Table) -> Iterator[str]:
    if block.caption:
        yield f"**{marked(block.caption)}**"
        yield ""
    heads = tuple(marked(each.told) for each in block.columns)
    rows = [tuple("" if cell == BLANK else cell for cell in row) for row in block.rows]
    yield from table(heads, rows)
