"""A sheet as text of 80 columns, for a terminal or a plain printer."""

from collections.abc import Sequence
from functools import singledispatchmethod

from reviewer.notation.plain import plain
from reviewer.reporting.sheet import LONGEST, Style, columns, wrapped
from reviewer.reporting.sheet import Sheet as Lines
from reviewer.reporting.sheets.sheet import (
    BLANK,
    Caution,
    Check,
    Checks,
    Column,
    Figure,
    Sheet,
    Table,
    Verbatim,
)
from reviewer.reporting.words import sentence

TO_FILL = 10  # columns of a line to write on
GAP = "  "


def text_sheets(sheets: Sequence[Sheet], without: Sequence[str], style: Style) -> str:
    """Sheets one after the other, and the sheets that there are none of, with the reasons."""
    texts = [text_sheet(sheet, style) for sheet in sheets]
    if without:
        lines = Lines(style)
        lines.heading("sheets that there are none of")
        for reason in without:
            lines.put(reason)
        texts.append(lines.text())
    return f"\n{'=' * style.width}\n\n".join(texts)


def text_sheet(sheet: Sheet, style: Style | None = None) -> str:
    """A sheet in lines."""
    lines = Lines(style or Style())
    lines.put(sheet.title.upper(), look="strong")
    lines.put(sheet.named, look="strong")
    lines.put("from standard input" if sheet.path == "-" else sheet.path)
    writer = _Writer(lines)
    for section in sheet.every:
        lines.heading(section.heading)
        for block in section.blocks:
            writer.put(block)
            lines.gap()
    return lines.text().rstrip("\n") + "\n"


class _Writer:
    def __init__(self, lines: Lines) -> None:
        self.lines = lines

    @singledispatchmethod
    def put(self, block: object) -> None:
        raise TypeError(type(block))

    @put.register
    def _(self, block: str) -> None:
        self.lines.put(block)

    @put.register
    def _(self, block: Caution) -> None:
        self.lines.put(block.text, lead=f"! {block.hazard.upper()}: ", look="must")

    @put.register
    def _(self, block: Checks) -> None:
        for item in block.items:
            self._check(item)

    def _check(self, item: Check) -> None:
        if item.unit is None:
            self.lines.put(item.text, lead="[ ] ")
            return
        room = f"{'_' * TO_FILL} {item.unit}".rstrip()
        lead = columns("[ ] ")
        told = wrapped(plain(item.text, LONGEST), self.lines.style.width - lead)
        last = columns(told[-1]) if told else 0
        self.lines.put(item.text, lead="[ ] ")
        if lead + last + 2 + columns(room) <= self.lines.style.width:
            self.lines.lines[-1] += f"{GAP}{room}"
        else:
            self.lines.put(room, lead)

    @put.register
    def _(self, block: Verbatim) -> None:
        self.lines.lines += [plain(line, LONGEST) for line in block.lines]

    @put.register
    def _(self, block: Figure) -> None:
        self.lines.put(f"{sentence(block.title)} {block.says}", lead="Figure: ")

    @put.register
    def _(self, block: Table) -> None:
        if block.caption:
            self.lines.put(block.caption, look="strong")
        for line in table_lines(block.columns, block.rows, self.lines.style.width):
            self.lines.lines.append(line)


def table_lines(heads: Sequence[Column], rows: Sequence[Sequence[str]], width: int) -> list[str]:
    """A table in lines of at most so many columns; cells that are too long are wrapped.

    Where even that is not enough, each row becomes lines of `heading: cell`.
    """
    cells = [[_shown(cell) for cell in row] for row in rows]
    titles = [plain(each.told, LONGEST) for each in heads]
    natural = [
        max(columns(text) for text in (title, *(row[place] for row in cells)))
        for place, title in enumerate(titles)
    ]
    room = width - len(GAP) * (len(heads) - 1)
    longest = [
        _longest_word([title, *(row[place] for row in cells)]) for place, title in enumerate(titles)
    ]
    if sum(longest) > room:
        return _as_list(titles, cells, width)
    widths = _narrowed(natural, longest, room)
    lines = [*_row(titles, heads, widths), GAP.join("-" * each for each in widths)]
    for row in cells:
        lines += _row(row, heads, widths)
    return lines


def _shown(cell: str) -> str:
    return "_" * TO_FILL if cell == BLANK else plain(cell, LONGEST)


def _longest_word(texts: Sequence[str]) -> int:
    """The width of the longest piece that cannot be broken."""
    pieces = (line for text in texts for line in wrapped(text, 1))
    return max((columns(each) for each in pieces), default=0)


def _narrowed(natural: Sequence[int], least: Sequence[int], room: int) -> list[int]:
    """Widths that fit the room: the widest column gives way first, never below its longest word."""
    widths = list(natural)
    while sum(widths) > room:
        able = [place for place, each in enumerate(widths) if each > least[place]]
        place = max(able, key=lambda each: (widths[each], each))
        widths[place] -= 1
    return widths


def _row(cells: Sequence[str], heads: Sequence[Column], widths: Sequence[int]) -> list[str]:
    wrapped_cells = [wrapped(cell, room) for cell, room in zip(cells, widths, strict=True)]
    height = max(len(each) for each in wrapped_cells)
    lines = []
    for number in range(max(height, 1)):
        pieces = [
            _padded(lines_of[number] if number < len(lines_of) else "", room, head)
            for lines_of, room, head in zip(wrapped_cells, widths, heads, strict=True)
        ]
        lines.append(GAP.join(pieces).rstrip())
    return lines


def _padded(text: str, room: int, head: Column) -> str:
    free = " " * max(room - columns(text), 0)
    return free + text if head.side == "right" else text + free


def _as_list(titles: Sequence[str], rows: Sequence[Sequence[str]], width: int) -> list[str]:
    lines = Lines(Style(width))
    for row in rows:
        for title, cell in zip(titles, row, strict=True):
            if cell:
                lines.put(cell, lead=f"{title}: ")
        lines.gap()
    return lines.lines
