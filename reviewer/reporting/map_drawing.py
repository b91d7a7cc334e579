"""A map of two values as a picture: a box for each pair of sizes, with what governs there."""

from reviewer.notation.plain import plain
from reviewer.reporting.drawing import Drawing
from reviewer.reporting.size_text import GONE, LETTERS
from reviewer.studying.mapping import Map

LEFT, TOP = 110.0, 80.0
BOX = (84.0, 30.0)
KEY_HEIGHT = 18.0
HOLDS, FAILS = "fill='#eef4ea' stroke='#888888'", "fill='#f6dcd6' stroke='#888888'"


def map_drawing(found: Map) -> str:
    """The picture of a map, in SVG. What fails is struck through besides its colour."""
    rows, columns = len(found.down), len(found.across)
    governing = {
        (row, column): found.governing(row, column)
        for row in range(rows)
        for column in range(columns)
    }
    names = list(dict.fromkeys(each.name for each in governing.values() if each))
    letters = dict(zip(names, LETTERS, strict=False))
    width = max(LEFT + columns * BOX[0] + 30, 480)
    never = [f"at every size {each.name} does not hold" for each in found.standing]
    height = TOP + rows * BOX[1] + 50 + KEY_HEIGHT * (len(names) + len(never) + 1)
    first, second = found.given
    title = f"{first.name} and {second.name} of {found.derived.design.name}"
    held = sum(found.passes(row, column) for row in range(rows) for column in range(columns))
    drawing = Drawing(
        width, height, title, f"Everything holds in {held} of {rows * columns} boxes."
    )
    drawing.text((20, 24), plain(title, 100), look="font-weight='bold'")
    drawing.text((20, 44), plain(f"down {first.name}, across {second.name}", 100))
    for column, stop in enumerate(found.across):
        drawing.text((LEFT + (column + 0.5) * BOX[0], TOP - 8), plain(stop.text, 12), "middle")
    for row, stop in enumerate(found.down):
        drawing.text((LEFT - 8, TOP + (row + 0.65) * BOX[1]), plain(stop.text, 16), "end")
        for column in range(columns):
            _put_box(drawing, found, row, column, letters)
    _put_key(drawing, TOP + rows * BOX[1] + 30, letters, never)
    return drawing.svg()


def _put_key(drawing: Drawing, below: float, letters: dict[str, str], never: list[str]) -> None:
    """What the numbers, letters and strokes mean, and what holds nowhere."""
    drawing.text((20, below), "the part of the limit that is used, and the rule that governs; "
                 "struck through: something fails")  # fmt: skip
    keys = [f"{letter}  {name}" for name, letter in letters.items()]
    for index, words in enumerate([*keys, *never]):
        drawing.text((20, below + KEY_HEIGHT * (index + 1)), words)


def _put_box(drawing: Drawing, found: Map, row: int, column: int, letters: dict[str, str]) -> None:
    corner = (LEFT + column * BOX[0], TOP + row * BOX[1])
    holds = found.passes(row, column)
    drawing.box(corner, BOX, HOLDS if holds else FAILS)
    course = found.governing(row, column)
    if not holds:
        end = (corner[0] + BOX[0], corner[1] + BOX[1])
        drawing.line((corner[0], end[1]), (end[0], corner[1]), "stroke='#888888'")
    if course is not None:
        used = float(course.utilisation[row * len(found.across) + column])
        text = "over 99" if used > GONE else f"{used:.2f}"
        middle = (corner[0] + BOX[0] / 2, corner[1] + BOX[1] * 0.65)
        drawing.text(middle, f"{text} {letters.get(course.name, '')}".rstrip(), "middle")
