"""How the pieces of a design lie on sheets: which size, how many, and a small figure of each."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from reviewer.geometry.packing import Blank, Layout, Piece, Placed, TooMany, pack
from reviewer.reporting.drawing import Drawing
from reviewer.reporting.sheets.cutting_list import Cut, key_of
from reviewer.reporting.sheets.quantities import Quantities
from reviewer.reporting.sheets.sheet import Figure
from reviewer.stock.sheets import Sheet

LINE = "fill='none' stroke='#000000' stroke-width='1'"
EDGE = "fill='none' stroke='#000000' stroke-width='2'"
CIRCLE = "fill='none' stroke='#000000' stroke-width='0.7' stroke-dasharray='4 3'"
WIDE, GAP, MOST_DRAWN = 320.0, 20.0, 12
SMALLEST_LABEL = 34.0  # pixels of a piece below which it has its number alone


@dataclass(frozen=True, slots=True)
class OnSheets:
    """The pieces of one sort of sheet, and how they lie; `why_not` where they are not laid out."""

    cuts: tuple[Cut, ...]
    sheet: Sheet | None
    layout: Layout | None
    why_not: str = ""

    @property
    def name(self) -> str:
        """What the sheet is called."""
        return self.sheet.name if self.sheet else self.cuts[0].material.name


def on_sheets(values: Quantities, cuts: Iterable[Cut]) -> Iterator[OnSheets]:
    """The pieces by the sheet that they come from, in order of material and thickness."""
    ranked = sorted(cuts, key=key_of)
    for _, group in groupby(ranked, key=key_of):
        yield _laid_out(values, tuple(group))


def _laid_out(values: Quantities, cuts: tuple[Cut, ...]) -> OnSheets:
    sheet = values.sheet_of(cuts[0].material, cuts[0].drawn)
    if sheet is None:
        return OnSheets(cuts, None, None, "no sheet of this thickness is in the tables of stock")
    rows = values.sheets_of(cuts[0].material)
    sizes = dict.fromkeys(
        size for row in rows if abs(row.nominal - sheet.nominal) < 1e-6 for size in row.sizes
    )
    if not sizes:
        return OnSheets(cuts, sheet, None, "the tables of stock have no size of this sheet")
    try:
        layouts = [_layout(values, cuts, size) for size in sizes]
    except TooMany as error:
        return OnSheets(cuts, sheet, None, str(error))
    found = [each for each in layouts if each is not None]
    if not found:
        return OnSheets(cuts, sheet, None, "a piece is larger than any such sheet in its margins")
    best = min(found, key=lambda each: len(each.sheets) * each.blank.length * each.blank.width)
    return OnSheets(cuts, sheet, best)


def _layout(values: Quantities, cuts: Sequence[Cut], size: tuple[float, float]) -> Layout | None:
    pieces = [
        Piece(str(number), cut.rough_length, cut.rough_width, cut.turns)
        for number, cut in enumerate(cuts)
        for _ in range(min(cut.count, 1000))
    ]
    return pack(pieces, Blank(*size, values.shop("trim", 0.0), values.shop("kerf", 0.0)))


def figure_of(values: Quantities, found: OnSheets, first: int, name: str) -> Figure:
    """The sheets to scale, each piece with its part's name and its number in the list.

    `first` is the number of the group's first piece, `name` tells the figure from others.
    """
    layout = found.layout
    assert layout is not None
    scale = WIDE / max(layout.blank[:2])
    high = layout.blank.width * scale
    drawn = layout.sheets[:MOST_DRAWN]
    rows = (len(drawn) + 1) // 2
    title = f"{found.name}: {len(layout.sheets)} of {_size(values, layout)}"
    says = _says(found, layout, first)
    broad = layout.blank.length * scale
    wide = 2 * broad + GAP if len(drawn) > 1 else broad
    drawing = Drawing(wide + 4, rows * (high + GAP) - GAP + 4, title, says, name)
    for number, sheet in enumerate(drawn):
        corner = (2 + number % 2 * (broad + GAP), 2 + number // 2 * (high + GAP))
        drawing.box(corner, (broad, high), EDGE)
        for piece in sheet:
            _draw(drawing, piece, found.cuts, corner, scale, first)
    return Figure(title, says, drawing.svg())


def _draw(
    drawing: Drawing,
    piece: Placed,
    cuts: Sequence[Cut],
    corner: tuple[float, float],
    scale: float,
    first: int,
) -> None:
    cut = cuts[int(piece.name)]
    at = (corner[0] + piece.x * scale, corner[1] + piece.y * scale)
    size = (piece.length * scale, piece.width * scale)
    drawing.box(at, size, LINE)
    middle = (at[0] + size[0] / 2, at[1] + size[1] / 2)
    if cut.is_round:
        drawing.circle(middle, cut.length * scale / 2, CIRCLE)
    number = str(first + int(piece.name))
    roomy = min(size) > SMALLEST_LABEL and size[0] > 7 * len(cut.part)
    look = "font-weight='bold'" if min(size) > 14 else "style='font-size: 8px'"
    drawing.text((middle[0], middle[1] + (4 if min(size) > 14 else 3)), number, "middle", look)
    if roomy:
        drawing.text((middle[0], middle[1] + 18), cut.part, "middle")


def _size(values: Quantities, layout: Layout) -> str:
    length, width = (values.shown(side, "m") for side in layout.blank[:2])
    return f"{length} by {width}"


def _says(found: OnSheets, layout: Layout, first: int) -> str:
    """Which pieces lie on which sheet, in words."""
    told = []
    for number, sheet in enumerate(layout.sheets, 1):
        pieces = [first + int(each.name) for each in sheet]
        counts = {piece: pieces.count(piece) for piece in sorted(set(pieces))}
        listed = ", ".join(
            f"{count} times number {piece}" if count > 1 else f"number {piece}"
            for piece, count in counts.items()
        )
        told.append(f"Sheet {number}: {listed}.")
    return " ".join(told)
