"""A template as PDF at full size on sheets of A4 or Letter, each with marks, name and check bar.

Pages are not compressed: the bytes are then the same on every machine.
"""

from __future__ import annotations

from io import BytesIO
from math import ceil, cos, pi, sin, tan
from typing import TYPE_CHECKING

from reviewer.geometry.rim import Arc, Box, Circle, Edge, Line, Point
from reviewer.notation.plain import plain
from reviewer.reporting.templates.template import CHECK, MADE_BY, Layer, Template, Words
from reviewer.reporting.templates.tiles import (
    FOOT,
    MARGIN,
    Mark,
    Paper,
    Tile,
    Tiling,
    tiling_of,
    touches,
)

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas, PDFPathObject

POINT = 0.0254 / 72  # m
STEP = pi / 8  # of a circle for one cubic curve, which is then within 1e-7 of the radius
WIDTHS = {Layer.OUTLINE: 0.35e-3, Layer.OPENINGS: 0.35e-3, Layer.HOLES: 0.25e-3}
THIN = 0.15e-3
DASHES = {Layer.LINES: (8e-3, 2e-3, 1e-3, 2e-3), Layer.CIRCLES: (4e-3, 2e-3)}
FONT = "Helvetica"
CAPITAL = 0.718  # height of a capital of this font over its size: its metrics
HALF_MARK, RING = 0.004, 0.002  # m, a register mark: half of its cross, and its circle
ADVICE = (
    "Print at 100 %: no fitting to the page, no scaling.",
    "Measure the bar on every sheet: it is 100 mm long.",
    "Lay the sheets so that marks of the same name coincide, and fix them there.",
)


def as_pdf(template: Template, paper: Paper) -> bytes:
    """All sheets of a template; with several, the first page shows how they lie together."""
    from reportlab.pdfgen.canvas import Canvas

    tiling = tiling_of(template, paper)
    stream = BytesIO()
    size = (tiling.paper.width / POINT, tiling.paper.height / POINT)
    canvas = Canvas(stream, pagesize=size, invariant=1, pageCompression=0)
    canvas.setTitle(latin(template.title))
    canvas.setCreator(MADE_BY)
    canvas.setAuthor("")
    if len(tiling.tiles) > 1:
        _overview(canvas, template, tiling)
    for tile in tiling.tiles:
        if not tile.blank:
            _sheet(canvas, template, tiling, tile)
    canvas.save()
    return stream.getvalue()


def latin(text: str) -> str:
    """A text in the letters that the fonts of every reader have; another letter is a ?."""
    return plain(text, 200).encode("cp1252", "replace").decode("cp1252")


class _Frame:
    """From places on the template to points on a page."""

    def __init__(self, corner: Point, origin: Point, scale: float = 1.0) -> None:
        self.corner, self.origin, self.scale = corner, origin, scale

    def __call__(self, place: Point) -> Point:
        return (
            (self.origin[0] + (place[0] - self.corner[0]) * self.scale) / POINT,
            (self.origin[1] + (place[1] - self.corner[1]) * self.scale) / POINT,
        )

    def box(self, box: Box) -> tuple[float, float, float, float]:
        """Corner, width and height."""
        (west, south), (east, north) = self(box[:2]), self(box[2:])
        return (west, south, east - west, north - south)


def _sheet(canvas: Canvas, template: Template, tiling: Tiling, tile: Tile) -> None:
    frame = _Frame(tile.box[:2], (MARGIN, MARGIN + FOOT))
    canvas.saveState()
    clip = canvas.beginPath()
    clip.rect(*frame.box(tile.box))
    canvas.clipPath(clip, stroke=0, fill=0)
    _draw(canvas, template, frame, tile.box)
    canvas.restoreState()
    if len(tiling.tiles) > 1:
        for mark in tile.marks:
            _register(canvas, mark, frame)
    of = f"{tile.name} of {tiling.rows} x {tiling.columns}" if len(tiling.tiles) > 1 else ""
    _foot(canvas, tiling.paper, (template.title, of))
    canvas.showPage()


def _draw(canvas: Canvas, template: Template, frame: _Frame, box: Box) -> None:
    """All that lies on a sheet, a layer after the other."""
    for layer in Layer:
        edges = [
            each.edge
            for each in template.strokes
            if each.layer is layer and touches(each.edge, box)
        ]
        if not edges:
            continue
        canvas.setLineWidth(WIDTHS.get(layer, THIN) / POINT)
        canvas.setDash([each / POINT for each in DASHES.get(layer, ())])
        for edge in edges:
            path = canvas.beginPath()
            _trace(path, edge, frame)
            canvas.drawPath(path, stroke=1, fill=0)
    canvas.setDash([])
    for words in template.words:
        _write(canvas, words, frame)


def _trace(path: PDFPathObject, edge: Edge, frame: _Frame) -> None:
    match edge:
        case Line(start, end):
            path.moveTo(*frame(start))
            path.lineTo(*frame(end))
        case Circle(centre, radius):
            _curve(path, Arc(centre, radius, 0.0, 2 * pi), frame)
            path.close()
        case Arc():
            _curve(path, edge, frame)


def _curve(path: PDFPathObject, arc: Arc, frame: _Frame) -> None:
    """An arc as cubic curves, each tangent to it at both ends."""
    count = max(1, ceil((arc.end - arc.start) / STEP))
    step = (arc.end - arc.start) / count
    pull = 4.0 / 3.0 * tan(step / 4) * arc.radius
    path.moveTo(*frame(arc.at(arc.start)))
    for number in range(count):
        first, last = arc.start + number * step, arc.start + (number + 1) * step
        (x1, y1), (x2, y2) = arc.at(first), arc.at(last)
        leaving = (x1 - pull * sin(first), y1 + pull * cos(first))
        coming = (x2 + pull * sin(last), y2 - pull * cos(last))
        path.curveTo(*frame(leaving), *frame(coming), *frame((x2, y2)))


def _write(canvas: Canvas, words: Words, frame: _Frame) -> None:
    x, y = frame(words.place)
    height = words.height * frame.scale / POINT
    canvas.setFont(FONT, height / CAPITAL)
    draw = canvas.drawString if words.from_left else canvas.drawCentredString
    draw(x, y - height / 2, latin(words.text))


def _register(canvas: Canvas, mark: Mark, frame: _Frame) -> None:
    """A cross in a circle, and its name."""
    x, y = frame(mark.place)
    half = HALF_MARK / POINT
    canvas.setLineWidth(THIN / POINT)
    canvas.line(x - half, y, x + half, y)
    canvas.line(x, y - half, x, y + half)
    canvas.circle(x, y, RING / POINT, stroke=1, fill=0)
    canvas.setFont(FONT, 7)
    canvas.drawString(x + 7, y + 5, mark.name)


def _foot(canvas: Canvas, paper: Paper, said: tuple[str, ...]) -> None:
    """The check bar with its ends marked, and what the sheet is."""
    west, y = MARGIN / POINT, (MARGIN + 0.003) / POINT
    east, tick = west + CHECK / POINT, 0.002 / POINT
    canvas.setLineWidth(THIN / POINT)
    canvas.line(west, y, east, y)
    for x in (west, east):
        canvas.line(x, y - tick, x, y + tick)
    canvas.setFont(FONT, 7)
    canvas.drawString(west + 6, y + 4, "100 mm: print at 100 %, and measure it")
    right = (paper.width - MARGIN) / POINT
    canvas.setFont(FONT, 8)
    for number, text in enumerate(each for each in said if each):
        canvas.drawRightString(right, y + 21 - 11 * number, latin(text))
    canvas.setLineWidth(THIN / POINT)
    canvas.line(west, (MARGIN + FOOT) / POINT, right, (MARGIN + FOOT) / POINT)


def _overview(canvas: Canvas, template: Template, tiling: Tiling) -> None:
    """How the sheets lie together, small, and what to do with them."""
    paper, box = tiling.paper, tiling.box
    width, height = paper.room
    height -= 0.030
    scale = min(width / (box[2] - box[0]), height / (box[3] - box[1]))
    frame = _Frame(box[:2], (MARGIN, MARGIN + FOOT + 0.002), scale)
    top = (paper.height - MARGIN) / POINT
    canvas.setFont(f"{FONT}-Bold", 11)
    canvas.drawString(MARGIN / POINT, top - 11, latin(template.title))
    canvas.setFont(FONT, 9)
    for number, text in enumerate(ADVICE):
        canvas.drawString(MARGIN / POINT, top - 27 - 12 * number, text)
    _draw(canvas, template, frame, box)
    canvas.setLineWidth(THIN / POINT)
    for tile in tiling.tiles:
        x, y, wide, high = frame.box(tile.box)
        canvas.rect(x, y, wide, high, stroke=1, fill=0)
        canvas.setFont(FONT, 8)
        left_out = " (nothing on it, not printed)" if tile.blank else ""
        canvas.drawString(x + 6, y + high - 14, f"{tile.row} / {tile.column}{left_out}")
    _foot(canvas, paper, (template.title, "how the sheets lie: row / column; not full size"))
    canvas.showPage()
