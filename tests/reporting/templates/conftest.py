"""A design with templates, and the paths of a page of PDF measured in millimetres."""

from types import SimpleNamespace

import pypdf
import pytest
from pypdf.generic import ContentStream

from reviewer.reporting.templates.making import templates_of
from reviewer.reviewing import review_source

COUNT, CIRCLE, HOLE = 16, 580.0, 13.5
DESIGN = f"""design: By hand
revision: 2
lengths: mm
parts:
  box: {{kind: base, feet: {{count: 5, circle: 900}}, height: 620, mass: 24 kg}}
  lid: {{kind: top, carried_by: box, material: birch plywood, thickness: 18, diameter: 640}}
  marks: {{kind: divided_circle, on: lid, count: {COUNT}, circle: {CIRCLE}, bolt: M12x50}}
  door: {{kind: opening, on: lid, shape: cornered, width: 40, length: 60, circle: 300, count: 3,
    corner: 8}}
  small: {{kind: divided_circle, count: 5, circle: 90, hole: 6}}
"""
POINT = 25.4 / 72  # mm


@pytest.fixture(scope="session")
def templates():
    """The templates of the design by their names."""
    return made(DESIGN)


def made(text):
    found = templates_of(review_source(text, "hand.yaml"))
    return {each.name: each for each in found.templates}


def paths_of(page):
    """What is stroked on a page: polygons of end points [mm], whether curved; texts with places."""
    strokes, texts, stack = [], [], []
    matrix, path, at = (1, 0, 0, 1, 0, 0), [], None
    stream = ContentStream(page.get_contents(), page.pdf)
    for operands, operator in stream.operations:
        numbers = [float(each) for each in operands if isinstance(each, (int, float))]
        match operator:
            case b"q":
                stack.append(matrix)
            case b"Q":
                matrix = stack.pop()
            case b"cm":
                matrix = _times(numbers, matrix)
            case b"m":
                path.append(SimpleNamespace(points=[_placed(numbers, matrix)], curved=False))
            case b"l":
                path[-1].points.append(_placed(numbers, matrix))
            case b"c":
                path[-1].points.append(_placed(numbers[4:], matrix))
                path[-1].curved = True
            case b"re":
                x, y, wide, high = numbers
                corners = [(x, y), (x + wide, y), (x + wide, y + high), (x, y + high), (x, y)]
                placed = [_placed(each, matrix) for each in corners]
                path.append(SimpleNamespace(points=placed, curved=False))
            case b"S" | b"s":
                strokes += path
                path = []
            case b"n":
                path = []
            case b"Tm":
                at = _placed(numbers[4:], _times(numbers, matrix)[:4] + matrix[4:])
            case b"Tj":
                texts.append((str(operands[0]), at))
    return strokes, texts


def _times(first, second):
    a, b, c, d, e, f = first
    p, q, r, s, t, u = second
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s,
            e * p + f * r + t, e * q + f * s + u)  # fmt: skip


def _placed(point, matrix):
    x, y = point
    a, b, c, d, e, f = matrix
    return ((a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT)


@pytest.fixture(scope="session")
def pages_of():
    """From the bytes of a PDF to its pages, each with its strokes and texts."""

    def pages(data):
        import io

        reader = pypdf.PdfReader(io.BytesIO(data))
        return [
            SimpleNamespace(page=page, strokes=found[0], texts=found[1])
            for page in reader.pages
            for found in [paths_of(page)]
        ]

    return pages
