"""A template as SVG at full size: one unit of the drawing is one millimetre on paper."""

from math import pi

from reviewer.geometry.rim import Arc, Circle, Edge, Line, Point
from reviewer.notation.plain import plain
from reviewer.reporting.drawing import safe
from reviewer.reporting.templates.template import CHECK, MADE_BY, Layer, Template, Words

MILLI = 1e3
MARGIN = 10.0  # mm around all that is drawn
FOOT = 24.0  # mm below it, for the check bar
WIDTHS = {Layer.OUTLINE: 0.35, Layer.OPENINGS: 0.35, Layer.HOLES: 0.25}
THIN = 0.18
DASHES = {Layer.LINES: "8 2 1 2", Layer.CIRCLES: "4 2"}


class Sheet:
    """A drawing in millimetres with y down, from the template's metres with y up."""

    def __init__(self, template: Template) -> None:
        """Lay the template out with room around it."""
        west, south, east, north = (each * MILLI for each in template.box)
        self.width = max(east - west, CHECK * MILLI) + 2 * MARGIN
        self.height = north - south + 2 * MARGIN + FOOT
        self._west, self._north = west - MARGIN, north + MARGIN

    def at(self, point: Point) -> str:
        """A place as it is written."""
        x, y = self.place(point)
        return f"{number(x)},{number(y)}"

    def place(self, point: Point) -> Point:
        """A place on the drawing [mm]."""
        return (point[0] * MILLI - self._west, self._north - point[1] * MILLI)


def as_svg(template: Template) -> str:
    """The whole template as one SVG text."""
    sheet = Sheet(template)
    lines = [
        "<svg xmlns='http://www.w3.org/2000/svg' "
        f"width='{number(sheet.width)}mm' height='{number(sheet.height)}mm' "
        f"viewBox='0 0 {number(sheet.width)} {number(sheet.height)}'>",
        f"<title>{safe(template.title)}</title>",
        f"<desc>{MADE_BY}: full size, lengths in mm</desc>",
    ]
    for layer in Layer:
        pieces = [_edge(each.edge, sheet) for each in template.strokes if each.layer is layer]
        if layer is Layer.LABELS:
            pieces = [_words(each, sheet.place(each.place)) for each in template.words]
        elif layer is Layer.CHECK:
            pieces = _check(sheet)
        if pieces:
            lines += [_group(layer), *pieces, "</g>"]
    return "\n".join([*lines, "</svg>", ""])


def _group(layer: Layer) -> str:
    dashes = f" stroke-dasharray='{DASHES[layer]}'" if layer in DASHES else ""
    stroke = f"fill='none' stroke='#000000' stroke-width='{WIDTHS.get(layer, THIN)}'{dashes}"
    if layer is Layer.LABELS:
        stroke = "fill='#000000' stroke='none' font-family='sans-serif'"
    return f"<g id='{layer.value.lower()}' {stroke}>"


def _edge(edge: Edge, sheet: Sheet) -> str:
    match edge:
        case Line(start, end):
            return f"<path d='M{sheet.at(start)} L{sheet.at(end)}'/>"
        case Circle(centre, radius):
            x, y = sheet.place(centre)
            return f"<circle cx='{number(x)}' cy='{number(y)}' r='{number(radius * MILLI)}'/>"
        case Arc(_, radius, start, end):
            large = int(end - start > pi)
            size = number(radius * MILLI)
            first, last = sheet.at(edge.at(start)), sheet.at(edge.at(end))
            return f"<path d='M{first} A{size},{size} 0 {large} 0 {last}'/>"


def _words(words: Words, place: Point) -> str:
    x, y = place
    size = words.height * MILLI * 1.4  # a capital is about 0.7 of the size of its font
    return (
        f"<text x='{number(x)}' y='{number(y + words.height * MILLI / 2)}' "
        f"text-anchor='{'start' if words.from_left else 'middle'}' "
        f"font-size='{number(size)}'>{safe(plain(words.text, 200))}</text>"
    )


def _check(sheet: Sheet) -> list[str]:
    """The bar of 100 mm, its ends marked."""
    y, start, end = sheet.height - MARGIN, MARGIN, MARGIN + CHECK * MILLI
    bar = f"<path d='M{number(start)},{number(y)} L{number(end)},{number(y)}'/>"
    ends = [
        f"<path d='M{number(x)},{number(y - 3)} L{number(x)},{number(y + 3)}'/>"
        for x in (start, end)
    ]
    said = "check: this bar is 100 mm long on paper"
    text = (
        f"<text x='{number(start)}' y='{number(y - 4)}' font-size='4' font-family='sans-serif' "
        f"fill='#000000' stroke='none'>{said}</text>"
    )
    return [bar, *ends, text]


def number(value: float) -> str:
    """Millimetres to a ten-thousandth.

    >>> number(12.0), number(3.14159265), number(-0.00001)
    ('12', '3.1416', '0')
    """
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
